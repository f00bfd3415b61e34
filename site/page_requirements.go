package site

import (
	"html/template"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/requirement"
)

// RequirementsPage shows every list that the hull must answer with how far it does, and what is open.
type RequirementsPage struct {
	Says     RequirementsSays
	Lists    []ListRow
	Open     []OpenRow
	Routes   []RouteRow
	Asked    []RouteRow // rows of which it is not known whether they hold
	Drafts   []DraftRow
	Findings []FindingRow
	Caution  template.HTML
}

// RequirementsSays is the answer; the cover says it too.
type RequirementsSays struct {
	Tally
	Lists   int
	Idle    int  // lists that do not apply
	Asked   int  // items that apply
	Gravest Link // the open item that blocks most
	Blocks  string
}

// ListRow is one list with how far it is answered.
type ListRow struct {
	Title    Link
	Work     string
	Yards    string // "the yard's own", and whether it replaces another
	Applies  bool
	Why      string
	Asked    int
	Met      int
	Short    int
	NotShown int
	Idle     int
	Standing Standing
	Basis    Basis
}

// OpenRow is one item that is not met.
type OpenRow struct {
	Item     Link
	List     Link
	Standing Standing
	Blocks   string
	Says     Prose
	Settle   string
	Missing  []string
}

// RouteRow is one row of a table of conformity modules that holds for the boat.
type RouteRow struct {
	About, Says string
	Modules     []ModuleWord
	Because     string
	Lacks       []string
	Source      string
	Basis       Basis
	Note        string
}

// ModuleWord is one module, and whether the record chose it.
type ModuleWord struct {
	Text   string
	Chosen bool
}

// DraftRow is one declaration or statement.
type DraftRow struct {
	Title  Link
	Signed bool
	Says   string
}

func (l *leaf) requirementsPage() (RequirementsPage, error) {
	r := &l.dossier.Requirements
	p := RequirementsPage{Says: l.requirementsSays(), Findings: l.findingsHere(""), Caution: l.press.notes["requirements"]}
	for i := range r.Lists {
		p.Lists = append(p.Lists, l.listRow(&r.Lists[i]))
	}
	for _, it := range r.Open {
		p.Open = append(p.Open, OpenRow{
			Item: l.itemLink(it), List: l.subjectAs("list "+it.List.Name, it.List.Title.V), Standing: standing(it.Standing), Blocks: requirement.Blocked(it.Record.Blocks.V),
			Says: Prose(closed(capital(it.Says))), Settle: closed(capital(it.Settle)), Missing: it.Lacks,
		})
	}
	for i := range r.Routes {
		row := routeRow(&r.Routes[i])
		if r.Routes[i].Known {
			p.Routes = append(p.Routes, row)
		} else {
			p.Asked = append(p.Asked, row)
		}
	}
	for i, d := range l.drafts() {
		ans, _ := r.Statement(d.word)
		p.Drafts = append(p.Drafts, DraftRow{l.section(l.sectionOf(requirementsPath).kids[len(r.Lists)+i]), ans.Standing == finding.Met, ans.Says})
	}
	return p, nil
}

func (l *leaf) requirementsSays() RequirementsSays {
	r := &l.dossier.Requirements
	s := RequirementsSays{Lists: len(r.Lists)}
	all := make([]finding.Standing, 0, len(r.Lists))
	for i := range r.Lists {
		of := &r.Lists[i]
		if !of.Applies {
			s.Idle++
			continue
		}
		all = append(all, of.Standing())
		s.Met, s.Short, s.NotShown = s.Met+of.Met, s.Short+of.Short, s.NotShown+of.NotShown
	}
	s.Asked = s.Met + s.Short + s.NotShown
	s.Checks, s.Standing = s.Asked, l.leftAt(requirementsPath, all)
	if len(r.Open) > 0 {
		s.Gravest, s.Blocks = l.itemLink(r.Open[0]), requirement.Blocks(r.Open[0].Record.Blocks.V)
	}
	return s
}

func (l *leaf) listRow(of *requirement.List) ListRow {
	rec := of.Record
	row := ListRow{
		Title: l.listLink(of), Work: cited(rec.Work.V, rec.Edition.V), Applies: of.Applies, Why: of.Why, Asked: of.Asked(), Met: of.Met, Short: of.Short, NotShown: of.NotShown,
		Idle: of.Idle, Standing: standing(of.Standing()), Basis: basis(finding.Basis(rec.Basis.V)), Yards: yards(rec.Yards, rec.Replaces),
	}
	return row
}

// yards says that a list is the yard's own.
func yards(own, replaces bool) string {
	switch {
	case replaces:
		return "the yard's own, in place of the one that comes with the program"
	case own:
		return "the yard's own"
	}
	return ""
}

func cited(work, edition string) string { return strings.TrimSuffix(work+", "+edition, ", ") }

func routeRow(r *requirement.Route) RouteRow {
	row := RouteRow{About: r.Record.About.V, Says: r.Record.Says.V, Lacks: r.Lacks, Source: cited(r.List.Work.V, r.Record.Clause.V), Basis: basis(r.Basis), Note: r.Record.Note.V, Because: factWords(r.Facts)}
	for _, m := range r.Record.Modules.V {
		row.Modules = append(row.Modules, ModuleWord{m, r.Record.About.V == "construction" && r.Chosen && m == r.Module})
	}
	return row
}

// factWords names the facts by which a condition was decided.
func factWords(all []*method.Shown) string {
	var parts []string
	for _, s := range all {
		if s.State != method.Missing {
			parts = append(parts, s.Name+" "+s.Text())
		}
	}
	return strings.Join(parts, ", ")
}
