package beam

import (
	"fmt"
	"math"
)

// Solution is how a structure carries its loads.
type Solution struct {
	Model     Model
	Moves     [][3]float64 // of each node, m and rad, in the order of the ways of its kind
	Bars      []Bar        // of each member
	Reactions []Reaction   // of each support, in the order given
	Balance   Balance
}

// Reaction is what a support does to the structure, kN and kN·m.
type Reaction struct {
	Node  int
	Force [3]float64
}

// solver is a model being solved.
type solver struct {
	Model
	bars  []bar
	slot  []int // for each node and way its equation, -1 where it is held
	owner []int // for each equation its node and way
	loads []float64
	eqs   *equations
}

// Solve gives the moves, the forces in every member and the reactions. Errors: Faults with all that is wrong with the model;
// a Loose that names a node that nothing holds; and a balance that does not close, which is a fault of this package.
func (m Model) Solve() (Solution, error) {
	if faults := m.faults(); len(faults) > 0 {
		return Solution{}, faults
	}
	s := &solver{Model: m, bars: make([]bar, len(m.Members))}
	for i, b := range m.Members {
		s.bars[i] = m.prepare(b)
	}
	s.number()
	s.assemble()
	s.load()
	if err := s.factor(); err != nil {
		return Solution{}, err
	}
	u := append([]float64(nil), s.loads...)
	s.eqs.solve(u)
	out := s.gather(u)
	if out.Balance.Off > balanceTolerance {
		return Solution{}, fmt.Errorf("the balance of the solution does not close: %.3g of the loads are left over", out.Balance.Off)
	}
	return out, nil
}

// number gives every way in which a node may move its equation, node by node in a narrow order.
func (s *solver) number() {
	held := make([]bool, 3*len(s.Nodes))
	for _, sup := range s.Supports {
		for w, fixed := range sup.Fixed {
			held[3*sup.Node+w] = held[3*sup.Node+w] || fixed
		}
	}
	place := s.order()
	at := make([]int, len(place))
	for node, p := range place {
		at[p] = node
	}
	s.slot = make([]int, len(held))
	for _, node := range at {
		for w := range 3 {
			s.slot[3*node+w] = -1
			if !held[3*node+w] {
				s.slot[3*node+w] = len(s.owner)
				s.owner = append(s.owner, 3*node+w)
			}
		}
	}
}

// slots gives the six equations of a member.
func (s *solver) slots(b *bar) [6]int {
	var out [6]int
	for w := range 3 {
		out[w], out[3+w] = s.slot[3*b.From+w], s.slot[3*b.To+w]
	}
	return out
}

// assemble adds up the stiffness of all members and springs.
func (s *solver) assemble() {
	first := make([]int, len(s.owner))
	for i := range first {
		first[i] = i
	}
	for k := range s.bars {
		slots := s.slots(&s.bars[k])
		least := len(first)
		for _, i := range slots {
			if i >= 0 {
				least = min(least, i)
			}
		}
		for _, i := range slots {
			if i >= 0 {
				first[i] = min(first[i], least)
			}
		}
	}
	for node := range s.Nodes { // the ways of one node may meet in a slanting member
		for w := range 3 {
			for v := range 3 {
				if i, j := s.slot[3*node+w], s.slot[3*node+v]; i >= 0 && j >= 0 {
					first[i] = min(first[i], j)
				}
			}
		}
	}
	s.eqs = newEquations(first)
	for k := range s.bars {
		s.stiffen(&s.bars[k])
	}
	for _, sup := range s.Supports {
		for w, spring := range sup.Spring {
			if i := s.slot[3*sup.Node+w]; i >= 0 {
				s.eqs.add(i, i, spring)
			}
		}
	}
}

// stiffen adds one member, turned into the axes of the structure.
func (s *solver) stiffen(b *bar) {
	local, turn, slots := b.local(), b.turned(), s.slots(b)
	for i, row := range slots {
		for j, col := range slots {
			if row < 0 || col < 0 || row < col {
				continue
			}
			sum := 0.0
			for p := range 3 {
				for q := range 3 {
					sum += float64(turn[p][i%3] * local[i/3*3+p][j/3*3+q] * turn[q][j%3])
				}
			}
			s.eqs.add(row, col, sum)
		}
	}
}

// load collects what acts on the equations: loads at nodes, and what members with held ends hand on.
func (s *solver) load() {
	s.loads = make([]float64, len(s.owner))
	for _, l := range s.Loads {
		for w, f := range l.Force {
			if i := s.slot[3*l.Node+w]; i >= 0 {
				s.loads[i] += f
			}
		}
	}
	for k := range s.bars {
		b := &s.bars[k]
		ends, slots := b.ends([6]float64{}), s.slots(b)
		force := b.global(ends)
		for i, slot := range slots {
			if slot >= 0 {
				s.loads[slot] -= force[i]
			}
		}
	}
}

// global turns forces on the ends of a member into the axes of the structure.
func (p *bar) global(ends [6]float64) [6]float64 {
	turn := p.turned()
	var out [6]float64
	for i := range 6 {
		for q := range 3 {
			out[i] += float64(turn[q][i%3] * ends[i/3*3+q])
		}
	}
	return out
}

// own turns moves of the two nodes into the axes of the member.
func (p *bar) own(moves [6]float64) [6]float64 {
	turn := p.turned()
	var out [6]float64
	for i := range 6 {
		for q := range 3 {
			out[i] += float64(turn[i%3][q] * moves[i/3*3+q])
		}
	}
	return out
}

// factor makes the equations ready, and gives a Loose where the structure can move without bending anything.
func (s *solver) factor() error {
	var loose *Loose
	bad := s.eqs.factor(func(i int) bool {
		loose = s.loose(i)
		return loose == nil
	})
	if bad >= 0 {
		return *loose
	}
	return nil
}

// largest gives the largest size of the values.
func largest(values []float64) float64 {
	most := 0.0
	for _, v := range values {
		most = math.Max(most, math.Abs(v))
	}
	return most
}
