package beam

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// The solver against an independent one: calculix-ccx of Debian, a general-purpose finite-element program, with its quadratic
// beams (B32, which it expands to solids). Where it is not installed the comparison is left out and says so.

// bar of rectangular section, breadth by depth in metres, of E = 70 GPa and Poisson's ratio 0.33.
type oblong struct{ breadth, depth float64 }

const youngKPa, poisson = 70e6, 0.33

// stiffness of a rectangle: torsion by Saint-Venant's series in its usual short form, b³d/3 (1 - 0.63 b/d (1 - b⁴/12d⁴)).
func (o oblong) stiffness() Stiffness {
	area := o.breadth * o.depth
	b, d := math.Min(o.breadth, o.depth), math.Max(o.breadth, o.depth)
	g := youngKPa / (2 * (1 + poisson))
	return Stiffness{EI: youngKPa * o.breadth * math.Pow(o.depth, 3) / 12, EA: youngKPa * area, GA: g * area * 5 / 6,
		GJ: g * b * b * b * d / 3 * (1 - 0.63*b/d*(1-math.Pow(b/d, 4)/12))}
}

// deck is an input of ccx for a model, each member cut into parts.
type deck struct {
	bytes.Buffer
	m     Model
	rect  []oblong // of each member
	parts int
	loads map[int][6]float64
	ends  [][2]int // first and last element of each member
	nodes int
}

// write gives the input. A frame lies in the plane of x and y, a grillage loads along z; all else is held.
func (d *deck) write() {
	d.loads = map[int][6]float64{}
	d.WriteString("*NODE, NSET=ALL\n")
	for _, n := range d.m.Nodes {
		d.node(n.X, n.Y)
	}
	var elements, sections strings.Builder
	element := 0
	for i, b := range d.m.Members {
		from, to := d.m.Nodes[b.From], d.m.Nodes[b.To]
		length := d.m.length(b)
		c, s := (to.X-from.X)/length, (to.Y-from.Y)/length
		fmt.Fprintf(&elements, "*ELEMENT, TYPE=B32, ELSET=M%d\n", i)
		last := b.From + 1
		for k := range d.parts {
			at := func(part float64) int {
				x := length * (float64(k) + part) / float64(d.parts)
				return d.node(from.X+c*x, from.Y+s*x)
			}
			middle := at(0.5)
			next := b.To + 1
			if k+1 < d.parts {
				next = at(1)
			}
			element++
			fmt.Fprintf(&elements, "%d, %d, %d, %d\n", element, last, middle, next)
			d.share(b, c, s, length, k, [3]int{last, middle, next})
			last = next
		}
		d.ends = append(d.ends, [2]int{element - d.parts + 1, element})
		// the first axis of the section lies in the plane of bending, where the depth is
		axis := fmt.Sprintf("%.9f, %.9f, 0.", -s, c)
		if d.m.Kind == Grillage {
			axis = "0., 0., 1."
		}
		fmt.Fprintf(&sections, "*BEAM SECTION, ELSET=M%d, MATERIAL=METAL, SECTION=RECT\n%.9g, %.9g\n%s\n", i, d.rect[i].depth, d.rect[i].breadth, axis)
	}
	d.WriteString(elements.String())
	fmt.Fprintf(d, "*MATERIAL, NAME=METAL\n*ELASTIC\n%g, %g\n", youngKPa, poisson)
	d.WriteString(sections.String())
	d.hold()
	d.WriteString("*STEP\n*STATIC\n*CLOAD\n")
	for _, l := range d.m.Loads {
		at := d.loads[l.Node+1]
		for w, f := range l.Force {
			at[d.way(w)] += f
		}
		d.loads[l.Node+1] = at
	}
	for n := 1; n <= d.nodes; n++ {
		for w, f := range d.loads[n] {
			if f != 0 {
				fmt.Fprintf(d, "%d, %d, %.12g\n", n, w+1, f)
			}
		}
	}
	d.WriteString("*NODE PRINT, NSET=ALL\nU\n*NODE PRINT, NSET=SUPPORTS, TOTALS=ONLY\nRF\n*END STEP\n")
}

func (d *deck) node(x, y float64) int {
	d.nodes++
	fmt.Fprintf(d, "%d, %.12g, %.12g, 0.\n", d.nodes, x, y)
	return d.nodes
}

// way gives the place of a way of the model among the six of a node of ccx.
func (d *deck) way(w int) int {
	if d.m.Kind == Frame {
		return [3]int{0, 1, 5}[w]
	}
	return [3]int{2, 3, 4}[w]
}

// share puts the loads of a member on the three nodes of one part: of an even load a sixth, four sixths and a sixth.
func (d *deck) share(b Member, c, s, length float64, k int, nodes [3]int) {
	long := length / float64(d.parts)
	for i, weight := range [3]float64{1.0 / 6, 4.0 / 6, 1.0 / 6} {
		x := long * (float64(k) + float64(i)/2)
		q := 0.0
		for _, l := range b.Loads {
			if x >= l.From && x <= l.To {
				q += l.Across[0] + (l.Across[1]-l.Across[0])*(x-l.From)/(l.To-l.From)
			}
		}
		f := d.loads[nodes[i]]
		if d.m.Kind == Frame {
			f[0] -= q * s * long * weight
			f[1] += q * c * long * weight
		} else {
			f[2] += q * long * weight
		}
		d.loads[nodes[i]] = f
	}
}

// hold writes the supports and holds every node in the ways that the model does not have.
func (d *deck) hold() {
	d.WriteString("*BOUNDARY\n")
	var held []string
	for _, sup := range d.m.Supports {
		for w, fixed := range sup.Fixed {
			if fixed {
				fmt.Fprintf(d, "%d, %d\n", sup.Node+1, d.way(w)+1)
			}
		}
		held = append(held, strconv.Itoa(sup.Node+1))
	}
	for n := range d.m.Nodes {
		out := []int{3}
		if d.m.Kind == Grillage {
			out = []int{1, 2}
		}
		for _, w := range out {
			fmt.Fprintf(d, "%d, %d\n", n+1, w)
		}
	}
	fmt.Fprintf(d, "*NSET, NSET=SUPPORTS\n%s\n", strings.Join(held, ",\n"))
}

// solved runs ccx and gives the movements of all nodes of the model.
func (d *deck) solved(t *testing.T) [][3]float64 {
	t.Helper()
	ccx, err := exec.LookPath("ccx")
	if err != nil {
		t.Skip("ccx is not installed (Debian: calculix-ccx); the comparison with finite elements is left out")
	}
	dir := t.TempDir()
	d.write()
	if err := os.WriteFile(filepath.Join(dir, "job.inp"), d.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	run := exec.Command(ccx, "job")
	run.Dir = dir
	run.Env = append(os.Environ(), "OMP_NUM_THREADS=1")
	if out, err := run.CombinedOutput(); err != nil {
		t.Fatalf("ccx: %v\n%s", err, out)
	}
	data, err := os.ReadFile(filepath.Join(dir, "job.dat"))
	if err != nil {
		t.Fatal(err)
	}
	moves := make([][3]float64, d.nodes)
	found := 0
	for _, line := range strings.Split(string(data), "\n") {
		f := strings.Fields(line)
		if len(f) != 4 {
			continue
		}
		n, err := strconv.Atoi(f[0])
		if err != nil || n < 1 || n > d.nodes {
			continue
		}
		for w := range 3 {
			if moves[n-1][w], err = strconv.ParseFloat(f[1+w], 64); err != nil {
				t.Fatal(err)
			}
		}
		found++
	}
	if found < d.nodes {
		t.Fatalf("ccx printed %d of %d nodes", found, d.nodes)
	}
	return moves
}

// agree compares movements across all members with those of finite elements within a part of the greatest, and moments likewise:
// EI times the curvature through three places a twelfth of the member apart, of both in the same way.
func agree(t *testing.T, what string, m Model, rect []oblong, tolerance float64) {
	t.Helper()
	s := solved(t, m)
	const parts = 60 // with fewer the stiff knots that ccx puts at joints are longer; 60 and 120 agree
	d := &deck{m: m, rect: rect, parts: parts}
	moves := d.solved(t)
	var moved, bent difference
	node := len(m.Nodes)
	for i, b := range s.Bars {
		mem := m.Members[i]
		dx, dy := (m.Nodes[mem.To].X-m.Nodes[mem.From].X)/b.Length, (m.Nodes[mem.To].Y-m.Nodes[mem.From].Y)/b.Length
		line := [][3]float64{moves[mem.From]}
		for range 2*parts - 1 {
			line = append(line, moves[node])
			node++
		}
		line = append(line, moves[mem.To])
		var ours, theirs []float64
		for k, u := range line {
			across := u[2]
			if m.Kind == Frame {
				across = -dy*u[0] + dx*u[1]
			}
			theirs = append(theirs, across)
			ours = append(ours, b.At(b.Length*float64(k)/(2*parts)).Moves)
			moved.of(ours[k], across)
		}
		const step = 2 * parts / 12
		for k := step; k < len(line)-step; k += step {
			h := b.Length / 12
			bent.of(mem.EI*(ours[k-step]-2*ours[k]+ours[k+step])/h/h, mem.EI*(theirs[k-step]-2*theirs[k]+theirs[k+step])/h/h)
		}
	}
	t.Logf("%s: movements %s mm, moments %s N·m", what, moved.text(), bent.text())
	if !moved.within(tolerance) || !bent.within(tolerance) {
		t.Errorf("%s: differs by more than %.0f %%", what, 100*tolerance)
	}
}

// difference collects the greatest value and the greatest difference of two solutions.
type difference struct {
	count       int
	most, worst float64
}

func (d *difference) of(ours, theirs float64) {
	d.count++
	d.most, d.worst = math.Max(d.most, math.Abs(theirs)), math.Max(d.worst, math.Abs(ours-theirs))
}

func (d *difference) within(part float64) bool {
	return d.count > 20 && d.most > 0 && d.worst <= part*d.most
}

func (d *difference) text() string {
	return fmt.Sprintf("at %d places, the greatest %.4g, differ by at most %.2f %% of it,", d.count, d.most*1e3, 100*d.worst/d.most)
}

// ringOf is the ring of a frame of our own making, as a plane frame: 1.06 m bottom frames at some 20 degrees, upright sides
// and a cambered deck beam, all joints rigid; loads differ from side to side. Which corners are held is given, keel first.
func ringOf(bottom, side, deck oblong, supports []Support, loads [2][3]float64) (m Model, rect []oblong) {
	m = Model{Kind: Frame, Supports: supports, Nodes: []Node{{"keel", 0, 0}, {"starboard chine", 1, 0.36}, {"starboard sheer", 1.12, 1.15},
		{"port chine", -1, 0.36}, {"port sheer", -1.12, 1.15}, {"middle of the deck", 0, 1.19}}}
	for side2, ends := range [2][3][2]int{{{0, 1}, {1, 2}, {2, 5}}, {{0, 3}, {3, 4}, {4, 5}}} {
		inward := float64(1 - 2*side2)
		for k, o := range []oblong{bottom, side, deck} {
			s := o.stiffness()
			b := Member{Name: []string{"bottom frame", "side frame", "deck beam"}[k], From: ends[k][0], To: ends[k][1], EI: s.EI, EA: s.EA, GA: s.GA}
			q := inward * loads[side2][k]
			b.Loads = []Load{Varying(0, m.length(b), q, 0.6*q)}
			m.Members, rect = append(m.Members, b), append(rect, o)
		}
	}
	return m, rect
}

func TestRingAgainstFiniteElements(t *testing.T) {
	bottom, side, beam := oblong{0.03, 0.03}, oblong{0.025, 0.025}, oblong{0.02, 0.02}
	firm := func(n int) Support { return Support{Node: n, Fixed: [3]bool{true, true, false}} }
	upright := func(n int) Support { return Support{Node: n, Fixed: [3]bool{false, true, false}} }
	for _, row := range []struct {
		what     string
		supports []Support
		loads    [2][3]float64
	}{
		{"corners held", []Support{firm(0), firm(1), firm(2), firm(3), firm(4)}, [2][3]float64{{31, 5, 2.5}, {31, 5, 2.5}}},
		{"keel held, chines upright", []Support{firm(0), upright(1), upright(3)}, [2][3]float64{{31, 5, 2.5}, {31, 1, 2.5}}},
	} {
		m, rect := ringOf(bottom, side, beam, row.supports, row.loads)
		agree(t, "ring, "+row.what, m, rect, 0.02)
	}
}

// A bottom between bulkheads and chines: four frames across, a girder and two stringers along, frames held at the chine
// and the rest at bulkheads; each field of plating loads its frames by a trapezoid.
func TestGrillageAgainstFiniteElements(t *testing.T) {
	frame, stringer := oblong{0.03, 0.03}, oblong{0.02, 0.02}
	member := func(o oblong) Member {
		s := o.stiffness()
		return Member{EI: s.EI, GA: s.GA, GJ: s.GJ}
	}
	m := crossing(2.5, 1.2, even(4, 2.5), even(2, 1.2), member(stringer), member(frame))
	var rect []oblong
	for i := range m.Members {
		b := &m.Members[i]
		if m.Nodes[b.From].Y == m.Nodes[b.To].Y {
			b.Name, rect = "stringer", append(rect, stringer)
			continue
		}
		b.Name, rect = "frame", append(rect, frame)
		b.Loads = []Load{Varying(0, 0.2, 0, 25), Varying(0.2, 0.4, 25, 25)}
	}
	for i := range m.Supports {
		if y := m.Nodes[m.Supports[i].Node].Y; y == 0 || y == 1.2 {
			m.Supports[i].Fixed[1] = true // a frame runs through at the keel and is bracketed at the chine: it does not turn
		}
	}
	agree(t, "grillage of 4 frames and 2 stringers", m, rect, 0.02)
}
