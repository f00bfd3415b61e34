package site

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"
	"syscall"

	"hullfile/engine/document"
)

// folder is one folder of output in the making. It keeps the hash of every file that went in. Paths are relative to
// it, with forward slashes. Several goroutines may write into it.
type folder struct {
	ctx   context.Context // one run of one hull; a folder does not outlive it
	root  *os.Root        // no link that somebody puts into it leads a file elsewhere
	rooms rooms           // for pieces of files that are copied

	mu    sync.Mutex
	below map[string]sub    // folders in which files were made
	names map[string]string // path in lower case -> path, because some file systems know no case
	sums  []sum
	parts map[string]int // of pages that are written in parts
	bytes int64
}

// sum is one file and its hash in hexadecimal.
type sum struct {
	path string
	hash string
}

func newFolder(ctx context.Context, dir string) (*folder, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, plainly(err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, plainly(err)
	}
	return &folder{ctx: ctx, root: root, below: map[string]sub{}, names: map[string]string{}}, nil
}

func (f *folder) close() {
	for _, in := range f.below {
		in.close()
	}
	f.root.Close()
}

// write puts a file into the folder.
func (f *folder) write(name string, data []byte) error {
	if err := f.ctx.Err(); err != nil {
		return err
	}
	in, err := f.place(name)
	if err != nil {
		return err
	}
	if err := in.put(path.Base(name), data); err != nil {
		return plainly(err)
	}
	f.listed(name, hashOf(data), int64(len(data)))
	return nil
}

// copiedAtOnce is how much of a file is read before it is written, bytes.
const copiedAtOnce = 32 << 10

// take puts a file into the folder as it is read, and gives its hash.
func (f *folder) take(name string, from io.Reader) (hash string, err error) {
	if err := f.ctx.Err(); err != nil {
		return "", err
	}
	in, err := f.place(name)
	if err != nil {
		return "", err
	}
	to, err := in.create(path.Base(name))
	if err != nil {
		return "", plainly(err)
	}
	h := sha256.New()
	room := f.rooms.take(copiedAtOnce)
	n, err := io.CopyBuffer(io.MultiWriter(to, h), document.Interruptible(f.ctx, from), room[:copiedAtOnce])
	f.rooms.back(room)
	if closing := to.Close(); err == nil {
		err = closing
	}
	if err != nil {
		return "", plainly(err)
	}
	hash = hex.EncodeToString(h.Sum(nil))
	f.listed(name, hash, n)
	return hash, nil
}

func (f *folder) listed(name, hash string, bytes int64) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.sums = append(f.sums, sum{name, hash})
	f.bytes += bytes
}

// place takes a name, which nobody may take again, and gives the folder that it lies in. Each is opened once: to go down to it
// again for every file costs more than to make the file. It refuses a path that leaves the folder, a name that sha256sum or another
// file system could not hold, and a second file under a name that differs only in case.
func (f *folder) place(name string) (sub, error) {
	if !filepath.IsLocal(filepath.FromSlash(name)) || path.Clean(name) != name || strings.ContainsAny(name, "\\\n\r\x00") {
		return sub{}, fmt.Errorf("%q cannot be the name of a file in a technical file", name)
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	low := strings.ToLower(name)
	if other, taken := f.names[low]; taken {
		return sub{}, fmt.Errorf("two files want the name %q (the other is %q)", name, other)
	}
	f.names[low] = name
	dir := path.Dir(name)
	if in, opened := f.below[dir]; opened {
		return in, nil
	}
	if dir != "." {
		if err := f.root.MkdirAll(filepath.FromSlash(dir), 0o755); err != nil {
			return sub{}, plainly(err)
		}
	}
	in, err := openSub(f.root, filepath.FromSlash(dir))
	if err != nil {
		return sub{}, plainly(err)
	}
	f.below[dir] = in
	return in, nil
}

// writeAlone makes a file that belongs to no folder of output.
func writeAlone(name string, data []byte) error {
	return plainly(os.WriteFile(name, data, 0o644))
}

// plainly says what kept a file from being written, in words that name a remedy where there is one.
func plainly(err error) error {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return fmt.Errorf("the disk is full: %w", err)
	case errors.Is(err, os.ErrPermission), errors.Is(err, syscall.EROFS):
		return fmt.Errorf("the folder may not be written to; choose another with -o: %w", err)
	}
	return err
}
