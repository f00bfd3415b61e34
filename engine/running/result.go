// Package running keeps the log of running hours and the looks at the seams, and says what they prove: in one plain
// sentence first, never stronger than the arithmetic of engine/endurance.
//
//   - Question: what do the hours run so far prove?
//   - In: the log of hours, the looks at the seams, the repairs, and the same of sister hulls.
//   - Out: hours without a double count, the claim in one sentence, what was promised against what is shown, when to
//     look again.
//   - Source: engine/endurance for the arithmetic; the ladder of looks is own practice.
package running

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Result is the running hours of one hull and what they show. Times are hours.
type Result struct {
	Rows     []Row
	Start    float64 // meter at the start of the log
	End      float64 // meter at its end
	Logged   float64 // hours in the log, no hour counted twice
	Looks    []Look  // in order of the meter
	LookedTo float64 // hours in the log up to the last look
	AtRisk   float64 // hours run since then, which prove nothing yet
	Places   []Place

	Pool        []Exposure // this hull first, then its sisters
	Claim       Claim
	Promises    []Promise
	Equal       Equal
	Ladder      []Rung
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Row is one entry of the log.
type Row struct {
	Record  *record.Hours
	Hours   float64
	Sum     float64 // in the log up to its end
	G       float64 // mean of the highest tenth of impacts by the sheet, 0 where it gives none
	Outside bool
}

// Look is one look with the hours that had been run.
type Look struct {
	Record *record.Look
	Run    float64 // hours in the log up to it
	Since  float64 // hours since the look before
	Cracks int     // indications that are cracks or not settled
	Lacks  []string
}

// Place is one place with the last look at it.
type Place struct {
	Name   string
	Looks  int
	Last   *Look
	Cracks int
}

// Exposure is what one hull brings: the hours up to its last look, or up to the last clean look before its first crack.
type Exposure struct {
	Number  string
	Hours   float64
	Cracked bool
	AtRisk  float64
	Why     string // why it brings nothing
}

// Claim is what the hours of all hulls of the design together show.
type Claim struct {
	Boats      int
	Hours      float64
	Cracked    int
	Confidence float64
	MeanTime   float64
	Factor     float64
	Has        bool
	Why        string // why there is no claim
	Says       string // the claim
	Short      string // the claim and what it does not show, for who reads no further
	But        string // what it does not show
	Risk       string // hours since the last look
}

// Promise is a warranty against what the hours show.
type Promise struct {
	Record *record.Warranty
	Hours  float64 // years times yearly hours
	Has    bool
	Shown  []Shown
	Needed []Needed
	Boats  int // boats that would each have to run the whole time without a crack
	Curves []Curve
}

// Shown is what one slope and one confidence show of a promise.
type Shown struct {
	Slope, Confidence float64
	Scale             float64 // lower bound on the characteristic life
	All               float64 // least part of boats that run all hours of the promise without a crack
	FirstYear         float64 // likewise for the first year
	Tenth             float64 // lower bound on the time that nine boats in ten outlast
}

// Needed is how long one boat, or each of Boats, would have to run without a crack to show the promise.
type Needed struct {
	Slope, Hours float64
}

// Curve is the least part of boats that run so long without a crack, for one slope.
type Curve struct {
	Slope       float64
	Hours, Part []float64
}

// Equal is the hours turned into hours of the expected service.
type Equal struct {
	Has      bool
	Why      string
	G        float64 // of the service
	Power    float64
	Counted  float64 // hours of the log that state speed and sea
	Left     float64 // hours up to the last look that do not
	Hours    float64 // what they stand for
	Outside  bool
	MeanTime float64
}

// Rung is one step of the ladder of looks.
type Rung struct {
	Hours float64
	Look  *Look // nil where none belongs to it
	Due   bool
}
