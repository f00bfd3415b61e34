package record

import (
	"path"

	"hullfile/engine/finding"
)

// level is one record with the CSV tables beside it: a yard.toml, a design.toml or a hull.toml.
type level struct {
	root  *node
	files []string
	whole bool // every file of it could be read; if not, what is missing in it says nothing
}

// recordFolder is what may lie in the folder of a hull or a design.
func recordFolder(main string) folder {
	return folder{
		files:   append([]string{main}, csvFiles(hullTable)...),
		folders: []string{documentsDir, logsDir},
		strict:  true,
		instead: "put papers and photographs into documents/, logs into logs/; take away what does not belong to the record",
	}
}

// level reads a record and the tables beside it, and checks each by itself.
func (r *reading) level(dir, main string, t *table, what string, found map[string]bool) *level {
	l := &level{whole: true}
	c := &checker{fs: &r.faults, what: what, names: r.names, lone: r.lone}
	file := path.Join(dir, main)
	l.root = &node{shape: branch, key: finding.Place{File: file, Line: 1, Col: 1}}
	if root, ok := r.mainFile(file); ok {
		l.root = root
		c.table(t, root, nil)
	} else {
		l.whole = false
	}
	l.files = append(l.files, file)
	for _, s := range sources(t) {
		if !found[s.file] {
			continue
		}
		name := path.Join(dir, s.file)
		l.files = append(l.files, name)
		if !r.table(c, name, s, t, l.root) {
			l.whole = false
		}
	}
	r.papers(dir, l.root)
	return l
}

func (r *reading) mainFile(file string) (*node, bool) {
	raw, ok := r.disk.text(file, mostTOML)
	if !ok {
		return nil, false
	}
	return readTOML(file, raw, &r.faults)
}

// table reads one CSV table and puts its rows into the record.
func (r *reading) table(c *checker, name string, s source, t *table, root *node) bool {
	raw, ok := r.disk.text(name, mostCSV)
	if !ok {
		return false
	}
	rows, ok := c.readCSV(name, raw, s)
	if !ok {
		return false
	}
	c.table(t, rows, nil)
	c.join(root, rows, nil)
	return true
}

// papers refuses documents that are reached through a link.
func (r *reading) papers(dir string, root *node) {
	r.logPapers(dir, root)
	all := root.kid("document")
	for i, key := range namesIn(all) {
		file := all.kids[i].kid("file")
		name, ok := text(file)
		if ok && !r.disk.paper(dir, documentsDir, name) {
			r.faults.add(file.at, "document."+quoteKey(key)+".file", "put the file itself into documents/", "%s is a link; a yard folder must be whole in itself", quoted(name))
		}
	}
}

// logPapers does the same for logs, wherever they lie.
func (r *reading) logPapers(dir string, root *node) {
	trials := root.kid("trial")
	for i, trial := range namesIn(trials) {
		logs := trials.kids[i].kid("log")
		for j, key := range namesIn(logs) {
			file := logs.kids[j].kid("file")
			name, ok := text(file)
			if ok && !(r.disk.paper(dir, logsDir, name) && r.disk.paper(dir, documentsDir, name)) {
				way := "trial." + quoteKey(trial) + ".log." + quoteKey(key) + ".file"
				r.faults.add(file.at, way, "put the file itself into logs/", "%s is a link; a yard folder must be whole in itself", quoted(name))
			}
		}
	}
}

// text gives the text of a checked leaf.
func text(n *node) (string, bool) {
	if n == nil || n.shape != leaf {
		return "", false
	}
	s, ok := n.value.(string)
	return s, ok
}
