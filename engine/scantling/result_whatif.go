package scantling

import "hullfile/engine/unit"

// WhatIf says for one zone what another spacing, plate or bar would do.
type WhatIf struct {
	Zone     string
	Panel    int     // index of the panel with the least room by the governing sheet, for which curves are drawn
	Member   int     // index of the secondary member with the least room; -1 where none is shown
	Spacing  unit.MM // short side of the panel
	Carries  unit.MM // breadth of plate that the member carries
	Fitted   unit.MM
	Curves   []Curve // one for each rule, needed thickness against spacing
	Greatest []Spacing
	Builds   []Build // as built first, then the lightest from the yard's stock at each spacing tried, lightest first; empty without stock
}

// Curve is the thickness that one sheet needs of the panel at other spacings.
type Curve struct {
	Rule   int
	Points []SpacingPoint
}

// SpacingPoint is one point of a curve.
type SpacingPoint struct {
	Spacing  unit.MM
	Needed   unit.MM // nought where not shown
	Shown    bool
	Pressure float64 // kN/m², that under the thickness that governs; nought where that knows none
	Stress   float64 // N/mm², likewise
}

// Spacing is the greatest spacing by one sheet, in steps of 5 mm. The plate is asked with the panel of WhatIf, the
// member with that of WhatIf; the other panels and members of the zone have more room as they stand.
type Spacing struct {
	Rule       int
	Plate      unit.MM // nought where not shown, or where the plate is short at any spacing
	PlateEnds  bool    // still met at the greatest spacing tried, which is the other side of the panel
	Member     unit.MM
	MemberEnds bool
}

// Build is plate and bar of one zone.
type Build struct {
	Plate   unit.MM // nought where the zone has plates of several thicknesses
	Section string  // key; empty where there are several, or none
	Part    float64 // spacing of the secondary members over that of today
	Spacing unit.MM // of the panel of WhatIf
	Mass    unit.KG // of plate and secondary members, both sides
	Weld    unit.M  // length of fillets of the secondary members, both sides of each bar
	Saved   unit.KG // against as built; below nought it is added
	Spared  unit.M  // weld against as built
	Meets   bool    // every panel and secondary member of the zone that is shown is met by the governing sheet
}

// Headroom is how far a value of the boat may go until something is no longer met, all else as it is.
type Headroom struct {
	Rule   int
	Of     string // "speed" or "loaded mass"
	Unit   string
	Now    float64
	Most   float64  // greatest value at which all that is shown is met, but for Never; below Now where something is short today
	Ends   bool     // nothing is short up to the greatest value tried
	Never  []string // what is short at every value tried; where that is everything, Most is nought
	Limits string   // what is short first above it: "panel B3", "member FR"
	Shown  bool
	Why    string
	Counts int // panels and members that were asked; those not shown are not among them
	Says   string
}
