package site

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"io/fs"
	"path"
	"slices"

	"hullfile/content"
	"hullfile/engine/record"
	"hullfile/templates"
)

// keyForm is the number of the form of keys; it changes when what a book is made of changes.
const keyForm = 1

// key names everything that the book of a hull is made of: two runs with the same key make the same bytes. It is empty
// where the job does not say what the dossier takes from other hulls.
type key string

// keyring makes keys. What all hulls of a run share is hashed once.
type keyring struct {
	job    Job
	shelf  *shelf
	papers *papers
	common []byte
}

// newKeyring hashes the program, what it was built with, and the records of the yard as a whole.
func newKeyring(job Job, shelf *shelf, papers *papers) (*keyring, error) {
	k := &keyring{job: job, shelf: shelf, papers: papers}
	if job.Neighbours == nil {
		return k, nil
	}
	all := sha256.New()
	fmt.Fprintf(all, "%d %q %q %v", keyForm, job.Version, job.Program, job.Print)
	if err := hashFiles(all, content.Files, "demo", "start"); err != nil {
		return nil, fmt.Errorf("content: %w", err)
	}
	if err := hashFiles(all, templates.Files); err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	for _, f := range shelf.common {
		hashFile(all, f)
	}
	for _, d := range shelf.doubts[""] {
		fmt.Fprintf(all, "%q", fmt.Sprint(d))
	}
	for _, dir := range []string{".", "stock", "procedures"} {
		if err := papers.spell(all, dir); err != nil {
			return nil, err
		}
	}
	k.common = all.Sum(nil)
	return k, nil
}

// of gives the key of a hull.
func (k *keyring) of(h *record.Hull) (key, error) {
	if k.job.Neighbours == nil {
		return "", nil
	}
	taken := k.job.Neighbours(h)
	if taken == nil {
		return "", nil
	}
	all := sha256.New()
	fmt.Fprintf(all, "%x %q %x", k.common, h.Number, taken)
	dirs := []string{h.Folder}
	for _, name := range h.Over {
		if f, known := k.shelf.byPath[name]; known {
			hashFile(all, f)
		}
		dirs = append(dirs, path.Dir(name))
	}
	for _, d := range k.shelf.doubts[h.Number] {
		fmt.Fprintf(all, "%q", fmt.Sprint(d))
	}
	slices.Sort(dirs)
	for _, dir := range slices.Compact(dirs) {
		if err := k.papers.spell(all, dir); err != nil {
			return "", fmt.Errorf("hull %s: %w", h.Number, err)
		}
	}
	return key(hex.EncodeToString(all.Sum(nil))), nil
}

func hashFile(to hash.Hash, f record.File) {
	fmt.Fprintf(to, "%q %x", f.Path, sha256.Sum256(f.Text))
}

// hashFiles hashes names and texts of all files but those in the folders left out.
func hashFiles(to hash.Hash, files fs.FS, without ...string) error {
	return fs.WalkDir(files, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() {
			if slices.Contains(without, name) {
				return fs.SkipDir
			}
			return nil
		}
		text, err := fs.ReadFile(files, name)
		hashFile(to, record.File{Path: name, Text: text})
		return err
	})
}
