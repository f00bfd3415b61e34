package chart

import (
	"hullfile/engine/unit"
)

// stiff is the width at which stiffeners are drawn.
const stiff = 6.0

// field draws the plate field seen from above with the stiffeners around it, and gives its lower edge.
func (d panelDrawing) field(s *sheet, room box) float64 {
	short, long := d.sides()
	const margin, above, below = 46.0, 34.0, 36.0
	scale := min((room.right-room.left-margin-26)/long, (room.bottom-room.top-above-below)/short)
	w, h := float64(long*scale), max(float64(short*scale), 3)
	left := room.left + margin + (room.right-room.left-margin-26-w)/2
	f := box{left, room.top + above, left + w, room.top + above + h}
	s.text("g-soft", room.left+2, room.top+14, start, "Plate field")
	s.rect("g-plate", f)
	d.stiffeners(s, f)
	d.fieldWords(s, f)
	s.upright(f.top, f.bottom, f.left-22, room.top+20, unit.Text(short, 0)+" mm")
	s.across(f.left, f.right, f.bottom+28, unit.Text(long, 0)+" mm")
	return max(f.bottom+below, room.top+90)
}

// stiffeners draws the four edges, each a little longer than the field.
func (d panelDrawing) stiffeners(s *sheet, f box) {
	const over, half = 12.0, stiff / 2
	for _, y := range [...]float64{f.top, f.bottom} {
		s.rect("g-stiff", box{f.left - over, y - half, f.right + over, y + half})
	}
	for _, x := range [...]float64{f.left, f.right} {
		s.rect("g-stiff", box{x - half, f.top - over, x + half, f.bottom + over})
	}
}

// fieldWords says in the field what it is made of, as far as there is room.
func (d panelDrawing) fieldWords(s *sheet, f box) {
	lines := []string{d.Record.Alloy.V, d.Record.Edges.V}
	if d.Record.Edges.V != "" {
		lines[1] = "edges " + d.Record.Edges.V
	}
	kept := lines[:0]
	for _, words := range lines {
		if words != "" && advance(words) < f.right-f.left-2*stiff {
			kept = append(kept, words)
		}
	}
	height := line * float64(len(kept))
	if height+2*stiff > f.bottom-f.top {
		return
	}
	y := (f.top+f.bottom)/2 - height/2 + 12
	for i, words := range kept {
		s.text("g-text", (f.left+f.right)/2, y+line*float64(i), middle, words)
	}
}

// section draws the plate across its short side with its camber between two stiffeners, and gives its lower edge.
func (d panelDrawing) section(s *sheet, room box) float64 {
	short, _ := d.sides()
	width := room.right - room.left
	scale := width / short
	rises, t := min(float64(d.camber()*scale), highest), min(max(float64(d.fitted()*scale), 2), highest/2)
	top := room.top + 34 + rises
	s.text("g-soft", room.left-38, room.top+14, start, "Section across the short side")
	const web = 30.0
	for _, x := range [...]float64{room.left, room.right} {
		s.rect("g-stiff", box{x - stiff/2, top + t, x + stiff/2, top + t + web})
	}
	s.shape("g-metal", bowed(room.left, room.right, top, rises, t)...)
	s.text("g-label", room.left+width/2, top+t+16, middle, d.bow(rises == highest))
	s.across(room.left, room.right, top+t+web+20, unit.Text(short, 0)+" mm")
	return top + t + web + 24
}

// highest is how high a section is drawn at most.
const highest = 120.0

// bow says in words how the plate is curved.
func (d panelDrawing) bow(cut bool) string {
	switch {
	case d.camber() == 0:
		return "flat"
	case cut:
		return "camber " + unit.Text(d.camber(), 0) + " mm, drawn lower"
	}
	return "camber " + unit.Text(d.camber(), 0) + " mm"
}

// bowed gives the outline of a plate of thickness t that rises in a parabola between its ends.
func bowed(left, right, top, rises, t float64) []point {
	const pieces = 24
	outline := make([]point, 0, 2*pieces+2)
	at := func(i int, y float64) point {
		u := float64(i) / pieces
		return point{left + float64((right-left)*u), y - float64(4*rises*u*(1-u))}
	}
	for i := 0; i <= pieces; i++ {
		outline = append(outline, at(i, top))
	}
	for i := pieces; i >= 0; i-- {
		outline = append(outline, at(i, top+t))
	}
	return outline
}

// thickness draws fitted and needed thickness as cuts through the plate at one scale, and gives the lower edge.
func (d panelDrawing) thickness(s *sheet, room box) float64 {
	const most = 84.0
	s.text("g-soft", room.left-38, room.top+14, start, "Thickness")
	foot := room.top + 40 + most
	scale := most / max(d.fitted(), d.needed(), 1)
	centre := (room.left + room.right) / 2
	fitted, needed := box{room.left, foot, centre - 12, foot}, box{centre + 12, foot, room.right, foot}
	s.line("g-dim", room.left-8, foot, room.right+8, foot)
	if thick(d.Fitted) {
		fitted.top = foot - float64(d.fitted()*scale)
		s.rect("g-metal", fitted)
		s.hatched(fitted, 6)
	}
	fittedWords, neededWords := figure(float64(d.Fitted), thick(d.Fitted), 1)+" mm", "–"
	if judged(d.Panel) {
		needed.top = foot - float64(d.needed()*scale)
		s.rect("g-wanted", needed)
		s.line("g-lead", fitted.left, needed.top, needed.right, needed.top)
		neededWords = unit.Up(d.Needed, 2) + " mm"
	}
	s.cutWords(fitted, fittedWords, "fitted")
	s.cutWords(needed, neededWords, "needed")
	return foot + 20
}

// cutWords sets the figure over a cut and what it is below.
func (s *sheet) cutWords(cut box, over, under string) {
	x := (cut.left + cut.right) / 2
	s.text("g-label", x, cut.top-5, middle, over)
	s.text("g-text", x, cut.bottom+16, middle, under)
}

// along draws the waterline with the panel on it, and gives the lower edge.
func (d panelDrawing) along(s *sheet, room box) float64 {
	length, hasLength := d.waterline()
	x, hasX := d.place()
	s.text("g-soft", 2, room.top+14, start, "Place along the waterline")
	if !hasLength || !hasX {
		s.text("g-text", room.left, room.top+38, start, "not on record")
		return room.top + 46
	}
	r := newTape(min(0, x), max(length, x), room.left, room.right-room.left)
	y := room.top + 56
	s.line("g-axis", r.from, y, r.from+r.length, y)
	s.rect("g-need", box{r.at(0), y - 2, r.at(length), y + 2})
	s.divisions(r, y)
	s.figures(r, y+18)
	s.circle("g-open", r.at(x), y, 5)
	words := fit(unit.Text(x, 2)+" m, "+unit.Text(x/length, 2)+" of the waterline", s.w-8)
	half := advance(words)/2 + 1
	s.text("g-label", nearest(r.at(x), half, s.w-half), y-14, middle, words)
	s.text("g-soft", r.from+r.length/2, y+36, middle, fit("m forward of the aft end of the waterline", s.w-8))
	return y + 42
}
