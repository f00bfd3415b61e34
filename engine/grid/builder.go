package grid

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

type valM = record.Val[unit.M]

// builder lays the structure of one hull.
type builder struct {
	rec        *record.Hull
	skin       *skin
	fields     []*field
	shellZones []*field
	laid       []laidPanel
	members    []laidMember
	pieces     []piece         // every one, also those that share a record
	unnamed    []*record.Frame // without a section
	frames     []*record.Frame // inside the hull, from aft
	sections   map[string]*record.Section
	out        *Result
	bare       map[string]*bareness
	standing   map[*record.Support]bool // pillars that hold a beam
	saidEnds   map[*record.Stringer]bool
	passing    []string
	zones      []string // of bare, in the order in which they came up
	twice      map[[2]*record.Plating]bool
}

// Derive lays frames, stringers and plates of a hull on its lines. l may be nil where there are no lines. A hull without
// any of them gives a result that says so and nothing else.
func Derive(h *record.Hull, l *lines.Hull) Result {
	out := Result{Given: given(h)}
	if !out.Given {
		return out
	}
	if out.Why = unsound(l); out.Why != "" {
		out.Findings = append(out.Findings, gap("grid-not-derived", "boat", "frames, stringers or plates are on record, but no panel or member is derived from them: "+out.Why,
			"mend the lines that the findings name, or write them", gridPlace(h)))
		return out
	}
	if n := crossings(h); n > mostCrossings {
		out.Why = fmt.Sprintf("frames and stringers cross at %d places, more than the %d of the largest boat of plate", n, mostCrossings)
		out.Findings = append(out.Findings, gap("grid-not-derived", "boat", "no panel or member is derived: "+out.Why, "see whether a table was pasted twice, and write the number of what is alike", gridPlace(h)))
		return out
	}
	out.Derived = true
	b := &builder{rec: h, skin: newSkin(l), out: &out, sections: map[string]*record.Section{}, bare: map[string]*bareness{}, twice: map[[2]*record.Plating]bool{},
		saidEnds: map[*record.Stringer]bool{}, standing: map[*record.Support]bool{}}
	b.lay()
	return out
}

// mostCrossings is the number of places at which frames and stringers cross beyond which no grid is laid: a boat of 24 m with
// a frame every 300 mm and thirty stringers a side has a tenth of it. At each of them work is done that grows with what lies beside.
const mostCrossings = 25_000

func crossings(h *record.Hull) int {
	n := 0
	for i := range h.Stringers {
		n += max(1, h.Stringers[i].Number.V)
	}
	return n * len(h.Frames)
}

// lay is the order of the work.
func (b *builder) lay() {
	b.prepare()
	b.water()
	b.shell()
	b.decks()
	b.transom()
	b.bulkheads()
	b.tanks()
	b.transverse()
	b.brackets()
	b.models()
	b.seams()
	b.overridden()
	b.doubts()
}

// gridPlace is the first line of a record's grid.
func gridPlace(h *record.Hull) finding.Place {
	switch {
	case len(h.Platings) > 0:
		return h.Platings[0].At
	case len(h.Stringers) > 0:
		return h.Stringers[0].At
	case len(h.Stiffeners) > 0:
		return h.Stiffeners[0].At
	}
	return finding.Place{}
}
