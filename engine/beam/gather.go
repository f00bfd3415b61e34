package beam

import "math"

// Balance holds the sum of all loads against the sum of all reactions, in the ways of the kind; moments are about the
// origin. Off is the greatest difference, and the greatest force left over at any node, as a part of the loads.
type Balance struct {
	Loads     [3]float64
	Reactions [3]float64
	Off       float64
}

// balanceTolerance is what rounding may leave; a solution beyond it is not given.
const balanceTolerance = 1e-6

// gather turns the solved moves into what the structure does.
func (s *solver) gather(u []float64) Solution {
	out := Solution{Model: s.Model, Moves: make([][3]float64, len(s.Nodes)), Bars: make([]Bar, len(s.bars))}
	for i, owner := range s.owner {
		out.Moves[owner/3][owner%3] = u[i]
	}
	left := make([][3]float64, len(s.Nodes)) // what members take from each node, less its loads
	for k := range s.bars {
		b := &s.bars[k]
		var moves [6]float64
		for w := range 3 {
			moves[w], moves[3+w] = out.Moves[b.From][w], out.Moves[b.To][w]
		}
		own := b.own(moves)
		ends := b.ends(own)
		out.Bars[k] = b.result(own, ends)
		force := b.global(ends)
		for w := range 3 {
			left[b.From][w] += force[w]
			left[b.To][w] += force[3+w]
		}
	}
	for _, l := range s.Loads {
		for w, f := range l.Force {
			left[l.Node][w] -= f
		}
	}
	s.react(&out, left)
	s.weigh(&out, left)
	return out
}

// react gives each support what members leave over at its node: springs by their push, fixed ways the rest. Two supports of
// one node that are fixed in one way share: the first takes it.
func (s *solver) react(out *Solution, left [][3]float64) {
	for _, sup := range s.Supports {
		r := Reaction{Node: sup.Node}
		for w := range 3 {
			switch {
			case sup.Fixed[w]:
				r.Force[w] = left[sup.Node][w]
			case s.slot[3*sup.Node+w] >= 0:
				r.Force[w] = -sup.Spring[w] * out.Moves[sup.Node][w]
			}
			left[sup.Node][w] -= r.Force[w]
		}
		out.Reactions = append(out.Reactions, r)
	}
}

// weigh sums loads and reactions. What is left at a node after its reactions must be nought.
func (s *solver) weigh(out *Solution, left [][3]float64) {
	for _, l := range s.Loads {
		s.count(&out.Balance.Loads, s.Nodes[l.Node].X, s.Nodes[l.Node].Y, l.Force)
	}
	scale := 0.0
	for k := range s.bars {
		scale += s.carried(&s.bars[k], &out.Balance.Loads)
	}
	for _, r := range out.Reactions {
		s.count(&out.Balance.Reactions, s.Nodes[r.Node].X, s.Nodes[r.Node].Y, r.Force)
	}
	for _, l := range s.Loads {
		scale += largest(l.Force[:])
	}
	arm := 1.0
	for _, n := range s.Nodes {
		arm = math.Max(arm, math.Max(math.Abs(n.X), math.Abs(n.Y)))
	}
	off := 0.0
	for w := range 3 {
		off = math.Max(off, math.Abs(out.Balance.Loads[w]+out.Balance.Reactions[w]))
	}
	for _, l := range left {
		off = math.Max(off, largest(l[:]))
	}
	if scale > 0 {
		out.Balance.Off = off / (scale * arm)
	}
}

// count adds a force at a place to a sum of forces and moments about the origin.
func (s *solver) count(sum *[3]float64, x, y float64, f [3]float64) {
	sum[0] += f[0]
	if s.Kind == Frame {
		sum[1] += f[1]
		sum[2] += f[2] + float64(x*f[1]) - float64(y*f[0])
		return
	}
	sum[1] += f[1] + float64(y*f[0])
	sum[2] += f[2] - float64(x*f[0])
}

// carried adds the loads along a member to the sum, from the loads themselves and not from what the member handed on, and
// gives the sum of their sizes.
func (s *solver) carried(b *bar, sum *[3]float64) float64 {
	size := 0.0
	from := s.Nodes[b.From]
	for _, l := range b.Loads {
		for _, part := range l.split() {
			size += math.Abs(part.across) + math.Abs(part.along)
			s.count(sum, from.X+float64(b.c*part.at), from.Y+float64(b.s*part.at), s.pushing(b, part.across, part.along))
		}
	}
	return size
}

// pushing gives a force across and along a member in the axes of the structure.
func (s *solver) pushing(b *bar, across, along float64) [3]float64 {
	if s.Kind == Grillage {
		return [3]float64{across, 0, 0}
	}
	return [3]float64{float64(b.c*along) - float64(b.s*across), float64(b.s*along) + float64(b.c*across), 0}
}

// whole is a part of a load as one force and where it acts.
type whole struct{ at, across, along float64 }

// split gives a load as forces with the same sum and moment: a point load itself, a spread load as its two triangles.
func (l Load) split() []whole {
	if l.Point {
		return []whole{{l.From, l.Across[0], l.Along[0]}}
	}
	long := l.To - l.From
	return []whole{
		{l.From + long/3, l.Across[0] * long / 2, l.Along[0] * long / 2},
		{l.From + 2*long/3, l.Across[1] * long / 2, l.Along[1] * long / 2},
	}
}
