package site

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"hullfile/site/results"
)

// sealsName is the folder of seals inside a technical file (site/seal). No list names what is in it.
const sealsName = "seals"

// sealed reports whether somebody sealed the technical file in a folder.
func sealed(dir string) bool {
	entries, err := os.ReadDir(filepath.Join(dir, sealsName))
	return err == nil && len(entries) > 0
}

// footprint gives a text that changes when a file below a folder is written, added, taken away or put in the place of
// another. It looks at names, sizes and times and reads no file. Seals are left out. It gives the folders too, the top one
// first.
func footprint(dir string) (text string, folders []string, err error) {
	top, err := lookFrom(dir)
	if err != nil {
		return "", nil, err
	}
	defer top.close()
	t := treading{folders: []string{"."}}
	if err := t.tread(top, ""); err != nil {
		return "", nil, err
	}
	return hashOf(t.text), t.folders, nil
}

// treading is a footprint in the making.
type treading struct {
	text    []byte
	folders []string
}

// tread appends what stands for the files of a folder, in order of name. A run does it for many files of the output, so it is
// written out by hand.
func (t *treading) tread(from lookout, below string) error {
	entries, err := from.entries()
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := below + e.name
		if name == sealsName {
			continue
		}
		t.text = strconv.AppendQuote(t.text, name)
		if e.kind == fs.ModeDir {
			t.text = append(t.text, '/')
			t.folders = append(t.folders, name)
			if err := t.treadBelow(from, e.name, name+"/"); err != nil {
				return err
			}
			continue
		}
		is, err := from.see(e.name)
		if err != nil {
			return err
		}
		t.text = append(append(t.text, ' '), is.kind.String()...)
		t.text = strconv.AppendInt(append(t.text, ' '), is.size, 10)
		t.text = strconv.AppendInt(append(t.text, ' '), is.written, 10)
	}
	return nil
}

func (t *treading) treadBelow(from lookout, name, below string) error {
	in, err := from.below(name) // a link to a folder is none of ours
	if err != nil {
		return err
	}
	defer in.close()
	return t.tread(in, below)
}

// doors gives a hash that changes when a file in one of the folders is added, taken away, renamed or put in the place of
// another, and when the lists are written: it looks at the times of the folders and at the lists alone. What it does not see
// is a file that somebody writes over in its place.
func doors(dir string, folders []string) (m mark, ok bool) {
	if len(folders) == 0 {
		return mark{}, false
	}
	from, err := lookFrom(dir)
	if err != nil {
		return mark{}, false
	}
	defer from.close()
	var text []byte
	for _, name := range folders {
		is, err := from.see(name)
		if err != nil || is.kind != fs.ModeDir {
			return mark{}, false
		}
		text = strconv.AppendInt(append(text, ' '), is.written, 36)
	}
	for _, name := range []string{contentsName, sumsName, coverName, results.Name} {
		is, err := from.see(name)
		if err != nil || is.kind != 0 {
			return mark{}, false
		}
		text = strconv.AppendInt(append(text, ' '), is.written, 36)
		text = strconv.AppendInt(append(text, ' '), is.size, 36)
	}
	sum := sha256.Sum256(text)
	return markOf(sum[:]), true
}

// verifies reports whether a folder holds exactly the files that its list of hashes names, each with its true hash, and
// the list has the hash that is given.
func verifies(dir, sums string) bool {
	text, err := plainText(dir, sumsName)
	if err != nil || hashOf(text) != sums {
		return false
	}
	listed := map[string]string{}
	for line := range strings.Lines(string(text)) {
		hash, name, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		listed[name] = hash
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return false
	}
	defer root.Close()
	listed[sumsName] = sums
	seen := 0
	err = fs.WalkDir(root.FS(), ".", func(name string, e fs.DirEntry, err error) error {
		if err == nil && name == sealsName && e.IsDir() {
			return fs.SkipDir
		}
		if err != nil || e.IsDir() {
			return err
		}
		seen++
		if hash, err := hashIn(root, name, e); err != nil || hash != listed[name] {
			return fs.ErrInvalid
		}
		return nil
	})
	return err == nil && seen == len(listed)
}

func hashIn(root *os.Root, name string, e fs.DirEntry) (string, error) {
	if !e.Type().IsRegular() {
		return "", fs.ErrInvalid
	}
	f, err := root.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}
