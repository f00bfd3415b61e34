//go:build !linux

package site

import (
	"io/fs"
	"os"
	"path/filepath"
)

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

// see looks at a file by its name in the folder, which may lead into folders below. A link is not followed.
func (l lookout) see(name string) (sight, error) {
	info, err := os.Lstat(filepath.Join(l.at.Name(), name))
	if err != nil {
		return sight{}, err
	}
	return sight{kind: info.Mode().Type(), size: info.Size(), written: info.ModTime().UnixNano()}, nil
}
