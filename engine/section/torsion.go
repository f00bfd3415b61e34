package section

import "math"

// torsion gives the torsion constant, mm⁴.
//
//	open, of slabs    Σ l t³/3                                     Saint-Venant
//	closed cell       4 A² / Σ (l/t) on the middle lines           Bredt
//	pipe              π (D⁴ - d⁴)/32
//
// A top hat is open until plating shuts it. Attached plating adds nothing where the cell is open: it belongs to the
// boat's skin and is held by its neighbours.
func (s Section) torsion() float64 {
	sh := s.Shape
	switch {
	case sh.Kind == Pipe:
		return 2 * s.Parts[0].moments().level
	case sh.Kind == Box:
		b, h := float64(sh.Flange-sh.Web), float64(sh.Height-sh.FlangeThickness)
		return bredt(float64(b*h), 2*b/float64(sh.FlangeThickness)+2*h/float64(sh.Web))
	case sh.Kind == TopHat && s.Plate > 0:
		return s.hatCell()
	}
	sum := 0.0
	for _, p := range s.Parts {
		if p.Role == Plating {
			continue
		}
		if p.Form == Lump {
			sum += float64(0.1406 * p.Metal * p.Metal) // of a square, Saint-Venant; own value of the series
			continue
		}
		sum += float64(p.run()*math.Pow(p.thick(), 3)) / 3
	}
	return sum
}

// hatCell is the cell between crown, webs and plating, on their middle lines.
func (s Section) hatCell() float64 {
	sh := s.Shape
	low, high := float64(sh.base()-sh.Web), float64(sh.Flange-sh.Web)
	rise := float64(sh.Height) - float64(sh.FlangeThickness)/2 + float64(s.Plate)/2
	side := math.Hypot(rise, (high-low)/2)
	return bredt((low+high)/2*rise, high/float64(sh.FlangeThickness)+low/float64(s.Plate)+2*side/float64(sh.Web))
}

func bredt(area, around float64) float64 { return 4 * area * area / around }
