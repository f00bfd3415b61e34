// Package trace follows one mark through all hulls of a yard, both ways: from a cast to the seams that hold it, and from a
// seam to the cast, the certificate, the welder and the inspector behind it. It judges nothing.
//
//   - Question: which boats hold this cast, lot, stamp or paper?
//   - In: the yard and one mark, as it is written or read.
//   - Out: records that carry it, what stands behind them, and for each hull the parts, seams, people and papers that
//     it touches.
//   - Source: the records alone.
package trace

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Node is one record that a mark is, comes from, or touches.
type Node struct {
	Kind string        `json:"kind"` // lot, filler, procedure, welder, part, joint, weld, inspection and so on
	Key  string        `json:"key"`
	Says string        `json:"says,omitempty"` // what it is, in short
	At   finding.Place `json:"place"`
}

// Subject gives the node as checks and findings name it.
func (n Node) Subject() string { return n.Kind + " " + n.Key }

// Result is what a mark is and all that it touches.
type Result struct {
	Mark   string   `json:"mark"`
	Is     []Node   `json:"is"`     // records of the yard, and of hulls, that carry the mark
	Behind []Node   `json:"behind"` // records of the yard that these come from
	Hulls  []Touch  `json:"hulls"`  // hulls that it touches, in order of their number
	Metres float64  `json:"metres"` // of seam in all of them
	Near   []string `json:"near"`   // marks like it, where nothing carries it
}

// Touch is what a mark touches in one hull.
type Touch struct {
	Hull   string  `json:"hull"`
	Title  string  `json:"title,omitempty"`
	State  string  `json:"state,omitempty"`
	Owner  string  `json:"owner,omitempty"`
	Reach  string  `json:"owner_contact,omitempty"` // how the owner is reached
	Parts  []Node  `json:"parts"`
	Joints []Joint `json:"joints"`
	Others []Node  `json:"others"` // welds, inspections, repairs, tests, panels and documents
	Metres float64 `json:"metres"` // of seam
}

// Joint is one seam that a mark touches, with what stands behind it.
type Joint struct {
	Node
	Metres float64 `json:"metres"`
	Where  string  `json:"where,omitempty"`
	Why    string  `json:"why"`   // through what it is touched: "part P3", "weld W12"
	Chain  []Node  `json:"chain"` // parts, lots, procedures, welders, fillers and inspections of the seam
}

// Find follows a mark: a cast, lot, certificate, part, joint, procedure, welder, inspector, instrument, filler or document, by
// its key, its number or the name printed on it. "HL74-012/J4" follows the joint J4 of one hull only. Blanks at the ends and
// the case of letters do not matter.
func Find(y *record.Yard, mark string) Result {
	s := search{yard: y, mark: fold(mark)}
	r := Result{Mark: mark}
	if hull, rest, split := strings.Cut(mark, "/"); split && known(y, hull) {
		s.only, s.mark = hull, fold(rest)
	}
	s.stock()
	r.Is, r.Behind = s.is, s.behind
	for _, h := range y.Hulls {
		if s.only != "" && h.Number != s.only {
			continue
		}
		t, own := s.hull(h)
		r.Is = append(r.Is, own...)
		if len(t.Parts)+len(t.Joints)+len(t.Others) > 0 {
			r.Hulls = append(r.Hulls, t)
			r.Metres += t.Metres
		}
	}
	if len(r.Is) == 0 {
		r.Hulls, r.Metres, r.Near = nil, 0, near(y, mark)
	}
	return r
}

func known(y *record.Yard, hull string) bool {
	for _, h := range y.Hulls {
		if h.Number == hull {
			return true
		}
	}
	return false
}

// fold gives a mark as it is compared.
func fold(mark string) string { return strings.ToLower(strings.TrimSpace(mark)) }
