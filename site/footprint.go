package site

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// sealsName is the folder of seals inside a technical file (site/seal). No list names what is in it.
const sealsName = "seals"

// sealed reports whether somebody sealed the technical file in a folder.
func sealed(dir string) bool {
	entries, err := os.ReadDir(filepath.Join(dir, sealsName))
	return err == nil && len(entries) > 0
}

// footprint gives a text that changes when a file below a folder is written, added, taken away or put in the place of
// another. It looks at names, sizes and times and reads no file. Seals are left out.
func footprint(dir string) (string, error) {
	if info, err := os.Lstat(dir); err != nil || !info.IsDir() {
		return "", errors.Join(err, fs.ErrNotExist) // a link to a folder is none of ours
	}
	text, err := tread(nil, dir, "")
	if err != nil {
		return "", err
	}
	return hashOf(text), nil
}

// tread appends what stands for the files of a folder, in order of name. Every run does it for every file of the output,
// so it is written out by hand.
func tread(text []byte, dir, below string) ([]byte, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		name := below + e.Name()
		if name == sealsName {
			continue
		}
		text = strconv.AppendQuote(text, name)
		if e.IsDir() {
			text = append(text, '/')
			if text, err = tread(text, filepath.Join(dir, e.Name()), name+"/"); err != nil {
				return nil, err
			}
			continue
		}
		info, err := e.Info()
		if err != nil {
			return nil, err
		}
		text = append(append(text, ' '), info.Mode().Type().String()...)
		text = strconv.AppendInt(append(text, ' '), info.Size(), 10)
		text = strconv.AppendInt(append(text, ' '), info.ModTime().UnixNano(), 10)
	}
	return text, nil
}

// verifies reports whether a folder holds exactly the files that its list of hashes names, each with its true hash, and
// the list has the hash that is given.
func verifies(dir, sums string) bool {
	text, err := os.ReadFile(filepath.Join(dir, sumsName))
	if err != nil || hashOf(text) != sums {
		return false
	}
	listed := map[string]string{}
	for line := range strings.Lines(string(text)) {
		hash, name, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		listed[name] = hash
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return false
	}
	defer root.Close()
	listed[sumsName] = sums
	seen := 0
	err = fs.WalkDir(root.FS(), ".", func(name string, e fs.DirEntry, err error) error {
		if err == nil && name == sealsName && e.IsDir() {
			return fs.SkipDir
		}
		if err != nil || e.IsDir() {
			return err
		}
		seen++
		if hash, err := hashIn(root, name, e); err != nil || hash != listed[name] {
			return fs.ErrInvalid
		}
		return nil
	})
	return err == nil && seen == len(listed)
}

func hashIn(root *os.Root, name string, e fs.DirEntry) (string, error) {
	if !e.Type().IsRegular() {
		return "", fs.ErrInvalid
	}
	f, err := root.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}
