// Package stock holds the metal of a hull against its certificates: what a certificate prints is judged against
// composition, strength and corrosion limits; parts are held against the lots they were cut from, and the area cut
// against the area received. A hull without any record of building is told so once.
//
//   - Question: is this the metal that was ordered, and is there enough of it?
//   - In: the lots of the yard, the parts of the hull, the alloys, the limits.
//   - Out: each value of a certificate judged, parts traced to lots, area used against area received (m²).
//   - Source: EN 10204, ASTM B928, and tables of makers and societies after EN 485-2 and EN 573-3, as content/limits
//     and content/alloys cite them.
package stock

import (
	"hullfile/engine/finding"
	"hullfile/engine/held"
	"hullfile/engine/material"
	"hullfile/engine/record"
)

// Rules of the checks and findings of this package.
const (
	ruleBuild       = "build-record"
	ruleCertificate = "lot-certificate"
	ruleComposition = "lot-composition"
	ruleStrength    = "lot-strength"
	ruleCorrosion   = "lot-corrosion"
	ruleAcid        = "lot-corrosion-edition"
	ruleCast        = "lot-cast"
	ruleCastTwo     = "cast-two-analyses"
	ruleArea        = "lot-area"
	ruleDays        = "lot-days"
	rulePartLot     = "part-lot"
	rulePartAlloy   = "part-alloy"
	rulePartThick   = "part-thickness"
	rulePartPanel   = "part-panel"
	ruleMeasured    = "part-measured"
	ruleMark        = "part-marking"
	ruleBend        = "part-bend"
	rulePaper       = "certificate-of-no-lot"
	ruleFiller      = "filler-composition"
)

// Result is what is known of the metal of one hull.
type Result struct {
	Recorded    bool       // whether anything of the building is on record
	Held        held.Table // whose limits these are, and who held them against the standards
	Lots        []Lot
	Supplies    []Supply
	Parts       []Part
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Lot is one lot that this hull uses.
type Lot struct {
	Record *record.Lot
	Parts  []*record.Part // of this hull, in the order of the record
	Values []Value        // what the certificate prints, judged
	Used   Area
	Hulls  []string // numbers of all hulls with parts of this lot, in order
}

// Area is what was received of a lot and what was cut from it for all hulls together, in square metres; metres for lots
// that are received by length.
type Area struct {
	Unit        string
	Received    float64
	HasReceived bool
	Cut         float64
	Here        float64 // for this hull
	Remnant     float64
	HasRemnant  bool
	Without     []string // parts of any hull that were cut from it and whose size is not written
}

// Value is one value of a certificate, held against its limit.
type Value struct {
	Name     string
	Unit     string
	Printed  string // as on the certificate; empty where it prints none
	Limit    string
	Fit      material.Fit
	Judged   bool
	Standing finding.Standing
	Why      string // what a reader must know beside the outcome
	Source   string
	Basis    finding.Basis
	Place    finding.Place
}

// Supply is one lot of something used up that the welds of this hull name.
type Supply struct {
	Record *record.Consumable
	Values []Value
}

// Part is one part of the cut list with the lot it came from.
type Part struct {
	Record *record.Part
	Lot    *record.Lot // nil where none is named or the stock has none of that key
}
