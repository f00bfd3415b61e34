package beam

// Bottom is one half of a bottom between two bulkheads as a grillage: frames across, stringers along, from the keel to the chine.
// x runs along the boat; offsets are measured from the keel along the frame, so that deadrise is already in them. Metres.
// Port and starboard are alike and loaded alike.
type Bottom struct {
	Aft, Fwd    float64   // x of the bulkheads
	Frames      []Rib     // between them, in order of x
	Stringers   []Rib     // in order of offset
	Girth       []float64 // offset of the chine at the aft bulkhead, at each frame, at the fore bulkhead
	Keel, Chine Edge
	AtKeel      Joint // of the frames: fixed where they run through or are bracketed to each other
	AtChine     Joint
	AtBulkhead  Joint // of stringers, and of keel and chine where they are members
	KeelToe     float64
	ChineToe    float64 // arms of the brackets of the frames, nought for none
	Pressure    float64 // kN/m², inward, the same all over
}

// Rib is a frame or stringer: where it lies, and how stiff it is with its plating.
type Rib struct {
	Name string
	At   float64 // x of a frame, offset of a stringer
	Bar  Stiffness
}

// Edge is the keel or the chine: a support that does not give way, or a member from bulkhead to bulkhead.
type Edge struct {
	Gives bool      // it is a member
	Bar   Stiffness // of the whole keel; of the chine of this side
}

// BottomResult is how the grillage carries the pressure.
type BottomResult struct {
	Solution
	Frames      []Beside // from keel to chine
	Stringers   []Beside // from aft to forward, where they run
	Keel        Beside   // of the whole keel, where it is a member
	Chine       Beside   // where it is a member
	Total       float64  // pressure times area of this half, kN
	Direct      float64  // part of it that goes from the plating straight to supports, kN
	Assumptions []string
}

// grid is a bottom being turned into a model.
type grid struct {
	Bottom
	model  Model
	x      []float64 // of bulkheads and frames
	nodes  [][]int   // [station][line], line 0 the keel, the last the chine; -1 where there is none
	frames [][]int   // members of each frame, from keel to chine
	lines  [][]int   // members of each line, from aft to forward
	bays   [][]int   // for each line the bay of each of its members
	direct float64
	total  float64
}

// Solve gives moments, shears, deflections and what frames pass at keel and chine, beside the formulas for single spans. Errors:
// Faults, all at once; Loose where something is held by nothing.
func (b Bottom) Solve() (BottomResult, error) {
	if fs := b.faults(); len(fs) > 0 {
		return BottomResult{}, fs
	}
	g := b.grid()
	solution, err := g.model.Solve()
	if err != nil {
		return BottomResult{}, err
	}
	return g.result(solution), nil
}

// grid builds nodes, members, supports and loads.
func (b Bottom) grid() *grid {
	g := &grid{Bottom: b, model: Model{Kind: Grillage}, x: make([]float64, 0, len(b.Frames)+2)}
	g.x = append(g.x, b.Aft)
	for _, f := range b.Frames {
		g.x = append(g.x, f.At)
	}
	g.x = append(g.x, b.Fwd)
	g.place()
	g.join()
	g.hold()
	for bay := 0; bay+1 < len(g.x); bay++ {
		g.press(bay)
	}
	return g
}

// last is the line of the chine.
func (g *grid) last() int { return len(g.Stringers) + 1 }

// offset of a line at a station.
func (g *grid) offset(station, line int) float64 {
	switch line {
	case 0:
		return 0
	case g.last():
		return g.Girth[station]
	}
	return g.Stringers[line-1].At
}

// clear is the least distance between a stringer and the chine at which it still counts as inside, m: the metal of
// both takes up some of it.
const clear = 0.02

// runs reports whether a line goes through a bay: a stringer does where it lies inside the chine at both ends.
func (g *grid) runs(line, bay int) bool {
	switch line {
	case 0:
		return true
	case g.last():
		return true
	}
	at := g.Stringers[line-1].At + clear
	return at <= g.Girth[bay] && at <= g.Girth[bay+1]
}

// place makes the nodes: at each frame where lines cross it or end on it, at bulkheads where members end.
func (g *grid) place() {
	n := len(g.x)
	for i := range n {
		row := make([]int, g.last()+1)
		for j := range row {
			row[j] = -1
			end := i == 0 || i == n-1
			meets := (i > 0 && g.runs(j, i-1)) || (i < n-1 && g.runs(j, i))
			switch {
			case j == 0 && end:
				meets = g.Keel.Gives
			case j == g.last() && end:
				meets = g.Chine.Gives
			}
			if meets {
				row[j] = len(g.model.Nodes)
				g.model.Nodes = append(g.model.Nodes, Node{Name: g.crossing(i, j), X: g.x[i], Y: g.offset(i, j)})
			}
		}
		g.nodes = append(g.nodes, row)
	}
}

// crossing names a node.
func (g *grid) crossing(station, line int) string {
	at, on := "fore bulkhead", "keel"
	switch {
	case station == 0:
		at = "aft bulkhead"
	case station < len(g.x)-1:
		at = g.Bottom.Frames[station-1].Name
	}
	switch {
	case line == g.last():
		on = "chine"
	case line > 0:
		on = g.Stringers[line-1].Name
	}
	return at + " at " + on
}

// join makes the members: frames from line to line, lines from station to station.
func (g *grid) join() {
	g.frames = make([][]int, len(g.Bottom.Frames))
	for i, f := range g.Bottom.Frames {
		from := -1
		for j, node := range g.nodes[i+1] {
			if node < 0 {
				continue
			}
			if from >= 0 {
				m := f.Bar.member(f.Name, from, node)
				m.PinFrom = g.AtKeel == Hinge && len(g.frames[i]) == 0
				m.PinTo = g.AtChine == Hinge && j == g.last()
				g.frames[i] = append(g.frames[i], len(g.model.Members))
				g.model.Members = append(g.model.Members, m)
			}
			from = node
		}
	}
	g.lines, g.bays = make([][]int, g.last()+1), make([][]int, g.last()+1)
	for j := range g.lines {
		bar, name := g.line(j)
		if bar == nil {
			continue
		}
		for bay := 0; bay+1 < len(g.x); bay++ {
			if !g.runs(j, bay) {
				continue
			}
			m := bar.member(name, g.nodes[bay][j], g.nodes[bay+1][j])
			m.PinFrom = g.AtBulkhead == Hinge && bay == 0
			m.PinTo = g.AtBulkhead == Hinge && bay+2 == len(g.x)
			g.lines[j] = append(g.lines[j], len(g.model.Members))
			g.bays[j] = append(g.bays[j], bay)
			g.model.Members = append(g.model.Members, m)
		}
	}
}

// line gives the stiffness of a line in this half, nil where it is a support. Of the keel half belongs to this half.
func (g *grid) line(j int) (*Stiffness, string) {
	switch {
	case j == 0 && g.Keel.Gives:
		k := g.Keel.Bar
		return &Stiffness{EI: k.EI / 2, EA: k.EA / 2, GA: k.GA / 2, GJ: k.GJ / 2}, "keel"
	case j == g.last() && g.Chine.Gives:
		return &g.Chine.Bar, "chine"
	case j == 0 || j == g.last():
		return nil, ""
	}
	return &g.Stringers[j-1].Bar, g.Stringers[j-1].Name
}

// hold makes the supports. At the keel a frame that runs through does not turn, because the other side pushes back alike.
func (g *grid) hold() {
	n := len(g.x)
	for i, row := range g.nodes {
		end := i == 0 || i == n-1
		for j, node := range row {
			if node < 0 {
				continue
			}
			s := Support{Node: node}
			s.Fixed[0] = end || (j == 0 && !g.Keel.Gives) || (j == g.last() && !g.Chine.Gives)
			s.Fixed[1] = !end && ((j == 0 && g.AtKeel == Rigid) || (j == g.last() && g.AtChine == Rigid))
			s.Fixed[2] = end && g.AtBulkhead == Rigid
			if s.Fixed != [3]bool{} {
				g.model.Supports = append(g.model.Supports, s)
			}
		}
	}
}
