package record

import (
	"reflect"

	"hullfile/engine/finding"
)

// fill puts a checked tree into its struct. It has no errors of its own: the check has turned every value into the type
// of its field.
func fill(t *table, n *node, v reflect.Value) {
	for i, name := range n.names {
		f := t.byKey[name]
		if f == nil {
			continue
		}
		into, kid := v.Field(f.index), n.kids[i]
		switch f.kind {
		case plain:
			fill(f.sub, kid, into)
		case entries:
			fillEntries(f.sub, kid, into)
		default:
			fillValue(f, kid, into)
		}
	}
}

func fillEntries(t *table, n *node, into reflect.Value) {
	all := reflect.MakeSlice(into.Type(), len(n.kids), len(n.kids))
	for i, key := range n.names {
		one := all.Index(i)
		*one.Field(entryIndex).Addr().Interface().(*Entry) = Entry{ID: key, At: n.kids[i].key}
		fill(t, n.kids[i], one)
	}
	into.Set(all)
}

// fillValue fills a Val: its fields are the value, whether it was written, and where.
func fillValue(f *field, n *node, into reflect.Value) {
	v := into.Field(0)
	switch f.kind {
	case number:
		v.SetFloat(n.value.(float64))
	case whole:
		v.SetInt(int64(n.value.(int)))
	case word:
		v.SetString(n.value.(string))
	case yesNo:
		v.SetBool(n.value.(bool))
	default:
		v.Set(reflect.ValueOf(n.value))
	}
	into.Field(1).SetBool(true)
	*into.Field(2).Addr().Interface().(*finding.Place) = n.at
	into.Field(3).SetString(n.text)
}
