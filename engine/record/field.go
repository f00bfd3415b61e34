package record

import (
	"reflect"
	"slices"
	"strconv"

	"hullfile/engine/unit"
)

// kind is what a field takes.
type kind int

const (
	number  kind = iota // a number with a unit, or without one
	whole               // a count
	word                // text
	yesNo               // true or false
	day                 // a date
	words               // a list of texts
	plain               // a table, [boat]
	entries             // a keyed table, [panel.B3]
)

// bound is one end of a range; the text is as written in the tag.
type bound struct {
	v    float64
	text string
	set  bool
}

// field is one field of a record, read once from the tags of its struct.
type field struct {
	key                string
	index              int // of the struct field
	kind               kind
	unit               unit.Named
	must               bool
	above, least, most bound
	low, high          bound // of what is likely
	entries            bound // how many of a keyed table one hull may have
	oneof              []string
	ref, csv, form, in string
	rows, lines        bool
	unless             string
	after              []string
	upto               string
	eg, doc            string
	sub                *table // of a plain or keyed table
}

// table is one struct of a record: its fields in the order in which they are declared.
type table struct {
	typ    reflect.Type
	fields []*field
	byKey  map[string]*field
	keyed  bool // its struct embeds Entry
}

// The roots of all records and every table below them. They are built once from the types and never changed.
var (
	builderTable    = tableOf(reflect.TypeFor[Builder]())
	hullTable       = bounded(tableOf(reflect.TypeFor[HullFile]()))
	stockTable      = tableOf(reflect.TypeFor[Stock]())
	proceduresTable = tableOf(reflect.TypeFor[Procedures]())
	listTable       = tableOf(reflect.TypeFor[RequirementList]())
	evidenceTable   = tableOf(reflect.TypeFor[EvidenceFile]())
	byType          = collect(map[reflect.Type]*table{}, builderTable, stockTable, proceduresTable, hullTable, listTable)
)

// mostEntries is how many entries of a kind one hull may have where its field says nothing else: some times what the largest
// boats of plate have of anything, seams and welds among them.
const mostEntries = "20000"

func bounded(t *table) *table {
	for _, f := range t.fields {
		if f.kind == entries && !f.entries.set {
			f.entries = boundOf(mostEntries)
		}
	}
	return t
}

func collect(all map[reflect.Type]*table, tables ...*table) map[reflect.Type]*table {
	for _, t := range tables {
		all[t.typ] = t
		for _, f := range t.fields {
			if f.sub != nil {
				collect(all, f.sub)
			}
		}
	}
	return all
}

func tableOf(typ reflect.Type) *table {
	t := &table{typ: typ, byKey: map[string]*field{}}
	for i := range typ.NumField() {
		sf := typ.Field(i)
		if sf.Anonymous && sf.Type == reflect.TypeFor[Entry]() {
			t.keyed = true
			if i != entryIndex {
				panic("record: Entry is not the first field of " + typ.String())
			}
			continue
		}
		f := fieldOf(sf)
		f.index = i
		t.fields = append(t.fields, f)
		t.byKey[f.key] = f
	}
	return t
}

func fieldOf(sf reflect.StructField) *field {
	f := &field{}
	for key, text := range tags(string(sf.Tag)) {
		f.tagged(key, text)
	}
	f.takes(sf.Type)
	return f
}

// takes sets the kind of the field by its Go type, the unit by the name of a quantity.
func (f *field) takes(typ reflect.Type) {
	if typ.Kind() == reflect.Slice {
		f.kind, f.sub = entries, tableOf(typ.Elem())
		return
	}
	if !typ.Implements(reflect.TypeFor[value]()) {
		f.kind, f.sub = plain, tableOf(typ)
		return
	}
	v := typ.Field(0).Type
	switch v.Kind() {
	case reflect.Float64:
		f.kind = number
		f.unit, _ = unit.Of(v.Name())
	case reflect.Int:
		f.kind = whole
	case reflect.String:
		f.kind = word
	case reflect.Bool:
		f.kind = yesNo
	case reflect.Struct:
		f.kind = day
	case reflect.Slice:
		f.kind = words
	default:
		panic("record: no kind for " + typ.String())
	}
}

// value is met by every Val and by nothing else.
type value interface{ isValue() }

func (Val[T]) isValue() {}

func boundOf(text string) bound {
	if text == "" {
		return bound{}
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("record: range tag " + text)
	}
	return bound{v: v, text: text, set: true}
}

// scalar reports whether the field can stand in one cell of a CSV table.
func (f *field) scalar() bool { return f.kind <= day }

// keys lists the keys of a table in their order; in a keyed table that is laid over another also "absent".
func (t *table) keys() []string {
	var keys []string
	for _, f := range t.fields {
		keys = append(keys, f.key)
	}
	if t.keyed {
		keys = append(keys, absentKey)
	}
	return keys
}

// takesWord reports whether w is one of the words that are allowed, where only some are.
func (f *field) takesWord(w string) bool { return len(f.oneof) == 0 || slices.Contains(f.oneof, w) }

// entryIndex is where Entry stands in the struct of a keyed table.
const entryIndex = 0

// absentKey takes an entry of the record below away.
const absentKey = "absent"
