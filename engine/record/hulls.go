package record

import (
	"io/fs"
	"path"
	"reflect"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// laid is one hull laid over its design.
type laid struct {
	number, folder string
	root           *node // nil once the struct is filled
	hull           *Hull
	over           []string
	absent         []Absent
	replaced       []Replaced
}

// readDesigns reads every design, and then follows what each is based on.
func (r *reading) readDesigns() {
	dirs := r.recordDirs(designsDir, designFile)
	r.names["design"] = dirs
	for _, name := range dirs {
		dir := path.Join(designsDir, name)
		r.designs[name] = r.record(dir, designFile, "design")
	}
	for _, name := range dirs {
		r.circle(name)
	}
}

// circle tells when a design is laid over itself in the end.
func (r *reading) circle(name string) {
	way := []string{name}
	for at := r.designs[name]; at != nil; at = r.designs[way[len(way)-1]] {
		on := at.root.kid("based_on")
		next, ok := text(on)
		if !ok {
			return
		}
		way = append(way, next)
		if next == name {
			first := r.designs[name].root.kid("based_on")
			r.faults.add(first.at, "based_on", "one of them must stand on its own", "the designs go round in a circle: %s", strings.Join(way, ", "))
			r.designs[name].whole = false
			return
		}
		if slices.Contains(way[:len(way)-1], next) {
			return
		}
	}
}

// listHulls finds the folders of hulls.
func (r *reading) listHulls() {
	r.dirs = r.recordDirs(hullsDir, hullFile)
	seen := map[string]string{}
	for _, name := range r.dirs {
		if other, twice := seen[strings.ToLower(name)]; twice {
			r.faults.add(placeAt(path.Join(hullsDir, name)), "", "give one of the two hulls another number", "the number differs from that of hulls/%s only in letter case", other)
		}
		seen[strings.ToLower(name)] = name
	}
}

// readHulls reads every hull and lays it over its design, several at a time.
func (r *reading) readHulls() {
	read := make([]*reading, len(r.dirs))
	together(len(r.dirs), func(i int) {
		read[i] = r.alone()
		read[i].hull(r.dirs[i], r.dirs)
	})
	for _, one := range read {
		r.join(one)
	}
}

func (r *reading) hull(name string, dirs []string) {
	dir := path.Join(hullsDir, name)
	l := r.record(dir, hullFile, "hull")
	r.numbered(name, dirs, l)
	r.lay(name, dir, l)
}

// numbered holds the number key of a hull against its folder.
func (r *reading) numbered(name string, dirs []string, l *level) {
	n := l.root.kid("number")
	written, ok := text(n)
	switch {
	case !ok || written == name:
	case slices.Contains(dirs, written):
		r.faults.add(n.at, "number", "give each hull its own number", "two hulls have the number %s: this one and hulls/%s", quoted(written), written)
	default:
		r.faults.add(n.at, "number", "write the folder name here, or rename the folder", "%s is not the name of the folder, %s", quoted(written), quoted(name))
	}
}

// loneHull reads a hull.toml that stands alone, with its number in it.
func (r *reading) loneHull(found map[string]bool) {
	for _, dir := range []string{hullsDir, designsDir, methodsDir, stockDir, proceduresDir, requirementsDir, chaptersDir} {
		if found[dir] {
			r.faults.add(placeAt(dir), "", "write yard.toml, and move hull.toml into hulls/NUMBER/", "a lone hull.toml lies beside the folder %s, and nobody would read that", dir)
		}
	}
	for _, name := range csvFiles(builderTable) {
		if found[name] {
			r.faults.add(placeAt(name), "", "write yard.toml, and move hull.toml into hulls/NUMBER/", "this table belongs to a yard.toml, and there is none")
		}
	}
	for _, kind := range strings.Fields(yardNames) {
		r.names[kind] = []string{}
	}
	if r.known.Sheets != nil {
		r.names["sheet"] = r.known.Sheets
	}
	l := r.level("", hullFile, hullTable, "hull", found)
	n := l.root.kid("number")
	number, ok := text(n)
	switch bad := badName(number); {
	case ok && bad != "":
		r.faults.add(n.at, "number", "use letters, digits, - and _; the number names a folder and is part of links", "%s %s", quoted(number), bad)
	case keptName(number) != "":
		r.faults.add(n.at, "number", "give the hull another number", "%s %s", quoted(number), keptName(number))
	case n == nil && l.whole:
		r.faults.add(l.root.key, "number", `add number = "…", the yard's own number of this hull`, "missing")
	}
	r.lay(number, "", l)
	r.unread()
}

// lay lays a hull over its design, the design over what it is based on, and looks at the whole.
func (r *reading) lay(number, dir string, hull *level) {
	o := overlay{fs: &r.faults}
	h := &laid{number: number, folder: dir}
	chain, whole := r.chain(hull)
	for _, l := range chain {
		h.root = o.table(hullTable, h.root, l.root, nil)
		h.over = append(h.over, l.files...)
	}
	h.root = r.inRow(h.root)
	h.root.key = hull.root.key
	h.absent, h.replaced = o.absent, o.replaced
	r.hulls = append(r.hulls, h)
	if !whole {
		return
	}
	c := completer{fs: &r.faults, names: named(h.root, hullNames), gone: o.absent}
	c.table(hullTable, h.root, nil)
	r.doubt(number, c.doubts)
	if len(r.faults.all) == 0 && !r.faulty {
		h.fill()
	}
}

// fill fills the struct and lets the tree go: the trees of a whole fleet need several times as much memory.
func (h *laid) fill() {
	if h.hull != nil {
		return
	}
	h.hull = &Hull{Number: h.number, Folder: h.folder, Over: h.over, Absent: h.absent, Replaced: h.replaced}
	fill(hullTable, h.root, reflect.ValueOf(&h.hull.HullFile).Elem())
	h.hull.Design = h.hull.HullFile.Design
	h.root = nil
}

// chain gives the records that a hull is made of, the lowest first, and whether all of them are there and readable.
func (r *reading) chain(hull *level) (all []*level, whole bool) {
	all, whole = []*level{hull}, hull.whole
	on := hull.root.kid("design")
	for on != nil {
		name, ok := text(on)
		l := r.designs[name]
		if !ok || l == nil || slices.Contains(all, l) {
			return all, false
		}
		all, whole = append([]*level{l}, all...), whole && l.whole
		on = l.root.kid("based_on")
	}
	return all, whole
}

// recordDirs lists the folders of hulls or designs.
func (r *reading) recordDirs(dir, main string) []string {
	all, err := r.disk.list(dir)
	if err != nil {
		r.faults.add(placeAt(dir), "", "", "the folder cannot be read: %v", bottom(err))
	}
	var names []string
	for _, e := range all {
		switch bad := badName(e.Name()); {
		case leftover(e.Name()):
		case e.Type().IsRegular():
			r.faults.add(r.near(dir, e), "", "every one has a folder of its own: "+dir+"/NAME/"+main, "%s lies outside a folder", quoted(e.Name()))
		case e.IsDir() && bad != "":
			r.faults.add(r.near(dir, e), "", "use letters, digits, - and _; the name becomes part of links", "the folder name %s %s", quoted(e.Name()), bad)
		case dir == hullsDir && e.IsDir() && keptName(e.Name()) != "":
			r.faults.add(finding.Place{File: path.Join(dir, e.Name(), main), Line: 1, Col: 1}, "", "give the hull another number, and its folder with it", "%s %s", quoted(e.Name()), keptName(e.Name()))
		case r.disk.usual(dir, e, true):
			names = append(names, e.Name())
		}
	}
	return names
}

// near is the place of something in a folder; of the folder, if the name itself cannot be shown.
func (r *reading) near(dir string, e fs.DirEntry) finding.Place {
	if _, bad := firstUnwanted(e.Name(), false); bad {
		return placeAt(dir)
	}
	return placeAt(path.Join(dir, e.Name()))
}

// record reads the record in a folder of its own.
func (r *reading) record(dir, main, what string) *level {
	found := r.disk.look(dir, recordFolder(main))
	if _, there := found[main]; !there {
		r.faults.add(placeAt(dir), "", "write "+main+" in this folder", "there is no %s in this folder", main)
	}
	if !found[main] {
		root := &node{shape: branch, key: finding.Place{File: path.Join(dir, main), Line: 1, Col: 1}}
		return &level{root: root}
	}
	return r.level(dir, main, hullTable, what, found)
}
