package site

import (
	"html/template"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// fromPath is the page that says of every worked value where it came from.
const fromPath = "from.html"

// origin is one worked value, noted while the page that works it is made.
type origin struct {
	at     *section
	anchor string
	name   string
	value  Figure
	unit   string
	basis  finding.Basis
	clause string
	sheet  *method.Sheet
	places []finding.Place
	state  method.State
}

// FromPage is the way back from every worked value: where it is worked, by what, and from which lines.
type FromPage struct {
	Values  []OriginRow
	Lines   int
	Caution template.HTML
}

// OriginRow is one value.
type OriginRow struct {
	Name   string
	Of     Link
	Value  Figure
	Unit   string
	Way    Link
	Sheet  Link
	Clause string
	Basis  Basis
	Places []Link
	More   int // lines that are not listed
	Bad    string
}

// shownPlaces is how many record lines stand beside a value; its working has them all.
const shownPlaces = 8

// note keeps where a step of a working stands.
func (l *leaf) note(w *method.Working, s *method.Shown, anchor string) {
	if s.State == method.NotSet || l.isRecord == nil {
		return
	}
	l.origins = append(l.origins, origin{
		at: l.at, anchor: anchor, name: s.Name, value: shown(s), unit: s.Unit, basis: finding.Softer(s.Basis, s.Rests), clause: s.Clause, sheet: w.Sheet, places: restsOn(w, s), state: s.State,
	})
}

// restsOn gives the record lines under a step, those of what it was reckoned from included.
func restsOn(w *method.Working, s *method.Shown) []finding.Place {
	var out []finding.Place
	seen := map[*method.Shown]bool{}
	var down func(s *method.Shown)
	down = func(s *method.Shown) {
		if s == nil || seen[s] {
			return
		}
		seen[s] = true
		if s.Place.Known() {
			out = append(out, s.Place)
		}
		for _, symbol := range s.Uses {
			if under, ok := w.Get(symbol); ok {
				down(under)
			}
		}
	}
	down(s)
	return out
}

func (l *leaf) fromPage() (FromPage, error) {
	p := FromPage{Caution: l.press.notes["from"]}
	for i := range l.origins {
		o := &l.origins[i]
		row := OriginRow{
			Name: o.name, Of: l.section(o.at), Value: o.value, Unit: o.unit, Way: Link{Text: "working", Href: l.to(o.at.path, o.anchor), To: o.at.no}, Clause: o.clause, Basis: basis(o.basis), Places: l.places(o.places),
		}
		if o.sheet != nil {
			row.Sheet = l.sheetLink(o.sheet)
		}
		if len(row.Places) > shownPlaces {
			row.More, row.Places = len(row.Places)-shownPlaces, row.Places[:shownPlaces]
		}
		if o.state != method.Sound {
			row.Bad = string(o.state)
		}
		p.Values = append(p.Values, row)
	}
	for _, lines := range l.cited {
		p.Lines += len(lines)
	}
	return p, nil
}
