package site

import (
	"math"
	"strings"

	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

// AfloatTests are the tests made on the water.
type AfloatTests struct {
	Inclinings []InclinePart
	Freeboards []FreeboardPart
	Others     []TestPart // offset-load, swamped, float to list
}

// InclinePart is one inclining test reduced.
type InclinePart struct {
	ID, Key, Date string
	Checks        []CheckRow
	Findings      []FindingRow
	Picture       Drawing
	Shifts        []ShiftRow
	Results       []Fact
	Facts         []Fact
	Working       Working
	Note, Why     string
}

// ShiftRow is one shift of weight.
type ShiftRow struct {
	Key      string
	Weight   string
	Distance string
	Moment   string
	Tangent  Figure
	Heel     Figure
	Place    Link
}

// FreeboardPart is one set of freeboards measured afloat.
type FreeboardPart struct {
	ID, Key, Date string
	Checks        []CheckRow
	Findings      []FindingRow
	Points        []FreeboardRow
	Results       []Fact
	Facts         []Fact
	Why           string
}

// FreeboardRow is one freeboard.
type FreeboardRow struct {
	Key       string
	X, Y      string
	Freeboard string // mm
	Off       Figure // mm off the plane through all
	Place     Link
}

// TestPart is a test of which the record is the result.
type TestPart struct {
	ID, Key, Kind string
	Checks        []CheckRow
	Findings      []FindingRow
	Facts         []Fact
}

// FlotationPart is what keeps the swamped boat up.
type FlotationPart struct {
	Pieces  []PieceRow
	Results []Fact
	Why     string
}

// PieceRow is one piece of foam or one chamber.
type PieceRow struct {
	ID, Key, Name string
	Kind          string
	Litres        string
	Counts        string
	Place         Link
}

// WhatIfPart is how the checks fare over a range of one quantity.
type WhatIfPart struct {
	Name, Unit string
	Base       string
	Heads      []WhatHead
	Rows       []WhatIfRow
}

// WhatHead is one check at the head of such a table.
type WhatHead struct{ Name, Unit, Turns string }

// WhatIfRow is one value and what is left of every check.
type WhatIfRow struct {
	Value string
	Here  bool // the boat as it is
	Cells []WhatCell
}

// WhatCell is what is left; below nought the check is short.
type WhatCell struct {
	Left  string
	Short bool
}

func (l *leaf) afloatTests() (AfloatTests, error) {
	var t AfloatTests
	s := &l.dossier.Stability
	for i := range s.Inclinings {
		part, err := l.inclinePart(&s.Inclinings[i], i+1)
		if err != nil {
			return t, err
		}
		t.Inclinings = append(t.Inclinings, part)
	}
	for i := range s.Freeboards {
		t.Freeboards = append(t.Freeboards, l.freeboardPart(&s.Freeboards[i]))
	}
	h := l.hull
	for i := range h.OffsetTests {
		t.Others = append(t.Others, l.testPart("offset_test", "Offset-load test", h.OffsetTests[i].ID, &h.OffsetTests[i]))
	}
	for i := range h.SwampTests {
		t.Others = append(t.Others, l.testPart("swamp_test", "Swamped test", h.SwampTests[i].ID, &h.SwampTests[i]))
	}
	for i := range h.ListTests {
		t.Others = append(t.Others, l.testPart("list_test", "Float-to-list test", h.ListTests[i].ID, &h.ListTests[i]))
	}
	return t, nil
}

func (l *leaf) testPart(word, kind, key string, rec any) TestPart {
	subject := word + " " + key
	p := TestPart{ID: l.anchor(subject), Key: key, Kind: kind, Checks: l.checkRows(checksOf(l.afloatChecks(), subject)), Facts: l.fieldsWritten(rec)}
	p.Findings = l.findingsAt(p.ID)
	l.linkFacts(p.Facts)
	return p
}

// findingsAt gives the findings at an anchor of this page, none where there is no anchor.
func (l *leaf) findingsAt(anchor string) []FindingRow {
	if anchor == "" {
		return nil
	}
	return l.findingsHere(anchor)
}

func (l *leaf) inclinePart(t *stability.Inclining, n int) (InclinePart, error) {
	subject := "heel_test " + t.Record.ID
	p := InclinePart{ID: l.anchor(subject), Key: t.Record.ID, Date: t.Record.Date.V.String(), Checks: l.checkRows(checksOf(l.afloatChecks(), subject)),
		Picture: l.shiftsPicture(t), Facts: l.fieldsWritten(t.Record, "note", "shift"), Note: t.Record.Note.V, Why: t.Why}
	p.Findings = l.findingsAt(p.ID)
	l.linkFacts(p.Facts)
	for _, s := range t.Shifts {
		p.Shifts = append(p.Shifts, ShiftRow{s.Record.ID, unit.Text(s.Record.Weight.V, 1), unit.Text(s.Record.Distance.V, 3), unit.Text(s.Moment, 2),
			has(s.Known, unit.Text(s.Tangent, 5), "no heel on record"), has(s.Known, unit.Text(s.Heel, 2), "no heel on record"), l.place(s.Record.At)})
	}
	there := t.Why == ""
	p.Results = []Fact{
		fact("mass on the day", t.HasMass, t.Mass, 0, "kg"), fact("metacentric height, measured", there, t.GM, 3, "m"),
		fact("95 % interval of it, ±", there && t.GMWithin > 0, t.GMWithin, 3, "m"), fact("centre above the base line, measured", there, t.KG, 3, "m"),
		fact("centre above the base line, reckoned", t.HasReckon, t.Reckoned, 3, "m"),
	}
	var err error
	p.Working, err = l.working(t.Working, "i"+wordsOfInt(n)+"-", "KG")
	p.Working.Of = "inclining test " + p.Key
	return p, err
}

func fact(name string, ok bool, v float64, n int, sign string) Fact {
	if !ok || math.IsNaN(v) {
		return Fact{Name: name, Value: Figure{Why: "not shown"}}
	}
	return Fact{Name: name, Value: Figure{Text: unit.Text(v, n)}, Unit: sign}
}

func (l *leaf) freeboardPart(t *stability.Freeboards) FreeboardPart {
	subject := "freeboard " + t.Record.ID
	p := FreeboardPart{ID: l.anchor(subject), Key: t.Record.ID, Date: t.Record.Date.V.String(), Checks: l.checkRows(checksOf(l.afloatChecks(), subject)),
		Facts: l.fieldsWritten(t.Record, "point"), Why: t.Why}
	p.Findings = l.findingsAt(p.ID)
	l.linkFacts(p.Facts)
	for i := range t.Record.Points {
		pt := &t.Record.Points[i]
		off := Figure{Why: "not shown"}
		if t.Water.OK && i < len(t.Water.Off) {
			off = Figure{Text: signed(t.Water.Off[i]*1000, 0)}
		}
		p.Points = append(p.Points, FreeboardRow{pt.ID, unit.Text(pt.X.V, 2), unit.Text(pt.Y.V, 2), unit.Text(pt.Freeboard.V, 0), off, l.place(pt.At)})
	}
	p.Results = []Fact{fact("displacement by freeboards", t.OK, t.Mass, 0, "kg"), fact("centre of buoyancy forward", t.OK, t.LCB, 3, "m"), fact("items on board that day", t.Reckoned > 0, t.Reckoned, 0, "kg")}
	return p
}

func (l *leaf) flotationPart() FlotationPart {
	f := &l.dossier.Stability.Flotation
	p := FlotationPart{Why: f.Why}
	for _, one := range f.Pieces {
		counts := "counts"
		if !one.Counts {
			counts = "does not count: " + one.Why
		}
		p.Pieces = append(p.Pieces, PieceRow{l.anchor("buoyancy " + one.Record.ID), one.Record.ID, one.Record.Name.V, one.Record.Kind.V, unit.Text(one.Litres, 0), counts, l.place(one.Record.At)})
	}
	if len(f.Pieces) == 0 {
		return p
	}
	s := &f.Swamped
	p.Results = []Fact{fact("fitted, what counts", true, f.Fitted, 0, "l"),
		fact("carried by it, swamped", s.Lift > 0, s.Lift, 0, "kg"), fact("weight under water", s.Burden > 0, s.Burden, 0, "kg"),
		fact("heel, swamped", s.Floats, s.Heel, 1, "°"), fact("trim, swamped, bow up", s.Floats, s.Trim, 1, "°"), fact("gunwale above the water", s.Floats, s.Above, 0, "%")}
	return p
}

func (l *leaf) whatIfParts() []WhatIfPart {
	var out []WhatIfPart
	for i := range l.dossier.Stability.WhatIf {
		out = append(out, whatIfPart(&l.dossier.Stability.WhatIf[i]))
	}
	return out
}

func whatIfPart(w *stability.WhatIf) WhatIfPart {
	p := WhatIfPart{Name: w.Name, Unit: w.Unit, Base: unit.Text(w.Base, 0)}
	for _, t := range w.Turns {
		p.Heads = append(p.Heads, WhatHead{t.Name, t.Unit, turnWords(t, w.Unit)})
	}
	for _, r := range w.Rows {
		row := WhatIfRow{Value: unit.Text(r.Value, 0), Here: math.Abs(r.Value-w.Base) < 1e-6}
		for k, m := range r.Margins {
			angle := k < len(w.Turns) && w.Turns[k].Unit == "°"
			n := 3
			if angle {
				n = 1
			}
			cell := WhatCell{Left: signed(m, n), Short: m < 0}
			if angle && m <= -90 || math.IsNaN(m) { // see stability: no heel balances the moment
				cell.Left = "no rest"
			}
			row.Cells = append(row.Cells, cell)
		}
		p.Rows = append(p.Rows, row)
	}
	return p
}

// turnWords says where a check turns short.
func turnWords(t stability.Turn, sign string) string {
	at := strings.TrimSpace(unit.Text(t.At, 0) + " " + sign)
	switch {
	case t.Never:
		return "reached over the whole range"
	case t.Now:
		return "short as it is"
	}
	return "reached up to " + at
}
