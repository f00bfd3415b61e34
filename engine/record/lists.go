package record

import (
	"io/fs"
	"path"
	"reflect"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// List is one file of requirements with where it came from.
type List struct {
	Name     string // file name without .toml
	Path     string // as messages show it
	Yards    bool   // a list of the yard's own
	Replaces bool   // a list of the yard's own in place of one that comes with the program
	RequirementList
}

// ReadLists reads every *.toml of a folder of lists that comes with the program. The error is finding.Faults, or one of
// reading.
func ReadLists(files fs.FS, dir string) ([]List, error) {
	return readFiles(files, dir, listTable, func(name, at string, n *node) List {
		l := List{Name: name, Path: at}
		fill(listTable, n, reflect.ValueOf(&l.RequirementList).Elem())
		return l
	})
}

// ReadEvidence reads every *.toml of a folder of words for evidence.
// The error is finding.Faults of all files, or one of reading.
func ReadEvidence(files fs.FS, dir string) ([]EvidenceFile, error) {
	return readFiles(files, dir, evidenceTable, func(_, _ string, n *node) EvidenceFile {
		var e EvidenceFile
		fill(evidenceTable, n, reflect.ValueOf(&e).Elem())
		return e
	})
}

func readFiles[T any](files fs.FS, dir string, t *table, made func(name, at string, n *node) T) ([]T, error) {
	names, err := fs.Glob(files, path.Join(dir, "*.toml"))
	if err != nil {
		return nil, err
	}
	var out []T
	var wrong faults
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		if n, ok := looked(name, text, t, &wrong, nil); ok {
			out = append(out, made(stem(name), name, n))
		}
	}
	if all := wrong.told(); len(all) > 0 {
		return nil, all
	}
	return out, nil
}

// looked reads one file that is laid over no other, and looks at all of it. ok is false where anything was wrong.
func looked(file string, text []byte, t *table, wrong *faults, names map[string][]string) (n *node, ok bool) {
	var own faults
	n, ok = readTOML(file, text, &own)
	if ok {
		c := &checker{fs: &own, what: "list", names: names}
		c.table(t, n, nil)
		o := overlay{fs: &own}
		n = o.table(t, nil, n, nil)
		done := completer{fs: &own, names: map[string][]string{}}
		done.table(t, n, nil)
	}
	told := own.told()
	for _, f := range told {
		wrong.add(f.Place, f.Key, f.Hint, "%s", f.Says)
	}
	return n, len(told) == 0
}

// OwnSheet gives the path in the yard folder of a method sheet of the yard's own, by its file name.
func OwnSheet(file string) string { return methodsDir + "/" + file }

// OwnList does the same of a list of requirements, by its name.
func OwnList(name string) string { return requirementsDir + "/" + name + ".toml" }

// AskedByName reports whether a file of the yard is one of those that take part only in hulls that ask for them by name: method
// sheets and lists of requirements.
func AskedByName(file string) bool {
	top, _, _ := strings.Cut(file, "/")
	return top == methodsDir || top == requirementsDir
}

// stem is the name of a list.
func stem(file string) string { return strings.TrimSuffix(path.Base(file), ".toml") }

// lists reads the yard's own requirements. A file with the name of a list that comes with the program takes its place.
func (r *reading) lists(there bool) {
	if there {
		r.ownLists()
	}
	if r.known.Lists == nil {
		return
	}
	r.names["list"] = slices.Clone(r.known.Lists)
	for _, l := range r.own {
		if !l.Replaces {
			r.names["list"] = append(r.names["list"], l.Name)
		}
	}
	r.names["evidence"] = slices.Clone(r.known.Words)
	for _, l := range r.own {
		for i := range l.Evidence {
			r.names["evidence"] = append(r.names["evidence"], l.Evidence[i].ID)
		}
	}
}

func (r *reading) ownLists() {
	all, err := r.disk.list(requirementsDir)
	if err != nil {
		r.faults.add(placeAt(requirementsDir), "", "", "the folder cannot be read: %v", bottom(err))
	}
	for _, e := range all {
		name := path.Join(requirementsDir, e.Name())
		switch bad := badName(stem(name)); {
		case leftover(e.Name()):
		case !strings.HasSuffix(e.Name(), ".toml"):
			r.disk.stray(requirementsDir, e, folder{strict: true, instead: "lists of requirements end in .toml"})
		case !r.disk.usual(requirementsDir, e, false):
		case bad != "":
			r.faults.add(r.near(requirementsDir, e), "", "use letters, digits, - and _; the name becomes part of links", "the name of the list %s", bad)
		default:
			r.ownList(name)
		}
	}
}

func (r *reading) ownList(name string) {
	text, ok := r.disk.text(name, mostTOML)
	if !ok {
		return
	}
	l := List{Name: stem(name), Path: name, Yards: true, Replaces: slices.Contains(r.known.Lists, stem(name))}
	if n, ok := looked(name, text, listTable, &r.faults, nil); ok {
		fill(listTable, n, reflect.ValueOf(&l.RequirementList).Elem())
	}
	r.own = append(r.own, l)
}

// Entries counts the entries of a keyed table of the hull ("weld"), or of one below another ("trial.turning"), and gives
// the place of the first; ok is false where the record knows no such table.
func (h *Hull) Entries(key string) (n int, first finding.Place, ok bool) {
	return entriesOf(hullTable, reflect.ValueOf(&h.HullFile).Elem(), key)
}

func entriesOf(t *table, v reflect.Value, key string) (n int, first finding.Place, ok bool) {
	key, below, deeper := strings.Cut(key, ".")
	f := t.byKey[key]
	if f == nil || f.kind != entries {
		return 0, finding.Place{}, false
	}
	all := v.Field(f.index)
	if deeper {
		if f.sub.byKey[below] == nil || f.sub.byKey[below].kind != entries {
			return 0, finding.Place{}, false
		}
		for i := range all.Len() {
			more, at, _ := entriesOf(f.sub, all.Index(i), below)
			if n == 0 {
				first = at
			}
			n += more
		}
		return n, first, true
	}
	if all.Len() > 0 {
		first = all.Index(0).Field(entryIndex).Interface().(Entry).At
	}
	return all.Len(), first, true
}

// Has reports whether the record of a hull knows a key such as plate.seen_from or conformity.module.
func Has(key string) bool {
	first, rest, more := strings.Cut(key, ".")
	f := hullTable.byKey[first]
	switch {
	case f == nil:
		return false
	case !more:
		return f.sub == nil
	}
	return f.kind == plain && f.sub.byKey[rest] != nil
}
