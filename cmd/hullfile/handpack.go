package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/site"
	"hullfile/site/seal"
)

// packedFile is a zip that was written.
type packedFile struct {
	path    string
	of      string // which file went in
	entries int
	bytes   int64
	seals   int
	stands  finding.Standing // as its results say; not shown where they say nothing
}

// standingIn reads from the results of a technical file how it stands.
func standingIn(from fs.FS) finding.Standing {
	text, err := fs.ReadFile(from, site.ResultsPath)
	var says struct{ Standing finding.Standing }
	if err != nil || json.Unmarshal(text, &says) != nil || says.Standing == "" {
		return finding.NotShown
	}
	return says.Standing
}

// fileFor gives the folder of the technical file that is to be packed: the one that was named, or one rendered for it.
func fileFor(ctx context.Context, d *desk, args []string) (dir string, done func(), err error) {
	last := args[len(args)-1]
	if _, err := os.Lstat(filepath.Join(last, seal.SumsName)); len(args) == 1 && err == nil {
		return last, func() {}, nil
	}
	r, err := openYard(folderOf(args[:len(args)-1]))
	if err != nil {
		return "", nil, err
	}
	defer r.close()
	if _, err := r.choose([]string{last}); err != nil {
		return "", nil, err
	}
	r.print = true
	out, err := os.MkdirTemp("", "hullfile-handover-")
	if err != nil {
		return "", nil, err
	}
	done = func() { os.RemoveAll(out) }
	if _, err := r.render(ctx, d, out, []string{last}); err != nil {
		done()
		return "", nil, err
	}
	return filepath.Join(out, last), done, nil
}

// pack verifies a technical file and writes the zip, first beside its place.
func (h *handing) pack(ctx context.Context, dir string) (packedFile, error) {
	root, err := openFolder(dir)
	if err != nil {
		return packedFile{}, err
	}
	defer root.Close()
	from := document.Plain(root.FS())
	r, err := seal.Verify(ctx, from, seal.Given{})
	if err != nil {
		return packedFile{}, fmt.Errorf("%q: %w", dir, err)
	}
	for _, c := range r.Checks {
		if c.Standing == finding.Short {
			return packedFile{}, fmt.Errorf("%q is not handed over as it is: %s: %s; hullfile verify tells more", dir, c.Subject, c.Says)
		}
	}
	list := seal.ForOwner
	if h.whom == "surveyor" {
		list = seal.ForSurveyor
	}
	entries, err := list(from, r)
	if err != nil {
		return packedFile{}, fmt.Errorf("%q: %w", dir, err)
	}
	bytes, err := replace(h.out, func(to io.Writer) error { return seal.Pack(ctx, from, entries, to) })
	return packedFile{path: h.out, of: "hull " + r.Hull + ", " + issueWords(r.Issue, r.Issued), entries: len(entries), bytes: bytes, seals: len(r.Seals), stands: standingIn(from)}, err
}

// replace writes a file beside its place and moves it there when it is whole.
func replace(name string, write func(io.Writer) error) (bytes int64, err error) {
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+"-*.part")
	if err != nil {
		return 0, fmt.Errorf("the zip could not be written: %w", err)
	}
	defer os.Remove(f.Name()) // there is nothing left where the move succeeded
	err = write(f)
	if info, said := f.Stat(); said == nil {
		bytes = info.Size()
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Chmod(f.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		return 0, fmt.Errorf("the zip could not be written: %w", err)
	}
	return bytes, nil
}
