// Package grid lays the structure on the lines: from frames, stringers and plates on record it derives every panel and
// every member with its place, sides or span, spacing and deadrise, for a method sheet to judge, for a drawing to show
// and for a beam model to load. Everything here is geometry; whether it is strong enough is said elsewhere.
//
// Axes as in the records: x forward of the transom, y to starboard, z above the base line, metres. Panels and members
// are written as records are, with x from the aft end of the loaded waterline and z above it.
//
//   - Question: which panels and members does the boat have, where and how large?
//   - In: lines, frames, stringers, stiffeners, supports and plating of the records.
//   - Out: patches of plate, members, joints between them, the seams that the pieces need; findings where the records
//     leave a gap.
//   - Source: geometry, own derivation.
package grid

import (
	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
)

// Result is the structure of one hull, laid on its lines.
type Result struct {
	Given   bool   // plates, stringers or sections are on record
	Derived bool   // the lines are sound, so that panels and members could be derived
	Why     string // why they could not

	AftEnd       float64 // x of the aft end of the loaded waterline
	Waterline    float64 // z of the loaded waterline
	HasWaterline bool    // the draught is on record

	Panels    []record.Panel  // derived and not replaced by one listed by hand
	Members   []record.Member // the same
	Brackets  []Bracket
	Patches   []Patch // every panel once to starboard and once to port, or once where it lies across the centre line
	Lines     []Line  // every member, drawn alike
	Rings     []Ring
	Grillages []Grillage
	Seams     []Seam     // that these pieces need, proposed
	Replaced  []Replaced // derived, and replaced by one listed by hand

	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Patch is one panel as a piece of plate. Its corners go round, from the aft end of its inner edge outwards.
type Patch struct {
	ID      string // its own name, "bottom frames 3-4 strake 2"
	Plate   string // key of the plating it is cut from; of a bulkhead its name
	Panel   string // the record that judges it: a group of equal ones, or the panel listed by hand that replaces it
	Zone    string // bottom, chine flat, side, transom, deck, sole, bulkhead
	On      string // which transom, deck, sole or bulkhead: "deck foredeck", "bulkhead 6"; the zone where there is one only
	Port    bool
	Corners []hydrostatics.Vector
	Flat    [][2]float64 // on the unrolled zone, metres: x and girth from the keel, on a deck or sole from the centre line; on a transom or bulkhead y and height along the plate above the base line. To port the girth, or y, is negative
	Area    float64      // m²
}

// Line is one member from end to end.
type Line struct {
	ID     string // its own name, "bottom stringer 2 frames 3-4"
	Member string // the record that judges it
	Kind   string // as in record.Member
	Zone   string // as in Patch
	On     string
	Port   bool
	Points []hydrostatics.Vector
	Flat   [][2]float64 // as in Patch
}

// Bracket is one bracket at one frame, both sides together.
type Bracket struct {
	ID     string // "bracket K frame 3"
	Record *record.Bracket
	Frame  string // empty where it names its member
	Member string // the member whose end it holds, by its name; empty where none is on record
	Count  int
}

// Replaced is a panel or member of the grid that one listed by hand stands for.
type Replaced struct {
	ID    string
	By    string
	Place finding.Place // of the one listed by hand
}

// Joint is a point at which members meet or are held.
type Joint struct {
	Name  string // "keel", "chine", "sheer", "stringer 2", "girder engine"
	At    hydrostatics.Vector
	Held  string // what holds it from outside the model: "bulkhead 6", "keel", "chine"; empty where nothing does
	Fixed bool   // moments pass
}

// Span is one stretch of a member between two joints.
type Span struct {
	Member   string // the member of the grid, by its own name
	From, To int    // joints
	Section  string // key of the section
	Attached float64
	Alloy    string // of the attached plate
	Zone     string
	Width    float64 // breadth of plate that it carries, metres
}

// Ring is the half of one frame to starboard, from the keel to the deck at the centre line.
type Ring struct {
	Frame  string
	X      float64
	Joints []Joint
	Spans  []Span
	Place  finding.Place
}

// Grillage is the bottom to starboard between two bulkheads, or a bulkhead and an end: frames and stringers with their
// crossings.
type Grillage struct {
	Name    string // "bottom, bulkhead 6 to bulkhead 11"
	Joints  []Joint
	Frames  []Span
	Lengths []Span // stringers and girders
}

// Seam is one seam that the grid needs: where two of its pieces meet. It is proposed to the yard and is no evidence of
// anything.
type Seam struct {
	Name       string // "bottom frame 3 to plate, port"
	Type       string // butt, fillet or corner, as in record.Joint
	Thickness  float64
	Other      float64
	Length     float64 // metres; a seam welded from both sides counts once
	Category   string  // as in record.Joint
	Connection string  // key in the tables of weld factors; empty where it is none of these
	Where      string
	Flat       [][2]float64 // on the unrolled skin: x and girth from the keel, to port negative; nil where it does not lie on it
	Place      finding.Place
}
