//go:build !linux

package site

import (
	"io/fs"
	"os"
	"path/filepath"
)

// lookout is an open folder from which files are looked at by their names.
type lookout struct{ at *os.File }

// lookFrom opens a folder. A link to one is none.
func lookFrom(dir string) (lookout, error) {
	info, err := os.Lstat(dir)
	if err != nil {
		return lookout{}, err
	}
	if !info.IsDir() {
		return lookout{}, &fs.PathError{Op: "open", Path: dir, Err: fs.ErrInvalid}
	}
	at, err := os.Open(dir)
	return lookout{at}, err
}

// below opens a folder in the folder.
func (l lookout) below(name string) (lookout, error) {
	return lookFrom(filepath.Join(l.at.Name(), name))
}

func (l lookout) close() { l.at.Close() }

// see looks at a file by its name in the folder, which may lead into folders below. A link is not followed.
func (l lookout) see(name string) (sight, error) {
	info, err := os.Lstat(filepath.Join(l.at.Name(), name))
	if err != nil {
		return sight{}, err
	}
	return sight{kind: info.Mode().Type(), size: info.Size(), written: info.ModTime().UnixNano()}, nil
}

// entries lists the folder in order of name.
func (l lookout) entries() ([]seen, error) {
	list, err := l.at.ReadDir(-1)
	if err != nil {
		return nil, err
	}
	all := make([]seen, len(list))
	for i, e := range list {
		all[i] = seen{e.Name(), e.Type()}
	}
	byNames(all)
	return all, nil
}
