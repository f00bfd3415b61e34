package site

import (
	"fmt"
	"os"
	"path/filepath"
)

// lockName is the file whose lock keeps a second run off the same output. It is there only while a run is; one that a
// killed run left behind is not locked and holds nobody up.
const lockName = stagePrefix + "lock"

// lock is the right to write to an output folder.
type lock struct{ file *os.File }

// takeLock takes the lock of a folder, or says that another run has it.
func takeLock(out string) (*lock, error) {
	name := filepath.Join(out, lockName)
	for {
		if info, err := os.Lstat(name); err == nil && !info.Mode().IsRegular() {
			return nil, fmt.Errorf("%s is in the way: no run made it", name)
		}
		f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o644)
		if err != nil {
			return nil, fmt.Errorf("output folder: %w", plainly(err))
		}
		held, err := hold(f)
		switch {
		case err != nil:
			f.Close()
			return nil, fmt.Errorf("output folder %s cannot be locked: %w", out, err)
		case !held:
			f.Close()
			return nil, fmt.Errorf("another run is writing to %s; wait until it ends, or choose another folder with -o", out)
		case stillThere(f, name):
			return &lock{f}, nil
		}
		f.Close() // the run that had it has just removed it
	}
}

// stillThere reports whether the name still leads to the open file, and to the file itself and not by way of a link.
func stillThere(f *os.File, name string) bool {
	open, err := f.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(name)
	return err == nil && os.SameFile(open, there)
}

// release gives the lock back. The file is removed first where the system allows that, so that nobody takes the lock of
// a file that is about to go.
func (l *lock) release() {
	removed := os.Remove(l.file.Name())
	l.file.Close()
	if removed != nil {
		os.Remove(l.file.Name()) // a system that keeps open files refuses the first
	}
}
