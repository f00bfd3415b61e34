package scantling

import (
	"math"
	"slices"

	"hullfile/engine/beam"
	"hullfile/engine/grid"
)

// ring solves one frame as a plane frame, one half of it: what lies on the centre line neither moves across nor turns,
// because the other side pushes back alike.
func (s *structure) ring(r *grid.Ring) Model {
	m := Model{Name: "ring at frame " + r.Frame, Kind: beam.Frame, Frame: r.Frame, Assumptions: ringAssumptions}
	all, why := s.spans(r.Spans)
	if why != "" {
		m.Why = why
		return m
	}
	b := beam.Model{Kind: beam.Frame}
	for _, j := range r.Joints {
		b.Nodes = append(b.Nodes, beam.Node{Name: j.Name, X: j.At.Y, Y: j.At.Z})
	}
	b.Supports = ringSupports(r)
	middle := interior(r.Joints)
	for i := range all {
		b.Members = append(b.Members, ringMember(&all[i], r, middle))
	}
	s.solve(&m, b, all, r.Joints)
	return m
}

// ringSupports hold the corners where two plates meet, each being stiff in its own plane, and what a girder holds up.
func ringSupports(r *grid.Ring) []beam.Support {
	var out []beam.Support
	for i, j := range r.Joints {
		middle := math.Abs(j.At.Y) < 1e-6
		h := beam.Support{Node: i, Fixed: [3]bool{middle, false, middle && j.Fixed}}
		switch {
		case j.Name == "keel" || j.Name == "chine" || j.Name == "outer chine":
			h.Fixed[0], h.Fixed[1] = true, true
		case j.Name == "sheer" && decked(r):
			h.Fixed[0], h.Fixed[1] = true, true
		case j.Held != "":
			h.Fixed[1] = true
		}
		if h.Fixed != [3]bool{} {
			out = append(out, h)
		}
	}
	return out
}

// stiff reports whether a joint passes moments: it is written so, or a bar hangs on it that nothing else holds.
func stiff(r *grid.Ring, joint int) bool {
	if r.Joints[joint].Fixed {
		return true
	}
	return slices.ContainsFunc(r.Spans, func(s grid.Span) bool {
		return s.From == joint && hangs(r, s.To) || s.To == joint && hangs(r, s.From)
	})
}

// hangs reports whether nothing but one bar meets at a joint, and nothing holds it.
func hangs(r *grid.Ring, joint int) bool {
	meet := 0
	for _, s := range r.Spans {
		if s.From == joint || s.To == joint {
			meet++
		}
	}
	j := r.Joints[joint]
	held := j.Held != "" || math.Abs(j.At.Y) < 1e-6 || slices.Contains([]string{"keel", "chine", "outer chine"}, j.Name) || j.Name == "sheer" && decked(r)
	return meet == 1 && !held
}

// decked reports whether a ring has a deck beam.
func decked(r *grid.Ring) bool {
	for _, s := range r.Spans {
		if s.Zone == "deck" {
			return true
		}
	}
	return false
}

// place is a point of the section.
type place struct{ Y, Z float64 }

// interior is a place inside the ring, on the centre line halfway up.
func interior(all []grid.Joint) place {
	low, high := math.Inf(1), math.Inf(-1)
	for _, j := range all {
		low, high = math.Min(low, j.At.Z), math.Max(high, j.At.Z)
	}
	return place{Y: 0, Z: (low + high) / 2}
}

// ringMember is one stretch under the pressure of its own zone, pressed inward.
func ringMember(s *span, r *grid.Ring, middle place) beam.Member {
	a, b := r.Joints[s.From].At, r.Joints[s.To].At
	inward := 1.0
	if float64((b.Y-a.Y)*(middle.Z-a.Z))-float64((b.Z-a.Z)*(middle.Y-a.Y)) < 0 {
		inward = -1
	}
	m := beam.Member{Name: s.Member, From: s.From, To: s.To, EI: s.stiff.EI, EA: s.stiff.EA, GA: s.stiff.GA,
		PinFrom: !stiff(r, s.From), PinTo: !stiff(r, s.To)}
	if s.member != nil {
		m.Loads = []beam.Load{beam.Uniform(math.Hypot(b.Y-a.Y, b.Z-a.Z), inward*s.member.Pressure*s.Width)}
	}
	return m
}

var ringAssumptions = []string{
	"The ring is a plane frame of straight bars; what it shares with its neighbours through stringers is not counted.",
	"Each part carries the pressure that the governing sheet puts on it as a member, over its own spacing, all at once.",
	"Keel and chine do not move, nor does the sheer where there is a deck beam: two plates that meet hold their edge. A girder or support under a part holds it up.",
	"A bar whose other end hangs free is fixed at its joint, however that is written, because nothing else would hold it.",
	"Both sides are built and loaded alike; nothing on the centre line turns where the joint there is fixed.",
	"Brackets stiffen nothing; deflections are small, and the metal stays elastic.",
}
