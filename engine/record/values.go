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

// Values gives every value that was written for a hull, one by one: its own and those of its design, those of the yard, and of
// the stock and the procedures what the hull names. In the order of the tables, entries in the order of the record.
func Values(y *Yard, h *Hull, take func(Value)) {
	named := map[string]bool{}
	of := valueWalk{take: func(v Value) {
		named[v.Text] = true
		take(v)
	}}
	of.table(hullTable, reflect.ValueOf(&h.HullFile).Elem(), "")
	w := valueWalk{take: take}
	w.table(builderTable, reflect.ValueOf(&y.Builder).Elem(), "yard.")
	w.only = named
	w.table(stockTable, reflect.ValueOf(&y.Stock).Elem(), "stock.")
	w.table(proceduresTable, reflect.ValueOf(&y.Welding).Elem(), "procedures.")
}

// valueWalk goes through values. Where only is given, an entry of a keyed table at the top counts only if its key, or a text in
// it that stands for it, is named.
type valueWalk struct {
	take  func(Value)
	only  map[string]bool
	entry []Value // of the entry that is being looked at
}

func (w *valueWalk) table(t *table, v reflect.Value, path string) {
	for _, f := range t.fields {
		at := v.Field(f.index)
		switch f.kind {
		case plain:
			w.table(f.sub, at, path+f.key+".")
		case entries:
			for i := range at.Len() {
				w.entered(f.sub, at.Index(i), path+f.key+".")
			}
		default:
			w.value(at, path, f.key)
		}
	}
}

func (w *valueWalk) entered(t *table, v reflect.Value, path string) {
	id := v.Field(entryIndex).Field(0).String() // Entry.ID
	if w.only == nil || w.only[id] {
		all := valueWalk{take: w.take}
		all.table(t, v, path+id+".")
		return
	}
	w.entry = w.entry[:0]
	inner := valueWalk{take: func(v Value) { w.entry = append(w.entry, v) }}
	inner.table(t, v, path+id+".")
	if !slices.ContainsFunc(w.entry, func(v Value) bool { return w.only[v.Text] && isNumber(v.Key) }) {
		return
	}
	for _, v := range w.entry {
		w.take(v)
	}
}

// isNumber reports whether a key holds the number by which papers and welds name an entry.
func isNumber(key string) bool { return strings.HasSuffix(key, ".number") }

func (w *valueWalk) value(v reflect.Value, path, key string) {
	if !v.Field(1).Bool() {
		return
	}
	w.take(Value{Key: path + key, Text: plainText(v.Field(0)), At: *v.Field(2).Addr().Interface().(*finding.Place)})
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
