package seal

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"
	"unicode/utf8"
)

// mostSums is the greatest length of a list of hashes in bytes: that of half a million files.
const mostSums = 64 << 20

// Listed is one line of a list of hashes.
type Listed struct {
	Path string
	Hash string
}

// ReadSums reads a list in the form of sha256sum: hash, two blanks, path; sorted by path, each path once, none that leaves
// the folder. sha256sum would take other lists too; ours are written in one way, and what differs was written by somebody
// else. The lines that can be read are given beside the errors.
func ReadSums(text []byte) (all []Listed, wrong []string) {
	last := ""
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		hash, name, ok := strings.Cut(line, "  ")
		switch {
		case !ok || !isHash(hash):
			wrong = append(wrong, fmt.Sprintf("line %d is no hash and path", i+1))
			continue
		case !listable(name):
			wrong = append(wrong, fmt.Sprintf("line %d names %q, which is no path inside the file", i+1, name))
			continue
		case name <= last:
			wrong = append(wrong, fmt.Sprintf("line %d names %q out of its order or twice", i+1, name))
			continue
		}
		last = name
		all = append(all, Listed{Path: name, Hash: hash})
	}
	if !strings.HasSuffix(string(text), "\n") {
		wrong = append(wrong, "the last line breaks off")
	}
	return all, wrong
}

// listable reports whether a path may stand in a list: inside the folder, one way of writing it, and nothing that
// sha256sum would have to escape.
func listable(name string) bool {
	return utf8.ValidString(name) && fs.ValidPath(name) && name != "." && path.Clean(name) == name && !strings.ContainsAny(name, "\\\n\r\x00")
}

// readFile reads a file of bounded length.
func readFile(from fs.FS, name string, most int) ([]byte, error) {
	f, err := from.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err == nil && len(text) > most {
		return nil, errors.New("it is too long")
	}
	return text, err
}
