package site

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
	"sync"
)

// paperFolders hold files that are not records, beside the record that names them.
var paperFolders = []string{"documents", "logs"}

// papers hashes documents and logs of a yard folder. It may be used from many goroutines.
//
// A file whose size, time and number are those that an earlier run remembers, and of which nothing was changed since where the
// system tells that, is not read again. That is trusted only where the file was older than the run that hashed it: a file that
// changes twice within one tick of the disk's clock could not be told by its time.
type papers struct {
	root   *os.Root
	before int64 // nanoseconds since 1970; times from here on are not trusted

	mu      sync.Mutex
	folders map[string]string // what has been spelt of folders that several hulls ask for
	trail   paperTrail        // of their papers
}

// paper is a file with what is remembered of it.
type paper struct {
	Path    string `json:"path"`
	Size    int64  `json:"size"`
	Time    int64  `json:"time"`    // nanoseconds since 1970
	Number  int64  `json:"number"`  // of the file on its disk, 0 where the system does not tell
	Changed int64  `json:"changed"` // when anything of it was changed last; programs that copy set Time back, but not this
	Hash    string `json:"hash"`
}

// paperTrail is what is remembered of papers before a run looks at some of them, and after.
type paperTrail struct {
	known map[string]paper
	seen  []paper
}

func newPapers(root *os.Root, began int64) *papers {
	return &papers{root: root, before: began - int64(tick), folders: map[string]string{}}
}

// shared spells the papers beside records that several hulls ask for, once.
func (p *papers) shared(dir string) (string, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if text, done := p.folders[dir]; done {
		return text, nil
	}
	h := sha256.New()
	err := p.spell(h, dir, &p.trail)
	p.folders[dir] = hex.EncodeToString(h.Sum(nil))
	return p.folders[dir], err
}

// remembered gives what the next run may know of the papers that several hulls ask for: those seen, and those of folders
// that nobody asked for in this run.
func (p *papers) remembered() []paper {
	all := slices.Clone(p.trail.seen)
	for name, one := range p.trail.known {
		above := path.Dir(name)
		for !slices.Contains(paperFolders, path.Base(above)) && above != "." {
			above = path.Dir(above)
		}
		if _, asked := p.folders[path.Dir(above)]; !asked {
			all = append(all, one)
		}
	}
	slices.SortFunc(all, func(a, b paper) int { return strings.Compare(a.Path, b.Path) })
	return all
}

// spell adds to a hash the papers beside the records of a folder.
func (p *papers) spell(to hash.Hash, dir string, trail *paperTrail) error {
	if p.root == nil {
		return nil
	}
	for _, sub := range paperFolders {
		if err := p.folder(to, path.Join(dir, sub), trail); err != nil {
			return err
		}
	}
	return nil
}

// folder adds a text that changes with every change of a file below a folder.
func (p *papers) folder(all hash.Hash, dir string, trail *paperTrail) error {
	return fs.WalkDir(p.root.FS(), dir, func(name string, e fs.DirEntry, err error) error {
		switch {
		case name == dir && errors.Is(err, fs.ErrNotExist):
			return fs.SkipAll
		case err != nil:
			fmt.Fprintf(all, "%q cannot be read", name)
			return nil
		case e.IsDir():
			return nil
		case !e.Type().IsRegular():
			fmt.Fprintf(all, "%q %v", name, e.Type())
			return nil
		}
		one := p.look(name, e, trail)
		fmt.Fprintf(all, "%q %d %s", name, one.Size, one.Hash)
		return nil
	})
}

// look hashes one file, or takes what is remembered of it.
func (p *papers) look(name string, e fs.DirEntry, trail *paperTrail) paper {
	info, err := e.Info()
	if err != nil {
		return paper{Path: name, Hash: "gone"}
	}
	one := paper{Path: name, Size: info.Size(), Time: info.ModTime().UnixNano()}
	one.Number, one.Changed = stamp(info)
	if was, known := trail.known[name]; known && one.like(was) && max(one.Time, one.Changed) < p.before {
		one.Hash = was.Hash
	} else if one.Hash, err = p.hash(name); err != nil {
		return paper{Path: name, Hash: "unread"} // the trade that asks for it says what is wrong with it
	}
	trail.seen = append(trail.seen, one)
	return one
}

// like reports whether the disk says the same of two papers.
func (one paper) like(other paper) bool {
	other.Hash = one.Hash
	return one == other
}

func (p *papers) hash(name string) (string, error) {
	f, err := p.root.Open(name)
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
