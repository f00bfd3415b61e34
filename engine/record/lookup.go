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
	t := byType[v.Type()]
	if t == nil || t.byKey[key] == nil {
		return Field{}, false
	}
	f := t.byKey[key]
	if f.sub != nil {
		return Field{}, false
	}
	val := v.Field(f.index)
	field := Field{Set: val.Field(1).Bool(), Unit: f.unit.Sign, Doc: f.doc}
	field.At = *val.Field(2).Addr().Interface().(*finding.Place)
	field.read(f.kind, val.Field(0))
	return field, true
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
			field.Word = v.Interface().(Date).String()
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
