package site

import (
	"encoding/binary"
	"errors"
	"io/fs"
	"slices"
	"strings"

	"golang.org/x/sys/unix"
)

// lookout is an open folder from which files are looked at by their names. From it the system need not go the whole path for every
// file, of which a run over a fleet looks at tens of thousands. It is open by the calls of the system alone, because a file of
// the language brings with it what nobody needs here.
type lookout struct {
	at  int
	dir string
}

// lookFrom opens a folder. A link to one is none.
func lookFrom(dir string) (lookout, error) { return lookInto(unix.AT_FDCWD, dir, dir) }

// below opens a folder in the folder.
func (l lookout) below(name string) (lookout, error) { return lookInto(l.at, name, l.dir+"/"+name) }

func lookInto(from int, name, dir string) (lookout, error) {
	for {
		at, err := unix.Openat(from, name, unix.O_RDONLY|unix.O_DIRECTORY|unix.O_NOFOLLOW|unix.O_CLOEXEC, 0)
		if err == nil {
			return lookout{at, dir}, nil
		}
		if !errors.Is(err, unix.EINTR) { // which comes from a disk of another machine
			return lookout{}, &fs.PathError{Op: "open", Path: dir, Err: err}
		}
	}
}

func (l lookout) close() { _ = unix.Close(l.at) } // nothing was written

// see looks at a file by its name in the folder, which may lead into folders below. A link is not followed.
func (l lookout) see(name string) (sight, error) {
	var is unix.Stat_t
	if err := unix.Fstatat(l.at, name, &is, unix.AT_SYMLINK_NOFOLLOW); err != nil {
		return sight{}, &fs.PathError{Op: "lstat", Path: l.dir + "/" + name, Err: err}
	}
	return sight{kindOf(is.Mode), is.Size, is.Mtim.Nano(), int64(is.Ino), is.Ctim.Nano()}, nil
}

// entries lists the folder in order of name.
func (l lookout) entries() ([]seen, error) {
	var room [8 << 10]byte
	var all []seen
	for {
		n, err := unix.Getdents(l.at, room[:])
		switch {
		case errors.Is(err, unix.EINTR):
			continue
		case err != nil:
			return nil, &fs.PathError{Op: "readdir", Path: l.dir, Err: err}
		case n == 0:
			byNames(all)
			return all, nil
		}
		all = slices.Grow(all, n/usualEntry)
		if all, err = l.listed(all, string(room[:n])); err != nil {
			return nil, err
		}
	}
}

// usualEntry is about how long an entry is, bytes.
const usualEntry = 32

// Where in an entry, as the system gives it, stand its length, its kind and its name, which ends with a nought (getdents64(2)).
const (
	entryLength = 16
	entryKind   = 18
	entryName   = 19
)

// listed adds the entries of a piece of a list. One that goes away meanwhile is left out.
func (l lookout) listed(all []seen, list string) ([]seen, error) {
	for len(list) > entryName {
		n := int(binary.NativeEndian.Uint16([]byte(list[entryLength:entryKind])))
		if n <= entryName || n > len(list) {
			return nil, &fs.PathError{Op: "readdir", Path: l.dir, Err: fs.ErrInvalid}
		}
		one := list[:n]
		list = list[n:]
		name, _, _ := strings.Cut(one[entryName:], "\x00")
		if name == "." || name == ".." {
			continue
		}
		kind, told := entryKinds[one[entryKind]]
		if !told {
			is, err := l.see(name)
			if errors.Is(err, fs.ErrNotExist) {
				continue
			}
			if err != nil {
				return nil, err
			}
			kind = is.kind
		}
		all = append(all, seen{name, kind})
	}
	return all, nil
}

// entryKinds are the kinds of entries, where the disk tells them with the names.
var entryKinds = map[byte]fs.FileMode{
	unix.DT_REG: 0, unix.DT_DIR: fs.ModeDir, unix.DT_LNK: fs.ModeSymlink, unix.DT_FIFO: fs.ModeNamedPipe, unix.DT_SOCK: fs.ModeSocket,
	unix.DT_CHR: fs.ModeDevice | fs.ModeCharDevice, unix.DT_BLK: fs.ModeDevice,
}

// kindOf gives the kind of a file as the language names it.
func kindOf(mode uint32) fs.FileMode {
	if kind, known := entryKinds[byte(mode&unix.S_IFMT>>12)]; known { // the kinds of entries are those of modes
		return kind
	}
	return fs.ModeIrregular
}
