package site

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// tablesFolder holds the main tables as CSV.
const tablesFolder = "tables/"

// csvTable is one table as it is handed to a spreadsheet or a program: heads as record keys, with the unit at their end.
type csvTable struct {
	name string // without tables/ and .csv
	says string // what it holds, in words
	head []string
	rows [][]string
}

func (t *csvTable) path() string { return tablesFolder + t.name + ".csv" }

// add takes a row of texts and numbers; a number that is none is left empty.
func (t *csvTable) add(cells ...any) {
	row := make([]string, len(cells))
	for i, c := range cells {
		switch c := c.(type) {
		case string:
			row[i] = c
		case int:
			row[i] = strconv.Itoa(c)
		case bool:
			row[i] = strconv.FormatBool(c)
		case float64:
			if !math.IsNaN(c) && !math.IsInf(c, 0) {
				row[i] = strconv.FormatFloat(full(c).value(), 'g', -1, 64)
			}
		default:
			panic("site: a cell of a table is text or a number")
		}
	}
	t.rows = append(t.rows, row)
}

// text writes the table. It is the only place that writes CSV, because every cell must be defused.
func (t *csvTable) text() ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	if err := w.Write(t.head); err != nil {
		return nil, err
	}
	safe := make([]string, len(t.head))
	for _, row := range t.rows {
		for i, cell := range row {
			safe[i] = defused(cell)
		}
		if err := w.Write(safe); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}

// defused gives a cell that no spreadsheet runs: text that begins like a formula gets an apostrophe before it, as people
// write it there themselves. Numbers stay as they are. A line break within a cell becomes a blank, so that a row is a line.
func defused(cell string) string {
	if strings.IndexFunc(cell, unicode.IsControl) < 0 && cell != "" && (cell[0] >= '0' && cell[0] <= '9' || cell[0] >= 'A' && cell[0] <= 'Z' || cell[0] >= 'a' && cell[0] <= 'z') {
		return cell // as most are
	}
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
