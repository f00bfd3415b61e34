package beam

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// drawn is any frame or grillage that stands: a chain of members from a fixed node, with further members between.
func drawn(t *rapid.T) Model {
	m := Model{Kind: rapid.SampledFrom([]Kind{Frame, Grillage}).Draw(t, "kind")}
	n := rapid.IntRange(2, 8).Draw(t, "nodes")
	for i := range n {
		m.Nodes = append(m.Nodes, Node{X: float64(i) + rapid.Float64Range(-0.3, 0.3).Draw(t, "x"), Y: rapid.Float64Range(-2, 2).Draw(t, "y")})
	}
	member := func(from, to int) Member {
		b := Member{From: from, To: to, EI: rapid.Float64Range(5, 50).Draw(t, "EI"), EA: rapid.Float64Range(1e3, 1e4).Draw(t, "EA"), GJ: rapid.Float64Range(1, 20).Draw(t, "GJ")}
		if rapid.Bool().Draw(t, "soft in shear") {
			b.GA = rapid.Float64Range(50, 500).Draw(t, "GA")
		}
		return b
	}
	for i := 1; i < n; i++ {
		m.Members = append(m.Members, member(i-1, i))
	}
	for range rapid.IntRange(0, 4).Draw(t, "more") {
		a, b := rapid.IntRange(0, n-1).Draw(t, "from"), rapid.IntRange(0, n-1).Draw(t, "to")
		if a != b {
			m.Members = append(m.Members, member(a, b))
		}
	}
	m.Supports = []Support{Fixed(0)}
	if rapid.Bool().Draw(t, "spring") {
		m.Supports = append(m.Supports, Support{Node: n - 1, Spring: [3]float64{20, 5, 1}})
	}
	return m
}

// push adds loads of every sort to a model.
func push(t *rapid.T, m Model) Model {
	for i := range m.Members {
		b := &m.Members[i]
		long := m.length(*b)
		q := func(name string) float64 { return rapid.Float64Range(-9, 9).Draw(t, name) }
		load := Varying(long*rapid.Float64Range(0, 0.45).Draw(t, "a"), long*rapid.Float64Range(0.55, 1).Draw(t, "b"), q("first"), q("last"))
		point := Point(long*rapid.Float64Range(0, 1).Draw(t, "at"), q("force"))
		if m.Kind == Frame {
			load.Along, point.Along = [2]float64{q("along"), q("along")}, [2]float64{q("along"), 0}
		}
		b.Loads = append(b.Loads, load, point)
	}
	m.Loads = append(m.Loads, NodeLoad{len(m.Nodes) - 1, [3]float64{rapid.Float64Range(-9, 9).Draw(t, "f"), 1, -2}})
	return m
}

// The moves under loads at nodes, against gonum's dense Cholesky of a matrix written out from the printed stiffness of a beam
// with shear (Przemieniecki, recalled), in place of the products used by the package.
func TestAgainstDenseMatrix(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawn(t)
		n := 3 * len(m.Nodes)
		k := mat.NewSymDense(n, nil)
		for _, b := range m.Members {
			add(k, m, b)
		}
		for _, s := range m.Supports {
			for w := range 3 {
				i := 3*s.Node + w
				k.SetSym(i, i, k.At(i, i)+s.Spring[w])
				if s.Fixed[w] {
					k.SetSym(i, i, k.At(i, i)+1e12)
				}
			}
		}
		f := mat.NewVecDense(n, nil)
		for w := range 3 {
			v := rapid.Float64Range(-9, 9).Draw(t, "force")
			m.Loads = append(m.Loads, NodeLoad{len(m.Nodes) - 1, [3]float64{}})
			m.Loads[w].Force[w] = v
			f.SetVec(n-3+w, v)
		}
		var chol mat.Cholesky
		if !chol.Factorize(k) {
			t.Fatal("the dense matrix is not positive definite")
		}
		var u mat.VecDense
		if err := chol.SolveVecTo(&u, f); err != nil {
			t.Fatal(err)
		}
		s, err := m.Solve()
		if err != nil {
			t.Fatal(err)
		}
		most := mat.Norm(&u, math.Inf(1))
		for i := range n {
			if math.Abs(s.Moves[i/3][i%3]-u.AtVec(i)) > 1e-6*most {
				t.Fatalf("node %d way %d: %v, dense %v", i/3, i%3, s.Moves[i/3][i%3], u.AtVec(i))
			}
		}
	})
}

// add puts the printed 6 × 6 stiffness of a member into a dense matrix.
func add(k *mat.SymDense, m Model, b Member) {
	L := m.length(b)
	phi := 0.0
	if b.GA > 0 {
		phi = 12 * b.EI / b.GA / L / L
	}
	e := b.EI / (L * L * L * (1 + phi))
	axial := b.EA / L
	if m.Kind == Grillage {
		axial = b.GJ / L
	}
	local := mat.NewDense(6, 6, []float64{
		axial, 0, 0, -axial, 0, 0,
		0, 12 * e, 6 * L * e, 0, -12 * e, 6 * L * e,
		0, 6 * L * e, (4 + phi) * L * L * e, 0, -6 * L * e, (2 - phi) * L * L * e,
		-axial, 0, 0, axial, 0, 0,
		0, -12 * e, -6 * L * e, 0, 12 * e, -6 * L * e,
		0, 6 * L * e, (2 - phi) * L * L * e, 0, -6 * L * e, (4 + phi) * L * L * e,
	})
	c, s := (m.Nodes[b.To].X-m.Nodes[b.From].X)/L, (m.Nodes[b.To].Y-m.Nodes[b.From].Y)/L
	r := []float64{c, s, 0, -s, c, 0, 0, 0, 1}
	if m.Kind == Grillage {
		r = []float64{0, c, s, 1, 0, 0, 0, s, -c}
	}
	turn := mat.NewDense(6, 6, nil)
	for i := range 9 {
		turn.Set(i/3, i%3, r[i])
		turn.Set(3+i/3, 3+i%3, r[i])
	}
	var kt, full mat.Dense
	kt.Mul(local, turn)
	full.Mul(turn.T(), &kt)
	at := func(i int) int {
		if i < 3 {
			return 3*b.From + i
		}
		return 3*b.To + i - 3
	}
	for i := range 6 {
		for j := range 6 {
			if at(i) <= at(j) {
				k.SetSym(at(i), at(j), k.At(at(i), at(j))+full.At(i, j))
			}
		}
	}
}

// Every solution closes its balance, and inside each member the laws run to what acts on its end.
func TestBalanceAlways(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, err := push(t, drawn(t)).Solve()
		if err != nil {
			t.Fatal(err)
		}
		for w := range 3 {
			if sum := s.Balance.Loads[w] + s.Balance.Reactions[w]; math.Abs(sum) > 1e-6*(1+math.Abs(s.Balance.Loads[w])) {
				t.Fatalf("way %d: loads %v, reactions %v", w, s.Balance.Loads[w], s.Balance.Reactions[w])
			}
		}
		for _, b := range s.Bars {
			o := b.At(b.Length)
			most := b.Extremes()
			scale := 1 + math.Abs(most.Moment().Value) + math.Abs(b.End.Across)*b.Length + 40*b.Length
			if math.Abs(o.Moment-b.End.Moment) > 1e-6*scale || math.Abs(b.shear(b.Length, false)+b.before(b.Length, 0, true)-b.before(b.Length, 0, false)+b.End.Across) > 1e-6*scale {
				t.Fatalf("end of a bar: moment %v, end %v; shear %v, end %v", o.Moment, b.End.Moment, o.Shear, b.End.Across)
			}
			for i := range 41 {
				x := b.Length * float64(i) / 40
				at := b.At(x)
				if at.Moment > most.MostMoment.Value+1e-9*scale || at.Moment < most.LeastMoment.Value-1e-9*scale || at.Shear > most.MostShear.Value+1e-9*scale || at.Shear < most.LeastShear.Value-1e-9*scale {
					t.Fatalf("at %v: %+v beyond the extremes %+v", x, at, most)
				}
			}
		}
	})
}

// Cutting every member in two changes nothing at the old nodes (a node more is a node more of the same beam).
func TestCuttingMembers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawn(t)
		cut := Model{Kind: m.Kind, Nodes: append([]Node(nil), m.Nodes...), Supports: m.Supports}
		for _, b := range m.Members {
			b.Loads = nil
			part := rapid.Float64Range(0.2, 0.8).Draw(t, "part")
			from, to := m.Nodes[b.From], m.Nodes[b.To]
			cut.Nodes = append(cut.Nodes, Node{X: from.X + part*(to.X-from.X), Y: from.Y + part*(to.Y-from.Y)})
			first, second := b, b
			first.To, second.From = len(cut.Nodes)-1, len(cut.Nodes)-1
			first.Loads, second.Loads = []Load{Uniform(part*m.length(b), -3)}, []Load{Uniform((1-part)*m.length(b), -3)}
			cut.Members = append(cut.Members, first, second)
		}
		for i, b := range m.Members {
			m.Members[i].Loads = []Load{Uniform(m.length(b), -3)}
		}
		one, err := m.Solve()
		if err != nil {
			t.Fatal(err)
		}
		two, err := cut.Solve()
		if err != nil {
			t.Fatal(err)
		}
		most := 1e-6
		for i := range m.Nodes {
			most = math.Max(most, largest(one.Moves[i][:]))
		}
		for i := range m.Nodes {
			for w := range 3 {
				if math.Abs(one.Moves[i][w]-two.Moves[i][w]) > 1e-6*most {
					t.Fatalf("node %d: %v, cut %v", i, one.Moves[i], two.Moves[i])
				}
			}
		}
		for i, b := range one.Bars {
			x := two.Bars[2*i].Length
			if a, c := b.At(x), two.Bars[2*i].At(x); math.Abs(a.Moment-c.Moment) > 1e-5*(1+math.Abs(a.Moment)) || math.Abs(a.Moves-c.Moves) > 1e-6*most {
				t.Fatalf("bar %d at %v: %+v, cut %+v", i, x, a, c)
			}
		}
	})
}

func TestLoose(t *testing.T) {
	for _, r := range []struct {
		what string
		m    Model
		want string
	}{
		{"no support along", span(l, ei, []Support{Roller(0), Roller(1)}, Uniform(l, -w)), "held by nothing along x"},
		{"one pin", span(l, ei, []Support{Pinned(0)}, Uniform(l, -w)), "node 2 (b) is held by nothing along y"},
		{"a node that no member meets", Model{Kind: Frame, Nodes: []Node{{"a", 0, 0}, {"b", 1, 0}, {"off", 4, 4}}, Members: []Member{{From: 0, To: 1, EI: 1, EA: 1}}, Supports: []Support{Fixed(0)}}, "node 3 (off) is held by nothing along"},
		{"a grid that rolls", Model{Kind: Grillage, Nodes: []Node{{"a", 0, 0}, {"b", 1, 0}}, Members: []Member{{From: 0, To: 1, EI: 1}}, Supports: []Support{Held(0)}}, "node 2 (b) is held by nothing along z"},
		{"a moment on a pin", func() Model {
			m := span(l, ei, []Support{Fixed(0), Roller(1)})
			m.Members[0].PinTo = true
			m.Loads = []NodeLoad{{1, [3]float64{0, 0, 3}}}
			return m
		}(), "node 2 (b) is held by nothing against turning"},
		{"a chain of pins", func() Model {
			m := Model{Kind: Frame, Supports: []Support{Pinned(0), Pinned(3)}}
			for i := range 4 {
				m.Nodes = append(m.Nodes, Node{Name: fmt.Sprint("joint ", i), X: float64(i)})
			}
			for i := range 3 {
				m.Members = append(m.Members, Member{From: i, To: i + 1, EI: 1, EA: 1, PinFrom: true, PinTo: true})
			}
			return m
		}(), "is held by nothing along y"},
	} {
		_, err := r.m.Solve()
		if _, loose := err.(Loose); !loose || !strings.Contains(err.Error(), r.want) {
			t.Errorf("%s: %v, want %q", r.what, err, r.want)
		}
	}
	roll := Model{Kind: Grillage, Nodes: []Node{{"a", 0, 0}, {"b", 1, 0.4}}, Members: []Member{{From: 0, To: 1, EI: 3, GJ: 2, Loads: []Load{Uniform(math.Hypot(1, 0.4), -1)}}}, Supports: []Support{Held(0), Held(1)}}
	if _, err := roll.Solve(); err != nil {
		t.Errorf("a bar on two supports that may roll about itself: %v", err)
	}
}

func TestModelFaults(t *testing.T) {
	_, err := Model{Kind: "truss", Nodes: []Node{{"a", 0, 0}, {"b", 0, 0}, {"c", math.NaN(), 1}}, Members: []Member{{Name: "x", From: 0, To: 1, EI: -1}, {From: 0, To: 7}},
		Supports: []Support{{Node: 9}, {Node: 0, Spring: [3]float64{-1, 0, 0}}}, Loads: []NodeLoad{{0, [3]float64{math.Inf(1), 0, 0}}}}.Solve()
	want := `model: kind "truss" is not known; write frame or grillage
node 3 (c): lies at (NaN, 1), which is no place
member 1 (x): has no length: node 1 (a) and node 2 (b) lie in one place
member 1 (x): bending stiffness -1 kN·m², must be above nought
member 2: node 7 is not there; there are 3
support: node 9 is not there; there are 3
support of node 1 (a): springs [-1 0 0], none may be below nought
load on node 1 (a): [+Inf 0 0] is no force`
	if err == nil || err.Error() != want {
		t.Errorf("%v\nwant\n%s", err, want)
	}
	_, err = span(l, ei, []Support{Fixed(0)}, Varying(0.5, 0.2, 1, 1), Point(2, 1), Uniform(math.NaN(), 3)).Solve()
	if err == nil || strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("%v, want three faults", err)
	}
}
