package record

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
)

// Value is one value that a hull rests on, as it stands once the hull is laid over its design.
type Value struct {
	Key  string // dotted record key: panel.B3.thickness_mm, stock.lot.L1.cast
	Text string // numbers in their shortest form, so that 8 and 8.0 are one value
	At   finding.Place
}

// Values lists every value that was written for a hull: its own and those of its design, those of the yard, and of the
// stock and the procedures what the hull names. In the order of the tables, entries in the order of the record.
func Values(y *Yard, h *Hull) []Value {
	w := valueWalk{}
	w.table(hullTable, reflect.ValueOf(&h.HullFile).Elem(), "")
	named := map[string]bool{}
	for _, v := range w.all {
		named[v.Text] = true
	}
	w.table(builderTable, reflect.ValueOf(&y.Builder).Elem(), "yard.")
	w.only = named
	w.table(stockTable, reflect.ValueOf(&y.Stock).Elem(), "stock.")
	w.table(proceduresTable, reflect.ValueOf(&y.Welding).Elem(), "procedures.")
	return w.all
}

// valueWalk collects values. Where only is given, an entry of a keyed table at the top counts only if its key, or a text in
// it that stands for it, is named.
type valueWalk struct {
	all  []Value
	only map[string]bool
}

func (w *valueWalk) table(t *table, v reflect.Value, path string) {
	for _, f := range t.fields {
		at := v.Field(f.index)
		switch f.kind {
		case plain:
			w.table(f.sub, at, path+f.key+".")
		case entries:
			for i := range at.Len() {
				w.entry(f.sub, at.Index(i), path+f.key+".")
			}
		default:
			w.value(at, path+f.key)
		}
	}
}

func (w *valueWalk) entry(t *table, v reflect.Value, path string) {
	id := v.Field(entryIndex).Field(0).String() // Entry.ID
	if w.only == nil {
		w.table(t, v, path+id+".")
		return
	}
	inner := valueWalk{}
	inner.table(t, v, path+id+".")
	if !w.only[id] && !slices.ContainsFunc(inner.all, func(v Value) bool { return w.only[v.Text] && isNumber(v.Key) }) {
		return
	}
	w.all = append(w.all, inner.all...)
}

// isNumber reports whether a key holds the number by which papers and welds name an entry.
func isNumber(key string) bool { return strings.HasSuffix(key, ".number") }

func (w *valueWalk) value(v reflect.Value, key string) {
	if !v.Field(1).Bool() {
		return
	}
	w.all = append(w.all, Value{Key: key, Text: plainText(v.Field(0)), At: v.Field(2).Interface().(finding.Place)})
}

func plainText(v reflect.Value) string {
	switch v.Kind() {
	case reflect.String:
		return v.String()
	case reflect.Int:
		return strconv.FormatInt(v.Int(), 10)
	case reflect.Float64:
		return strconv.FormatFloat(v.Float(), 'g', -1, 64)
	case reflect.Slice:
		parts := make([]string, v.Len())
		for i := range parts {
			parts[i] = plainText(v.Index(i))
		}
		return strings.Join(parts, ", ")
	}
	if d, is := v.Interface().(Date); is {
		return d.ISO()
	}
	return fmt.Sprint(v.Interface())
}
