package section

import (
	"math"
	"sort"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Slender is the elastic buckling stress of one part under compression along the stiffener.
type Slender struct {
	Part      string
	Breadth   unit.MM // of the plate that may buckle: between webs, or from the web to a free edge; of a pipe its mean radius
	Thickness unit.MM
	Free      bool     // one long edge is free
	Elastic   unit.MPa // elastic buckling stress
	Formula   string   // as printed beside it
	Source    string
	Basis     finding.Basis
}

// formula of one sort of plate: stress = factor · E · (thickness/breadth)², or without the square for a pipe.
type formula struct {
	factor float64
	text   string
	source string
	basis  finding.Basis
}

const classWork = "class rules for high speed light craft, January 2011, Pt 3 Ch 3 Sec 10 E300"

var (
	heldWeb   = formula{3.8, "3.8 E (t_w/h_w)²", classWork, finding.Read}
	freeWeb   = formula{0.38, "0.38 E (t_w/h_w)²", "the flange formula of the " + classWork + ", for a web whose upper edge no flange holds", finding.Derived}
	outstand  = formula{0.38, "0.38 E (t_f/b_f)²", classWork + "; b_f from the middle of the web to the free edge", finding.Read}
	heldPlate = formula{3.62, "4 π² E / (12 (1 - ν²)) (t/b)², ν = 0.3", "plate theory: long plate held on both edges, k = 4", finding.Derived}
	round     = formula{0.605, "0.605 E t/R", "shell theory: long round tube in compression, without allowance for dents", finding.Recalled}
)

// Slender gives the elastic buckling stress of webs, flanges, crowns and walls, in the order of the parts. The foot of
// a web is taken as held, because it is welded to plating. Feet lie on the plating and are not asked, nor is the
// plating, which belongs to the panel. young is the modulus of elasticity, N/mm².
func (s Section) Slender(young unit.MPa) []Slender {
	var rows []Slender
	for _, p := range s.Parts {
		switch {
		case p.Form == Ring:
			e := round.factor * float64(young) * p.Wall / ((p.Diameter - p.Wall) / 2)
			rows = append(rows, Slender{p.Name, unit.MM((p.Diameter - p.Wall) / 2), unit.MM(p.Wall), false, unit.MPa(e), round.text, round.source, round.basis})
		case p.Form == Slab && p.Role == Web:
			held := s.heldAbove(p)
			if held {
				rows = append(rows, slender(p.Name, p.run(), p.thick(), false, young, heldWeb))
				continue
			}
			rows = append(rows, slender(p.Name, p.run(), p.thick(), true, young, freeWeb))
		case p.Form == Slab && p.Role == Flange:
			rows = append(rows, s.flange(p, young)...)
		}
	}
	return rows
}

func slender(name string, breadth, thickness float64, free bool, young unit.MPa, f formula) Slender {
	e := f.factor * float64(young) * math.Pow(thickness/breadth, 2)
	return Slender{name, unit.MM(breadth), unit.MM(thickness), free, unit.MPa(e), f.text, f.source, f.basis}
}

// heldAbove reports whether a flange or a bulb holds the upper edge of a web.
func (s Section) heldAbove(web Part) bool {
	for _, q := range s.Parts {
		if q.Form == Lump && q.Role == Flange {
			return true
		}
		if q.Form != Slab || q.Role == Plating || q.Z <= web.Z || q == web {
			continue
		}
		beside := shared(web.end(1)-web.Breadth/2, web.end(1)+web.Breadth/2, q.Y-q.Breadth/2, q.Y+q.Breadth/2) >= -near
		if beside && q.bottom() <= web.top()+near && q.top() >= web.top()-near {
			return true
		}
	}
	return false
}

// flange gives the rows of a flange: its widest outstand beside the outermost web, and its widest field between webs.
func (s Section) flange(p Part, young unit.MPa) []Slender {
	var webs []float64
	for _, w := range s.Parts {
		if w.Role == Web && w.Form == Slab && w.top() >= p.bottom()-near && w.bottom() < p.top() {
			webs = append(webs, w.end(1))
		}
	}
	if len(webs) == 0 {
		return nil
	}
	sort.Float64s(webs)
	left, right := webs[0]-(p.Y-p.Breadth/2), p.Y+p.Breadth/2-webs[len(webs)-1]
	var rows []Slender
	if out := math.Max(left, right); out > p.Height/2 {
		rows = append(rows, slender(p.Name, out, p.Height, true, young, outstand))
	}
	field := 0.0
	for i := 1; i < len(webs); i++ {
		field = math.Max(field, webs[i]-webs[i-1])
	}
	if field > 0 {
		rows = append(rows, slender(p.Name, field, p.Height, false, young, heldPlate))
	}
	return rows
}
