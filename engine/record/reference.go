package record

import (
	"slices"
	"strings"
)

// TableDoc is one table of the records as a page of reference shows it.
type TableDoc struct {
	File    string // "yard.toml", "stock/*.toml", "procedures/*.toml", "requirements/*.toml", or "hull.toml and design.toml"
	Heading string // "[boat]", "[panel.KEY]"; empty for the top of the record
	Key     string // "panel"; with its parents "trial.run"
	Keyed   bool   // its entries have keys of their own
	Ordered bool   // its entries may also stand without keys, in their order
	CSV     string // table beside the record in which the entries may stand instead, "panels.csv"; empty if there is none
	Columns []string
	Doc     string
	Fields  []FieldDoc
}

// FieldDoc is one key of a table.
type FieldDoc struct {
	Key      string
	Takes    string   // "number", "whole number", "text", "true or false", "date", "list of texts"
	Unit     string   // sign, "mm"
	InWords  string   // "millimetre"
	Range    string   // "above 0, at most 60"
	Usual    string   // "2 to 16": outside it there is a doubt
	Words    []string // the words that are allowed
	Names    string   // what the text must name: "alloy", "person"
	Only     string   // the record in which the key may stand, if not in all
	Example  string
	Required bool
	Doc      string
}

// Reference lists every table and key of the records, in the order in which they are declared.
func Reference() []TableDoc {
	yard := describe(builderTable, &field{kind: plain, doc: "the builder, people and instruments"}, TableDoc{File: yardFile}, nil)
	hull := describe(hullTable, &field{kind: plain, doc: "what the boat is called and which design it is laid over"}, TableDoc{File: hullFile + " and " + designFile}, nil)
	stock := describe(stockTable, &field{kind: plain, doc: "metal and what is used up"}, TableDoc{File: stockDir + "/*.toml"}, nil)
	welding := describe(proceduresTable, &field{kind: plain, doc: "how the yard welds"}, TableDoc{File: proceduresDir + "/*.toml"}, nil)
	lists := describe(listTable, &field{kind: plain, doc: "one list of requirements"}, TableDoc{File: requirementsDir + "/*.toml"}, nil)
	return slices.Concat(yard, stock, welding, lists, hull)
}

// describe gives a table, and the tables below it.
func describe(t *table, f *field, d TableDoc, parents []string) []TableDoc {
	d.Keyed, d.Ordered, d.Doc = f.kind == entries, f.rows, f.doc
	if f.csv != "" {
		d.CSV = f.csv + ".csv"
		d.Columns = append(append([]string{idColumn}, parents...), scalars(t)...)
	}
	all := []TableDoc{d}
	for _, f := range t.fields {
		if f.sub == nil {
			all[0].Fields = append(all[0].Fields, f.document())
			continue
		}
		below := TableDoc{File: d.File, Key: strings.TrimPrefix(d.Key+"."+f.key, ".")}
		below.Heading = headingBelow(d.Heading, f)
		up := parents
		if d.Keyed {
			up = append(parents[:len(parents):len(parents)], lastPart(d.Key))
		}
		all = append(all, describe(f.sub, f, below, up)...)
	}
	return all
}

func headingBelow(heading string, f *field) string {
	inner := strings.Trim(heading, "[]")
	if inner != "" {
		inner += "."
	}
	inner += f.key
	if f.kind == entries {
		inner += ".KEY"
	}
	return "[" + inner + "]"
}

func lastPart(key string) string { return key[strings.LastIndexByte(key, '.')+1:] }

func scalars(t *table) []string {
	var keys []string
	for _, f := range t.fields {
		if f.scalar() {
			keys = append(keys, f.key)
		}
	}
	return keys
}

func (f *field) document() FieldDoc {
	d := FieldDoc{
		Key: f.key, Takes: takes[f.kind], Unit: f.unit.Sign, InWords: f.unit.Words, Range: f.span(),
		Words: f.oneof, Names: f.ref, Example: f.eg, Required: f.must, Doc: f.doc,
	}
	if f.low.set {
		d.Usual = f.low.text + " to " + f.high.text
	}
	if f.in != "" {
		d.Only = f.in + ".toml"
	}
	return d
}

var takes = map[kind]string{number: "number", whole: "whole number", word: "text", yesNo: "true or false", day: "date", words: "list of texts"}

// span is the range of a number in words.
func (f *field) span() string {
	var parts []string
	if f.above.set {
		parts = append(parts, "above "+f.above.text)
	}
	if f.least.set {
		parts = append(parts, "at least "+f.least.text)
	}
	if f.most.set {
		parts = append(parts, "at most "+f.most.text)
	}
	return strings.Join(parts, ", ")
}

// Means says in a builder's words what a key of the records is, without what the words say by example: of "plate.seen_from",
// of "panel.B3.thickness_mm" and of "weighing.W1.point.1.x_m". It is empty for a key that no record has.
func Means(key string) string {
	parts := strings.Split(key, ".")
	for _, t := range []*table{hullTable, builderTable, stockTable, proceduresTable} {
		if doc := t.means(parts); doc != "" {
			return doc
		}
	}
	return ""
}

func (t *table) means(parts []string) string {
	f := t.byKey[parts[0]]
	switch {
	case f == nil:
		return ""
	case len(parts) == 1:
		doc, _, _ := strings.Cut(f.doc, ";")
		return strings.TrimSpace(doc)
	case f.sub == nil:
		return ""
	}
	below := parts[1:]
	if f.kind == entries {
		if doc := f.sub.means(below[min(1, len(below)-1):]); doc != "" {
			return doc
		}
	}
	if doc := f.sub.means(below); doc != "" || f.kind != entries || len(below) > 1 {
		return doc
	}
	return f.doc // an entry by its key
}
