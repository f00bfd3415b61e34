package chart

import (
	"io"
	"math"

	"github.com/golang/freetype/truetype"
	gochart "github.com/wcharczuk/go-chart/v2"
	"github.com/wcharczuk/go-chart/v2/drawing"
)

// go-chart knows colours, the page knows classes: these colours stand for classes and are never seen. The name of a class
// does not do, because go-chart loses it on the way to grid lines.
var (
	inkNone = drawing.Color{R: 1, A: 1}
	inkAxis = drawing.Color{R: 2, A: 1}
	inkGrid = drawing.Color{R: 3, A: 1}
	inkText = drawing.Color{R: 4, A: 1}
)

// class gives the class that a colour stands for, or nothing where nothing is to be drawn.
func class(c drawing.Color) string {
	switch c {
	case inkAxis:
		return "g-axis"
	case inkGrid:
		return "g-grid"
	case inkText:
		return "g-text"
	}
	return ""
}

// pen is the renderer that go-chart draws with. It hands everything on to a sheet.
type pen struct {
	*sheet
	stroke, fill, ink drawing.Color
	turn              float64 // radians, for text
	points            []point
	closed            bool
	dpi               float64
}

var _ gochart.Renderer = (*pen)(nil)

// penFor gives the provider that go-chart asks for.
func penFor(s *sheet) gochart.RendererProvider {
	return func(int, int) (gochart.Renderer, error) { return &pen{sheet: s}, nil }
}

func (p *pen) ResetStyle()                     { p.stroke, p.fill, p.turn = inkNone, inkNone, 0 }
func (p *pen) GetDPI() float64                 { return p.dpi }
func (p *pen) SetDPI(dpi float64)              { p.dpi = dpi }
func (p *pen) SetClassName(string)             {} // see the colours above
func (p *pen) SetStrokeColor(c drawing.Color)  { p.stroke = c }
func (p *pen) SetFillColor(c drawing.Color)    { p.fill = c }
func (p *pen) SetStrokeWidth(float64)          {} // widths and dashes are the style sheet's
func (p *pen) SetStrokeDashArray([]float64)    {}
func (p *pen) SetFont(*truetype.Font)          {} // all text is in the one type and size
func (p *pen) SetFontColor(c drawing.Color)    { p.ink = c }
func (p *pen) SetFontSize(float64)             {}
func (p *pen) SetTextRotation(radians float64) { p.turn = radians }
func (p *pen) ClearTextRotation()              { p.turn = 0 }

// MoveTo begins a line.
func (p *pen) MoveTo(x, y int) { p.points = append(p.points[:0], point{float64(x), float64(y)}) }

// LineTo goes on with it.
func (p *pen) LineTo(x, y int) { p.points = append(p.points, point{float64(x), float64(y)}) }

// QuadCurveTo goes on with a curve, as eight straight pieces.
func (p *pen) QuadCurveTo(cx, cy, x, y int) {
	if len(p.points) == 0 {
		p.MoveTo(cx, cy)
	}
	from := p.points[len(p.points)-1]
	for i := 1; i <= 8; i++ {
		t := float64(i) / 8
		a, b, c := (1-t)*(1-t), 2*t*(1-t), t*t
		p.points = append(p.points, point{
			float64(a*from.x) + float64(b*float64(cx)) + float64(c*float64(x)),
			float64(a*from.y) + float64(b*float64(cy)) + float64(c*float64(y)),
		})
	}
}

// ArcTo goes on with an arc around cx, cy, as straight pieces of a thirty-second of a turn.
func (p *pen) ArcTo(cx, cy int, rx, ry, startAngle, delta float64) {
	pieces := int(math.Ceil(math.Abs(delta)/(math.Pi/16))) + 1
	for i := 0; i <= pieces; i++ {
		angle := startAngle + float64(delta*float64(i))/float64(pieces)
		p.points = append(p.points, point{
			float64(cx) + float64(rx*math.Cos(angle)), float64(cy) + float64(ry*math.Sin(angle)),
		})
	}
}

// Close joins the end to the beginning.
func (p *pen) Close() { p.closed = true }

// Stroke draws the line.
func (p *pen) Stroke() { p.drawn(class(p.stroke)) }

// Fill fills the shape.
func (p *pen) Fill() { p.drawn(class(p.fill)) }

// FillStroke draws the shape once: its class says how it is filled and drawn round.
func (p *pen) FillStroke() {
	if name := class(p.fill); name != "" {
		p.drawn(name)
		return
	}
	p.drawn(class(p.stroke))
}

// drawn puts the points on the sheet and begins anew.
func (p *pen) drawn(name string) {
	switch {
	case name == "" || len(p.points) < 2:
	case p.closed:
		p.shape(name, p.points...)
	case len(p.points) == 2:
		p.line(name, p.points[0].x, p.points[0].y, p.points[1].x, p.points[1].y)
	default:
		p.curve(name, p.points...)
	}
	p.points, p.closed = p.points[:0], false
}

// Circle draws a circle at once.
func (p *pen) Circle(radius float64, x, y int) {
	if name := class(p.stroke); name != "" {
		p.circle(name, float64(x), float64(y), radius)
	}
}

// Text sets a text from its left end, or upward from its middle where it is turned.
func (p *pen) Text(body string, x, y int) {
	if p.turn != 0 {
		p.turned("g-text", float64(x), float64(y), body)
		return
	}
	p.text("g-text", float64(x), float64(y), start, body)
}

// MeasureText gives the width of a text and the height of its capitals.
func (p *pen) MeasureText(body string) gochart.Box {
	b := gochart.Box{IsSet: true, Right: wholeWidth(body), Bottom: int(math.Ceil(rise))}
	if p.turn != 0 {
		b.Right, b.Bottom = b.Bottom, b.Right
	}
	return b
}

// Save writes what has been drawn so far, without a frame: the frame is the plate's.
func (p *pen) Save(w io.Writer) error {
	_, err := w.Write(p.out)
	return err
}
