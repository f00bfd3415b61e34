package site

import (
	"html/template"

	"hullfile/site/results"
)

// Paths of the pages for whoever doubts the file, and for the next program.
const (
	provingPath = "proving.html"
	tablesPath  = "tables.html"
	schemaName  = "results.schema.json"
)

// ProvingPage says how to hold the file against itself, its seals and its records, with plain tools.
type ProvingPage struct {
	Number string
	Text   template.HTML
	Cover  Link // where the root is printed
}

func (l *leaf) provingPage() (ProvingPage, error) {
	return ProvingPage{Number: l.hull.Number, Text: l.press.notes["proving"], Cover: Link{Text: "cover", Href: l.to(coverName, "")}}, nil
}

// TablesPage lists what programs and spreadsheets can read.
type TablesPage struct {
	Results Link
	Schema  Link
	Form    int
	Tables  []CopyRow
}

// CopyRow is one table, as a copy for other programs.
type CopyRow struct {
	Link    Link
	Says    string
	Rows    int
	Columns []string
}

func (l *leaf) tablesPage() (TablesPage, error) {
	p := TablesPage{Results: Link{Text: results.Name, Href: l.to(results.Name, "")}, Schema: Link{Text: schemaName, Href: l.to(schemaName, "")}, Form: results.Form}
	for _, t := range l.csv {
		p.Tables = append(p.Tables, CopyRow{Link{Text: t.name + ".csv", Href: l.to(t.path(), "")}, t.says, t.rows, t.head})
	}
	return p, nil
}
