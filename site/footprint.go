package site

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
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
	all := sha256.New()
	if err := tread(all, dir, "."); err != nil {
		return "", err
	}
	return hex.EncodeToString(all.Sum(nil)), nil
}

func tread(to hash.Hash, dir, below string) error {
	entries, err := os.ReadDir(filepath.Join(dir, filepath.FromSlash(below)))
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := path.Join(below, e.Name())
		if name == sealsName {
			continue
		}
		if e.IsDir() {
			fmt.Fprintf(to, "%q/", name)
			if err := tread(to, dir, name); err != nil {
				return err
			}
			continue
		}
		info, err := e.Info()
		if err != nil {
			return err
		}
		fmt.Fprintf(to, "%q %v %d %d", name, info.Mode().Type(), info.Size(), info.ModTime().UnixNano())
	}
	return nil
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
