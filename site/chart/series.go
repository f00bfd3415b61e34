package chart

import (
	"math"
	"slices"

	gochart "github.com/wcharczuk/go-chart/v2"
)

// canvas is the field between the axes.
type canvas struct {
	field box
	x, y  *span
}

// at gives the place of a pair of values, not rounded.
func (c canvas) at(x, y float64) point {
	return point{c.field.left + c.x.at(x), c.field.bottom - c.y.at(y)}
}

// foot is where the area under a curve ends: at nought where the axis has it, else at the foot of the field.
func (c canvas) foot() float64 {
	if c.y.lo() < 0 && c.y.hi() > 0 {
		return c.field.bottom - c.y.at(0)
	}
	return c.field.bottom
}

// series is one thing that go-chart calls on us to draw. Its own series round to whole pixels and know no gaps.
type series struct {
	name string
	axis gochart.YAxisType
	draw func(*sheet, gochart.Box)
}

var _ gochart.Series = series{}

func (s series) GetName() string             { return s.name }
func (s series) GetYAxis() gochart.YAxisType { return s.axis }
func (s series) GetStyle() gochart.Style     { return gochart.Style{} }
func (s series) Validate() error             { return nil } // see Spec.cleaned

// Render draws on the sheet behind the renderer.
func (s series) Render(r gochart.Renderer, b gochart.Box, _, _ gochart.Range, _ gochart.Style) {
	s.draw(r.(*pen).sheet, b)
}

// series lists what is drawn, single runs under lines under means.
func (p *plot) series() []gochart.Series {
	under := []gochart.Series{series{"bands", p.axisOf(false), p.bands}, series{"short ticks", p.axisOf(false), p.shortTicks}}
	var lines, over []gochart.Series
	for _, d := range p.Dots {
		one := series{d.Name, p.axisOf(d.Right), func(s *sheet, b gochart.Box) { p.dots(s, p.canvas(b, d.Right), d) }}
		if d.Class == Raw || d.Class == LeftOut {
			under = append(under, one)
			continue
		}
		over = append(over, one)
	}
	for _, l := range p.Lines {
		lines = append(lines, series{l.Name, p.axisOf(l.Right), func(s *sheet, b gochart.Box) { p.line(s, p.canvas(b, l.Right), l) }})
	}
	return append(append(under, lines...), over...)
}

// shortTicks draws the divisions between the ticks, so that a value can be read off.
func (p *plot) shortTicks(s *sheet, b gochart.Box) {
	const length = 3
	c := p.canvas(b, false).field
	strokes := make([]segment, 0, 64)
	for _, v := range p.x.minor() {
		x := c.left + p.x.at(v)
		strokes = append(strokes, segment{point{x, c.bottom}, point{x, c.bottom + length}})
	}
	for _, v := range p.left.minor() {
		y := c.bottom - p.left.at(v)
		strokes = append(strokes, segment{point{c.left, y}, point{c.left - length, y}})
	}
	if p.right != nil {
		for _, v := range p.right.minor() {
			y := c.bottom - p.right.at(v)
			strokes = append(strokes, segment{point{c.right, y}, point{c.right + length, y}})
		}
	}
	s.strokes("g-axis", strokes)
}

// axisOf says on which of go-chart's axes a series is; see plot.axes.
func (p *plot) axisOf(right bool) gochart.YAxisType {
	if p.right == nil || right {
		return gochart.YAxisPrimary
	}
	return gochart.YAxisSecondary
}

// line draws a curve in as many pieces as its gaps make.
func (p *plot) line(s *sheet, c canvas, l Line) {
	piece := make([]point, 0, len(l.X))
	for i := range l.X {
		if usable(l.X[i]) && usable(l.Y[i]) {
			piece = append(piece, c.at(l.X[i], l.Y[i]))
			continue
		}
		p.piece(s, c, l, piece)
		piece = piece[:0]
	}
	p.piece(s, c, l, piece)
}

func (p *plot) piece(s *sheet, c canvas, l Line, points []point) {
	points = thinned(points)
	if len(points) < 2 {
		return
	}
	if l.Area {
		foot := []point{{points[len(points)-1].x, c.foot()}, {points[0].x, c.foot()}}
		s.shape("g-area", append(append([]point{}, points...), foot...)...)
	}
	s.curve(string(lineClass(l.Class)), points...)
	if len(p.Marks) == 0 && len(p.Lines) < 2 {
		return // nothing is named that a line could be in the way of
	}
	p.place.lines = slices.Grow(p.place.lines, len(points))
	for i := 1; i < len(points); i++ {
		p.place.lines = append(p.place.lines, segment{points[i-1], points[i]})
	}
}

func lineClass(c Class) Class {
	if c == LineB || c == LineC || c == LineD {
		return c
	}
	return LineA
}

// thinned gives a long curve with the first, the least, the greatest and the last point of every unit along it.
func thinned(points []point) []point {
	if len(points) <= singly {
		return points
	}
	column := func(p point) int { return int(math.Floor(p.x)) }
	kept := make([]point, 0, singly)
	for i := 0; i < len(points); {
		first, low, high := i, i, i
		for ; i < len(points) && column(points[i]) == column(points[first]); i++ {
			if points[i].y < points[low].y {
				low = i
			}
			if points[i].y > points[high].y {
				high = i
			}
		}
		last := -1
		for _, k := range [...]int{first, min(low, high), max(low, high), i - 1} {
			if k > last {
				kept, last = append(kept, points[k]), k
			}
		}
	}
	return strided(kept, singly)
}

// strided keeps evenly many of too many points, the last among them.
func strided(points []point, most int) []point {
	if len(points) <= most {
		return points
	}
	step := (len(points) + most - 1) / most
	kept := make([]point, 0, most+1)
	for i := 0; i < len(points); i += step {
		kept = append(kept, points[i])
	}
	return append(kept, points[len(points)-1])
}

// dots draws single points and keeps labels off them.
func (p *plot) dots(s *sheet, c canvas, d Dots) {
	points := make([]point, 0, len(d.X))
	for i := range d.X {
		if usable(d.X[i]) && usable(d.Y[i]) {
			points = append(points, c.at(d.X[i], d.Y[i]))
		}
	}
	for _, at := range strided(points, singly/2) {
		p.place.taken = append(p.place.taken, s.dot(d.Class, d.Right, at))
	}
}

// dot draws one point in the shape of its class and gives the room it takes.
func (s *sheet) dot(c Class, right bool, at point) box {
	switch {
	case c == MeanA:
		s.circle("g-pa", at.x, at.y, 3.2)
	case c == MeanB:
		s.rect("g-pb", around(at.x, at.y, 3))
	case c == MeanC:
		s.shape("g-pc", point{at.x, at.y - 3.8}, point{at.x + 3.6, at.y + 2.8}, point{at.x - 3.6, at.y + 2.8})
	case c == OneWay && right:
		s.rect("g-open", around(at.x, at.y, 3))
	case c == OneWay:
		s.circle("g-open", at.x, at.y, 3.4)
	case c == LeftOut:
		s.line("g-left", at.x-2.6, at.y-2.6, at.x+2.6, at.y+2.6)
		s.line("g-left", at.x-2.6, at.y+2.6, at.x+2.6, at.y-2.6)
	case right:
		s.rect("g-raw", around(at.x, at.y, 2.2))
	default:
		s.circle("g-raw", at.x, at.y, 2.4)
	}
	return around(at.x, at.y, 4.5)
}
