package chart

import (
	"io"

	gochart "github.com/wcharczuk/go-chart/v2"
)

// plot is an x-y figure being drawn on one sheet.
type plot struct {
	Spec
	x, left, right *span // right is nil where there is one axis only
	place          placer
}

// Plot draws an x-y figure.
func Plot(spec Spec) Figure {
	spec.ID = identifier(spec.ID)
	spec, said := spec.cleaned()
	spec = spec.oneSided()
	if !spec.has() {
		why := sentence(append([]string{spec.Why}, said...)...)
		if why == "" {
			why = "Nothing on record to draw."
		}
		return blank(spec.ID, spec.Title, why, spec.Table)
	}
	if spec.Desc == "" {
		spec.Desc = spec.Y.label() + " over " + spec.X.label() + "."
	}
	if spec.Table == nil {
		spec.Table = spec.rows()
	}
	first := newPlot(spec, &sheet{w: wide})
	p := plate{id: spec.ID, title: spec.Title, alt: spec.Desc, paint: func(s *sheet) {
		if s.slim() {
			newPlot(spec, s).draw(s)
			return
		}
		first.draw(s)
	}}
	note := sentence(append([]string{spec.Note, spec.origins(first.x, first.left, first.right)}, said...)...)
	return p.finished(note, spec.Table)
}

// newPlot chooses the scales for the room on a sheet.
func newPlot(spec Spec, s *sheet) *plot {
	e := spec.extents()
	e.left.widen(spec.Least[0])
	e.right.widen(spec.Least[1])
	p := &plot{Spec: spec, x: scaleAlong(e.x, spec.X, s), left: scaleUp(e.left, spec.Y, s)}
	if e.right.has {
		lo, hi := fromNought(e.right.lo, e.right.hi, spec.Y2.From0)
		p.right = &span{scale: newScaleOf(lo, hi, p.left.intervals())}
	}
	return p
}

// scaleAlong gives the horizontal scale with as many ticks as there is room for their labels.
func scaleAlong(e extent, a Axis, s *sheet) *span {
	lo, hi := fromNought(e.lo, e.hi, a.From0)
	for most := 8; most > 3; most-- {
		x := &span{scale: newScale(lo, hi, most)}
		if room := (s.w - 110) / float64(x.intervals()); float64(x.widest())+16 <= room {
			return x
		}
	}
	return &span{scale: newScale(lo, hi, 3)}
}

func scaleUp(e extent, a Axis, s *sheet) *span {
	lo, hi := fromNought(e.lo, e.hi, a.From0)
	if s.slim() {
		return &span{scale: newScale(lo, hi, 6)}
	}
	return &span{scale: newScale(lo, hi, 8)}
}

// draw lets go-chart lay the axes out and call the series one after the other.
func (p *plot) draw(s *sheet) {
	s.h = 400
	if s.slim() {
		s.h = 320
	}
	bare := gochart.Style{FillColor: inkNone, StrokeColor: inkNone}
	background := bare
	background.Padding = p.padding(s)
	chart := gochart.Chart{
		Width: int(s.w), Height: int(s.h), DPI: 72, Font: theFace().font,
		Background: background, Canvas: bare,
		XAxis:  gochart.XAxis{Name: fit(p.X.label(), s.w-80), Range: p.x, TickStyle: axisStyle(), GridLines: p.x.grid()},
		Series: p.series(),
		Elements: []gochart.Renderable{func(r gochart.Renderer, b gochart.Box, _ gochart.Style) {
			p.names(s)
			p.labels(s, p.canvas(b, false), p.canvas(b, true))
		}},
	}
	p.axes(&chart)
	p.place.lines = s.lines[:0]
	defer func() { s.lines = p.place.lines }()
	if err := chart.Render(penFor(s), io.Discard); err != nil {
		panic(err)
	}
}

func axisStyle() gochart.Style {
	return gochart.Style{StrokeColor: inkAxis, FontColor: inkText, StrokeWidth: 0.9}
}

// axes hangs the vertical axes up. In go-chart the primary axis stands on the right and the secondary on the left, and a
// chart must have something on the primary: so a lone left axis is a primary one that is told to stand on the left.
func (p *plot) axes(chart *gochart.Chart) {
	left := gochart.YAxis{Range: p.left, TickStyle: axisStyle(), GridLines: p.left.grid(), AxisType: gochart.YAxisSecondary}
	if p.right == nil {
		chart.YAxis = left
		chart.YAxisSecondary = gochart.YAxis{Style: gochart.Hidden()}
		return
	}
	none := gochart.Hidden()
	chart.YAxisSecondary = left
	chart.YAxis = gochart.YAxis{Range: p.right, TickStyle: axisStyle(), GridMajorStyle: none, GridMinorStyle: none}
}

// padding leaves room above for the names of the axes, and takes from the right what would not make whole pixels.
func (p *plot) padding(s *sheet) gochart.Box {
	pad := gochart.Box{IsSet: true, Top: 34, Left: 2, Right: 8, Bottom: 6}
	if p.right == nil {
		return pad
	}
	pad.Right = 2
	const margin = 2 * gochart.DefaultYAxisMargin
	across := int(s.w) - pad.Left - pad.Right - margin - p.left.widest() - p.right.widest()
	pad.Right += p.x.over(across)
	return pad
}

// canvas gives the field between the axes as one of the vertical axes measures it.
func (p *plot) canvas(b gochart.Box, right bool) canvas {
	up := p.left
	if right && p.right != nil {
		up = p.right
	}
	return canvas{field: box{float64(b.Left), float64(b.Top), float64(b.Right), float64(b.Bottom)}, x: p.x, y: up}
}
