package beam

import (
	"fmt"
	"math"
	"testing"
)

// crossing is a grid of beams along x, one for each of ys, and along y, one for each of xs, over a rectangle from nought
// to length and breadth, on simple supports round it. Nodes row by row.
func crossing(length, breadth float64, xs, ys []float64, alongX, alongY Member) Model {
	m := Model{Kind: Grillage}
	at := map[[2]int]int{}
	node := func(i, j int, x, y float64) int {
		if n, ok := at[[2]int{i, j}]; ok {
			return n
		}
		at[[2]int{i, j}] = len(m.Nodes)
		m.Nodes = append(m.Nodes, Node{Name: fmt.Sprintf("%d/%d", i, j), X: x, Y: y})
		return len(m.Nodes) - 1
	}
	px := append(append([]float64{0}, xs...), length)
	py := append(append([]float64{0}, ys...), breadth)
	for j := 1; j <= len(ys); j++ {
		for i := 1; i < len(px); i++ {
			b := alongX
			b.From, b.To = node(i-1, j, px[i-1], py[j]), node(i, j, px[i], py[j])
			m.Members = append(m.Members, b)
		}
		m.Supports = append(m.Supports, Held(node(0, j, 0, py[j])), Held(node(len(px)-1, j, length, py[j])))
	}
	for i := 1; i <= len(xs); i++ {
		for j := 1; j < len(py); j++ {
			b := alongY
			b.From, b.To = node(i, j-1, px[i], py[j-1]), node(i, j, px[i], py[j])
			m.Members = append(m.Members, b)
		}
		m.Supports = append(m.Supports, Held(node(i, 0, px[i], 0)), Held(node(i, len(py)-1, px[i], breadth)))
	}
	return m
}

// even gives n places that part a length evenly.
func even(n int, length float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = length * float64(i+1) / float64(n+1)
	}
	return out
}

// find gives the node at a place.
func find(m Model, x, y float64) int {
	for i, n := range m.Nodes {
		if math.Hypot(n.X-x, n.Y-y) < 1e-9 {
			return i
		}
	}
	return -1
}

func TestGrillageStatics(t *testing.T) {
	arm := Model{Kind: Grillage, Nodes: []Node{{"wall", 0, 0}, {"tip", l, 0}}, Members: []Member{{From: 0, To: 1, EI: ei, GJ: 44}},
		Supports: []Support{Fixed(0)}, Loads: []NodeLoad{{1, [3]float64{-p, 2, 0}}}}
	s := solved(t, arm)
	hold(t, "cantilever with a torque: Pl³/3EI, Tl/GJ", row{"tip", s.Moves[1][0], -p * l * l * l / 3 / ei}, row{"twist", s.Moves[1][1], 2 * l / 44}, row{"slope", s.Moves[1][2], p * l * l / 2 / ei},
		row{"wall", s.Reactions[0].Force[0], p}, row{"wall about x", s.Reactions[0].Force[1], -2}, row{"wall about y", s.Reactions[0].Force[2], -p * l}, row{"twist in the bar", s.Bars[0].End.Twist, 2})

	// Two beams that cross in their middles share a load as 48EI/L³.
	m := crossing(2, 1.2, []float64{1}, []float64{0.6}, Member{EI: 100}, Member{EI: 60})
	m.Loads = []NodeLoad{{find(m, 1, 0.6), [3]float64{-p, 0, 0}}}
	s = solved(t, m)
	k1, k2 := 48*100/8.0, 48*60/math.Pow(1.2, 3)
	hold(t, "two pinned beams crossed: P/(48EI₁/L₁³ + 48EI₂/L₂³)", row{"middle", s.Moves[find(m, 1, 0.6)][0], -p / (k1 + k2)}, row{"end of the first", s.Reactions[0].Force[0], p * k1 / (k1 + k2) / 2})

	// A bent cantilever out of plane: the first leg bends and twists, the second bends.
	elbow := Model{Kind: Grillage, Nodes: []Node{{"wall", 0, 0}, {"elbow", 1, 0}, {"tip", 1, 0.5}}, Supports: []Support{Fixed(0)},
		Members: []Member{{From: 0, To: 1, EI: 20, GJ: 8}, {From: 1, To: 2, EI: 30, GJ: 8}}, Loads: []NodeLoad{{2, [3]float64{-p, 0, 0}}}}
	s = solved(t, elbow)
	hold(t, "own work: P(a³/3EI₁ + b³/3EI₂ + ab²/GJ)", row{"tip", s.Moves[2][0], -p * (1.0/60 + 0.125/90 + 0.25/8)})
}

// A grid of n by m beams on simple supports under any loads at its crossings, by finite Fourier series: an own and independent
// solution. For forces at even spacing a on one pinned beam that run as sin(k i π/(n+1)) Clapeyron's equation of three
// moments gives w = F a³ (2 + cos φ)/(12 EI (1 - cos φ)²), φ = kπ/(n+1); both sets of beams share each term by stiffness.
// The method is that of Timoshenko for a grid of beams; recalled, worked out anew here.
func TestGridAgainstFourier(t *testing.T) {
	const n, m, length, breadth, ex, ey = 14, 10, 7.0, 2.2, 40.0, 95.0
	ax, ay := length/(n+1), breadth/(m+1)
	stiff := func(ei, a float64, k, count int) float64 {
		c := math.Cos(float64(k) * math.Pi / float64(count+1))
		return 12 * ei * (1 - c) * (1 - c) / (a * a * a * (2 + c))
	}
	load := func(i, j int) float64 { return -1 - 0.2*float64(i) + 0.1*float64(j*j) }
	want := func(x, y int) float64 {
		sum := 0.0
		for k := 1; k <= n; k++ {
			for q := 1; q <= m; q++ {
				term := 0.0
				for i := 1; i <= n; i++ {
					for j := 1; j <= m; j++ {
						term += load(i, j) * math.Sin(float64(k*i)*math.Pi/(n+1)) * math.Sin(float64(q*j)*math.Pi/(m+1))
					}
				}
				term *= 4.0 / ((n + 1) * (m + 1)) / (stiff(ex, ax, k, n) + stiff(ey, ay, q, m))
				sum += term * math.Sin(float64(k*x)*math.Pi/(n+1)) * math.Sin(float64(q*y)*math.Pi/(m+1))
			}
		}
		return sum
	}
	grid := crossing(length, breadth, even(n, length), even(m, breadth), Member{EI: ex}, Member{EI: ey})
	for i := 1; i <= n; i++ {
		for j := 1; j <= m; j++ {
			grid.Loads = append(grid.Loads, NodeLoad{find(grid, float64(i)*ax, float64(j)*ay), [3]float64{load(i, j), 0, 0}})
		}
	}
	s := solved(t, grid)
	for _, at := range [][2]int{{1, 1}, {7, 5}, {8, 6}, {14, 10}, {3, 9}, {12, 2}} {
		w := want(at[0], at[1])
		got := s.Moves[find(grid, float64(at[0])*ax, float64(at[1])*ay)][0]
		if math.Abs(got-w) > 1e-8*math.Abs(w) {
			t.Errorf("crossing %v moves %.10g, by Fourier %.10g", at, got, w)
		}
	}
}

// A long beam on many crossing beams is a beam on an elastic bed: Hetényi, Beams on Elastic Foundation, 1946, a point load on
// an endless beam: w = Pλ/2k, M = P/4λ, λ⁴ = k/4EI, with k = 48 EI_c/(L_c³ a) of cross beams at a spacing a; recalled.
func TestLongBeamOnCrossBeams(t *testing.T) {
	const n, spacing, cross, eiLong, eiCross = 161, 0.05, 2.0, 2.0, 1.0
	length := spacing * (n + 1)
	m := crossing(length, cross, even(n, length), []float64{cross / 2}, Member{EI: eiLong}, Member{EI: eiCross})
	middle := find(m, length/2, cross/2)
	m.Loads = []NodeLoad{{middle, [3]float64{-p, 0, 0}}}
	s := solved(t, m)
	k := 48 * eiCross / math.Pow(cross, 3) / spacing
	lambda := math.Pow(k/4/eiLong, 0.25)
	if lambda*length < 4*math.Pi {
		t.Fatalf("λL = %v: the beam is not long", lambda*length)
	}
	if w := -p * lambda / 2 / k; math.Abs(s.Moves[middle][0]-w) > 2e-3*math.Abs(w) {
		t.Errorf("under the load %.6g, on an elastic bed %.6g", s.Moves[middle][0], w)
	}
	most := 0.0
	for _, b := range s.Bars {
		most = math.Max(most, b.Extremes().MostMoment.Value)
	}
	if want := p / 4 / lambda; math.Abs(most-want) > 5e-3*want {
		t.Errorf("moment %.6g, on an elastic bed %.6g", most, want)
	}
}
