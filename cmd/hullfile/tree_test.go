package main

import (
	"crypto/sha256"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strings"
)

// treeOf gives the hash of every file below a folder, by path with forward slashes.
func treeOf(dir string) (map[string]string, error) {
	tree := map[string]string{}
	root := os.DirFS(dir)
	err := fs.WalkDir(root, ".", func(name string, e fs.DirEntry, err error) error {
		if e != nil && e.Name() == ".hullfile-kept" {
			return fs.SkipDir
		}
		if err != nil || e.IsDir() || e.Name() == ".hullfile-state" {
			return err // the state holds times
		}
		text, err := fs.ReadFile(root, name)
		tree[name] = fmt.Sprintf("%x", sha256.Sum256(text))
		return err
	})
	return tree, err
}

// differences names the files that are not in both trees or not the same in both, in order of name.
func differences(a, b map[string]string) []string {
	var diff []string
	for name, hash := range a {
		if b[name] != hash {
			diff = append(diff, name)
		}
	}
	for name := range b {
		if _, there := a[name]; !there {
			diff = append(diff, name)
		}
	}
	slices.Sort(diff)
	return diff
}

// checkSums holds a folder against its SHA256SUMS both ways: every line true, every file listed.
func checkSums(dir string) error {
	tree, err := treeOf(dir)
	if err != nil {
		return err
	}
	text, err := os.ReadFile(path.Join(dir, "SHA256SUMS"))
	if err != nil {
		return err
	}
	delete(tree, "SHA256SUMS")
	for line := range strings.Lines(string(text)) {
		hash, name, ok := strings.Cut(strings.TrimRight(line, "\n"), "  ")
		if !ok || tree[name] != hash {
			return fmt.Errorf("%s: %q is not true", dir, line)
		}
		delete(tree, name)
	}
	if len(tree) > 0 {
		return fmt.Errorf("%s: not listed: %v", dir, slices.Sorted(maps.Keys(tree)))
	}
	return nil
}
