package section

import (
	"fmt"
	"math"
)

// bulb gives the web of a bulb flat and its bulb. With area and centroid of the maker the bulb is what is left of them
// beside the web, as a square of that area. Without them the bulb is approximated by the flange of an angle that stands
// for a rolled bulb flat of height h and thickness t:
//
//	h_w = h - h/9.2 + 2    b_f = a (t + h/6.7 - 2)    t_f = h/9.2 - 2    a = 1.1 + (120 - h)²/3000 for h <= 120, else 1
//
// of which the part outside the web counts as bulb. Source: IACS common structural rules, idealisation of bulb profiles,
// recalled; made for rolled steel bulbs, whose shape extruded ones follow roughly.
func (s Shape) bulb() ([]Part, []string) {
	h, t := float64(s.Height), float64(s.Web)
	if s.Area > 0 {
		metal := float64(s.Area) - float64(h*t)
		z := (float64(float64(s.Area)*float64(s.Centroid)) - float64(h*t*h)/2) / metal
		return []Part{slab("web", Web, 0, h/2, t, h), lump("bulb", (t+math.Sqrt(metal))/2, z, metal)}, []string{
			"Area and centroid of the bulb flat are the maker's; the bulb is reckoned as a square of the area that they leave beside the web.",
		}
	}
	alpha := 1.0
	if h <= 120 {
		alpha = 1.1 + (120-h)*(120-h)/3000
	}
	tf := h/9.2 - 2
	bf := alpha * (t + h/6.7 - 2)
	flange := slab("bulb", Flange, bf/2, h-tf/2, bf-t, tf)
	return []Part{slab("web", Web, 0, h/2, t, h), flange}, []string{fmt.Sprintf(
		"The bulb is approximated by a flange of %.1f × %.1f mm beside the web, after the idealisation of bulb profiles in the IACS common structural rules, recalled and made for rolled steel; enter area and centroid of the maker to replace it.", bf-t, tf),
	}
}

// lump is a piece of metal known by its area and centroid, reckoned as a square: I = A²/12.
func lump(name string, y, z, area float64) Part {
	return Part{Name: name, Role: Flange, Form: Lump, Y: y, Z: z, Metal: area, OwnI: area * area / 12, OwnUp: area * area / 12, Factor: 1}
}
