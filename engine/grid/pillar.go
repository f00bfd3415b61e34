package grid

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// stands is how far from a beam a pillar may stand and still hold it, metres: half the breadth of a bracket under it
// (practice).
const stands = 0.1

// pillarsUnder lists the half breadths at which pillars hold the beam of a frame on a deck or sole.
func (b *builder) pillarsUnder(f *record.Frame, on *field) []float64 {
	var out []float64
	for i := range b.rec.Supports {
		s := &b.rec.Supports[i]
		if s.Kind.V != "pillar" || s.Under.V != on.zone || !s.X.Set || math.Abs(float64(s.X.V-f.X.V)) > stands {
			continue
		}
		if s.Z.Set && on.zone == "sole" && math.Abs(float64(s.Z.V)-on.level) > near {
			continue
		}
		b.standing[s] = true
		out = append(out, float64(s.Y.V))
	}
	return out
}

// pillars tells of those that hold nothing, and that none of them is judged itself.
func (b *builder) pillars() {
	var held []string
	for i := range b.rec.Supports {
		s := &b.rec.Supports[i]
		switch {
		case s.Kind.V != "pillar":
		case b.standing[s]:
			held = append(held, s.ID)
		case !s.X.Set:
			b.say(gap("pillar-nowhere", "support "+s.ID, "pillar "+s.ID+" has no position, so it holds nothing", "write its x_m", s.At))
		default:
			b.say(doubt("pillar-nowhere", "support "+s.ID, fmt.Sprintf("pillar %s at x %.2f m stands under no beam of the %s, and is taken as holding nothing", s.ID, float64(s.X.V), s.Under.V),
				"measure its x_m, or write the beam at that frame", s.At))
		}
	}
	if len(held) > 0 {
		b.out.Assumptions = append(b.out.Assumptions, finding.Assumption{Subject: "grid", Basis: finding.Practice,
			Says:   "pillars are taken as holding the beams over them without giving way, and are not judged themselves: " + strings.Join(held, ", "),
			Settle: "show each pillar, and what it stands on, by a calculation of its own"})
	}
}
