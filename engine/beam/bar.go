package beam

import "math"

// bar is a member prepared for solving: its length, the way it lies, and its stiffness.
type bar struct {
	Member
	kind      Kind
	length    float64
	c, s      float64       // direction: cosine and sine from x
	stretch   float64       // stiffness along, EA/L, or of torsion, GJ/L
	turning   [2][2]float64 // end moments for turns of the ends against the chord, kN·m/rad
	free      [2]float64    // turns of the ends under load with both ends pinned, rad
	held      [2]float64    // forces across at the ends that carry the load so, kN
	heldAlong [2]float64    // forces along at the ends, both ends held, kN
}

func (m Model) length(b Member) float64 {
	dx, dy := m.Nodes[b.To].X-m.Nodes[b.From].X, m.Nodes[b.To].Y-m.Nodes[b.From].Y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// prepare gives the stiffness of a member and what its loads do to it alone.
//
//	turning = EI/(L (1+Φ)) [4+Φ 2-Φ; 2-Φ 4+Φ]    Φ = 12 EI/(GA L²), nought for a member stiff in shear
//
// with a pin the row of its end is eliminated. The turns of pinned ends under a load do not depend on Φ, because the
// shear along a pinned span sums to nothing.
func (m Model) prepare(b Member) bar {
	p := bar{Member: b, kind: m.Kind, length: m.length(b)}
	p.c = (m.Nodes[b.To].X - m.Nodes[b.From].X) / p.length
	p.s = (m.Nodes[b.To].Y - m.Nodes[b.From].Y) / p.length
	p.stretch = b.EA / p.length
	if m.Kind == Grillage {
		p.stretch = b.GJ / p.length
	}
	phi := 0.0
	if b.GA > 0 {
		phi = 12 * b.EI / (b.GA * p.length * p.length)
	}
	near := float64(b.EI / (p.length * (1 + phi)) * (4 + phi))
	far := float64(b.EI / (p.length * (1 + phi)) * (2 - phi))
	single := near - float64(far*far)/near // one end pinned
	switch {
	case b.PinFrom && b.PinTo:
	case b.PinFrom:
		p.turning[1][1] = single
	case b.PinTo:
		p.turning[0][0] = single
	default:
		p.turning = [2][2]float64{{near, far}, {far, near}}
	}
	for _, l := range b.Loads {
		p.take(l)
	}
	return p
}

// take adds a load. A force P at distance a of a pinned span of length L, with b = L - a, turns its ends by
// P a b (L + b)/(6 EI L) and -P a b (L + a)/(6 EI L) (handbook). A spread load is summed by three points of Gauss, which is
// exact for the fourth degree that such a load gives.
func (p *bar) take(l Load) {
	if l.Point {
		p.force(l.From, l.Across[0], l.Along[0])
		return
	}
	half, middle := (l.To-l.From)/2, (l.To+l.From)/2
	for k, at := range gaussPoints {
		part := (1 + at) / 2
		across := l.Across[0] + float64(part*(l.Across[1]-l.Across[0]))
		along := l.Along[0] + float64(part*(l.Along[1]-l.Along[0]))
		weight := gaussWeights[k] * half
		p.force(middle+float64(half*at), float64(across*weight), float64(along*weight))
	}
}

// The points and weights of Gauss's rule of three, √0.6 to the nearest number.
var (
	gaussPoints  = [3]float64{-0.7745966692414834, 0, 0.7745966692414834}
	gaussWeights = [3]float64{5.0 / 9, 8.0 / 9, 5.0 / 9}
)

// force adds a single force. Along +y it turns the start counterclockwise, the end clockwise, and the ends hold against it.
func (p *bar) force(a, across, along float64) {
	L, b := p.length, p.length-a
	turn := across * a * b / (6 * p.EI * L)
	p.free[0] += float64(turn * (L + b))
	p.free[1] -= float64(turn * (L + a))
	p.held[0] -= across * b / L
	p.held[1] -= across * a / L
	p.heldAlong[0] -= along * b / L
	p.heldAlong[1] -= along * a / L
}

// turned gives the rows that take the movements of a node to those of the member's own axes: along (or torsion), across,
// and turn seen with the member's y up. In a grillage the turn of the member is the slope of z along it.
func (p *bar) turned() [3][3]float64 {
	if p.kind == Frame {
		return [3][3]float64{{p.c, p.s, 0}, {-p.s, p.c, 0}, {0, 0, 1}}
	}
	return [3][3]float64{{0, p.c, p.s}, {1, 0, 0}, {0, p.s, -p.c}}
}

// local gives the stiffness of the member in its own axes, in the order along, across, turn of its start and of its end:
// BᵀSB, where B takes the movements across to the turns of the ends against the chord.
func (p *bar) local() [6][6]float64 {
	b := p.chord()
	var k [6][6]float64
	for i := range 6 {
		for j := range 6 {
			for r := range 2 {
				for q := range 2 {
					k[i][j] += float64(b[r][i] * p.turning[r][q] * b[q][j])
				}
			}
		}
	}
	k[0][0], k[3][3] = p.stretch, p.stretch
	k[0][3], k[3][0] = -p.stretch, -p.stretch
	return k
}

// chord gives B, two rows of six.
func (p *bar) chord() [2][6]float64 {
	l := 1 / p.length
	return [2][6]float64{{0, l, 1, 0, -l, 0}, {0, l, 0, 0, -l, 1}}
}

// ends gives the forces on the ends of the member for movements in its own axes: along, across, moment of start and end.
func (p *bar) ends(d [6]float64) [6]float64 {
	chord := (d[4] - d[1]) / p.length
	turn := [2]float64{d[2] - chord - p.free[0], d[5] - chord - p.free[1]}
	var moment [2]float64
	for r := range 2 {
		moment[r] = float64(p.turning[r][0]*turn[0]) + float64(p.turning[r][1]*turn[1])
	}
	shear := (moment[0] + moment[1]) / p.length
	along := float64(p.stretch * (d[3] - d[0]))
	return [6]float64{
		p.heldAlong[0] - along, p.held[0] + shear, moment[0],
		p.heldAlong[1] + along, p.held[1] - shear, moment[1],
	}
}
