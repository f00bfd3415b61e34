package site

import (
	"html/template"
	"math"
	"slices"

	"hullfile/engine/loading"
	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

// AfloatPage says how the boat floats in every condition, how it rights itself, and how it stands against what is asked.
type AfloatPage struct {
	Says        AfloatSays
	Curves      Drawing
	Option      string
	OptionBasis Basis
	Conditions  []ConditionRow
	Whole       []FindingRow // findings about the boat afloat as a whole
	Checks      []CheckRow
	Crowds      []CrowdPart
	Heelings    []HeelingRow
	Parts       []ConditionPart
	Workings    []WorkingPart
	NotApplying []NotApplyingRow
	Information []InformationRow
	Tests       AfloatTests
	Flotation   FlotationPart
	WhatIf      []WhatIfPart
	Tanks       []TankRow
	Crew        []CrewRow
	Density     string // kg/m³
	Notes       []Note
	Caution     template.HTML
}

// AfloatSays is the answer about the boat afloat; the cover says it too.
type AfloatSays struct {
	Tally
	Conditions int // floated
	Of         int
	Title      string // of the loaded condition; empty where it does not float
	Mass       string
	Freeboard  string // least, m
	GM         string // free surfaces taken off, m
	Lever      string // greatest, m
	LeverAt    string // °
	Flooding   string // °, empty where water does not come in
	By         string
	Crowd      string // ° with everybody to one side, the greatest reckoned
	Short      []string
	Why        string // why the loaded condition is not floated
}

// ConditionRow is one condition in the table of all.
type ConditionRow struct {
	Link                Link
	Persons             string
	Mass                Figure
	X, Y, Z             Figure
	Draught, Trim, Heel Figure
	Aft, Mid, Fore      Figure // freeboards
	Least               Figure
	GM, Fluid           Figure
	Why                 string
}

// ConditionPart is one condition in full.
type ConditionPart struct {
	ID       string
	Title    string
	Parts    []LoadRow
	Sum      LoadRow
	Surfaces []SurfaceRow
	Lever    Drawing
	Unders   []UnderRow
	Areas    []Fact
	Findings []FindingRow
	Place    Link
	Why      string
}

// LoadRow is one part of what the boat weighs in a condition.
type LoadRow struct {
	Name    string
	Mass    string
	X, Y, Z string
	Working string
	Places  []Link
}

// SurfaceRow is the free surface of one slack tank.
type SurfaceRow struct {
	Tank    Link
	Rise    Figure // mm
	Working string
}

// UnderRow is the heel at which something goes under, to each side.
type UnderRow struct {
	Name  string
	Side  string
	Heel  Figure
	Lets  bool // water comes in there first
	Under bool // already at rest
}

// CrewRow is a place where people can be.
type CrewRow struct {
	ID, Key string
	Name    string
	Posture string
	Persons string
	X, Y, Z string
	Place   Link
}

// TankRow is one tank on record.
type TankRow struct {
	ID, Key  string
	Name     string
	Contents string
	Volume   string
	X, Y, Z  string
	Fixed    string
	Place    Link
}

func (l *leaf) afloatPage() (AfloatPage, error) {
	notes, err := l.notesFor("afloat")
	if err != nil {
		return AfloatPage{}, err
	}
	d := l.dossier
	p := AfloatPage{
		Says: l.afloatSays(), Curves: l.leversPicture(), Option: d.Stability.Option.Says, OptionBasis: basis(d.Stability.Option.Basis),
		Whole: l.findingsHere(""), Flotation: l.flotationPart(), WhatIf: l.whatIfParts(),
		Tanks: l.tankRows(), Crew: l.crewRows(), Density: unit.Text(d.Loading.Density, 0), Notes: notes, Caution: l.press.notes["afloat"],
	}
	for i := range d.Loading.Conditions {
		c := &d.Loading.Conditions[i]
		p.Conditions = append(p.Conditions, l.conditionRow(c))
		p.Parts = append(p.Parts, l.conditionPart(c, i))
	}
	p.Crowds, p.Heelings = l.crowdParts()
	for _, n := range d.Stability.NotApplying {
		p.NotApplying = append(p.NotApplying, NotApplyingRow{n.Rule, n.Says, n.Source})
	}
	p.Information = l.informationRows()
	if p.Tests, err = l.afloatTests(); err != nil {
		return p, err
	}
	p.Workings, p.Checks, err = l.workingParts()
	p.Checks = grouped(p.Checks)
	return p, err
}

func (l *leaf) conditionRow(c *loading.Condition) ConditionRow {
	a, why := &c.Afloat, "not reckoned"
	if c.Why != "" {
		why = c.Why
	}
	of := func(ok bool, v float64, n int) Figure { return has(ok, unit.Text(v, n), why) }
	fl := c.Floats
	return ConditionRow{
		Link: l.subjectAs("condition "+c.ID, c.Title), Persons: wordsOfInt(c.Persons), Mass: has(c.Whole, mass(c.Mass), why), Why: c.Why,
		X: of(c.Whole, c.Centre.X, 3), Y: of(c.Whole, c.Centre.Y, 3), Z: of(c.Whole, c.Centre.Z, 3),
		Draught: of(fl, a.Draught, 3), Trim: of(fl, a.Rest.Trim*180/math.Pi, 2), Heel: of(fl, c.Heel, 1),
		Aft: of(fl, a.Freeboard[0], 3), Mid: of(fl, a.Freeboard[1], 3), Fore: of(fl, a.Freeboard[2], 3), Least: of(fl, c.Least, 3),
		GM: of(fl, c.GM, 3), Fluid: of(fl, c.GMFluid, 3),
	}
}

// conditionPart tells one condition in full. Where two have one name, the first is the one that is linked to.
func (l *leaf) conditionPart(c *loading.Condition, n int) ConditionPart {
	id := l.anchor("condition " + c.ID)
	if first := slices.IndexFunc(l.dossier.Loading.Conditions, func(o loading.Condition) bool { return o.ID == c.ID }); first != n {
		id = ""
	}
	p := ConditionPart{ID: id, Title: c.Title, Why: c.Why, Sum: LoadRow{Name: "not all of it"}}
	if id != "" {
		p.Findings = l.findingsHere(id)
	}
	if c.Whole {
		p.Sum.Name, p.Sum.Mass = "together", mass(c.Mass)
		p.Sum.X, p.Sum.Y, p.Sum.Z = unit.Text(c.Centre.X, 3), unit.Text(c.Centre.Y, 3), unit.Text(c.Centre.Z, 3)
	}
	if c.Record != nil {
		p.Place = l.place(c.Record.At)
	}
	for _, one := range c.Parts {
		p.Parts = append(p.Parts, LoadRow{one.Name, mass(one.Mass), unit.Text(one.Centre.X, 3), unit.Text(one.Centre.Y, 3), unit.Text(one.Centre.Z, 3), one.Working, l.places(one.Places)})
	}
	for _, s := range c.Surfaces {
		p.Surfaces = append(p.Surfaces, SurfaceRow{l.subjectAs("tank "+s.Tank.ID, s.Tank.ID), has(s.Known, unit.Text(s.Rise*1000, 1), "not known"), s.Working})
	}
	if s := l.leverOfThis(c); s != nil {
		p.Lever = l.leverPicture(s, wordsOfInt(n+1))
		p.Unders, p.Areas = underRows(s), areaFacts(s)
	}
	return p
}

// leverOf gives the righting lever of a condition, nil where it has none.
func (l *leaf) leverOf(id string) *stability.Condition {
	all := l.dossier.Stability.Conditions
	for i := range all {
		if all[i].Loading != nil && all[i].Loading.ID == id {
			return &all[i]
		}
	}
	return nil
}

// leverOfThis gives the righting lever of this very condition.
func (l *leaf) leverOfThis(c *loading.Condition) *stability.Condition {
	all := l.dossier.Stability.Conditions
	for i := range all {
		if all[i].Loading == c && len(all[i].Sides) > 0 {
			return &all[i]
		}
	}
	return nil
}

func underRows(c *stability.Condition) []UnderRow {
	var out []UnderRow
	for i := range c.Sides {
		s := &c.Sides[i]
		for _, u := range s.Unders {
			out = append(out, UnderRow{u.Name, s.Name, has(!u.Never, unit.Text(u.Heel, 1), "not up to 180°"),
				!s.Flooding.Never && u.Name == s.Flooding.Name && u.Heel == s.Flooding.Heel, !u.Never && u.Heel == 0})
		}
	}
	return out
}

func areaFacts(c *stability.Condition) []Fact {
	or := func(f Fact, why string) Fact {
		f.Value.Why = why
		return f
	}
	s := &c.Sides[0]
	return []Fact{
		fact("greatest lever", s.Greatest > 0, s.Greatest, 3, "m"), fact("at a heel of", s.Greatest > 0, s.GreatestA, 0, "°"),
		or(fact("water comes in at", !s.Flooding.Never, s.Flooding.Heel, 1, "°"), "not up to 180°"), goneFact(c),
		fact("area to 30°", true, c.Areas[0], 4, "m·rad"), fact("area to 40°", true, c.Areas[1], 4, "m·rad"), fact("area 30° to 40°", true, c.Areas[2], 4, "m·rad"),
	}
}

// goneFact tells where the lever is gone, as the picture draws it, and where that lies beyond the heel at which water comes in.
func goneFact(c *stability.Condition) Fact {
	f := fact("lever gone at", c.Range > 0, c.Range, 1, "°")
	if c.Range > 0 {
		return f
	}
	v, ok := c.Sides[0].Curve.Vanishes()
	if !ok {
		f.Value.Why = "not up to 180°"
		return f
	}
	f.Value = Figure{Text: unit.Text(v*180/math.Pi, 1) + "°, after water has come in"}
	f.Unit = ""
	return f
}

func (l *leaf) tankRows() []TankRow {
	var out []TankRow
	for i := range l.hull.Tanks {
		t := &l.hull.Tanks[i]
		fixed := "carried on board"
		if t.Fixed.V {
			fixed = "fixed"
		}
		out = append(out, TankRow{l.anchor("tank " + t.ID), t.ID, t.Name.V, t.Contents.V, unit.Text(t.Volume.V, 0), unit.Text(t.X.V, 2), unit.Text(t.Y.V, 2), unit.Text(t.Z.V, 2), fixed, l.place(t.At)})
	}
	return out
}

func (l *leaf) crewRows() []CrewRow {
	var out []CrewRow
	for i := range l.hull.CrewAreas {
		a := &l.hull.CrewAreas[i]
		out = append(out, CrewRow{l.anchor("crew_area " + a.ID), a.ID, a.Name.V, a.Posture.V, wordsOfInt(a.Persons.V), unit.Text(a.X.V, 2), unit.Text(a.Y.V, 2), unit.Text(a.Z.V, 2), l.place(a.At)})
	}
	return out
}
