package record

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// source is a CSV table that may stand beside a record: the keyed table whose rows it holds, below its parents.
// A column with the key of a parent says to which one a row belongs: "trial" in runs.csv.
type source struct {
	file    string
	parents []*field
	f       *field
}

// sources lists the CSV tables that may stand beside a record.
func sources(t *table, parents ...*field) []source {
	var all []source
	for _, f := range t.fields {
		if f.kind != entries {
			continue
		}
		if f.csv != "" {
			all = append(all, source{file: f.csv + ".csv", parents: parents, f: f})
		}
		all = append(all, sources(f.sub, append(parents[:len(parents):len(parents)], f)...)...)
	}
	return all
}

// csvReader reads one CSV table into the tree that TOML would have given.
type csvReader struct {
	*checker
	source
	rows    *csv.Reader
	ruler   *ruler
	comma   bool // decimals are written with a comma
	columns []column
	root    *node
	counts  map[*node]int // rows without a key so far, by the table they are in
	fresh   []node
}

// readCSV gives the tree of a CSV table. Rows that are wrong are told and stand in as broken. ok is false when the
// table as a whole cannot be read.
func (c *checker) readCSV(file string, raw []byte, src source) (root *node, ok bool) {
	text, ok := readable(file, raw, c.fs)
	if !ok {
		return nil, false
	}
	r := csvReader{checker: c, source: src, ruler: newRuler(file, text), counts: map[*node]int{}}
	r.root = &node{shape: branch, key: finding.Place{File: file, Line: 1, Col: 1}, at: finding.Place{File: file, Line: 1, Col: 1}}
	head, _, _ := bytes.Cut(text, []byte("\n"))
	r.rows = csv.NewReader(bytes.NewReader(text))
	r.rows.Comma, r.comma = separator(head)
	if at := wideLine(text, byte(r.rows.Comma)); at >= 0 {
		c.fs.add(newRuler(file, text).at(at), "", "a table has a column for each key, and a row a cell for each column", "the line has more than %d cells", mostInLine)
		return nil, false
	}
	r.rows.FieldsPerRecord = -1
	r.rows.ReuseRecord = true
	if !r.head(second(text, r.rows.Comma)) {
		return nil, false
	}
	for n := 0; r.row(); n++ {
		if n == mostRows {
			r.fs.add(r.cellAt(0), r.f.key, "a table of a hull holds what people write; what an instrument writes belongs into logs/",
				"the table has more than %d rows", mostRows)
			return nil, false
		}
	}
	return r.root, true
}

// second gives the second row of a table, nil where there is none.
func second(text []byte, comma rune) []string {
	rows := csv.NewReader(bytes.NewReader(text))
	rows.Comma, rows.FieldsPerRecord = comma, -1
	if _, err := rows.Read(); err != nil {
		return nil
	}
	cells, err := rows.Read()
	if err != nil {
		return nil
	}
	return cells
}

// mostInLine is how many cells a line may have before it is taken apart, which needs memory for each: fifty times what a head
// may have.
const mostInLine = 50 * mostColumns

// wideLine gives where a line of more cells than that begins, -1 where there is none.
func wideLine(text []byte, separator byte) int {
	for from := 0; from < len(text); {
		line := text[from:]
		if end := bytes.IndexByte(line, '\n'); end >= 0 {
			line = line[:end+1]
		}
		if len(line) > mostInLine && bytes.Count(line, []byte{separator}) > mostInLine {
			return from
		}
		from += len(line)
	}
	return -1
}

// separator finds what stands between the columns: a semicolon, if the head has more of them than commas. A spreadsheet
// that writes semicolons does so because it writes decimals with a comma.
func separator(head []byte) (rune, bool) {
	if bytes.Count(head, []byte(";")) > bytes.Count(head, []byte(",")) {
		return ';', true
	}
	return ',', false
}

// next reads one row; the end of the table gives none. What is no row of CSV is told and passed over.
func (r *csvReader) next() (cells []string, at finding.Place, more bool) {
	for {
		cells, err := r.rows.Read()
		if errors.Is(err, io.EOF) {
			return nil, at, false
		}
		var parse *csv.ParseError
		if errors.As(err, &parse) {
			r.fs.add(r.ruler.inLine(parse.Line, parse.Column), "", `close every quote; a quote inside a text is written twice: ""`, "the quotes in this row do not pair")
			continue
		}
		if err != nil {
			r.fs.add(finding.Place{File: r.ruler.file}, "", "", "cannot be read as CSV: %v", err)
			return nil, at, false
		}
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		return cells, r.cellAt(0), true
	}
}

func (r *csvReader) cellAt(i int) finding.Place { return r.ruler.inLine(r.rows.FieldPos(i)) }

// row puts one row into the tree; false at the end of the table.
func (r *csvReader) row() bool {
	cells, at, more := r.next()
	if !more {
		return false
	}
	if !slices.ContainsFunc(cells, func(text string) bool { return text != "" }) {
		return true
	}
	if r.unitsOnly(cells) {
		r.fs.add(at, r.f.key, "take it out: the head of each column ends with its unit", "this is a row of units, not of values")
		return true
	}
	if len(cells) != len(r.columns) {
		hint := "every row has as many cells as the head; leave a cell empty where nothing is known"
		if len(cells) > len(r.columns) {
			hint = "put a text that holds a " + name(r.rows.Comma) + " into quotes, and a head above every column"
		}
		r.fs.add(at, r.f.key, hint, "the row has %s, the head %s", unit.Count(len(cells), "cell", "cells"), unit.Count(len(r.columns), "column", "columns"))
		return true
	}
	n := r.made(branch, at)
	n.names, n.kids = make([]string, 0, len(r.columns)), make([]*node, 0, len(r.columns))
	way, put := r.home(cells, n)
	if !put {
		return true
	}
	for i, col := range r.columns {
		if cells[i] != "" {
			r.cell(col, cells[i], n, r.cellAt(i), way)
		}
	}
	return true
}

// made gives a new node. They are taken from a block of many, because all of one file are kept or let go together.
func (r *csvReader) made(of shape, at finding.Place) *node {
	if len(r.fresh) == 0 {
		r.fresh = make([]node, 32)
	}
	n := &r.fresh[0]
	r.fresh = r.fresh[1:]
	n.shape, n.key, n.at = of, at, at
	return n
}

func name(separator rune) string {
	if separator == ';' {
		return "semicolon"
	}
	return "comma"
}

// cell puts one value into its row.
func (r *csvReader) cell(col column, text string, n *node, at finding.Place, way *trail) {
	switch {
	case col.meant != nil && n.kid(col.meant.key) == nil:
		n.put(col.meant.key, r.made(broken, at))
	case col.name == "":
		r.fs.add(at, way.String(), "write the key of this column into the first row", "%s stands in a column without a head", quoted(text))
	}
	if col.f == nil {
		return
	}
	v, says, hint := cell(col.f, text, r.comma)
	value := r.made(leaf, at)
	value.value = v
	if col.f.kind == number || col.f.kind == whole {
		value.text = numeral(text, r.comma)
	}
	if says != "" {
		r.spoil(value, at, way.to(col.f.key), hint, "%s", says)
	}
	n.put(col.f.key, value)
}

// home puts a row where its key and the keys of its parents say.
func (r *csvReader) home(cells []string, n *node) (way *trail, put bool) {
	at, f := r.root, r.f
	for _, p := range r.parents {
		key, place := r.keyCell(cells, p.key)
		if says, hint := badKey(key); says != "" {
			r.fs.add(place, p.key, hint, "%s", says)
			return nil, false
		}
		at = below(below(at, p.key, place), key, place)
		at.implied = true
		way = way.to(p.key).to(key)
	}
	at, way = below(at, f.key, n.at), way.to(f.key)
	key, place := r.keyCell(cells, idColumn)
	if isSum(key) {
		r.fs.add(place, way.to(key).String(), "take it out: the sums are reckoned", "this is a row of sums")
		return nil, false
	}
	if !r.has(idColumn) {
		r.counts[at]++
		key, n.ordinal = ordinal(r.counts[at]), true
	}
	n.key, n.at = place, place
	if says, hint := badKey(key); says != "" {
		r.fs.add(place, way.String(), hint, "%s", says)
		return nil, false
	}
	if old := at.kid(key); old != nil {
		r.fs.add(place, way.to(key).String(), "keep one of the two, or give one another key", "the key is used twice; first %s", written(old.key))
		return nil, false
	}
	at.put(key, n)
	return way.to(key), true
}

// below gives a child that is a table, new if it is not there yet.
func below(n *node, key string, at finding.Place) *node {
	kid := n.kid(key)
	if kid == nil {
		kid = &node{shape: branch, key: at, at: at}
		n.put(key, kid)
	}
	return kid
}
