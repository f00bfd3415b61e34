package stability

import (
	"math"
	"strings"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/weight"
)

// Swamped is the boat full of water at rest.
type Swamped struct {
	Floats   bool
	Lift     float64 // what foam and counted chambers carry under water, kg
	Burden   float64 // what everything weighs under water, kg
	Heel     float64 // degrees, starboard down positive
	Trim     float64 // degrees, bow up positive
	Above    float64 // part of the gunwale above the water, %
	Attitude hydrostatics.Attitude
}

const (
	freshWater = 1000.0 // kg/m³: the harder case, as 33 CFR 183 takes it
	soakedPart = 0.15   // of its mass that machinery displaces: running to swamped mass in the table of 33 CFR 183.75
	thin       = 0.3    // metre: height over which an item without a shape comes out of the water
)

// mass is a weight at a point, lump a volume that lifts.
type mass struct {
	kg float64
	at hydrostatics.Vector
}

type lump struct {
	m3, height float64
	at         hydrostatics.Vector
}

// burden is everything on board a swamped boat: masses, and the volumes of what is under water.
type burden struct {
	masses []mass
	lumps  []lump
}

// burden gathers the light craft item by item, and the share of people and load that 33 CFR 183.105 leaves on board.
func (j *judge) burden() (burden, string) {
	var b burden
	var lacks []string
	for i := range j.weight.Items {
		it := &j.weight.Items[i]
		if it.Record.Load.V {
			continue
		}
		if !it.HasMass || !it.HasX || !it.HasY || !it.HasZ {
			lacks = append(lacks, it.Record.ID)
			continue
		}
		at := hydrostatics.Vector{X: float64(it.Record.X.V), Y: float64(it.Record.Y.V), Z: float64(it.Record.Z.V)}
		b.masses = append(b.masses, mass{float64(it.Mass), at})
		if v := itemVolume(it); v > 0 {
			b.lumps = append(b.lumps, lump{v, thin, at})
		}
	}
	full := j.find("loaded ready")
	for _, p := range full.Loading.Parts {
		switch p.Name {
		case "light craft":
		case "people":
			b.masses = append(b.masses, mass{p.Mass * personsShare, p.Centre})
		default:
			b.masses = append(b.masses, mass{p.Mass * loadShare, p.Centre})
		}
	}
	if len(lacks) > 0 {
		return b, "no mass or position is written for " + strings.Join(lacks, ", ")
	}
	return b, ""
}

// itemVolume is what an item displaces under water, m³: plate and profile by their size, others by their density, machinery
// by the usual part of its mass. Items of which nothing is known displace nothing.
func itemVolume(it *weight.Item) float64 {
	r, n := it.Record, float64(it.Count)
	switch {
	case r.Area.Set && r.Thickness.Set:
		return n * float64(r.Area.V) * float64(r.Thickness.V) / 1000
	case r.Length.Set && r.Section.Set:
		return n * float64(r.Length.V) * float64(r.Section.V) / 1e6
	case r.Density.Set && r.Density.V > 0:
		return float64(it.Mass-it.Margin) / float64(r.Density.V)
	case r.Group.V == "machinery":
		return math.Max(0, soakedPart*float64(it.Mass)/freshWater)
	}
	return 0
}

// settle finds how the swamped boat lies: the attitude of least energy, by a coarse look at heels and trims and then in ever
// smaller steps. The foam is under water as far as the water reaches; each piece as high as its record says, or as a cube.
func (j *judge) settle(b burden, all []Piece) Swamped {
	var s Swamped
	for _, m := range b.masses {
		s.Burden += m.kg
	}
	for _, l := range b.lumps {
		s.Burden -= freshWater * l.m3
	}
	for i := range all {
		if !all[i].Counts {
			continue
		}
		for _, l := range all[i].lumps() {
			s.Lift += freshWater * l.m3
			b.lumps = append(b.lumps, l)
		}
	}
	if s.Floats = s.Lift >= s.Burden; !s.Floats {
		return s
	}
	s.Attitude = b.rest()
	s.Heel, s.Trim = s.Attitude.Heel/degree, s.Attitude.Trim/degree
	s.Above = gunwaleAbove(j.lines, s.Attitude)
	return s
}

// lumps gives a piece as one volume, or as one on each side.
func (p *Piece) lumps() []lump {
	r := p.Record
	v := p.Litres / 1000
	sides := []float64{float64(r.Y.V)}
	if r.Both.V {
		v /= 2
		sides = append(sides, -float64(r.Y.V))
	}
	h := math.Cbrt(float64(r.Volume.V) / 1000)
	if r.Height.Set {
		h = float64(r.Height.V)
	}
	var out []lump
	for _, y := range sides {
		out = append(out, lump{v, h, hydrostatics.Vector{X: float64(r.X.V), Y: y, Z: float64(r.Z.V)}})
	}
	return out
}

// mostSteps is a wall: a search that still creeps downhill after so many steps stops where it is.
const mostSteps = 2000

// rest is the attitude of least energy.
func (b burden) rest() hydrostatics.Attitude {
	best, at := math.Inf(1), hydrostatics.Attitude{}
	look := func(heel, trim float64) bool {
		a := b.afloat(hydrostatics.Attitude{Heel: heel, Trim: trim})
		if e := b.energy(a); e < best-1e-9 {
			best, at = e, a
			return true
		}
		return false
	}
	look(0, 0)
	for heel := -90.0; heel <= 90; heel += 15 {
		for trim := -45.0; trim <= 45; trim += 15 {
			look(heel*degree, trim*degree)
		}
	}
	step := 7.5 * degree
	for range mostSteps {
		if step < 0.02*degree {
			break
		}
		h, t := at.Heel, at.Trim
		moved := look(h+step, t)
		moved = look(h-step, t) || moved
		moved = look(h, t+step) || moved
		moved = look(h, t-step) || moved
		if !moved {
			step /= 2
		}
	}
	return at
}

// afloat finds the level at which the lumps under water carry the masses.
func (b burden) afloat(at hydrostatics.Attitude) hydrostatics.Attitude {
	total := 0.0
	for _, m := range b.masses {
		total += m.kg
	}
	low, high := -20.0, 20.0
	for range 50 {
		at.Level = (low + high) / 2
		lift := 0.0
		for _, l := range b.lumps {
			lift += freshWater * l.m3 * l.under(at)
		}
		if lift < total {
			low = at.Level
		} else {
			high = at.Level
		}
	}
	return at
}

// under is the part of a lump under water.
func (l lump) under(at hydrostatics.Attitude) float64 {
	return math.Max(0, math.Min(1, 0.5-at.Height(l.at)/l.height))
}

// energy is that of masses above the water and of the water that the lumps push up, kg·m. A body at rest has the least.
func (b burden) energy(at hydrostatics.Attitude) float64 {
	e := 0.0
	for _, m := range b.masses {
		e += m.kg * at.Height(m.at)
	}
	for _, l := range b.lumps {
		deep := l.height/2 - at.Height(l.at)
		switch {
		case deep <= 0:
		case deep < l.height:
			e += freshWater * l.m3 / l.height * deep * deep / 2
		default:
			e += freshWater * l.m3 * -at.Height(l.at)
		}
	}
	return e
}

// gunwaleAbove is the part of the sheer above the water, both sides, by length, %.
func gunwaleAbove(h *lines.Hull, at hydrostatics.Attitude) float64 {
	edge := h.Along(lines.Sheer)
	dry, total := 0.0, 0.0
	for i := 1; i < len(edge); i++ {
		p, q := edge[i-1], edge[i]
		long := math.Sqrt((q.X-p.X)*(q.X-p.X) + (q.Y-p.Y)*(q.Y-p.Y) + (q.Z-p.Z)*(q.Z-p.Z))
		for _, side := range []float64{1, -1} {
			hp := at.Height(hydrostatics.Vector{X: p.X, Y: side * p.Y, Z: p.Z})
			hq := at.Height(hydrostatics.Vector{X: q.X, Y: side * q.Y, Z: q.Z})
			total += long
			dry += long * above(hp, hq)
		}
	}
	if total == 0 {
		return 0
	}
	return 100 * dry / total
}

// above is the part of a stretch above the water, from the heights of its ends.
func above(p, q float64) float64 {
	switch {
	case p > 0 && q > 0:
		return 1
	case p <= 0 && q <= 0:
		return 0
	case p > 0:
		return p / (p - q)
	}
	return q / (q - p)
}
