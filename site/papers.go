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
	"sync"
	"time"
)

// paperFolders hold files that are not records, beside the record that names them.
var paperFolders = []string{"documents", "logs"}

// papers hashes documents and logs of a yard folder. It may be used from many goroutines.
//
// A file whose size and time are those that the state of the output remembers is not read again. That is trusted only
// where the file was older than the run that hashed it: a file that changes twice within one tick of the disk's clock
// could not be told by its time.
type papers struct {
	root   *os.Root
	known  map[string]paper // from the state, only read
	before int64            // nanoseconds since 1970; times from here on are not trusted

	mu      sync.Mutex
	seen    map[string]paper
	folders map[string]string // what has been spelt, by folder
}

// paper is a file with what is remembered of it.
type paper struct {
	Path string `json:"path"`
	Size int64  `json:"size"`
	Time int64  `json:"time"` // nanoseconds since 1970
	Hash string `json:"hash"`
}

// tick is more than the coarsest clock of a disk in use, that of FAT with two seconds.
const tick = 3 * time.Second

func newPapers(root *os.Root, s *state) *papers {
	return &papers{root: root, known: s.papers, before: s.began - int64(tick), seen: map[string]paper{}, folders: map[string]string{}}
}

// spell adds to a hash the papers beside the records of a folder.
func (p *papers) spell(to hash.Hash, dir string) error {
	if p.root == nil {
		return nil
	}
	for _, sub := range paperFolders {
		text, err := p.folder(path.Join(dir, sub))
		if err != nil {
			return err
		}
		io.WriteString(to, text)
	}
	return nil
}

// folder gives a text that changes with every change of a file below a folder. Designs are asked for by many hulls and
// looked at once.
func (p *papers) folder(dir string) (string, error) {
	p.mu.Lock()
	text, done := p.folders[dir]
	p.mu.Unlock()
	if done {
		return text, nil
	}
	all := sha256.New()
	err := fs.WalkDir(p.root.FS(), dir, func(name string, e fs.DirEntry, err error) error {
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
		one, err := p.look(name, e)
		fmt.Fprintf(all, "%q %d %s", name, one.Size, one.Hash)
		return err
	})
	text = hex.EncodeToString(all.Sum(nil))
	p.mu.Lock()
	p.folders[dir] = text
	p.mu.Unlock()
	return text, err
}

// look hashes one file, or takes what is remembered of it.
func (p *papers) look(name string, e fs.DirEntry) (paper, error) {
	info, err := e.Info()
	if err != nil {
		return paper{Path: name, Hash: "gone"}, nil
	}
	one := paper{Path: name, Size: info.Size(), Time: info.ModTime().UnixNano()}
	if was, known := p.known[name]; known && was.Size == one.Size && was.Time == one.Time && one.Time < p.before {
		one.Hash = was.Hash
	} else if one.Hash, err = p.hash(name); err != nil {
		return paper{Path: name, Hash: "unread"}, nil // the trade that asks for it says what is wrong with it
	}
	p.mu.Lock()
	p.seen[name] = one
	p.mu.Unlock()
	return one, nil
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
