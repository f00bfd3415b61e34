package beam

import (
	"fmt"
	"math"
)

// Loose is a structure of which a part moves without bending anything. It is an error.
type Loose struct {
	Node string // that moves most
	Way  string // in which way: "along x", "turns"
}

// Error names the node and the way, and what would hold it.
func (l Loose) Error() string {
	return fmt.Sprintf("%s is held by nothing %s: a support, a member or a joint without a pin is missing", l.Node, l.Way)
}

// ways names the ways of each kind.
var ways = map[Kind][3]string{
	Frame:    {"along x", "along y", "against turning"},
	Grillage: {"along z", "against turning about x", "against turning about y"},
}

// loose looks at a row that elimination found held by nothing. It is nil where that is harmless: where nodes only turn,
// as one with pins all round or one of a bar that rolls about itself, and no load acts on that turn.
func (s *solver) loose(row int) *Loose {
	mode := s.eqs.mode(row)
	place, turn := -1, -1
	work, effort := 0.0, 0.0
	for i, v := range mode {
		effort += math.Abs(s.loads[i] * v)
		work += float64(s.loads[i] * v)
		if s.turns(i) {
			turn = larger(mode, turn, i)
		} else if math.Abs(v) > 1e-6 {
			place = larger(mode, place, i)
		}
	}
	if place < 0 && math.Abs(work) <= 1e-9*math.Max(effort, 1e-9*largest(s.loads)) {
		return nil
	}
	if place < 0 {
		place = turn
	}
	owner := s.owner[place]
	return &Loose{Node: s.node(owner / 3), Way: ways[s.Kind][owner%3]}
}

// larger gives the place of the larger of two values, the earlier one where they are alike.
func larger(values []float64, at, i int) int {
	if at < 0 || math.Abs(values[i]) > math.Abs(values[at])*(1+1e-9) {
		return i
	}
	return at
}

// turns reports whether an equation is that of a turn.
func (s *solver) turns(i int) bool {
	way := s.owner[i] % 3
	return way == 2 || (s.Kind == Grillage && way == 1)
}
