package site

import "strings"

// Figures of one column that have different numbers of decimals are filled up behind with spaces as wide as a figure and as
// the decimal mark, so that the marks stand under each other. Sorting and reading of tables trim such spaces.
const (
	figureSpace = "\u2007"
	pointSpace  = "\u2008"
)

// decimalsOf counts the decimals of a number as a page writes it, and reports whether it is one.
func decimalsOf(text string) (n int, ok bool) {
	whole, part, has := strings.Cut(strings.TrimLeft(text, "+−±"), ".")
	for _, digits := range []string{whole, part} {
		for _, r := range digits {
			if (r < '0' || r > '9') && r != '\u00a0' && r != '\u202f' && r != ' ' {
				return 0, false
			}
		}
	}
	if whole == "" || has && part == "" {
		return 0, false
	}
	return len(part), true
}

// padding gives what a number needs behind it in a column whose longest has most decimals.
func padding(text string, most int) string {
	n, ok := decimalsOf(text)
	if !ok || n >= most {
		return ""
	}
	if n == 0 {
		return pointSpace + strings.Repeat(figureSpace, most)
	}
	return strings.Repeat(figureSpace, most-n)
}

// align fills up the texts of a column. What is no number stays as it is.
func align(column []*string) {
	most := 0
	for _, text := range column {
		if n, ok := decimalsOf(*text); ok {
			most = max(most, n)
		}
	}
	for _, text := range column {
		*text += padding(*text, most)
	}
}

// alignRows fills up columns of rows; of gives the texts of a row that stand in a column of their own each.
func alignRows[T any](rows []T, of func(row *T) []*string) {
	if len(rows) == 0 {
		return
	}
	for c := range of(&rows[0]) {
		column := make([]*string, len(rows))
		for i := range rows {
			column[i] = of(&rows[i])[c]
		}
		align(column)
	}
}
