package site

import (
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

// WorkingPart is the working of one evaluation of a sheet, with the checks that it decides.
type WorkingPart struct {
	ID      string
	Title   string
	Sheet   Link
	Work    string
	Checks  []CheckRow
	Scopes  []ScopeWorking // the scope that sees the others last
	Subject string
}

// ScopeWorking is the working of one scope.
type ScopeWorking struct {
	Name    string
	Before  Link // where it is shown already
	Working Working
}

// NotApplyingRow is a check that does not apply, and why.
type NotApplyingRow struct {
	Rule, Says, Source string
}

// InformationRow is a criterion that is shown and not judged.
type InformationRow struct {
	Condition Link
	Name      string
	Has, Asks string
	Unit      string
	Reached   string
	Source    string
}

// CrowdPart is a picture of everybody to one side.
type CrowdPart struct{ Picture Drawing }

// HeelingRow is the boat under one heeling moment.
type HeelingRow struct {
	Name      string
	Condition Link
	Moment    string
	Heel      Figure
	Least     Figure
}

// afloatChecks are those of the conditions and of stability.
func (b *book) afloatChecks() []finding.Check {
	return slices.Concat(b.dossier.Loading.Checks, b.dossier.Stability.Checks)
}

// workingParts shows every evaluation once, with all checks that rest on it; every check leads to its own.
func (l *leaf) workingParts() (out []WorkingPart, checks []CheckRow, err error) {
	checks = l.checkRows(l.afloatChecks())
	before := len(l.dossier.Loading.Checks)
	at, shown := map[*method.Working]int{}, map[*method.Working]string{}
	for i := range l.dossier.Stability.Shown {
		s := &l.dossier.Stability.Shown[i]
		if s.Working == nil {
			continue
		}
		k, known := at[s.Working]
		if !known {
			part, err := l.workingPart(s, len(out)+1, shown)
			if err != nil {
				return nil, nil, err
			}
			k = len(out)
			at[s.Working] = k
			out = append(out, part)
		}
		out[k].Checks = append(out[k].Checks, l.checkRows([]finding.Check{s.Check})...)
		for n, c := range l.dossier.Stability.Checks {
			if c.Rule == s.Check.Rule && c.Subject == s.Check.Subject && c.Asks == s.Check.Asks {
				checks[before+n].Working = Link{Text: "working", Href: "#" + out[k].ID}
			}
		}
	}
	return out, checks, nil
}

// workingPart shows one evaluation. Scopes above it that an earlier one has shown are only pointed at.
func (l *leaf) workingPart(s *stability.Shown, n int, shown map[*method.Working]string) (WorkingPart, error) {
	id := "w" + wordsOfInt(n)
	p := WorkingPart{ID: id}
	if c := l.leverOf(s.Condition); c != nil {
		p.Subject = c.Loading.Title
	}
	if sheet := s.Working.Sheet; sheet != nil {
		p.Title, p.Sheet, p.Work = sheet.Title, l.sheetLink(sheet), workOf(sheet)
	}
	for w := s.Working; w != nil; w = w.Above {
		scope := ScopeWorking{}
		if w.Scope != nil {
			scope.Name = w.Scope.Name
		}
		if before, known := shown[w]; known {
			scope.Before = Link{Text: "shown above", Href: "#" + before}
			p.Scopes = append([]ScopeWorking{scope}, p.Scopes...)
			continue
		}
		var err error
		if scope.Working, err = l.working(w, id+"-"+wordsOfInt(len(p.Scopes)+1)+"-", s.Symbol); err != nil {
			return p, err
		}
		scope.Working.Of = wordsOfInt(n) + ", " + scope.Name
		shown[w] = id
		p.Scopes = append([]ScopeWorking{scope}, p.Scopes...)
	}
	return p, nil
}

func (l *leaf) informationRows() []InformationRow {
	var out []InformationRow
	for _, i := range l.dossier.Stability.Information {
		reached := "not reached"
		if i.Reached {
			reached = "reached"
		}
		n := 3
		if i.Unit == "°" {
			n = 1
		}
		title := i.Condition
		if c := l.leverOf(i.Condition); c != nil {
			title = c.Loading.Title
		}
		out = append(out, InformationRow{l.subjectAs("condition "+i.Condition, title), i.Name, unit.Text(i.Has, n), unit.Text(i.Asks, n), i.Unit, reached, i.Source})
	}
	return out
}

// crowdParts gives every heeling moment, and a picture of each heel that is another than those before.
func (l *leaf) crowdParts() (pictures []CrowdPart, rows []HeelingRow) {
	drawn := map[string]bool{}
	for i := range l.dossier.Stability.Heelings {
		h := &l.dossier.Stability.Heelings[i]
		title := h.Condition
		if c := l.leverOf(h.Condition); c != nil {
			title = c.Loading.Title
		}
		rows = append(rows, HeelingRow{h.Name, l.subjectAs("condition "+h.Condition, title), unit.Text(h.Moment, 0),
			has(h.Rests, unit.Text(h.Heel, 1), "does not come to rest before water comes in"), has(h.Rests && !math.IsInf(h.Least, 0), unit.Text(h.Least, 3), "not shown")})
		key := h.Condition + " " + unit.Text(h.Heel, 0)
		if h.Rests && ofPeople(h.Name) && !drawn[key] && len(pictures) < 2 {
			drawn[key] = true
			pictures = append(pictures, CrowdPart{l.crowdPicture(h)})
		}
	}
	return pictures, rows
}
