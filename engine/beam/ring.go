package beam

import "math"

// Ring is a transverse frame of a boat: bottom frames, side frames and deck beam, the same on both sides of the keel. Places
// are those of the starboard half: Y from the middle, Z up, metres.
type Ring struct {
	Keel, Chine, Sheer  Place
	Camber              float64   // rise of the middle of the deck beam above the sheer
	Bottom, Side        Stiffness // of the frames, with plating
	Deck                Stiffness // nought where there is no deck beam
	AtKeel, AtChine     Joint     // between the bottom frames; between bottom and side frame
	AtSheer             Joint     // between side frame and deck beam; may stay empty without one
	KeelHeld, ChineHeld Hold
	SheerHeld           Hold
	KeelToe, ChineToe   float64 // arms of the brackets along the bars, nought for none
	SheerToe            float64
	Starboard, Port     RingLoad
}

// Place is a point of the section.
type Place struct{ Y, Z float64 }

// RingLoad is what presses on one half, kN/m of the bar, square to it and inward: pressure times the spacing of frames.
type RingLoad struct{ Bottom, Side, Deck Run }

// Run is a load that runs evenly from one end of a bar to the other: keel to chine, chine to sheer, sheer to middle.
type Run struct{ First, Last float64 }

// Hold is how the rest of the boat holds a corner of the ring.
type Hold string

// The holds. Two plates that meet at an angle hold their edge both ways, each being stiff in its own plane.
const (
	Loosely Hold = "free"    // it may move
	Upright Hold = "upright" // it cannot move up or down
	Firmly  Hold = "held"    // it cannot move
)

// RingResult is how the ring carries its loads.
type RingResult struct {
	Solution
	Beside      []Beside // bottom, side and deck of starboard, then of port
	Assumptions []string // whole sentences
}

// The nodes of a ring.
const (
	keel = iota
	starboardChine
	starboardSheer
	portChine
	portSheer
	crown
)

// Solve gives moments, shears, deflections and what passes at the joints, beside the formulas for single spans. Errors:
// Faults, all at once; Loose where a corner is held by nothing.
func (r Ring) Solve() (RingResult, error) {
	if fs := r.faults(); len(fs) > 0 {
		return RingResult{}, fs
	}
	solution, err := r.model().Solve()
	if err != nil {
		return RingResult{}, err
	}
	out := RingResult{Solution: solution, Assumptions: r.assumptions()}
	per := 2
	if r.decked() {
		per = 3
	}
	for side, half := range []RingLoad{r.Starboard, r.Port} {
		inward := 1.0
		if side == 1 {
			inward = -1
		}
		for k, bar := range r.sides()[:per] {
			i := side*per + k
			b := solution.beside(solution.Bars[i].Name, []int{i}, inward)
			b.Start = solution.bracket(bar.start, []int{i}, bar.startToe, inward, true)
			b.End = solution.bracket(bar.end, []int{i}, bar.endToe, inward, false)
			run := bar.run(half)
			length, first, last := solution.Bars[i].Length, run.First, run.Last
			if k == 2 { // the deck beam as a single span goes from sheer to sheer
				length, last = 2*length, first
				b.single(length, (run.First+run.Last)/2, (run.First+run.Last)/2, bar.stiff.EI)
			} else {
				b.single(length, first, last, bar.stiff.EI)
			}
			out.Beside = append(out.Beside, b)
		}
	}
	return out, nil
}

// ringBar is one bar of a half ring.
type ringBar struct {
	name, start, end string
	stiff            Stiffness
	startToe, endToe float64
	run              func(RingLoad) Run
}

func (r Ring) sides() []ringBar {
	return []ringBar{
		{"bottom frame", "keel", "chine", r.Bottom, r.KeelToe, r.ChineToe, func(l RingLoad) Run { return l.Bottom }},
		{"side frame", "chine", "sheer", r.Side, r.ChineToe, r.SheerToe, func(l RingLoad) Run { return l.Side }},
		{"deck beam", "sheer", "middle", r.Deck, r.SheerToe, 0, func(l RingLoad) Run { return l.Deck }},
	}
}

// decked reports whether there is a deck beam.
func (r Ring) decked() bool { return r.Deck.EI > 0 }

// model builds the frame.
func (r Ring) model() Model {
	m := Model{Kind: Frame, Nodes: []Node{
		{"keel", r.Keel.Y, r.Keel.Z}, {"starboard chine", r.Chine.Y, r.Chine.Z}, {"starboard sheer", r.Sheer.Y, r.Sheer.Z},
		{"port chine", -r.Chine.Y, r.Chine.Z}, {"port sheer", -r.Sheer.Y, r.Sheer.Z},
	}}
	if r.decked() {
		m.Nodes = append(m.Nodes, Node{"middle of the deck", 0, r.Sheer.Z + r.Camber})
	}
	m.Members = append(r.half("starboard ", 1, starboardChine, starboardSheer, r.Starboard), r.half("port ", -1, portChine, portSheer, r.Port)...)
	for i := range m.Members {
		length := m.length(m.Members[i])
		for k := range m.Members[i].Loads {
			m.Members[i].Loads[k].To = length
		}
	}
	m.Supports = []Support{r.KeelHeld.support(keel), r.ChineHeld.support(starboardChine), r.ChineHeld.support(portChine), r.SheerHeld.support(starboardSheer), r.SheerHeld.support(portSheer)}
	return m
}

// half gives the bars of one side; inward is +1 where inside lies to their left. The length of loads is set afterwards.
func (r Ring) half(name string, inward float64, chine, sheer int, loads RingLoad) []Member {
	nodes := [][2]int{{keel, chine}, {chine, sheer}, {sheer, crown}}
	pins := [][2]bool{{r.AtKeel == Hinge, r.AtChine == Hinge}, {r.AtChine == Hinge, r.AtSheer == Hinge}, {r.AtSheer == Hinge, false}}
	var out []Member
	for k, bar := range r.sides() {
		if k == 2 && !r.decked() {
			break
		}
		b := bar.stiff.member(name+bar.name, nodes[k][0], nodes[k][1])
		b.PinFrom, b.PinTo = pins[k][0], pins[k][1]
		if run := bar.run(loads); run != (Run{}) {
			b.Loads = []Load{Varying(0, math.Inf(1), inward*run.First, inward*run.Last)}
		}
		out = append(out, b)
	}
	return out
}

func (h Hold) support(node int) Support {
	return Support{Node: node, Fixed: [3]bool{h == Firmly, h == Firmly || h == Upright, false}}
}
