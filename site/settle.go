package site

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// settleRegister looks through the new files of the register. One that lies in the output with the same bytes keeps its
// time, and an entry in which nothing differs stays where it is. Pages of a register that was longer go.
func (s *stage) settleRegister() error {
	for _, name := range registerFiles {
		if _, err := os.Lstat(s.fresh(name)); errors.Is(err, fs.ErrNotExist) {
			if _, err := os.Lstat(s.final(name)); err == nil {
				s.gone = append(s.gone, name)
			}
			continue
		}
		same, err := alike(s.fresh(name), s.final(name))
		if err != nil {
			return err
		}
		if same {
			if err := os.RemoveAll(s.fresh(name)); err != nil {
				return plainly(err)
			}
		}
	}
	return nil
}

// alike gives the files of a new entry the times of their forerunners and reports whether all of them are the same
// and none is missing.
func alike(fresh, final string) (same bool, err error) {
	info, err := os.Lstat(final)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	if !info.IsDir() {
		return sameFile(fresh, final, info)
	}
	entries, err := os.ReadDir(fresh)
	if err != nil {
		return false, nil // a file takes the place of a folder
	}
	was, err := os.ReadDir(final)
	if err != nil {
		return false, err
	}
	same = len(entries) == len(was)
	for _, e := range entries {
		one, err := alike(filepath.Join(fresh, e.Name()), filepath.Join(final, e.Name()))
		if err != nil {
			return false, err
		}
		same = same && one
	}
	return same, nil
}

func sameFile(fresh, final string, info fs.FileInfo) (bool, error) {
	size, err := os.Lstat(fresh)
	if err != nil || !size.Mode().IsRegular() || !info.Mode().IsRegular() || size.Size() != info.Size() {
		return false, err
	}
	now, err := os.ReadFile(fresh)
	if err != nil {
		return false, err
	}
	was, err := os.ReadFile(final)
	if err != nil || !bytes.Equal(now, was) {
		return false, err
	}
	return true, plainly(os.Chtimes(fresh, info.ModTime(), info.ModTime()))
}
