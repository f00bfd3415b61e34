package grid

// At finds the panel in which a place of a zone lies, by its coordinates on the unrolled zone as in Patch: the record that
// judges it. ok is false where no panel lies there.
func (r *Result) At(zone string, x, girth float64) (panel string, ok bool) {
	for i := range r.Patches {
		p := &r.Patches[i]
		if (p.Zone == zone || judgedAs(p.Zone) == zone) && within(p.Flat, x, girth) {
			return p.Panel, true
		}
	}
	return "", false
}

// judgedAs is the zone under which a record knows what a patch lies on.
func judgedAs(zone string) string {
	switch zone {
	case "chine flat":
		return "bottom"
	case "sole":
		return "deck"
	}
	return zone
}

// within reports whether a point lies in a polygon, by counting the edges to one side of it.
func within(poly [][2]float64, x, y float64) bool {
	in := false
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		if (p[1] > y) != (q[1] > y) && x < p[0]+float64((y-p[1])/(q[1]-p[1])*(q[0]-p[0])) {
			in = !in
		}
	}
	return in
}

// Cut lists the panels that are cut from a plating, by the records that judge them.
func (r *Result) Cut(plating string) []string {
	var out []string
	seen := map[string]bool{}
	for i := range r.Patches {
		if p := &r.Patches[i]; p.Plate == plating && !seen[p.Panel] {
			seen[p.Panel] = true
			out = append(out, p.Panel)
		}
	}
	return out
}
