package site

import "hullfile/engine/held"

// tableNames says what each table of limits is for.
var tableNames = map[string]string{
	"limits/certificates.toml":     "certificates, corrosion tests, bends",
	"limits/fillets.toml":          "strength and factors of fillets, heat",
	"limits/iso-10042.toml":        "imperfections of welds",
	"limits/procedure-ranges.toml": "ranges of procedure tests",
	"limits/welder-ranges.toml":    "ranges of welders' tests",
}

func (l *leaf) limitTable(t held.Table) LimitTableRow {
	row := LimitTableRow{Name: tableNames[t.File], Link: Link{Text: or(tableNames[t.File], t.File), Href: l.to(l.limitsAt[t.File], ""), To: l.numberOf(l.limitsAt[t.File])}, Rows: "of the program", Mark: t.Rows, By: Figure{Why: "nobody yet"}, Edition: Figure{Why: "none"}, On: Figure{Why: "none"}}
	if t.Own {
		row.Rows = "the yard's own, " + t.File
	}
	switch {
	case t.Stale != "":
		row.By.Why = "nobody; " + t.By + " held rows with the mark " + t.Stale
	case t.Holds():
		row.By, row.Edition, row.On = Figure{Text: t.By}, Figure{Text: t.Edition}, Figure{Text: t.On}
	}
	return row
}

// limitRowsAt leads to the rows of a table of limits.
func (l *leaf) limitRowsAt(file, text string) Link {
	at := l.limitsAt[file]
	if at == "" {
		return Link{Text: text}
	}
	return Link{Text: text, Href: l.to(at, ""), To: l.numberOf(at)}
}
