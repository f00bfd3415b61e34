package record

import (
	"time"

	"hullfile/engine/finding"
)

// readTOML gives the tree of a TOML record: values as the decoder reads them, places as the layout has them.
// The decoder alone decides what is TOML. ok is false when the text cannot be read; the fault is then told.
func readTOML(file string, raw []byte, fs *faults) (root *node, ok bool) {
	text, ok := readable(file, raw, fs)
	if !ok {
		return nil, false
	}
	if offset, says, deep := tooDeep(text); deep {
		fs.add(newRuler(file, text).at(offset), "", notRead, "%s", says)
		return nil, false
	}
	values, ok := decode(file, text, fs)
	if !ok {
		return nil, false
	}
	root, err := layout(file, text)
	if err != nil {
		fs.add(finding.Place{File: file}, "", "write every table once, under one heading", "the record is TOML, but lines cannot be told apart: %v", err)
		return nil, false
	}
	if !fillIn(root, values) {
		fs.add(finding.Place{File: file}, "", "write every table once, under one heading", "the record is TOML, but its values cannot be matched to their lines")
		return nil, false
	}
	return root, true
}

// fillIn puts the decoded values into the layout; false if the two do not agree in shape.
func fillIn(n *node, v any) bool {
	switch v := v.(type) {
	case map[string]any:
		if n.shape != branch || len(v) != len(n.names) {
			return false
		}
		for i, name := range n.names {
			child, has := v[name]
			if !has || !fillIn(n.kids[i], child) {
				return false
			}
		}
		return true
	case []map[string]any:
		return fillList(n, len(v), func(i int) any { return v[i] })
	case []any:
		return fillList(n, len(v), func(i int) any { return v[i] })
	}
	n.value = dayOf(v)
	return n.shape == leaf
}

func fillList(n *node, length int, at func(int) any) bool {
	if n.shape != list || len(n.items) != length {
		return false
	}
	for i, item := range n.items {
		if !fillIn(item, at(i)) {
			return false
		}
	}
	return true
}

// dayOf turns a local date into a Date; the decoder marks one by the name of its location.
func dayOf(v any) any {
	t, is := v.(time.Time)
	if !is || t.Location().String() != "date-local" {
		return v
	}
	return Date{Year: t.Year(), Month: t.Month(), Day: t.Day()}
}
