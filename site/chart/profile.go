package chart

import (
	"fmt"
	"math"
	"sort"
	"strconv"

	"hullfile/engine/unit"
)

// namedItems is how many of the heaviest items bear a number in the picture of centres and stand in the key below it; the
// rest is in the table.
const namedItems = 9

// sortByMass puts items heaviest first; equal masses stay in the order of the record.
func sortByMass(items []placed) {
	sort.SliceStable(items, func(i, j int) bool { return math.Abs(items[i].mass) > math.Abs(items[j].mass) })
}

// profile is the field of the picture: metres to drawing units, the same both ways as far as the height allows.
type profile struct {
	ruler
	base, perMetre float64 // y of z = 0, and the scale upward
	top            float64 // greatest height
}

func (p profile) up(z float64) float64 { return p.base - float64(p.perMetre*z) }

// field lays the profile out on a sheet.
func (c centres) field(s *sheet) profile {
	along, high := extent{has: true, hi: c.length}, extent{has: true}
	for _, i := range c.items {
		along.take(i.x)
		if i.hasZ {
			high.take(i.z)
		}
	}
	for _, m := range c.marks {
		along.take(m.x)
		if m.hasZ {
			high.take(m.z)
		}
	}
	const edge, most = 34.0, 280.0
	p := profile{ruler: newTape(along.lo-0.4, along.hi+0.4, edge, s.w-edge-16), top: high.hi}
	p.perMetre = p.length / (p.most - p.least)
	if tall := high.hi - high.lo; tall*p.perMetre > most {
		p.perMetre = most / tall
	}
	p.base = 44 + float64(p.perMetre*high.hi)
	if c.level {
		p.base = 60
	}
	return p
}

// draw paints the items over the base line, the centres under it, and the scale below.
func (c centres) draw(s *sheet) {
	p := c.field(s)
	foot := p.base
	for _, i := range c.items {
		foot = max(foot, p.up(i.z)+c.radius(s, i))
	}
	for _, m := range c.marks {
		foot = max(foot, p.up(m.z)+12)
	}
	lanes := c.lanes()
	s.h = s.ruled(p.ruler, 22, foot+28+float64(line*float64(len(lanes))), "forward of the transom, m")
	c.heights(s, p)
	c.discs(s, p)
	taken := lanes.draw(s, p, foot+8)
	c.numbers(s, p, taken, box{p.from + 2, 2, s.w - 2, foot + 6})
	c.key(s)
}

// heights draws the base line over the length of the hull, and a hairline at every half or whole metre above it.
func (c centres) heights(s *sheet, p profile) {
	s.rect("g-need", box{p.at(0), p.base - 1, p.at(max(c.length, 0)), p.base + 1})
	s.line("g-axis", p.from, p.base, p.from+p.length, p.base)
	s.text("g-text", p.from-8, p.base+rise/2, end, "0")
	if c.level {
		return
	}
	s.text("g-text", 2, 14, start, "height, m")
	up, last := newScale(0, max(p.top, 0.5), 5), p.base
	for _, z := range up.ticks() {
		if y := p.up(z); last-y > line && y > 26 {
			s.line("g-grid", p.from, y, p.from+p.length, y)
			s.text("g-text", p.from-8, y+rise/2, end, up.label(z))
			last = y
		}
	}
}

// radius gives the radius of the disc of an item; that of the heaviest is a thirtieth of the width of the sheet.
func (c centres) radius(s *sheet, i placed) float64 {
	return max(1.5, float64(s.w/30*math.Sqrt(math.Abs(i.mass)/math.Abs(c.items[0].mass))))
}

// discs draws the items, heavy ones first so that light ones stay in sight.
func (c centres) discs(s *sheet, p profile) {
	for _, i := range c.items {
		class := "g-item"
		if i.mass < 0 {
			class = "g-away"
		}
		s.begin("circle", class)
		s.attribute("cx", p.at(i.x))
		s.attribute("cy", p.up(i.z))
		s.attribute("r", c.radius(s, i))
		s.raw("><title>")
		s.out = appendText(s.out, fmt.Sprintf("%s, %s kg at %s m", i.name, unit.Text(i.mass, 1), unit.Text(i.x, 2)))
		s.raw("</title></circle>")
	}
}

// numbers sets a number on the disc of each of the heaviest items, or beside it where the disc is small or covered.
func (c centres) numbers(s *sheet, p profile, taken []box, bounds box) {
	place := placer{bounds: bounds, taken: append(append([]box{}, s.words...), taken...)}
	place.lines = append(place.lines, segment{point{p.from, p.base}, point{p.from + p.length, p.base}})
	for n, i := range c.items {
		if n < 40 {
			place.soft = append(place.soft, around(p.at(i.x), p.up(i.z), c.radius(s, i)*0.85))
		}
	}
	for n := range c.named() {
		at, text := point{p.at(c.items[n].x), p.up(c.items[n].z)}, strconv.Itoa(n+1)
		base := at.y + rise/2
		on := box{at.x - advance(text)/2, base - ascent, at.x + advance(text)/2, base + descent}
		if c.radius(s, c.items[n]) < 9 || place.blocked(on) {
			place.set(s, "g-label", at, text)
			continue
		}
		s.text("g-label", at.x, base, middle, text)
		place.taken = append(place.taken, on)
	}
}

// named is how many items are numbered.
func (c centres) named() int { return min(namedItems, len(c.items)) }

// key says under the picture which items the numbers stand for, column by column.
func (c centres) key(s *sheet) {
	columns := 2
	if s.slim() {
		columns = 1
	}
	rows := (c.named() + columns - 1) / columns
	wide := (s.w - 8) / float64(columns)
	for n := range c.named() {
		x, y := 4+float64(wide*float64(n/rows)), s.h+14+float64(line*float64(n%rows))
		i := c.items[n]
		s.text("g-text", x+14, y, end, strconv.Itoa(n+1))
		mass := ", " + unit.Text(i.mass, 0) + " kg"
		s.text("g-soft", x+20, y, start, fit(i.name, wide-28-advance(mass))+mass)
	}
	s.h += 14 + float64(line*float64(rows))
}
