package chart

import (
	"fmt"
	"math"

	"hullfile/engine/unit"
)

// FrameCut is the starboard half of the hull cut at a frame: plating, members along it cut across, members in its plane.
// Places are y to starboard and z above the base line, metres.
type FrameCut struct {
	Name     string
	X        float64
	Skins    []CutSkin
	Cuts     []CutBar
	Webs     []CutWeb
	Water    float64
	HasWater bool
}

// CutSkin is a stretch of plating.
type CutSkin struct {
	Way   [][2]float64
	Words string // "bottom 6.0 mm"
}

// CutBar is a member along the boat, cut across.
type CutBar struct {
	At      [2]float64
	Inward  [2]float64 // square to the plating, of length one
	Height  float64    // m, from the plating
	Flange  float64    // m, nought for none
	Pipe    bool
	Of      string // "bottom stringer"; those of one kind and section bear one number
	Name    string
	Section string
}

// CutWeb is a member in the plane of the frame: where it lies on the plating, and how high it stands.
type CutWeb struct {
	Way     [][2]float64
	Inward  [2]float64
	Height  float64
	Of      string // "bottom frame"
	Name    string
	Section string
}

// FrameSection draws the half section at a frame to scale, with the sizes of plates and members.
func FrameSection(c FrameCut) Figure {
	id, title := "fig-frame-"+slug(c.Name), "Section at "+c.Name
	if !c.drawable() {
		return blank(id, title, "The lines are not on record, so the section at this frame cannot be drawn.", nil)
	}
	p := plate{id: id, title: title, alt: c.words(), paint: c.draw}
	return p.finished(c.note(), c.table())
}

func (c FrameCut) drawable() bool {
	places := 0
	for _, s := range c.Skins {
		for _, p := range s.Way {
			if !near0(p[0]) || !near0(p[1]) {
				return false
			}
			places++
		}
	}
	for _, b := range c.Cuts {
		if !near0(b.At[0]) || !near0(b.At[1]) || !near0(b.Height) || !near0(b.Flange) {
			return false
		}
	}
	return places > 1
}

func (c FrameCut) words() string {
	return fmt.Sprintf("Starboard half at x %s m with %d members in the plane of the frame and %d cut across.", unit.Text(c.X, 2), len(c.Webs), len(c.Cuts))
}

func (c FrameCut) note() string {
	note := "Starboard half, to scale; thicknesses are drawn thicker than they are."
	if c.HasWater {
		note += " The broken line is the water, loaded."
	}
	return note + " Members bear the numbers of the list; each by its name, with its place, stands in the table."
}

func (c FrameCut) table() [][]string {
	table := [][]string{{"No.", "Part", "Size", "y, m", "z, m"}}
	list := c.list()
	for _, s := range c.Skins {
		if s.Words != "" && len(s.Way) > 0 {
			mid := s.Way[len(s.Way)/2]
			table = append(table, []string{"–", "plating", s.Words, unit.Text(mid[0], 2), unit.Text(mid[1], 2)})
		}
	}
	for _, w := range c.Webs {
		mid := halfway(w.Way)
		table = append(table, []string{list.number(w.Of, w.Section), w.Name, w.Section, unit.Text(mid[0], 2), unit.Text(mid[1], 2)})
	}
	for _, b := range c.Cuts {
		table = append(table, []string{list.number(b.Of, b.Section), b.Name, b.Section, unit.Text(b.At[0], 2), unit.Text(b.At[1], 2)})
	}
	return table
}

func halfway(way [][2]float64) [2]float64 {
	if len(way) == 0 {
		return [2]float64{}
	}
	a, b := way[(len(way)-1)/2], way[len(way)/2]
	return [2]float64{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
}

// field fits the section into the sheet, with room for the list to its right; on a phone the list comes below.
func (c FrameCut) field(s *sheet) (at func(p [2]float64) point, perMetre float64) {
	var y, z extent
	y.take(0)
	for _, k := range c.Skins {
		for _, p := range k.Way {
			y.take(p[0])
			z.take(p[1])
		}
	}
	left, right := 24.0, listWide+30
	if s.slim() {
		left, right = 14, 40
	}
	perMetre = min((s.w-left-right)/max(y.hi, 0.05), 460/max(z.hi-z.lo, 0.05))
	const top = 34.0
	s.h = top + (z.hi-z.lo)*perMetre + 34
	return func(p [2]float64) point {
		return point{left + float64(p[0]*perMetre), top + float64((z.hi-p[1])*perMetre)}
	}, perMetre
}

func (c FrameCut) draw(s *sheet) {
	at, perMetre := c.field(s)
	p := &placer{bounds: box{2, 2, s.w - 2, s.h - 14}}
	middleLine := at([2]float64{0, 0}).x
	s.line("g-station", middleLine, 16, middleLine, s.h-14)
	if c.HasWater {
		y := at([2]float64{0, c.Water}).y
		shore := s.w - 8
		if !s.slim() {
			shore -= listWide // the list stands there
		}
		s.line("g-water", middleLine-8, y, shore, y)
		p.lines = append(p.lines, segment{point{middleLine, y}, point{shore, y}})
	}
	for _, w := range c.Webs {
		c.web(s, at, perMetre, w)
	}
	for _, k := range c.Skins {
		var way []point
		for _, q := range k.Way {
			way = append(way, at(q))
		}
		s.curve("g-skin", way...)
		for i := 1; i < len(way); i++ {
			p.lines = append(p.lines, segment{way[i-1], way[i]})
		}
	}
	for _, b := range c.Cuts {
		c.bar(s, at, perMetre, b, p)
	}
	list := c.list()
	c.names(s, at, p, list)
	if s.slim() {
		foot := s.scaleBar(middleLine, s.h-8, perMetre, s.w/4)
		s.h = list.draw(s, 8, foot+20)
		return
	}
	foot := list.draw(s, s.w-listWide, s.h-8-line*float64(len(list)-1)) + 2
	s.h = max(s.scaleBar(middleLine, s.h-8, perMetre, s.w/4)+2, foot)
}

// web draws a member in the plane: its web as a strip inside the plating.
func (c FrameCut) web(s *sheet, at func([2]float64) point, perMetre float64, w CutWeb) {
	var outer, inner []point
	for _, q := range w.Way {
		outer = append(outer, at(q))
		in := at([2]float64{q[0] + w.Inward[0]*w.Height, q[1] + w.Inward[1]*w.Height})
		inner = append(inner, in)
	}
	middleLine := at([2]float64{0, 0}).x
	if n := len(inner); n > 1 && inner[0].x < middleLine && inner[n-1].x > middleLine {
		t := (middleLine - inner[0].x) / (inner[n-1].x - inner[0].x) // the other half is on the other side
		inner[0] = point{middleLine, inner[0].y + t*(inner[n-1].y-inner[0].y)}
	}
	s.shape("g-metal", append(append([]point{}, outer...), reversed(inner)...)...)
}

// bar draws a member cut across.
func (c FrameCut) bar(s *sheet, at func([2]float64) point, perMetre float64, b CutBar, p *placer) {
	foot := at(b.At)
	dx, dy := b.Inward[0]*perMetre, -b.Inward[1]*perMetre
	top := point{foot.x + dx*b.Height, foot.y + dy*b.Height}
	if b.Pipe {
		s.circle("g-stiff", (foot.x+top.x)/2, (foot.y+top.y)/2, max(b.Height*perMetre/2, 2))
	} else {
		s.line("g-cutbar", foot.x, foot.y, top.x, top.y)
	}
	if b.Flange > 0 {
		s.line("g-cutbar", top.x-dy*b.Flange/2, top.y+dx*b.Flange/2, top.x+dy*b.Flange/2, top.y-dx*b.Flange/2)
	}
	p.taken = append(p.taken, box{min(foot.x, top.x) - 2, min(foot.y, top.y) - 2, max(foot.x, top.x) + 2, max(foot.y, top.y) + 2})
}

// names sets the sizes of the plates and the numbers of the members.
func (c FrameCut) names(s *sheet, at func([2]float64) point, p *placer, list cutList) {
	for _, k := range c.Skins {
		if k.Words != "" {
			p.set(s, "g-label g-b-name", at(halfway(k.Way)), fit(k.Words, s.w*0.44))
		}
	}
	for _, w := range c.Webs {
		if len(w.Way) == 0 {
			continue
		}
		q := [2]float64{(w.Way[0][0] + w.Way[len(w.Way)-1][0]) / 2, (w.Way[0][1] + w.Way[len(w.Way)-1][1]) / 2}
		if len(w.Way) > 3 { // not straight
			q = halfway(w.Way)
		}
		p.balloon(s, at([2]float64{q[0] + w.Inward[0]*w.Height/2, q[1] + w.Inward[1]*w.Height/2}), list.number(w.Of, w.Section), true)
	}
	for _, b := range c.Cuts {
		p.balloon(s, at([2]float64{b.At[0] + b.Inward[0]*b.Height, b.At[1] + b.Inward[1]*b.Height}), list.number(b.Of, b.Section), false)
	}
}

// inwardOf is the direction square to a way on the side of a place inside.
func inwardOf(a, b, inside [2]float64) [2]float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	long := math.Hypot(dx, dy)
	if long < 1e-9 {
		return [2]float64{0, 1}
	}
	n := [2]float64{-dy / long, dx / long}
	if n[0]*(inside[0]-a[0])+n[1]*(inside[1]-a[1]) < 0 {
		return [2]float64{-n[0], -n[1]}
	}
	return n
}

// Inward is the direction square to a straight piece of plating, towards a place inside.
func Inward(a, b, inside [2]float64) [2]float64 { return inwardOf(a, b, inside) }
