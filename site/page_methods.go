package site

import (
	"html/template"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// MethodsPage lists the sheets by which this hull was reckoned.
type MethodsPage struct {
	Sheets  []SheetRow
	Tables  []LimitTableRow // limits for welds and metal
	Caution template.HTML
}

// SheetRow is one sheet in the list.
type SheetRow struct {
	Link     Link
	Work     string
	Edition  string
	Standing string
	Steps    int
	Soft     int // formulas that are recalled or practice
	Yards    bool
	Replaces bool
}

// SheetPage is one sheet with its formulas.
type SheetPage struct {
	Title    string
	File     string
	Work     string
	Edition  string
	Standing string
	About    string
	Yards    bool
	Replaces bool
	Steps    int
	Bases    []BasisCount
	Scopes   []ScopePart
	Tables   []TablePart
}

// BasisCount is how many formulas are known in one way.
type BasisCount struct {
	Basis Basis
	N     int
}

// ScopePart is one level of a sheet: the craft, a panel.
type ScopePart struct {
	Name   string
	Above  string
	Inputs []SheetInput
	Steps  []SheetStep
}

// SheetInput is a value that a scope asks for.
type SheetInput struct {
	Symbol template.HTML
	Name   string
	Unit   string
	From   string
	Least  Figure
	Most   Figure
	Words  []string
	Note   string
}

// SheetStep is one formula of a sheet.
type SheetStep struct {
	ID      string
	Name    string
	Unit    string
	Formula template.HTML
	When    template.HTML
	Range   template.HTML
	Clause  string
	Basis   Basis
	Note    string
}

// TablePart is a table of a sheet.
type TablePart struct {
	Name   string
	Title  string
	Clause string
	Basis  Basis
	Step   bool
	Rows   []TableRow
}

// TableRow is one line of such a table.
type TableRow struct {
	At    string
	Value string
}

func (l *leaf) methodsPage() (MethodsPage, error) {
	p := MethodsPage{Caution: l.press.notes["methods"]}
	for _, s := range l.sheets {
		row := SheetRow{Link: l.sheetLink(s), Work: s.Work, Edition: s.Edition, Standing: s.Standing, Yards: s.Yards, Replaces: s.Replaces}
		for _, b := range countBases(s) {
			row.Steps += b.N
			if b.Basis.Soft {
				row.Soft += b.N
			}
		}
		p.Sheets = append(p.Sheets, row)
	}
	for _, t := range l.dossier.Tables {
		p.Tables = append(p.Tables, l.limitTable(t))
	}
	return p, nil
}

func (l *leaf) sheetPage(s *method.Sheet) (SheetPage, error) {
	p := SheetPage{
		Title: s.Title, File: s.Name, Work: s.Work, Edition: s.Edition, Standing: s.Standing, About: s.About, Yards: s.Yards, Replaces: s.Replaces, Bases: countBases(s),
	}
	ids := slugs{}
	for _, scope := range s.Scopes {
		p.Steps += len(scope.Steps)
		p.Scopes = append(p.Scopes, scopePart(scope, ids))
	}
	for _, t := range s.Tables {
		p.Tables = append(p.Tables, tablePart(t))
	}
	return p, nil
}

func countBases(s *method.Sheet) []BasisCount {
	n := map[finding.Basis]int{}
	for _, scope := range s.Scopes {
		for _, step := range scope.Steps {
			n[step.Basis]++
		}
	}
	var out []BasisCount
	for _, b := range finding.Bases() {
		if n[b] > 0 {
			out = append(out, BasisCount{basis(b), n[b]})
		}
	}
	return out
}

func scopePart(scope *method.Scope, ids slugs) ScopePart {
	part := ScopePart{Name: scope.Name, Above: scope.Above}
	for _, in := range scope.Inputs {
		part.Inputs = append(part.Inputs, SheetInput{
			Symbol: symbolMath(in.Symbol), Name: in.Name, Unit: in.Unit, From: in.From, Least: bound(in.Least), Most: bound(in.Most), Words: in.Words, Note: in.Note,
		})
	}
	for _, s := range scope.Steps {
		part.Steps = append(part.Steps, SheetStep{
			ID: ids.take(scope.Name + "-" + s.Symbol), Name: s.Name, Unit: s.Unit, Formula: definitionMath(s.Symbol, s.Formula), When: formulaMath(s.When),
			Range: formulaMath(s.Range), Clause: s.Clause, Basis: basis(s.Basis), Note: s.Note,
		})
	}
	return part
}

func bound(v *float64) Figure {
	if v == nil {
		return Figure{Why: "no limit stated"}
	}
	return Figure{Text: unit.Plain(*v)}
}

func tablePart(t *method.Table) TablePart {
	part := TablePart{Name: t.Name, Title: t.Title, Clause: t.Clause, Basis: basis(t.Basis), Step: t.Step}
	for i, y := range t.Y {
		row := TableRow{Value: strconv.FormatFloat(y, 'g', -1, 64)}
		switch {
		case i < len(t.Words):
			row.At = t.Words[i]
		case i < len(t.X):
			row.At = strconv.FormatFloat(t.X[i], 'g', -1, 64)
		}
		part.Rows = append(part.Rows, row)
	}
	return part
}
