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
	below map[string]*os.Root // sub-folders that exist, and the folder itself
	names map[string]string   // path in lower case -> path, because some file systems know no case
	sums  []sum
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
	return &folder{ctx: ctx, root: root, below: map[string]*os.Root{".": root}, names: map[string]string{}}, nil
}

func (f *folder) close() {
	for _, root := range f.below {
		root.Close()
	}
}

// write puts a file into the folder.
func (f *folder) write(name string, data []byte) error {
	if err := f.ctx.Err(); err != nil {
		return err
	}
	to, err := f.open(name)
	if err != nil {
		return err
	}
	_, err = to.Write(data)
	if closing := to.Close(); err == nil {
		err = closing
	}
	if err != nil {
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
	to, err := f.open(name)
	if err != nil {
		return "", err
	}
	h := sha256.New()
	room := f.rooms.take()
	if room == nil {
		room = make([]byte, copiedAtOnce)
	}
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

// open makes a new file. It refuses a path that leaves the folder, a name that sha256sum or another file system could
// not hold, and a second file under a name that differs only in case.
func (f *folder) open(name string) (*os.File, error) {
	if !filepath.IsLocal(filepath.FromSlash(name)) || path.Clean(name) != name || strings.ContainsAny(name, "\\\n\r\x00") {
		return nil, fmt.Errorf("%q cannot be the name of a file in a technical file", name)
	}
	in, err := f.place(name)
	if err != nil {
		return nil, err
	}
	to, err := in.OpenFile(path.Base(name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return nil, plainly(err)
	}
	return to, nil
}

// place takes a name, which nobody may take again, and gives the sub-folder that it lies in. Each is opened once: to go
// down to it again for every file costs more than to make the file.
func (f *folder) place(name string) (*os.Root, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	low := strings.ToLower(name)
	if other, taken := f.names[low]; taken {
		return nil, fmt.Errorf("two files want the name %q (the other is %q)", name, other)
	}
	f.names[low] = name
	sub := path.Dir(name)
	if in := f.below[sub]; in != nil {
		return in, nil
	}
	if err := f.root.MkdirAll(filepath.FromSlash(sub), 0o755); err != nil {
		return nil, plainly(err)
	}
	in, err := f.root.OpenRoot(filepath.FromSlash(sub))
	if err != nil {
		return nil, plainly(err)
	}
	f.below[sub] = in
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
