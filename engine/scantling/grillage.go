package scantling

import (
	"math"

	"hullfile/engine/beam"
	"hullfile/engine/grid"
	"hullfile/engine/hydrostatics"
)

// grillage solves one bottom between two bulkheads.
func (s *structure) grillage(g *grid.Grillage) Model {
	m := Model{Name: g.Name, Kind: beam.Grillage, Assumptions: grillageAssumptions}
	frames, why := s.spans(g.Frames)
	if why != "" {
		m.Why = why
		return m
	}
	lengths, why := s.spans(g.Lengths)
	if why != "" {
		m.Why = why
		return m
	}
	for i := range frames {
		if frames[i].member != nil {
			m.Pressure = math.Max(m.Pressure, frames[i].member.Pressure)
		}
	}
	b := beam.Model{Kind: beam.Grillage}
	girth := girths(g.Joints)
	for i, j := range g.Joints {
		b.Nodes = append(b.Nodes, beam.Node{Name: j.Name, X: j.At.X, Y: girth[i]})
	}
	b.Supports = grillageSupports(g)
	for i := range frames {
		b.Members = append(b.Members, pressed(&frames[i], b.Nodes, m.Pressure))
	}
	for i := range lengths {
		b.Members = append(b.Members, pressed(&lengths[i], b.Nodes, m.Pressure))
	}
	s.solve(&m, b, append(frames, lengths...), g.Joints)
	return m
}

// girths unroll the joints: the distance of each from the keel at its place along the boat, across the bottom.
func girths(all []grid.Joint) []float64 {
	out := make([]float64, len(all))
	for i, j := range all {
		out[i] = math.Hypot(j.At.Y, j.At.Z-keelAt(all, j.At))
	}
	return out
}

// keelAt is the height of the keel at a place, between the keel joints on both sides of it or on a line through the
// nearest two.
func keelAt(all []grid.Joint, v hydrostatics.Vector) float64 {
	var near [2]*grid.Joint
	for i := range all {
		j := &all[i]
		if j.Name != "keel" {
			continue
		}
		switch {
		case near[0] == nil || math.Abs(j.At.X-v.X) < math.Abs(near[0].At.X-v.X):
			near[0], near[1] = j, near[0]
		case near[1] == nil || math.Abs(j.At.X-v.X) < math.Abs(near[1].At.X-v.X):
			near[1] = j
		}
	}
	switch {
	case near[0] == nil:
		return v.Z
	case near[1] == nil || near[0].At.X == near[1].At.X:
		return near[0].At.Z
	}
	p, q := near[0].At, near[1].At
	return p.Z + float64((v.X-p.X)/(q.X-p.X)*(q.Z-p.Z))
}

// grillageSupports hold what keel, chine and bulkheads hold. A frame turns about x and a stringer about y; an end that is
// not fixed turns freely.
func grillageSupports(g *grid.Grillage) []beam.Support {
	var out []beam.Support
	for i, j := range g.Joints {
		if j.Held == "" {
			continue
		}
		edge := j.Held == "keel" || j.Held == "chine"
		out = append(out, beam.Support{Node: i, Fixed: [3]bool{true, edge && j.Fixed, !edge && j.Fixed}})
	}
	return out
}

// pressed is one stretch with the load that the fields of plating beside it hand over by the lines that halve their
// corners: over a breadth less than its length the load rises over half that breadth at each end, else to the middle.
func pressed(s *span, nodes []beam.Node, pressure float64) beam.Member {
	a, b := nodes[s.From], nodes[s.To]
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	m := beam.Member{Name: s.Member, From: s.From, To: s.To, EI: s.stiff.EI, GA: s.stiff.GA}
	rise := math.Min(length, s.Width) / 2
	top := pressure * 2 * rise // of the fields on both sides
	m.Loads = append(m.Loads, beam.Varying(0, rise, 0, top), beam.Varying(length-rise, length, top, 0))
	if length-rise > rise+1e-9 {
		m.Loads = append(m.Loads, beam.Varying(rise, length-rise, top, top))
	}
	return m
}

var grillageAssumptions = []string{
	"The bottom between two bulkheads is a flat grillage, unrolled along its frames; curvature and the fold at the keel are not counted.",
	"Keel, chine and bulkheads are supports that do not give way; port and starboard are built and loaded alike.",
	"The pressure is the same all over: the greatest that the governing sheet puts on one of its frames as a member.",
	"Each field of plating hands its load to its edges by the lines that halve its corners; the edges at keel, chine and bulkheads take theirs at once.",
	"Frames and stringers meet in one plane and pass only forces across; torsion, and plating as a membrane, are not counted.",
	"Brackets stiffen nothing; deflections are small, and the metal stays elastic.",
}
