package document

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"strings"
)

// seen is what stands on disk under a name.
type seen struct {
	refused bool // a link or something that is no file
	present bool
	why     string
	bytes   int64
	sum     string
	kind    string
}

// look opens name inside folder and reads it once through: its length, its hash and what its first bytes are. Every
// part of the name is looked at before it is opened; a link is refused even where it stays inside the yard folder,
// because what it leads to can change without the record.
func look(root *os.Root, folder, name string) seen {
	at, info, miss := reach(root, folder, name)
	if miss.why != "" {
		return miss
	}
	return through(root, at, info)
}

// reach finds a file inside a folder without following a link.
func reach(root *os.Root, folder, name string) (at string, info fs.FileInfo, miss seen) {
	if root == nil {
		return "", nil, seen{why: "the yard folder was not looked into"}
	}
	at = folder
	for _, part := range append([]string{""}, strings.Split(name, "/")...) {
		at = path.Join(at, part)
		found, err := root.Lstat(at)
		if err != nil {
			return "", nil, seen{why: plain(err)}
		}
		if found.Mode()&fs.ModeSymlink != 0 {
			return "", nil, seen{refused: true, why: "it is a link, and links are not followed"}
		}
		info = found
	}
	if !info.Mode().IsRegular() {
		return "", nil, seen{refused: true, why: "it is not a file"}
	}
	return at, info, seen{}
}

// Open opens a file that a record names inside a folder of the yard, for a reader of another trade. why says in words why
// it is not opened: it is not there, or its name, a link or its kind would lead somewhere else.
func Open(root *os.Root, folder, name string) (file *os.File, at, why string) {
	if why := refuse(name); why != "" {
		return nil, "", why
	}
	at, info, miss := reach(root, folder, name)
	if miss.why != "" {
		return nil, "", miss.why
	}
	file, err := root.Open(at)
	if err != nil {
		return nil, "", plain(err)
	}
	if now, err := file.Stat(); err != nil || !os.SameFile(info, now) {
		file.Close()
		return nil, "", "it was replaced while it was opened"
	}
	return file, at, ""
}

// through reads a file from end to end.
func through(root *os.Root, name string, info fs.FileInfo) seen {
	f, err := root.Open(name)
	if err != nil {
		return seen{why: plain(err)}
	}
	defer f.Close()
	if now, err := f.Stat(); err != nil || !os.SameFile(info, now) {
		return seen{why: "it was replaced while it was read"}
	}
	head := make([]byte, headLength)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		return seen{why: plain(err)}
	}
	sum := sha256.New()
	sum.Write(head[:n])
	rest, err := io.Copy(sum, f)
	if err != nil {
		return seen{why: plain(err)}
	}
	return seen{present: true, bytes: int64(n) + rest, sum: hex.EncodeToString(sum.Sum(nil)), kind: kindOf(head[:n])}
}

// plain puts an error of the file system into words that do not depend on the system and name no path of it.
func plain(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "it is not there"
	case errors.Is(err, fs.ErrPermission):
		return "it may not be read"
	}
	return "it cannot be read"
}

// sameHash compares two hashes in hexadecimal, whatever their case.
func sameHash(a, b string) bool { return strings.EqualFold(a, b) }
