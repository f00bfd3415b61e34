package scantling

import (
	"hullfile/engine/grid"
	"hullfile/engine/record"
)

// where finds the panel in which a reading lies, by its zone and its place on the unrolled skin.
func (j *judge) where(g *record.Gauging) (panel, why string) {
	if !g.X.Set || !g.Girth.Set {
		return "", "it names neither a panel nor a place by x_m and girth_m"
	}
	x, girth := float64(g.X.V), float64(g.Girth.V)
	for i := range j.in.Grid.Patches {
		p := &j.in.Grid.Patches[i]
		if j.zoneFits(g, p) && inside(p.Flat, x, girth) {
			return p.Panel, ""
		}
	}
	return "", "no panel of the grid lies at its place"
}

// zoneFits reports whether a reading may lie in a patch; without a zone it lies on the shell.
func (j *judge) zoneFits(g *record.Gauging, p *grid.Patch) bool {
	zone, named := g.Zone.Get()
	if !named {
		return p.Zone == "bottom" || p.Zone == "chine flat" || p.Zone == "side"
	}
	switch p.Zone {
	case "chine flat":
		return zone == "bottom"
	case "sole":
		return zone == "deck"
	}
	return p.Zone == zone
}

// inside tells by counting crossings whether a point lies in a polygon; on its edge either may come out.
func inside(corners [][2]float64, x, y float64) bool {
	in := false
	for i := range corners {
		a, b := corners[i], corners[(i+1)%len(corners)]
		if (a[1] > y) != (b[1] > y) && x < a[0]+float64((y-a[1])/(b[1]-a[1])*(b[0]-a[0])) {
			in = !in
		}
	}
	return in
}
