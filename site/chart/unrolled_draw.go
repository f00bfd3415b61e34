package chart

import (
	"slices"

	"hullfile/engine/finding"
)

// draw sets the key, the faces along the boat in one or more lengths, and the other faces beside each other.
func (u unrolled) draw(s *sheet) {
	y := u.key(s)
	var x extent
	var along, across []*Unfolded
	for i := range u.faces {
		f := &u.faces[i]
		if !f.Along {
			across = append(across, f)
			continue
		}
		along = append(along, f)
		fx, _ := f.bounds()
		x.take(fx.lo)
		x.take(fx.hi)
	}
	if len(along) > 0 {
		y = u.lengths(s, along, x, y)
	}
	if len(across) > 0 {
		y = u.beside(s, across, y+10)
	}
	s.h = y + 4
}

// key draws the shades with what they mean.
func (u unrolled) key(s *sheet) float64 {
	x, y := 2.0, 4.0
	swatch := func(class, words string, mark func(b box)) {
		need := 26 + advance(words) + 14
		if x+need > s.w {
			x, y = 2, y+20
		}
		b := box{x, y, x + 20, y + 13}
		s.rect(class, b)
		if mark != nil {
			mark(b)
		}
		s.text("g-soft", x+25, y+11, start, words)
		x += need
	}
	swatch("g-m6", "not shown", func(b box) { s.text("g-soft", b.left+10, b.bottom-2, middle, "○") })
	swatch("g-m0", "short", func(b box) { s.hatched(b, 5) })
	for i := len(shades) - 1; i >= 0; i-- {
		words := shades[i].words
		if i > 0 {
			words += " to " + firstWord(shades[i-1].words)
		}
		swatch(shades[i].class, words, nil)
	}
	return y + 26
}

func firstWord(s string) string {
	for i := range s {
		if s[i] == ' ' {
			return s[:i]
		}
	}
	return s
}

// lengths draws faces along the boat, stretch by stretch.
func (u unrolled) lengths(s *sheet, faces []*Unfolded, x extent, y float64) float64 {
	const edge = 14.0
	room := s.w - 2*edge
	cuts := u.cuts(x, room)
	longest := 0.0
	for k := 1; k < len(cuts); k++ {
		longest = max(longest, cuts[k]-cuts[k-1])
	}
	perMetre := min(room/max(longest, 0.05), 260)
	var cut Unfolded // for the part of a face that is being drawn
	for k := 1; k < len(cuts); k++ {
		from, to := cuts[k-1], cuts[k]
		last := to
		if k == len(cuts)-1 {
			last += 1e-6
		}
		for _, f := range faces {
			part := f
			if len(cuts) > 2 {
				cut.take(f, from, last)
				part = &cut
			}
			y = part.stretch(s, f, flatField{left: edge, perMetre: perMetre, aft: from}, from, last, y)
		}
		t := newTape(from, to, edge, (to-from)*perMetre)
		s.line("g-axis", t.from, y, t.from+t.length, y)
		s.divisions(t, y)
		s.figures(t, y+18)
		y += 22
		if k == len(cuts)-1 {
			s.text("g-text", edge+t.length/2, y+12, middle, fit("forward of the transom, m", s.w-8))
			y += 18
		}
		y += 12
	}
	return y
}

// take keeps what of a face lies between two places, in the room of what was kept before.
func (part *Unfolded) take(f *Unfolded, from, to float64) {
	part.Tiles, part.Bars = part.Tiles[:0], part.Bars[:0]
	for i := range f.Tiles {
		if between(f.Tiles[i].Flat, from, to) {
			part.Tiles = append(part.Tiles, f.Tiles[i])
		}
	}
	for i := range f.Bars {
		if between(f.Bars[i].Flat, from, to) {
			part.Bars = append(part.Bars, f.Bars[i])
		}
	}
}

// stretch draws the part of a face that lies between two places, under the name of the face and the numbers of its frames.
func (part *Unfolded) stretch(s *sheet, f *Unfolded, at flatField, from, to, y float64) float64 {
	if len(part.Tiles)+len(part.Bars) == 0 {
		return y
	}
	_, high := part.bounds()
	name := capitalised(f.Name)
	if f.Both {
		name += ", port above, starboard below"
	}
	s.text("g-text", 2, y+11, start, fit(name, s.w-8))
	y += 30
	at.top, at.high = y, high.lo
	edge := -100.0
	long, _ := part.bounds()
	for _, m := range f.Frames {
		if m.X < max(from, long.lo)-0.01 || m.X > min(to, long.hi)+0.01 {
			continue
		}
		px := at.at([2]float64{m.X, 0}).x
		s.line("g-tip", px, y-6, px, y-1)
		if half := advance(m.Name) / 2; px-half > edge+4 {
			s.text("g-soft", px, y-8, middle, m.Name)
			edge = px + half
		}
	}
	part.paint(s, at)
	return y + float64((high.hi-high.lo)*at.perMetre) + 22
}

// beside draws faces across the boat, as many in a row as there is room for.
func (u unrolled) beside(s *sheet, faces []*Unfolded, y float64) float64 {
	const gap, edge = 22.0, 8.0
	perMetre := 1e9
	for _, f := range faces {
		fx, _ := f.bounds()
		perMetre = min(perMetre, (s.w-2*edge)/max(fx.hi-fx.lo, 0.05), readable*1.15/f.usualLength())
	}
	x, row := edge, 0.0
	for _, f := range faces {
		fx, fy := f.bounds()
		width, height := (fx.hi-fx.lo)*perMetre, (fy.hi-fy.lo)*perMetre
		taken := max(width, advance(f.Name)+4)
		if x > edge && x+taken > s.w-edge {
			x, y, row = edge, y+row+gap, 0
		}
		s.text("g-text", x, y+11, start, fit(capitalised(f.Name), s.w-x))
		f.paint(s, flatField{left: x, top: y + 22, perMetre: perMetre, aft: fx.lo, high: fy.hi, up: true})
		x += taken + gap
		row = max(row, height+24)
	}
	return y + row
}

// paint draws panels, members over them, and figures over both.
func (f *Unfolded) paint(s *sheet, at flatField) {
	var shape []point
	f.outlines(s, at)
	for i := range f.Tiles {
		t := &f.Tiles[i]
		if t.Plain {
			continue
		}
		shape = shape[:0]
		for _, p := range t.Flat {
			shape = append(shape, at.at(p))
		}
		text, place, fits := t.figure(shape)
		href := t.Href
		if s.slim() && !fits {
			href = "" // a way without words; the table has it
		}
		s.linked(href, func() {
			if href != "" && !s.slim() {
				s.raw("<title>")
				s.out = appendText(s.out, t.Name)
				s.raw("</title>")
			}
			s.shape(shade(t), shape...)
			if t.Standing == finding.Short {
				s.hatchedShape(shape, 6)
			}
			if fits {
				s.text(t.figureClass(), place.x, place.y+rise/2, middle, text)
			}
		})
	}
	if len(f.Bars) == 0 {
		return
	}
	p := &placer{bounds: box{2, 2, s.w - 2, 1e6}, taken: slices.Clone(s.words)}
	for i := range f.Bars {
		f.bar(s, &f.Bars[i], at, p)
	}
	for i := range f.Bars {
		f.barFigure(s, &f.Bars[i], at, p)
	}
}

// outlines draws all plain panels as one path.
func (f *Unfolded) outlines(s *sheet, at flatField) {
	begun := false
	for i := range f.Tiles {
		t := &f.Tiles[i]
		if !t.Plain {
			continue
		}
		if !begun {
			s.begin("path", "g-station")
			s.raw(` d="`)
			begun = true
		}
		for i, p := range t.Flat {
			from, to := at.at(p), at.at(t.Flat[(i+1)%len(t.Flat)])
			s.move("M", from.x, from.y)
			s.move("L", to.x, to.y)
		}
	}
	if begun {
		s.raw(`"/>`)
	}
}

// figure is the margin of a panel, and where in its shape it fits.
func (t *Tile) figure(shape []point) (text string, at point, ok bool) {
	switch {
	case !judgedTile(t.Standing, t.Margin):
		text = "○"
	case t.Standing == finding.Short:
		text = "▼" + ratioOf(t.Standing, t.Margin)
	default:
		text = ratio(t.Margin)
	}
	if at, ok = roomIn(shape, text); !ok && t.Standing == finding.Short {
		text = "▼"
		at, ok = roomIn(shape, text)
	}
	return text, at, ok
}

func (t *Tile) figureClass() string {
	switch {
	case !judgedTile(t.Standing, t.Margin):
		return "g-soft g-label"
	case t.Standing == finding.Short:
		return "g-short g-label"
	}
	return "g-label"
}

// bar draws one member; one that is short is crossed and bears its figure.
func (f *Unfolded) bar(s *sheet, b *Bar, at flatField, p *placer) {
	way := make([]point, 0, len(b.Flat))
	for _, p := range b.Flat {
		way = append(way, at.at(p))
	}
	class := "g-seam"
	if b.Primary || b.Named {
		class += " g-heavy"
	}
	switch {
	case b.Standing == finding.Short:
		class += " g-bad"
	case !judgedTile(b.Standing, b.Margin):
		class += " g-lacking"
	}
	s.curve(class, way...)
	for i := 1; i < len(way); i++ {
		p.lines = append(p.lines, segment{way[i-1], way[i]})
	}
	if b.Standing != finding.Short {
		return
	}
	a, q := way[(len(way)-1)/2], way[len(way)/2]
	x, y := (a.x+q.x)/2, (a.y+q.y)/2
	s.line("g-seam g-bad", x-5, y-5, x+5, y+5)
	s.line("g-seam g-bad", x-5, y+5, x+5, y-5)
	p.set(s, "g-short g-label", point{x, y}, "▼"+ratioOf(b.Standing, b.Margin))
}

// barFigure sets the figure of a named member beside its middle where there is clear room.
func (f *Unfolded) barFigure(s *sheet, b *Bar, at flatField, p *placer) {
	if !b.Named || b.Standing == finding.Short || !judgedTile(b.Standing, b.Margin) {
		return
	}
	m := halfway(b.Flat)
	if text := ratio(b.Margin); p.near(at.at(m), text) {
		p.set(s, "g-label", at.at(m), text)
	}
}

func capitalised(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-32) + s[1:]
}
