package site

import (
	"strings"

	"hullfile/engine/finding"
)

// CheckHead is what several checks ask alike, and how they stand; it is said once above them.
type CheckHead struct {
	Asks, Source string
	Words        string // "10 met, 1 short"
}

// grouped brings checks that ask the same together, where the first of them stands, and says above them what that is. Where each
// asks for something else the rows stay as they are.
func grouped(rows []CheckRow) []CheckRow {
	var groups [][]int // places of rows
	at := make(map[CheckHead]int, len(rows))
	for i := range rows {
		key := CheckHead{Asks: rows[i].Asks, Source: rows[i].Source}
		n, known := at[key]
		if !known {
			n, at[key] = len(groups), len(groups)
			groups = append(groups, nil)
		}
		groups[n] = append(groups[n], i)
	}
	if len(groups) == len(rows) {
		return rows
	}
	out := make([]CheckRow, 0, len(rows))
	for _, places := range groups {
		begun := len(out)
		for _, i := range places {
			out = append(out, rows[i])
		}
		group := out[begun:]
		group[0].Head = CheckHead{group[0].Asks, group[0].Source, standingsOf(group)}
		for i := range group {
			group[i].Asks = ""
		}
	}
	return out
}

// standingsOf counts how checks stand, the gravest first.
func standingsOf(rows []CheckRow) string {
	var parts []string
	for _, s := range []finding.Standing{finding.Short, finding.NotShown, finding.Met} {
		word, n := standing(s).Word, 0
		for i := range rows {
			if rows[i].Standing.Word == word {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, wordsOfInt(n)+" "+word)
		}
	}
	return strings.Join(parts, ", ")
}

// shortHash cuts a SHA-256 to its beginning, which tells two apart; all of it stands on the page of documents. Other words stay.
func shortHash(text string) string {
	const digits, enough = 64, 12
	if len(text) != digits || strings.Trim(text, "0123456789abcdef") != "" {
		return text
	}
	return text[:enough] + "…"
}
