package document

import (
	"errors"
	"io/fs"
)

// Plain gives a file system that opens files and folders and nothing else. In a file that came from elsewhere a pipe may lie
// in the place of a page: to open it would wait for ever for somebody to write into it, and no interrupt ends that.
func Plain(from fs.FS) fs.FS { return plainFiles{from} }

type plainFiles struct{ from fs.FS }

func (p plainFiles) Open(name string) (fs.File, error) {
	info, err := fs.Stat(p.from, name)
	if err == nil && !info.IsDir() && !info.Mode().IsRegular() {
		err = &fs.PathError{Op: "open", Path: name, Err: errors.New("it is neither a file nor a folder")}
	}
	if err != nil {
		return nil, err
	}
	return p.from.Open(name)
}
