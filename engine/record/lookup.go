package record

import (
	"reflect"
	"strings"

	"hullfile/engine/finding"
)

// Field is one value of a record looked up by its key, for a reader that knows the key only as text, such as a method sheet.
type Field struct {
	Number float64 // of a number or a count
	Word   string  // of anything else: text as written, "true" or "false", a date as 2026-03-14, a list with commas
	IsWord bool
	Set    bool // whether it was written at all
	Unit   string
	At     finding.Place
	Doc    string
}

// Lookup gives the value under a key of one table of a record, e.g. Lookup(&panel, "short_side_mm"). The table is a
// pointer to one of the structs of this package. ok is false when the table has no such key; a key that exists but was
// not written has Set false.
func Lookup(entry any, key string) (field Field, ok bool) {
	v := reflect.ValueOf(entry)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return Field{}, false
	}
	return lookup(v.Elem(), key)
}

func lookup(v reflect.Value, key string) (Field, bool) {
	f := valueField(v.Type(), key)
	if f == nil {
		return Field{}, false
	}
	return f.of(v), true
}

// valueField finds the field of one value in a table, nil where the table has none of that key.
func valueField(t reflect.Type, key string) *field {
	if of := byType[t]; of != nil {
		if f := of.byKey[key]; f != nil && f.sub == nil {
			return f
		}
	}
	return nil
}

// of reads the field in the struct of a table.
func (f *field) of(v reflect.Value) Field {
	val := v.Field(f.index)
	field := Field{Set: val.Field(1).Bool(), Unit: f.unit.Sign, Doc: f.doc}
	field.At = *val.Field(2).Addr().Interface().(*finding.Place)
	field.read(f.kind, val.Field(0))
	return field
}

// Key is one key of the tables of one kind, found once to be read in many of them.
type Key struct {
	table reflect.Type
	field *field
}

// KeyOf finds a key for tables of the kind of entry, which is a pointer as for Lookup.
func KeyOf(entry any, key string) Key {
	t := reflect.TypeOf(entry)
	if t == nil || t.Kind() != reflect.Pointer {
		return Key{table: t}
	}
	return Key{t, valueField(t.Elem(), key)}
}

// Fits reports whether a table is of the kind for which the key was found.
func (k *Key) Fits(entry any) bool { return reflect.TypeOf(entry) == k.table }

// In gives the value of the key in a table that fits; ok is false when such tables have no such key.
func (k *Key) In(entry any) (field Field, ok bool) {
	if k.field == nil {
		return Field{}, false
	}
	v := reflect.ValueOf(entry)
	if v.IsNil() {
		return Field{}, false
	}
	return k.field.of(v.Elem()), true
}

// read takes the value over in the form in which a sheet uses it.
func (field *Field) read(k kind, v reflect.Value) {
	field.IsWord = k != number && k != whole
	switch k {
	case number:
		field.Number = v.Float()
	case whole:
		field.Number = float64(v.Int())
	case word:
		field.Word = v.String()
	case yesNo:
		field.Word = map[bool]string{true: "true", false: "false"}[v.Bool()]
	case day:
		if field.Set {
			field.Word = v.Interface().(Date).ISO()
		}
	case words:
		field.Word = strings.Join(v.Interface().([]string), ", ")
	}
}

// Value gives a value of the hull by its dotted key: "boat.loaded_mass_kg", "panel.B3.thickness_mm".
func (h *Hull) Value(name string) (field Field, ok bool) {
	v := reflect.ValueOf(&h.HullFile).Elem()
	for {
		first, rest, more := strings.Cut(name, ".")
		if !more {
			return lookup(v, name)
		}
		f := byType[v.Type()].byKey[first]
		if f == nil || f.sub == nil {
			return Field{}, false
		}
		v, name = v.Field(f.index), rest
		if f.kind == entries {
			key, below, _ := strings.Cut(rest, ".")
			if v, ok = entryOf(v, key); !ok {
				return Field{}, false
			}
			name = below
		}
	}
}

// entryOf finds an entry by its key.
func entryOf(all reflect.Value, key string) (reflect.Value, bool) {
	for i := range all.Len() {
		if one := all.Index(i); one.Field(entryIndex).Field(0).String() == key {
			return one, true
		}
	}
	return reflect.Value{}, false
}
