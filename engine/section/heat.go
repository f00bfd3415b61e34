package section

import (
	"fmt"
	"math"
	"sort"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Heat is what a rule says about the softening beside a weld: how far it reaches from the root in every direction, and
// which part of the strength is left there. The values are the rule's; none is built in.
type Heat struct {
	Half   unit.MM    // reach each way from the root
	Bar    unit.Ratio // strength left in the bar, of one
	Plate  unit.Ratio // strength left in the plating, of one
	Source string
	Basis  finding.Basis
}

// Zone is one softened strip.
type Zone struct {
	Part     string   // name of the part it lies in
	From, To unit.MM  // along the part: up for what stands, across for what lies; degrees of the wall for a pipe
	Area     unit.MM2 // metal in it
	Left     unit.Ratio
}

// Softened is a section after welding. Its Properties are those of strength: softened metal counts as thinner, in the way
// of the effective thickness of EN 1999-1-1 (recalled). For stiffness take those of the sound section, because heat does
// not change the modulus of elasticity; Torsion is that of the sound section.
type Softened struct {
	Section
	Zones []Zone
	By    Heat
}

// Heated softens the strips around the given roots, or around Roots where none is given. A part is softened where it comes
// within reach of a root, over the reach each way along it from the point beside the root. Strips that overlap count
// once. Errors, as Faults: a reach that is not above nought, and a strength left that is not above nought and at most one.
func (s Section) Heated(rule Heat, roots ...Root) (Softened, error) {
	faults := Faults(nil).positive("reach of the heat", rule.Half)
	for _, f := range []struct {
		name string
		v    unit.Ratio
	}{{"strength left in the bar", rule.Bar}, {"strength left in the plating", rule.Plate}} {
		faults = faults.unless(f.v > 0 && f.v <= 1, f.name, "%v, must be above nought and at most one", float64(f.v))
	}
	if len(faults) > 0 {
		return Softened{}, faults
	}
	if len(roots) == 0 {
		roots = s.Roots()
	}
	out := Softened{Section: s, By: rule}
	out.Parts = nil
	for _, p := range s.Parts {
		left := float64(rule.Bar)
		if p.Role == Plating {
			left = float64(rule.Plate)
		}
		out.soften(p, strips(p, roots, float64(rule.Half)), left)
	}
	return out, nil
}

// stretch is a strip along a part.
type stretch struct{ from, to float64 }

// strips gives the stretches of a part that the heat of the roots reaches, merged and in order.
func strips(p Part, roots []Root, half float64) []stretch {
	var all []stretch
	for _, r := range roots {
		if st, hit := p.reached(r, half); hit {
			all = append(all, st)
		}
	}
	sort.Slice(all, func(i, j int) bool { return all[i].from < all[j].from })
	var merged []stretch
	for _, st := range all {
		if n := len(merged); n > 0 && st.from <= merged[n-1].to {
			merged[n-1].to = math.Max(merged[n-1].to, st.to)
			continue
		}
		merged = append(merged, st)
	}
	return merged
}

// reached gives the stretch of a slab within reach of a root; of a ring the angle each way, in radians from the right side
// upward. A lump is softened whole or not at all.
func (p Part) reached(r Root, half float64) (stretch, bool) {
	switch {
	case p.Form == Ring:
		radius := (p.Diameter - p.Wall) / 2
		off := math.Hypot(r.Y-p.Y, r.Z-p.Z) - radius
		a, by := math.Atan2(r.Z-p.Z, r.Y-p.Y), math.Min(half/radius, math.Pi)
		return stretch{a - by, a + by}, math.Abs(off) <= p.Wall/2+half
	case p.Form == Lump:
		side := p.reach()
		away := math.Hypot(math.Max(0, abs(r.Y-p.Y)-side), math.Max(0, abs(r.Z-p.Z)-side))
		return stretch{p.bottom(), p.top()}, away <= half
	case p.level():
		low, high := p.Y-p.Breadth/2, p.Y+p.Breadth/2
		st := stretch{math.Max(low, r.Y-half), math.Min(high, r.Y+half)}
		return st, st.to > st.from && outside(r.Z, p.bottom(), p.top()) <= half
	}
	slope := math.Hypot(p.Height, p.Lean) / p.Height
	st := stretch{math.Max(p.bottom(), r.Z-half/slope), math.Min(p.top(), r.Z+half/slope)}
	middle := p.Y + float64(p.Lean/p.Height*(math.Min(math.Max(r.Z, p.bottom()), p.top())-p.Z))
	return st, st.to > st.from && outside(r.Y, middle-p.Breadth/2, middle+p.Breadth/2) <= half
}

// level reports whether a slab lies; what stands is cut across its height, what lies across its breadth.
func (p Part) level() bool { return p.Role == Plating || p.Breadth > p.Height }

// outside is how far a value lies outside a stretch.
func outside(v, low, high float64) float64 { return math.Max(0, math.Max(low-v, v-high)) }

// soften adds a part to the softened section, cut into sound and softened pieces.
func (o *Softened) soften(p Part, reached []stretch, left float64) {
	switch {
	case len(reached) == 0:
		o.Parts = append(o.Parts, p)
	case p.Form == Ring:
		o.arcs(p, reached, left)
	case p.Form == Lump:
		o.zone(p, reached[0], left)
	default:
		at, end := p.bottom(), p.top()
		if p.level() {
			at, end = p.Y-p.Breadth/2, p.Y+p.Breadth/2
		}
		for _, st := range reached {
			if st.from > at {
				o.Parts = append(o.Parts, p.piece(stretch{at, st.from}))
			}
			o.zone(p.piece(st), st, left)
			at = st.to
		}
		if end > at {
			o.Parts = append(o.Parts, p.piece(stretch{at, end}))
		}
	}
}

// piece is the part of a slab over a stretch of it.
func (p Part) piece(st stretch) Part {
	middle, long := (st.from+st.to)/2, st.to-st.from
	if p.level() {
		p.Y, p.Breadth = middle, long
		return p
	}
	slope := p.Lean / p.Height
	p.Y, p.Z, p.Height, p.Lean = p.Y+float64(slope*(middle-p.Z)), middle, long, slope*long
	return p
}

// zone adds a softened piece and notes it.
func (o *Softened) zone(p Part, st stretch, left float64) {
	p.Factor *= left
	o.Parts = append(o.Parts, p)
	o.Zones = append(o.Zones, Zone{p.Name, unit.MM(st.from), unit.MM(st.to), unit.MM2(p.moments().area), unit.Ratio(left)})
}

// Says gives the zone as a sentence.
func (z Zone) Says() string {
	return fmt.Sprintf("%s from %s to %s mm, %s mm², keeps %s of its strength",
		z.Part, unit.Text(z.From, 1), unit.Text(z.To, 1), unit.Text(z.Area, 0), unit.Text(z.Left, 2))
}
