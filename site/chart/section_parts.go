package chart

import (
	"math"

	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// sectionField is where a section lies on the sheet: the middle of its web, the height from which it is measured, and the scale.
type sectionField struct {
	middle, base, perMM float64
	left, right, top    float64 // of what is drawn
	half                float64 // of the plating that is drawn, mm
}

func (f sectionField) at(y, z float64) point {
	return point{f.middle + float64(y*f.perMM), f.base - float64(z*f.perMM)}
}

// reachOf gives how far the bar reaches to the left and to the right of the middle of its web, mm.
func (d sectionDrawing) reachOf() (left, right float64) {
	for _, p := range d.Parts {
		if p.Role == section.Plating {
			continue
		}
		half := p.Breadth/2 + math.Abs(p.Lean)/2
		switch p.Form {
		case section.Ring:
			half = p.Diameter / 2
		case section.Lump:
			half = math.Sqrt(p.Metal) / 2
		}
		left, right = min(left, p.Y-half), max(right, p.Y+half)
	}
	return left, right
}

// shown gives how far the plating is drawn each way, mm: all that counts, but no more than the bar is high beside it.
func (d sectionDrawing) shown() float64 {
	if d.Plate == 0 {
		return 0
	}
	left, right := d.reachOf()
	return min(float64(d.Effective)/2, max(-left, right)+float64(d.p.Depth))
}

// cut reports whether the plating is drawn shorter than what counts.
func (d sectionDrawing) cut() bool { return d.Plate > 0 && d.shown() < float64(d.Effective)/2 }

// draw sets the section and its sizes on the sheet: beside each other on a page, under each other on a phone.
func (d sectionDrawing) draw(s *sheet) {
	room := box{70, 40, 420, 300}
	if s.slim() {
		room = box{64, 40, s.w - 92, 250}
	}
	f := d.field(room)
	for _, p := range d.Parts {
		d.part(s, f, p)
	}
	if d.weld() {
		for _, p := range d.soft.Parts {
			d.softened(s, f, p)
		}
	}
	foot := d.sizes(s, f)
	d.neutral(s, f)
	if s.slim() {
		s.h = d.list(s, 8, foot+24)
		return
	}
	s.h = max(foot+10, d.list(s, 520, 60))
}

// lowest is the room that words beside a section take at least, where it is drawn lower.
const lowest = 60.0

// field fits the section into a room.
func (d sectionDrawing) field(room box) sectionField {
	left, right := d.reachOf()
	half := d.shown()
	left, right = min(left, -half), max(right, half)
	perMM := min((room.right-room.left)/max(right-left, 1e-6), (room.bottom-room.top)/float64(d.p.Depth))
	f := sectionField{perMM: perMM, half: half}
	f.middle = (room.left+room.right)/2 - perMM*(left+right)/2
	f.base = room.top + max(perMM*float64(d.p.Depth), lowest)
	f.left, f.right, f.top = f.middle+perMM*left, f.middle+perMM*right, f.base-perMM*float64(d.p.Depth)
	return f
}

// corners gives the outline of a slab, the plating as far as it is drawn.
func (f sectionField) corners(p section.Part) []point {
	left, right := p.Y-p.Breadth/2, p.Y+p.Breadth/2
	if p.Role == section.Plating {
		left, right = max(left, -f.half), min(right, f.half)
	}
	low, high, lean := p.Z-p.Height/2, p.Z+p.Height/2, p.Lean/2
	return []point{f.at(left-lean, low), f.at(right-lean, low), f.at(right+lean, high), f.at(left+lean, high)}
}

// part draws one piece of metal.
func (d sectionDrawing) part(s *sheet, f sectionField, p section.Part) {
	switch p.Form {
	case section.Ring:
		c := f.at(p.Y, p.Z)
		s.circle("g-metal", c.x, c.y, f.perMM*p.Diameter/2)
		s.circle("g-stiff", c.x, c.y, max(0, f.perMM*(p.Diameter/2-p.Wall)))
	case section.Lump:
		side, top := math.Sqrt(p.Metal), float64(d.p.Depth)
		web := float64(d.Shape.Web) / 2
		s.shape("g-metal", f.at(web, top), f.at(web+0.8*side, top), f.at(web+side, top-0.25*side), f.at(web+side, top-0.6*side), f.at(web, top-1.5*side))
	default:
		s.shape("g-metal", f.corners(p)...)
	}
}

// softened hatches a strip that heat has softened. Of a pipe the softened arc is hatched across its wall.
func (d sectionDrawing) softened(s *sheet, f sectionField, p section.Part) {
	switch {
	case p.Factor >= 1:
	case p.Form == section.Slab:
		s.hatchedShape(f.corners(p), 5)
	case p.Form == section.Lump && p.Factor < 0:
		d.arcs(s, f)
	}
}

func (d sectionDrawing) arcs(s *sheet, f sectionField) {
	ring := d.Parts[0]
	inner, outer := ring.Diameter/2-ring.Wall, ring.Diameter/2
	var strokes []segment
	for _, z := range d.soft.Zones {
		if z.Part != ring.Name {
			continue // of the plating, in millimetres
		}
		for deg := float64(z.From); deg <= float64(z.To); deg += 4 {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			strokes = append(strokes, segment{f.at(ring.Y+inner*cos, ring.Z+inner*sin), f.at(ring.Y+outer*cos, ring.Z+outer*sin)})
		}
	}
	s.strokes("g-hatch", strokes)
}

// hatchedShape draws hatching at half a right angle inside a shape without hollows.
func (s *sheet) hatchedShape(corners []point, gap float64) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range corners {
		lo, hi = min(lo, p.x+p.y), max(hi, p.x+p.y)
	}
	if !(hi-lo < 1e5) {
		return
	}
	var strokes []segment
	for at := math.Floor(lo/gap) * gap; at <= hi; at += gap {
		var ends []point
		for i, a := range corners {
			b := corners[(i+1)%len(corners)]
			va, vb := a.x+a.y-at, b.x+b.y-at
			if (va < 0) != (vb < 0) {
				t := va / (va - vb)
				ends = append(ends, point{a.x + float64(t*(b.x-a.x)), a.y + float64(t*(b.y-a.y))})
			}
		}
		if len(ends) == 2 {
			strokes = append(strokes, segment{ends[0], ends[1]})
		}
	}
	s.strokes("g-hatch", strokes)
}

// sizes draws the dimensions, and gives the lower edge of what it drew.
func (d sectionDrawing) sizes(s *sheet, f sectionField) float64 {
	plating := float64(d.Plate * unit.MM(f.perMM))
	const ceiling = 34
	height := unit.Plain(d.p.Depth-d.Plate) + " mm"
	s.upright(f.top, f.base-plating, f.left-20, ceiling, height)
	half := advance(height) / 2
	foot := max(f.base+8, max((f.top+f.base-plating)/2, ceiling+half)+half+4)
	left, right := d.reachOf()
	if d.Shape.Kind != section.FlatBar && d.Shape.Kind != section.Pipe {
		s.across(f.middle+f.perMM*left, f.middle+f.perMM*right, min(f.top-14, d.beside(f)-ascent-6), unit.Text(right-left, 0)+" mm")
	}
	if d.Plate == 0 {
		return foot
	}
	words := unit.Text(d.Effective, 0) + " mm count"
	s.across(f.left, f.right, f.base+26, words)
	return max(foot, f.base+32)
}

// beside gives the base line of the words at the neutral axis, kept off those under the plating.
func (d sectionDrawing) beside(f sectionField) float64 {
	return min(f.base-f.perMM*float64(d.p.Neutral)-2, f.base-12)
}

// neutral draws the neutral axis with its height.
func (d sectionDrawing) neutral(s *sheet, f sectionField) {
	y := f.base - f.perMM*float64(d.p.Neutral)
	s.line("g-water", f.left-8, y, f.right+10, y)
	words := d.beside(f)
	s.text("g-label g-b-name", f.right+14, words, start, "neutral axis")
	s.text("g-label g-b-name", f.right+14, words+line, start, unit.Text(d.p.Neutral, 1)+" mm")
}

// list sets what the section is good for, from its left end, and gives the lower edge.
func (d sectionDrawing) list(s *sheet, x, y float64) float64 {
	lines := wrap(named(string(d.Shape.Kind))+" "+d.size(), s.w-x-8)
	if d.Plate > 0 {
		lines = append(lines, "on plating of "+unit.Plain(d.Plate)+" mm")
	}
	lines = append(lines, "", "I "+unit.Figures(d.p.I, 3)+" cm⁴")
	edge, plating := "W at the free edge "+unit.Figures(d.p.AtEdge, 3)+" cm³", "W at the foot "+unit.Figures(d.p.AtPlate, 3)+" cm³"
	if d.Plate > 0 {
		plating = "W at the plating " + unit.Figures(d.p.AtPlate, 3) + " cm³"
	}
	lines = append(lines, edge, plating, "webs in shear "+unit.Figures(d.p.Web, 3)+" cm²")
	if d.weld() {
		soft := d.soft.Properties()
		lines = append(lines, "", "softened: I "+unit.Figures(soft.I, 3)+" cm⁴", "W at the free edge "+unit.Figures(soft.AtEdge, 3)+" cm³")
	}
	for _, words := range lines {
		if words == "" {
			y += line / 2
			continue
		}
		s.text("g-text", x, y, start, fit(words, s.w-x-4))
		y += line
	}
	return y
}
