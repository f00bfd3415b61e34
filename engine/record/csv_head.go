package record

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// idColumn is the head of the column with the key of every row; "key" is taken too.
const idColumn = "id"

// mostColumns keeps out a head that is no head.
const mostColumns = 200

// column is one column of a CSV table. f is nil for the keys of the row and its parents, and for a column that is not
// used; meant is then the field that its head most likely stands for.
type column struct {
	name     string
	f, meant *field
}

// head reads the first row. Its columns may stand in any order. The row below it tells whether it is the row of a title, or
// of names over several columns.
func (r *csvReader) head(below []string) bool {
	cells, at, more := r.next()
	switch {
	case !more:
		r.fs.add(r.root.at, "", "the first row holds the keys of the columns: "+strings.Join(r.heads(), ", "), "the table is empty")
		return false
	case len(cells) > mostColumns:
		r.fs.add(at, "", "the first row holds the keys of the columns", "the table has %d columns", len(cells))
		return false
	case len(cells) == 1 && strings.Contains(cells[0], "\t"):
		r.fs.add(at, "", "save the table as CSV with commas or semicolons between the columns", "the columns are separated by tabs")
		return false
	case len(cells) > 0 && strings.HasPrefix(strings.ToLower(cells[0]), "sep="):
		r.fs.add(at, "", "take this line out; the keys of the columns stand in the first row", "%s is not the key of a column", quoted(cells[0]))
		return false
	}
	switch n := r.keysIn(cells); {
	case n < r.keysIn(below):
		r.fs.add(at, "", "take this line out: the first row holds the keys of the columns", "the keys of the columns stand in the second row")
		return false
	case n == 0 && !r.anyHead(cells):
		r.fs.add(at, "", "the first row holds the keys of the columns: "+strings.Join(r.heads(), ", "), "no cell of the first row is the key of a column")
		return false
	}
	for i, text := range cells {
		r.column(strings.Clone(text), r.cellAt(i))
	}
	return r.complete()
}

// keysIn counts the cells of a row that are keys of columns.
func (r *csvReader) keysIn(cells []string) int {
	n, heads := 0, r.heads()
	for _, text := range cells {
		if text = strings.TrimSpace(text); text == "key" || slices.Contains(heads, text) {
			n++
		}
	}
	return n
}

// anyHead reports whether a cell of a row is spelled like the key of a column.
func (r *csvReader) anyHead(cells []string) bool {
	for _, text := range cells {
		if text == "" {
			continue
		}
		if _, near := nearest(text, r.heads()); near {
			return true
		}
		if _, near := r.f.sub.spelled(text, ""); near {
			return true
		}
	}
	return false
}

// unitsOnly reports a row below the head that says the units of the columns: kg, [m], (mm).
func (r *csvReader) unitsOnly(cells []string) bool {
	units := 0
	for i, text := range cells {
		if text == "" {
			continue
		}
		if i >= len(r.columns) {
			return false
		}
		f := r.columns[i].f
		if f == nil || f.unit.Sign == "" || !strings.EqualFold(strings.Trim(text, "[]()"), f.unit.Sign) {
			return false
		}
		units++
	}
	return units > 0
}

// complete asks for the columns without which no row has a home. Rows of a list that is known by its order may do
// without keys of their own.
func (r *csvReader) complete() bool {
	ok := true
	for _, p := range r.parents {
		if !r.has(p.key) {
			r.fs.add(r.root.at, p.key, "add a column "+p.key+" with the key of the "+p.key+" of every row", "the column %s is missing", p.key)
			ok = false
		}
	}
	if !r.f.rows && !r.has(idColumn) {
		r.fs.add(r.root.at, idColumn, "add a column id with a key for every row, e.g. B3", "the column id is missing")
		ok = false
	}
	return ok
}

func (r *csvReader) column(text string, at finding.Place) {
	key := text
	if text == "key" {
		key = idColumn
	}
	f, col := r.f.sub.byKey[key], column{name: key}
	switch {
	case strings.HasPrefix(text, "#"):
		col.name = unused // a column of the yard's own
	case text != "" && r.has(key):
		r.fs.add(at, shown(text), "keep one of the two columns", "the column stands twice in the head")
		col.name = unused
	case key == idColumn || text == "" || r.parent(key):
	case f == nil:
		g := r.guessColumn(text)
		r.fs.add(at, shown(text), g.hint, "%s", g.says)
		col = column{name: unused, meant: g.f}
	case !f.scalar():
		r.fs.add(at, f.key, "write it in the TOML record", "%s cannot stand in one cell of a table", f.key)
		col.name = unused
	default:
		col.f = f
	}
	r.columns = append(r.columns, col)
}

// unused stands for the name of a column that is not read: of one that has been told as a fault, and of the yard's own.
const unused = "\x00"

// guessColumn is what the head of a column was most likely meant to be.
func (r *csvReader) guessColumn(text string) guess {
	const what = "unknown column"
	near, ok := nearest(text, r.heads())
	if ok && strings.EqualFold(near, text) {
		return guess{"wrong letter case", "write " + near, r.f.sub.byKey[near]}
	}
	if g, ok := r.f.sub.spelled(text, what); ok {
		return g
	}
	hint := meant(text, r.heads())
	if !ok {
		hint += "; a column of your own, which is not read, begins with #"
	}
	return guess{what, hint, r.f.sub.byKey[near]}
}

// heads lists the columns that the table may have.
func (r *csvReader) heads() []string {
	all := []string{idColumn}
	for _, p := range r.parents {
		all = append(all, p.key)
	}
	for _, f := range r.f.sub.fields {
		if f.scalar() {
			all = append(all, f.key)
		}
	}
	return all
}

func (r *csvReader) parent(key string) bool {
	for _, p := range r.parents {
		if p.key == key {
			return true
		}
	}
	return false
}

func (r *csvReader) has(name string) bool {
	_, ok := r.where(name)
	return ok
}

func (r *csvReader) where(name string) (int, bool) {
	for i, col := range r.columns {
		if col.name == name {
			return i, true
		}
	}
	return 0, false
}

// keyCell gives the cell of a key column; where there is none, the place of the row.
func (r *csvReader) keyCell(cells []string, name string) (string, finding.Place) {
	i, ok := r.where(name)
	if !ok {
		return "", r.cellAt(0)
	}
	return strings.Clone(cells[i]), r.cellAt(i)
}
