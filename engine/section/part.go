package section

import "math"

// Form is how a part is bounded.
type Form string

// The forms of a part.
const (
	Slab Form = "slab" // a rectangle, or a parallelogram whose upper and lower sides lie level
	Ring Form = "ring" // a pipe
	Lump Form = "lump" // known by area and centroid alone: the bulb of a bulb flat
)

// Part is one piece of the metal of a section, with its place. Millimetres.
type Part struct {
	Name     string
	Role     Role
	Form     Form
	Y, Z     float64 // centroid
	Breadth  float64 // slab: level, from side to side
	Height   float64 // slab: upright
	Lean     float64 // slab: by how much the middle of the upper side stands to the right of that of the lower side
	Diameter float64 // ring, outside
	Wall     float64 // ring
	Metal    float64 // lump: area, mm²
	OwnI     float64 // lump: inertia about its own level axis, mm⁴
	OwnUp    float64 // lump: inertia about its own upright axis, mm⁴
	Factor   float64 // strength that is left in it as a part of one; the heat of welding lowers it
}

// moments of a part about its own centroid: area mm², inertia about the level axis, about the upright axis, and product, mm⁴.
type moments struct{ area, level, upright, product float64 }

// moments of the sound part. A parallelogram of level breadth b, height h and lean s: I = b h³/12, upright
// A (b² + s²)/12, product A s h/12; a ring: I = π (D⁴ - d⁴)/64. Both by integration.
func (p Part) moments() moments {
	switch p.Form {
	case Ring:
		outer, inner := p.Diameter, p.Diameter-2*p.Wall
		i := math.Pi / 64 * (math.Pow(outer, 4) - math.Pow(inner, 4))
		return moments{math.Pi / 4 * (float64(outer*outer) - float64(inner*inner)), i, i, 0}
	case Lump:
		return moments{p.Metal, p.OwnI, p.OwnUp, 0}
	}
	area := p.Breadth * p.Height
	return moments{
		area:    area,
		level:   area * p.Height * p.Height / 12,
		upright: area / 12 * (float64(p.Breadth*p.Breadth) + float64(p.Lean*p.Lean)),
		product: area * p.Lean * p.Height / 12,
	}
}

// bottom and top are the heights between which the part lies.
func (p Part) bottom() float64 { return p.Z - p.reach() }
func (p Part) top() float64    { return p.Z + p.reach() }

// reach is half the height of the part.
func (p Part) reach() float64 {
	switch p.Form {
	case Ring:
		return p.Diameter / 2
	case Lump:
		return math.Sqrt(p.Metal) / 2
	}
	return p.Height / 2
}

// run is the long side of a slab and thick its short one, measured square to it.
func (p Part) run() float64 {
	if p.Breadth > p.Height {
		return p.Breadth
	}
	return math.Hypot(p.Height, p.Lean)
}

func (p Part) thick() float64 {
	if p.Breadth > p.Height {
		return p.Height
	}
	return p.wall()
}

// wall is the thickness of a slab that stands up, square to its lean.
func (p Part) wall() float64 { return p.Breadth * p.Height / math.Hypot(p.Height, p.Lean) }
