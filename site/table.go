package site

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"hullfile/site/results"
)

// tablesFolder holds the main tables as CSV.
const tablesFolder = "tables/"

// csvTable is one table as it is handed to a spreadsheet or a program: heads as record keys, with the unit at their end.
type csvTable struct {
	name string // without tables/ and .csv
	says string // what it holds, in words
	head []string
	body []byte // as it is written
	lent bool   // it is made in a room of the press, because it is long
	rows int
}

func (t *csvTable) path() string { return tablesFolder + t.name + ".csv" }

// add takes a row of texts and numbers; a number that is none is left empty.
func (t *csvTable) add(cells ...any) {
	t.begin()
	for i, c := range cells {
		if i > 0 {
			t.body = append(t.body, ',')
		}
		switch c := c.(type) {
		case string:
			t.body = appendCell(t.body, c)
		case int:
			t.body = strconv.AppendInt(t.body, int64(c), 10)
		case bool:
			t.body = strconv.AppendBool(t.body, c)
		case float64:
			if !math.IsNaN(c) && !math.IsInf(c, 0) {
				t.body = results.AppendShort(t.body, c)
			}
		default:
			panic("site: a cell of a table is text or a number")
		}
	}
	t.body = append(t.body, '\n')
	t.rows++
}

// appendCell writes a text as a cell. It is the only place that does so, because every cell must be defused. A cell in
// which a sign of CSV stands, or that begins with a blank, is put into quotes (RFC 4180, 2.5 to 2.7).
func appendCell(out []byte, cell string) []byte {
	if plainCell(cell) {
		return append(out, cell...)
	}
	cell = defused(cell)
	if !strings.ContainsAny(cell, ",\"") && cell != `\.` && !unicode.IsSpace(firstRune(cell)) {
		return append(out, cell...)
	}
	return append(append(append(out, '"'), strings.ReplaceAll(cell, `"`, `""`)...), '"')
}

// plainCell reports a cell that is written as it is, as most are: it begins with a letter or digit of ASCII, and all in it is ASCII
// without a control, a comma or a quotation mark.
func plainCell(cell string) bool {
	for i := range len(cell) {
		if c := cell[i]; c < ' ' || c > '~' || c == ',' || c == '"' {
			return false
		}
	}
	return cell != "" && (cell[0] >= '0' && cell[0] <= '9' || cell[0] >= 'A' && cell[0] <= 'Z' || cell[0] >= 'a' && cell[0] <= 'z')
}

// text gives the table as it is written.
func (t *csvTable) text() []byte {
	t.begin()
	return t.body
}

// begin writes the heads, where nothing is written yet.
func (t *csvTable) begin() {
	if len(t.body) > 0 {
		return
	}
	for i, name := range t.head {
		if i > 0 {
			t.body = append(t.body, ',')
		}
		t.body = appendCell(t.body, name)
	}
	t.body = append(t.body, '\n')
}

// defused gives a cell that no spreadsheet runs: text that begins like a formula gets an apostrophe before it, as people
// write it there themselves. Numbers stay as they are. A line break within a cell becomes a blank, so that a row is a line.
func defused(cell string) string {
	cell = strings.Map(func(r rune) rune {
		if r == '\n' || r == '\r' || r == '\t' {
			return ' '
		}
		if r < ' ' || r == 0x7f {
			return -1
		}
		return r
	}, cell)
	begin := strings.TrimLeft(cell, " \u00a0")
	if begin == "" || !strings.ContainsRune("=+-@\uff1d\uff0b\uff0d\uff20|%", firstRune(begin)) || isPlainNumber(cell) {
		return cell
	}
	return "'" + cell
}

func firstRune(s string) rune {
	for _, r := range s {
		return r
	}
	return 0
}

// isPlainNumber reports whether a cell is a number as we write it: digits, a point, a sign, an exponent.
func isPlainNumber(cell string) bool {
	if strings.Trim(cell, "0123456789.+-e") != "" {
		return false
	}
	_, err := strconv.ParseFloat(cell, 64)
	return err == nil
}
