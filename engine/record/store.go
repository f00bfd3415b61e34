package record

import (
	"path"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// store reads a folder of the yard whose records are not laid over each other: stock, procedures. Any number of TOML
// files and the CSV tables of its kinds are taken together as one record. kinds are what its entries can name among
// themselves; nil is given when a file could not be read.
func (r *reading) store(dir string, t *table, kinds string) *node {
	c := &checker{fs: &r.faults, what: dir, names: r.names}
	start := finding.Place{File: dir, Line: 1, Col: 1}
	root, whole := &node{shape: branch, key: start, at: start}, true
	for _, name := range r.storeFiles(dir, t) {
		file := path.Join(dir, name)
		if r.leave == nil || !r.leave(file) {
			whole = r.storeFile(c, file, t, root) && whole
		}
	}
	o := overlay{fs: &r.faults}
	root = o.table(t, nil, root, nil)
	if !whole {
		return nil
	}
	done := completer{fs: &r.faults, names: named(root, kinds)}
	done.table(t, root, nil)
	r.doubt("", done.doubts)
	return root
}

// storeFiles lists the files of the folder that are read, and tells of those that are not.
func (r *reading) storeFiles(dir string, t *table) []string {
	all, err := r.disk.list(dir)
	if err != nil {
		r.faults.add(placeAt(dir), "", "", "the folder cannot be read: %v", bottom(err))
	}
	tables := csvFiles(t)
	var names []string
	for _, e := range all {
		name := e.Name()
		switch {
		case leftover(name):
		case !strings.HasSuffix(name, ".toml") && !slices.Contains(tables, name):
			r.disk.stray(dir, e, folder{files: tables, strict: true, instead: "the folder holds TOML records and " + said(tables, "and")})
		case r.disk.usual(dir, e, false):
			names = append(names, name)
		}
	}
	return names
}

// storeFile reads one file and puts its entries into the record of the folder.
func (r *reading) storeFile(c *checker, name string, t *table, root *node) bool {
	if strings.HasSuffix(name, ".toml") {
		n, ok := r.mainFile(name)
		if !ok {
			return false
		}
		c.table(t, n, nil)
		c.join(root, n, nil)
		return true
	}
	for _, s := range sources(t) {
		if s.file == path.Base(name) {
			return r.table(c, name, s, t, root)
		}
	}
	return false
}
