package scantling

import (
	"math"
	"slices"

	"hullfile/engine/beam"
	"hullfile/engine/grid"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// structure turns rings and grillages of the grid into beam models of the members that are judged.
type structure struct {
	judge *judge
	all   []held
	at    map[string]int // of the records of members, into all
}

// ordinates is how many places along each stretch are kept, its ends with it.
const ordinates = 11

// span is one stretch with the member that judges it.
type span struct {
	grid.Span
	judged string
	member *held
	stiff  beam.Stiffness
}

// spans finds the members of stretches; why says which of them has no stiffness that is shown.
func (s *structure) spans(all []grid.Span) (out []span, why string) {
	for _, one := range all {
		judged := one.Member
		if name, drawn := s.judge.judgedAs[one.Member]; drawn {
			judged = name
		}
		i, known := s.at[judged]
		if !known {
			stiff, ok := s.unjudged(one)
			if !ok {
				return nil, "a part of section " + one.Section + " in the " + one.Zone + " is neither judged nor on record"
			}
			out = append(out, span{one, "", nil, stiff})
			continue
		}
		m := &s.all[i]
		if m.Fitted.I <= 0 || m.Pressure <= 0 {
			return nil, "member " + judged + " is not shown"
		}
		out = append(out, span{one, judged, m, beam.StiffnessOf(m.Fitted, unit.MPa(s.young(m.bar)), poisson)})
	}
	return out, ""
}

// unjudged is the stiffness of a part that no record judges, such as a keel bar between frames: with the plate that works
// with it by plate theory.
func (s *structure) unjudged(one grid.Span) (beam.Stiffness, bool) {
	b := s.judge.bars.found[one.Section]
	if b == nil || b.wrong != "" || one.Width <= 0 {
		return beam.Stiffness{}, false
	}
	breadth := unit.MM(0)
	if one.Attached > 0 {
		breadth, _ = section.Lag(unit.MM(one.Width*1000), unit.MM(one.Width*1000), poisson)
	}
	f, err := b.with(unit.MM(one.Attached), breadth)
	if err != nil {
		return beam.Stiffness{}, false
	}
	return beam.StiffnessOf(f.props, unit.MPa(s.young(b)), poisson), true
}

// young is the modulus of elasticity of a bar, N/mm².
func (s *structure) young(b *bar) float64 {
	r := s.judge.governing()
	if r.metals == nil {
		return usualYoung
	}
	of, _ := r.metals.of(b.record.Alloy, unit.MM(b.thickness()), b.form())
	if e := of.young(); e > 0 {
		return e
	}
	return usualYoung
}

// usualYoung stands in where the alloy is not known, which its own check says. Aluminium, N/mm²; recalled.
const usualYoung = 70000

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

// interior is a place inside the ring, on the centre line halfway up.
func interior(all []grid.Joint) beam.Place {
	low, high := math.Inf(1), math.Inf(-1)
	for _, j := range all {
		low, high = math.Min(low, j.At.Z), math.Max(high, j.At.Z)
	}
	return beam.Place{Y: 0, Z: (low + high) / 2}
}

// ringMember is one stretch under the pressure of its own zone, pressed inward.
func ringMember(s *span, r *grid.Ring, middle beam.Place) beam.Member {
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
	return p.Z + float64((v.X-p.X)/(q.X-p.X))*(q.Z-p.Z)
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

// solve reckons a model and keeps what happens along it.
func (s *structure) solve(m *Model, b beam.Model, all []span, joints []grid.Joint) {
	solution, err := b.Solve()
	if err != nil {
		m.Why = err.Error()
		return
	}
	m.Solved = true
	for i := range all {
		m.Bars = append(m.Bars, along(&all[i], solution.Bars[i], &b.Members[i], joints))
	}
	for _, r := range solution.Reactions {
		m.Reactions = append(m.Reactions, ModelReaction{Joint: joints[r.Node].Name, At: joints[r.Node].At, Force: r.Force})
	}
}

// along reads a bar at even places, and where its moment and its shear are greatest.
func along(s *span, bar beam.Bar, m *beam.Member, joints []grid.Joint) ModelBar {
	out := ModelBar{Member: s.Member, Judged: s.judged, From: joints[s.From].Name, To: joints[s.To].Name, Length: bar.Length,
		Ends: [2]hydrostatics.Vector{joints[s.From].At, joints[s.To].At}}
	inward := 1.0
	for _, l := range m.Loads {
		for _, v := range l.Across {
			if math.Abs(v) > out.Load {
				out.Load = math.Abs(v)
				inward = math.Copysign(1, v)
			}
		}
	}
	e := bar.Extremes()
	places := make([]float64, 0, ordinates+2)
	for i := range ordinates {
		places = append(places, bar.Length*float64(i)/(ordinates-1))
	}
	for _, x := range append(places, e.Moment().At, e.Shear().At) {
		out.At = insert(out.At, point(bar.At(x), inward))
	}
	return out
}

func point(o beam.Ordinate, inward float64) ModelPoint {
	return ModelPoint{At: settled(o.At), Moment: settled(inward * o.Moment), Shear: settled(inward * o.Shear), Moves: unit.MM(settled(inward * o.Moves * 1000))}
}

// insert keeps the points in order, each place once.
func insert(all []ModelPoint, p ModelPoint) []ModelPoint {
	for i := range all {
		switch {
		case math.Abs(all[i].At-p.At) < 1e-6:
			return all
		case p.At < all[i].At:
			return append(all[:i], append([]ModelPoint{p}, all[i:]...)...)
		}
	}
	return append(all, p)
}
