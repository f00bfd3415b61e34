package record

import (
	"path"
	"strings"
)

// limitsDir holds tables of limits of the yard's own, or who held the shipped ones against the text of a standard.
const limitsDir = "limits"

// limits keeps the yard's own tables of limits as text. The rows are looked at by those who judge by them.
func (r *reading) limits() {
	all, err := r.disk.list(limitsDir)
	if err != nil {
		r.faults.add(placeAt(limitsDir), "", "", "the folder cannot be read: %v", bottom(err))
	}
	for _, e := range all {
		name := path.Join(limitsDir, e.Name())
		switch {
		case leftover(e.Name()):
		case !strings.HasSuffix(e.Name(), ".toml"):
			r.disk.stray(limitsDir, e, folder{strict: true, instead: "tables of limits end in .toml"})
		case r.disk.usual(limitsDir, e, false):
			r.limit(e.Name(), name)
		}
	}
}

// limit takes only text that is TOML and no deeper than a table needs.
func (r *reading) limit(name, at string) {
	raw, ok := r.disk.text(at, mostTOML)
	if !ok {
		return
	}
	if _, ok := readTOML(at, raw, &r.faults); !ok {
		return
	}
	if text, ok := readable(at, raw, &r.faults); ok {
		r.tables = append(r.tables, SheetSource{Name: name, Path: at, Text: text})
	}
}
