// Package capacity finds how much and how many a boat may carry by every check at hand, which of them governs, what must
// stand on its plates, and whether what stands there agrees.
//
//   - Question: what may the boat carry, how many people, how much power, and what governs?
//   - In: the hull, its weight breakdown, the limits that weight and stability found (kg, persons), the method sheets.
//   - Out: every limit with what binds, the figures of each plate, checks of what the plates say.
//   - Source: TP 14619 and 33 CFR 183 (read); ISO 14945 and the plates of Australia as their pages tell them; what is
//     recalled says so in the sheets.
package capacity

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// Result is load, persons, power and plates of one hull.
type Result struct {
	Figures   *method.Working // what the stated masses leave; nil where the sheet is not at hand
	Loading   *method.Working // the United States' rule: weight and persons
	Power     *method.Working // the same: horsepower
	Flotation *method.Working // the same: foam
	France    *method.Working // the French rule for undecked boats; nil for any other boat
	Sheets    []*method.Sheet // of the workings above, each once

	Limits  []Limit // every check that says how much or how many
	Load    int     // index of the binding limit that leaves the least load, -1 for none
	Persons int     // likewise of the one that leaves the fewest persons

	Fixed     Contents // of the fixed tanks
	Light     Mass     // of the light craft, as it was taken here
	Foam      Foam
	American  Reach // how far the United States' rule reaches this boat
	Labels    []Label
	Stated    bool // the record says what stands on the plate
	Carried   unit.KG
	HasLoads  bool // every load item of the breakdown has a mass
	PerPerson unit.KG

	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Limit is what one check leaves. Load is people, stores and gear, without engines and without the contents of full fixed
// tanks, so that all limits can be held against each other and against a plate.
type Limit struct {
	Name       string
	Persons    int
	HasPersons bool
	Load       unit.KG
	HasLoad    bool
	Info       bool   // shown, and does not bind this boat
	Why        string // why it does not bind, or why there is no figure
	Basis      finding.Basis
	Source     string          // work, edition, clause
	Subject    string          // where it is worked out, as findings name subjects; empty for this package's own
	Missing    []string        // record keys that would be needed
	Places     []finding.Place // record lines
}

// Mass is a mass with how it was found.
type Mass struct {
	KG     unit.KG
	Has    bool
	How    string // "weighed on 2026-02-24"
	Basis  finding.Basis
	Places []finding.Place
}

// Contents is what the fixed tanks hold when they are full.
type Contents struct {
	KG      unit.KG
	Has     bool
	Parts   []TankPart
	Assumed bool // taken from the weight breakdown, because no tank is on record
}

// TankPart is one tank.
type TankPart struct {
	Name  string
	KG    unit.KG
	Fixed bool
	Place finding.Place
}

// Foam is what is fitted to keep a swamped boat up.
type Foam struct {
	Litres   unit.Litre // foam
	Chambers unit.Litre // closed chambers, the two largest left out
	Pieces   int
	Places   []finding.Place
}

// Reach says how far a rule reaches a boat.
type Reach struct {
	Length bool   // the boat is short enough for it
	Beyond bool   // the boat is too long for it, so that it asks nothing of this boat; false where no length is written
	Asked  bool   // the record says that its plates stand under it
	Binds  bool   // both
	Why    string // why it does not bind
}

// Label is what one plate of the boat must say.
type Label struct {
	Key    string // "eu", LabelUnited, "au"
	Title  string
	Under  string // which law names the fields
	OnBoat bool   // the record says that the boat has such a plate
	Other  bool   // the boat's plates stand under other laws, so that nothing was read off this one
	Why    string // why it is shown for information only
	Fields []Field
}

// Field is one thing that the law asks a plate to say.
type Field struct {
	Name     string
	Stated   string // as it stands on the plate, empty where that is not on record
	Reckoned string // what the records give, empty where they give nothing
	Note     string
	Source   string
	Basis    finding.Basis
	Large    bool   // a figure that is read from a distance
	Missing  string // record key that would give it
}

// Text is what the field says: as stated, else as reckoned.
func (f *Field) Text() string {
	if f.Stated != "" {
		return f.Stated
	}
	return f.Reckoned
}

// Governing gives the limit of an index of the result; ok is false where none governs.
func (r *Result) Governing(index int) (l Limit, ok bool) {
	if index < 0 || index >= len(r.Limits) {
		return Limit{}, false
	}
	return r.Limits[index], true
}
