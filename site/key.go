package site

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"path"
	"slices"

	"hullfile/content"
	"hullfile/engine/record"
	"hullfile/templates"
)

// keyForm is the number of the form of keys; it changes when what a book is made of changes.
const keyForm = 5

// key names everything that the book of a hull is made of: two runs with the same key make the same bytes. It is empty
// where the job does not say what the dossier takes from other hulls.
type key string

// keyring makes keys. What all hulls of a run share is hashed once.
type keyring struct {
	papers *papers
	common [sha256.Size]byte
}

// programOf names the program and how it was asked to write.
func (job *Job) programOf() string {
	return fmt.Sprintf("%d %q %q %v", keyForm, job.Version, job.Program, job.Print)
}

// commonSum hashes the program, what it was built with, and the records of the yard as a whole; of the stock only which plates
// the yard has at all, among which a sheet may look for one that would do. What a hull draws on of it is its own, and what it asks
// for by name of sheets and lists is remembered beside its key (own.go). Papers lie beside the records of a hull or of its designs;
// what else lies in the yard's own folder of documents nobody reads.
func commonSum(job *Job, shelf *shelf) (sum [sha256.Size]byte, err error) {
	all := sha256.New()
	io.WriteString(all, job.programOf())
	if err := hashFiles(all, content.Files, "demo", "start"); err != nil {
		return sum, fmt.Errorf("content: %w", err)
	}
	if err := hashFiles(all, templates.Files); err != nil {
		return sum, fmt.Errorf("templates: %w", err)
	}
	for _, f := range shelf.common {
		if !shelf.isStock(f.Path) && !record.AskedByName(f.Path) {
			hashFile(all, f)
		}
	}
	fmt.Fprintf(all, "%v", shelf.plates)
	for _, d := range shelf.doubts[""] {
		if !d.Within(shelf.isStock) {
			fmt.Fprintf(all, "%q", fmt.Sprint(d))
		}
	}
	return [sha256.Size]byte(all.Sum(nil)), nil
}

// of gives the key of a hull from what is its own, what it draws on of the stock, and what it takes from others.
func (k *keyring) of(number string, own, stock, taken [sha256.Size]byte) key {
	all := sha256.New()
	fmt.Fprintf(all, "%x %q %x %x %x", k.common, number, own, stock, taken)
	return key(hex.EncodeToString(all.Sum(nil)))
}

// own hashes the records of a hull, and these with what was doubted in them and the papers beside them.
func (k *keyring) own(h *record.Hull, files fileBy, doubts []record.YardDoubt, trail *paperTrail) (records mark, own [sha256.Size]byte, err error) {
	records = recordsMark(h, files)
	all := sha256.New()
	all.Write(records[:])
	for _, d := range doubts {
		fmt.Fprintf(all, "%q", fmt.Sprint(d))
	}
	dirs := []string{}
	for _, name := range h.Over {
		dirs = append(dirs, path.Dir(name))
	}
	slices.Sort(dirs)
	for _, dir := range slices.Compact(dirs) {
		if dir == h.Folder && !loneFolder(dir) {
			if err := k.papers.spell(all, dir, trail); err != nil {
				return records, own, fmt.Errorf("hull %s: %w", h.Number, err)
			}
			continue
		}
		text, err := k.papers.shared(dir)
		if err != nil {
			return records, own, fmt.Errorf("hull %s: %w", h.Number, err)
		}
		io.WriteString(all, text)
	}
	return records, [sha256.Size]byte(all.Sum(nil)), nil
}

// loneFolder reports the folder of a hull that lies in the yard folder itself.
func loneFolder(dir string) bool { return dir == "" || dir == "." }

// fileBy finds a record file by its path.
type fileBy func(path string) (record.File, bool)

// recordsMark hashes the record files that a hull is laid over.
func recordsMark(h *record.Hull, files fileBy) mark {
	all := sha256.New()
	for _, name := range h.Over {
		if f, known := files(name); known {
			hashFile(all, f)
		}
	}
	return markOf(all.Sum(nil))
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
