package site

import (
	"hullfile/engine/calibration"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// WeighingPart is one weighing reduced, on the weight page.
type WeighingPart struct {
	ID       string
	Key      string
	Date     string
	Standing Standing
	Judged   bool
	Facts    []Fact
	Picture  Drawing
	Points   []PointRow
	Mass     Figure
	Why      string // why there is no mass, or no centre fore and aft
	Results  []WeighedRow
	Working  []string
	Checks   []CheckRow
	Note     string
}

// PointRow is one load cell.
type PointRow struct {
	Key     string
	X       Figure
	Y       Figure
	Reading Figure
	Tare    Figure
	Net     string
	Place   Link
}

// WeighedRow holds what was weighed against what the items add up to.
type WeighedRow struct {
	Name     string
	Unit     string
	Weighed  Figure
	Reckoned Figure
	Diff     Figure
	Allowed  Figure
}

func (l *leaf) weighingPart(w *weight.Weighing) WeighingPart {
	rec := w.Record
	subject := "weighing " + rec.ID
	checks := checksOf(l.dossier.Weight.Checks, subject)
	for _, c := range checksOf(l.dossier.Checks, subject) {
		if c.Rule == calibration.Rule { // a mass is as good as the scales
			checks = append(checks, c)
		}
	}
	p := WeighingPart{
		ID: l.anchor(subject), Key: rec.ID, Date: rec.Date.V.String(), Facts: l.fieldsWritten(rec, "note", "allowance_mass_percent", "allowance_centre_mm"),
		Picture: l.weighingPicture(w), Mass: has(w.HasMass, mass(float64(w.Mass)), w.Why), Why: w.Why, Working: w.Working, Note: rec.Note.V,
		Checks: l.checkRows(checks),
	}
	l.linkFacts(p.Facts)
	p.Standing, p.Judged = standingOf(checks, subject)
	for _, pt := range w.Points {
		p.Points = append(p.Points, PointRow{
			Key: pt.Record.ID, X: measured(pt.Record.X, "m"), Y: measured(pt.Record.Y, "m"), Reading: measured(pt.Record.Reading, "kg"),
			Tare: measured(pt.Record.Tare, "kg"), Net: mass(float64(pt.Net)), Place: l.place(pt.Record.At),
		})
	}
	p.Results = weighedRows(w)
	return p
}

func weighedRows(w *weight.Weighing) []WeighedRow {
	there := w.Reckoned.Items > 0 && w.HasMass
	rows := []WeighedRow{{
		Name: "mass", Unit: "kg", Weighed: has(w.HasMass, mass(float64(w.Mass)), "not shown"), Reckoned: has(w.Reckoned.Items > 0, mass(float64(w.Reckoned.Mass)), "no items"),
		Diff: has(there, signed(float64(w.DiffMass), 0), "not shown"), Allowed: has(w.HasAllowed, "± "+unit.Plain(w.Allowed)+" %", "not recorded"),
	}}
	both := w.HasX && w.Reckoned.HasX
	rows = append(rows, WeighedRow{
		Name: "centre, forward of the transom", Unit: "m", Weighed: centre(w.HasX, w.X), Reckoned: centre(w.Reckoned.HasX, w.Reckoned.X),
		Diff: has(both, signed(float64(w.DiffX)/1000, 3), "not shown"), Allowed: has(w.HasAllowX, "± "+unit.Text(w.AllowedX/1000, 3)+" m", "not recorded"),
	})
	return append(rows, WeighedRow{
		Name: "centre, to starboard", Unit: "m", Weighed: centre(w.HasY, w.Y), Reckoned: centre(w.Reckoned.HasY, w.Reckoned.Y),
		Diff: has(w.HasY && w.Reckoned.HasY, signed(float64(w.Y-w.Reckoned.Y), 3), "not shown"), Allowed: Figure{Why: "none asked"},
	})
}

// linkFacts turns facts that name a person, an instrument or a document into ways to them.
func (l *leaf) linkFacts(facts []Fact) {
	for i := range facts {
		if facts[i].names != "" {
			facts[i].Link = l.subjectAs(facts[i].names, facts[i].Value.Text)
		}
	}
}

// nameOf gives the name that a person or an instrument goes by, or the key itself.
func (l *leaf) nameOf(kind, key string) string {
	switch kind {
	case "person":
		for _, p := range l.dossier.Builder.People {
			if p.ID == key && p.Name.Set {
				return p.Name.V
			}
		}
	case "instrument":
		for _, i := range l.dossier.Builder.Instruments {
			if i.ID == key && i.Name.Set {
				return i.Name.V
			}
		}
	}
	return key
}
