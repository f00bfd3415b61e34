// Package weight adds up the boat: items to masses and centres, groups, sensitivity, and the sum against a weighing.
//
//   - Question: what does the boat weigh, where is its centre, and does the scale agree?
//   - In: the weight breakdown, the alloys for densities, areas of the lines, weighings.
//   - Out: light, load and loaded sums with centres (kg, m), what moves them most, each weighing held against them.
//   - Source: balance of moments; allowances are practice and said to be so.
package weight

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Result is the weight breakdown of one hull.
type Result struct {
	Items       []Item // in the order of the record
	Groups      []Group
	Light       Total // light craft, margins included
	Load        Total // what is carried
	Loaded      Total // both together
	Lift        Lift
	Weighings   []Weighing
	MostMass    []int // indices into Items: what moves the mass most for a tenth of itself, at most ten
	MostCentre  []int // likewise what moves the centre fore and aft most
	Stated      []Stated
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Item is one item with its mass reckoned.
type Item struct {
	Record    *record.Weight
	Count     int
	Each      unit.KG // mass of one, without margin
	Mass      unit.KG // all of them, margin included
	Margin    unit.KG // part of Mass that is margin
	HasMass   bool
	HasX      bool // likewise Y and Z: false where the record gives none, and then it takes no part in that centre
	HasY      bool
	HasZ      bool
	Working   string        // "4.32 m² × 6.0 mm × 2 660 kg/m³ = 69.0 kg"; why there is no mass, where there is none
	Source    string        // of the density, where an alloy gives it
	FromLines string        // what of it comes from the lines of the hull; empty where nothing does
	Basis     finding.Basis // of the density; yard where everything was written
	MovesKG   unit.KG       // by how much the light craft or load total would change for 10 % of this item
	MovesX    unit.MM       // by how much the centre of the fully loaded boat would move fore and aft for 10 % of this item
}

// Total is a sum: mass and centre. A centre is shown only when every item in the sum has that position.
type Total struct {
	Mass             unit.KG
	Margin           unit.KG
	X, Y, Z          unit.M
	HasX, HasY, HasZ bool
	Items            int
	Without          []string // items that lack a mass or a position, by key
	NoMass           []string // those of them that lack a mass and are not in the sum, by key
}

// Whole reports whether every item has a mass, so that the sum is the sum of all.
func (t *Total) Whole() bool { return t.Items > 0 && len(t.NoMass) == 0 }

// Stated is a mass that the record states beside the sum of the items.
type Stated struct {
	Key      string // "boat.loaded_mass_kg"
	Name     string // "loaded mass"
	Mass     unit.KG
	Reckoned unit.KG
	Diff     unit.KG // stated less reckoned
	Allowed  unit.KG
}

// Group is the sum of one group.
type Group struct {
	Name  string
	Total Total
	Share float64     // part of the loaded mass
	Basis []BasisPart // how much of the group is weighed, reckoned, maker's, estimated
}

// BasisPart is the mass known in one way.
type BasisPart struct {
	Basis string
	Mass  unit.KG
}

// Weighing is one weighing reduced, and the sum of the items as they were on that day.
type Weighing struct {
	Record     *record.Weighing
	Points     []Point
	Mass       unit.KG // weighed
	HasMass    bool    // false where a reading contradicts itself or there is no point
	Why        string  // why there is no mass, or no centre fore and aft
	X, Y       unit.M
	HasX, HasY bool
	Reckoned   Total   // light craft less what was ashore, with the load that was on board
	DiffMass   unit.KG // weighed less reckoned
	DiffX      unit.MM // weighed less reckoned, forward positive
	Allowed    unit.Percent
	AllowedX   unit.MM
	HasAllowed bool
	HasAllowX  bool
	Working    []string
}

// Point is one load cell with its net reading.
type Point struct {
	Record *record.WeighPoint
	Net    unit.KG
}
