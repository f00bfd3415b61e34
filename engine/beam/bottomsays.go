package beam

import (
	"fmt"
	"math"
)

// faults lists what is wrong with a bottom before it becomes a model.
func (b Bottom) faults() Faults {
	var fs Faults
	if !finite(b.Aft, b.Fwd) || !(b.Fwd > b.Aft) {
		fs.add("bulkheads", "lie at %v and %v m, the fore one must lie forward", b.Aft, b.Fwd)
	}
	before := b.Aft
	for i, f := range b.Frames {
		name := named("frame", i, f.Name)
		if !(f.At > before) || !(f.At < b.Fwd) {
			fs.add(name, "lies at %v m, must lie forward of %v and aft of %v m", f.At, before, b.Fwd)
		}
		before = f.At
		f.stiff(name, &fs)
	}
	if len(b.Girth) != len(b.Frames)+2 {
		fs.add("chine", "%d offsets given, must be one for each bulkhead and frame, %d", len(b.Girth), len(b.Frames)+2)
	}
	widest := 0.0
	for _, v := range b.Girth {
		widest = math.Max(widest, v)
		if !(v > 0) || !finite(v) {
			fs.add("chine", "offset %v m, must be above nought", v)
		}
	}
	before = 0
	for i, s := range b.Stringers {
		name := named("stringer", i, s.Name)
		if !(s.At > before) || !(s.At+clear <= widest) {
			fs.add(name, "lies %v m from the keel, must lie beyond %v m and inside the chine, %v m", s.At, before, widest)
		}
		before = s.At
		s.stiff(name, &fs)
	}
	if len(b.Frames) == 0 && len(b.Stringers) == 0 {
		fs.add("bottom", "has neither frames nor stringers")
	}
	if n := (len(b.Frames) + 2) * (len(b.Stringers) + 2); n > mostNodes {
		fs.add("bottom", "%d frames and %d stringers make %d crossings, must be at most %d", len(b.Frames), len(b.Stringers), n, mostNodes)
	}
	b.AtKeel.faults("keel", &fs)
	b.AtChine.faults("chine", &fs)
	b.AtBulkhead.faults("bulkheads", &fs)
	for _, e := range []struct {
		name string
		edge Edge
	}{{"keel", b.Keel}, {"chine", b.Chine}} {
		if e.edge.Gives {
			Rib{Bar: e.edge.Bar}.stiff(e.name, &fs)
		}
	}
	if !finite(b.Pressure, b.KeelToe, b.ChineToe) {
		fs.add("bottom", "pressure %v and arms of brackets %v, %v must be numbers", b.Pressure, b.KeelToe, b.ChineToe)
	}
	if len(fs) == 0 {
		b.idle(&fs)
	}
	return fs
}

// idle adds a fault for each stringer that runs nowhere.
func (b Bottom) idle(fs *Faults) {
	g := grid{Bottom: b}
	for j := range b.Stringers {
		runs := false
		for bay := 0; bay <= len(b.Frames); bay++ {
			runs = runs || g.runs(j+1, bay)
		}
		if !runs {
			fs.add(named("stringer", j, b.Stringers[j].Name), "runs through no bay: nowhere does it lie inside the chine at both ends of one")
		}
	}
}

// stiff adds a fault where a bar has no stiffness.
func (r Rib) stiff(name string, fs *Faults) {
	if !(r.Bar.EI > 0) || !finite(r.Bar.EI) {
		fs.add(name, "bending stiffness %v kN·m², must be above nought", r.Bar.EI)
	}
}

// result looks at every frame and line, with the formulas for a single span under the load of its own breadth.
func (g *grid) result(s Solution) BottomResult {
	out := BottomResult{Solution: s, Total: g.total, Direct: g.direct, Assumptions: g.assumptions()}
	for i, chain := range g.frames {
		b := s.beside(g.Bottom.Frames[i].Name, chain, 1)
		b.Start = s.bracket("keel", chain, g.KeelToe, 1, true)
		b.End = s.bracket("chine", chain, g.ChineToe, 1, false)
		q := g.Pressure * (g.x[i+2] - g.x[i]) / 2
		b.single(g.Girth[i+1], q, q, g.Bottom.Frames[i].Bar.EI)
		out.Frames = append(out.Frames, b)
	}
	for j, chain := range g.lines {
		if len(chain) == 0 {
			continue
		}
		bar, name := g.line(j)
		b := s.beside(name, chain, 1)
		b.Start, b.End = s.bracket("aft end", chain, 0, 1, true), s.bracket("fore end", chain, 0, 1, false)
		span, width := g.widest(j)
		b.single(span, g.Pressure*width, g.Pressure*width, bar.EI)
		switch j {
		case 0:
			out.Keel = b.doubled()
		case g.last():
			out.Chine = b
		default:
			out.Stringers = append(out.Stringers, b)
		}
	}
	return out
}

// widest gives the longest bay that a line runs through, and the breadth of plating that it carries there.
func (g *grid) widest(line int) (span, width float64) {
	for _, bay := range g.bays[line] {
		long := g.x[bay+1] - g.x[bay]
		if long <= span {
			continue
		}
		low, high := line, line
		for k := line - 1; k >= 0; k-- {
			if g.runs(k, bay) {
				low = k
				break
			}
		}
		for k := line + 1; k <= g.last(); k++ {
			if g.runs(k, bay) {
				high = k
				break
			}
		}
		span, width = long, (g.mean(bay, high)-g.mean(bay, low))/2
	}
	if line == 0 || line == g.last() { // keel and chine as members span from bulkhead to bulkhead
		span = g.Fwd - g.Aft
	}
	return span, width
}

// doubled turns the half keel of this half into the whole keel.
func (b Beside) doubled() Beside {
	for _, s := range []*Spot{&b.Moment, &b.Inner, &b.Outer, &b.Shear} {
		s.Value *= 2
	}
	for _, k := range []*Bracket{&b.Start, &b.End} {
		k.Moment, k.Shear, k.ToeMoment, k.ToeShear = 2*k.Moment, 2*k.Shear, 2*k.ToeMoment, 2*k.ToeShear
	}
	b.Load, b.Fixed, b.Pinned = 2*b.Load, 2*b.Fixed, 2*b.Pinned
	return b
}

// assumptions says what the model of a bottom takes for granted.
func (g *grid) assumptions() []string {
	edge := func(name string, e Edge) string {
		if e.Gives {
			return fmt.Sprintf("The %s is a member from bulkhead to bulkhead and gives way.", name)
		}
		return fmt.Sprintf("The %s is a support that does not give way.", name)
	}
	return []string{
		"The bottom between two bulkheads is a flat grillage, unrolled along its frames; curvature and the fold at the keel are not counted.",
		"Port and starboard are built and loaded alike.",
		edge("keel", g.Keel), edge("chine", g.Chine),
		fmt.Sprintf("Frames are %s at the keel and %s at the chine; stringers are %s at the bulkheads.", g.AtKeel, g.AtChine, g.AtBulkhead),
		"A stringer runs through where it lies inside the chine at both ends of a bay, and ends on a frame elsewhere.",
		"The pressure is the same all over; each field of plating hands its load to its edges by the lines that halve its corners.",
		"Frames and stringers meet in one plane and pass only forces across and what torsion they were given; plating between them carries nothing as a membrane.",
		"The formula beside a frame is that of one span from keel to chine under the load of its own spacing; beside a stringer, of one span between frames.",
		"Deflections are small, and the metal stays elastic; heat beside welds lowers strength and not stiffness.",
	}
}
