package chart

import "strconv"

// listWide is the room of the list of members beside a section.
const listWide = 190.0

// cutList is what the numbers in a section at a frame stand for, in the order of the numbers.
type cutList []cutItem

// cutItem is a kind of member of one section, with how many of it are drawn.
type cutItem struct {
	of, section string
	count       int
}

// list gives members of one kind and section one number: those in the plane of the frame first, then those that are cut.
func (c FrameCut) list() cutList {
	var all cutList
	for _, w := range c.Webs {
		all = all.with(w.Of, w.Section)
	}
	for _, b := range c.Cuts {
		all = all.with(b.Of, b.Section)
	}
	return all
}

func (all cutList) with(of, section string) cutList {
	for i := range all {
		if all[i].of == of && all[i].section == section {
			all[i].count++
			return all
		}
	}
	return append(all, cutItem{of, section, 1})
}

func (all cutList) number(of, section string) string {
	for i := range all {
		if all[i].of == of && all[i].section == section {
			return strconv.Itoa(i + 1)
		}
	}
	return ""
}

// draw sets the list from its left end, the first line at y, and gives the lower edge.
func (all cutList) draw(s *sheet, x, y float64) float64 {
	y = max(y, ascent+4)
	for i, item := range all {
		words := item.of
		if item.count > 1 {
			words += "s"
		}
		s.text("g-text", x+16, y, end, strconv.Itoa(i+1))
		s.text("g-text", x+24, y, start, fit(words+" "+item.section, s.w-x-28))
		y += line
	}
	return y
}

// disc is the radius of a disc with a number.
const disc = 8.5

// balloon sets a number in a disc: on the place itself where it is free and on says so, else beside it with a leader.
func (p *placer) balloon(s *sheet, at point, number string, on bool) bool {
	here := around(at.x, at.y, disc+1)
	if !on || p.blocked(here) || !here.within(p.bounds) {
		found, _, ok := p.find(at, "00")
		if !ok {
			return false
		}
		x, y := (found.left+found.right)/2, (found.top+found.bottom)/2
		here = around(x, y, disc+1)
		s.line("g-lead", at.x, at.y, x, y)
		p.lines = append(p.lines, segment{at, point{x, y}})
	}
	x, y := (here.left+here.right)/2, (here.top+here.bottom)/2
	s.circle("g-open", x, y, disc)
	s.text("g-text", x, y+rise/2, middle, number)
	p.taken = append(p.taken, here.grown(1))
	return true
}
