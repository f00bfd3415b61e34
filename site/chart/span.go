package chart

import (
	"math"

	gochart "github.com/wcharczuk/go-chart/v2"
)

// span is a scale laid over pixels, in the form that go-chart asks of a range. Its length is cut to whole pixels per
// interval: go-chart places ticks and grid on whole pixels, and so curves, which are not rounded, meet them exactly.
type span struct {
	scale
	pixels int
}

var (
	_ gochart.Range         = (*span)(nil)
	_ gochart.TicksProvider = (*span)(nil)
)

func (s *span) String() string    { return s.label(s.lo()) + " to " + s.label(s.hi()) }
func (s *span) IsZero() bool      { return false }
func (s *span) GetMin() float64   { return s.lo() }
func (s *span) SetMin(float64)    {} // the ends are ticks and stay
func (s *span) GetMax() float64   { return s.hi() }
func (s *span) SetMax(float64)    {}
func (s *span) GetDelta() float64 { return s.hi() - s.lo() }
func (s *span) GetDomain() int    { return s.pixels }
func (s *span) IsDescending() bool {
	return false
}

// SetDomain takes the room there is.
func (s *span) SetDomain(pixels int) { s.pixels = pixels - s.over(pixels) }

// over is what is left of so many pixels when every interval has the same whole number of them.
func (s *span) over(pixels int) int { return max(0, pixels) % int(s.intervals()) }

// Translate gives the pixels from the start of the axis, rounded; at gives them as they are.
func (s *span) Translate(v float64) int { return int(math.Round(s.at(v))) }

func (s *span) at(v float64) float64 { return float64(float64(s.pixels) * s.part(v)) }

// GetTicks gives the ticks to go-chart, whose own are not round.
func (s *span) GetTicks(gochart.Renderer, gochart.Style, gochart.ValueFormatter) []gochart.Tick {
	values := s.ticks()
	ticks := make([]gochart.Tick, len(values))
	for i, v := range values {
		ticks[i] = gochart.Tick{Value: v, Label: s.label(v)}
	}
	return ticks
}

// grid gives the lines across the canvas at every tick but the first, where the axis is. Nought is drawn as an axis.
func (s *span) grid() []gochart.GridLine {
	lines := make([]gochart.GridLine, 0, s.intervals())
	for i, v := range s.ticks() {
		ink := inkGrid
		if v == 0 {
			ink = inkAxis
		}
		if i > 0 {
			lines = append(lines, gochart.GridLine{Value: v, Style: gochart.Style{StrokeColor: ink, StrokeWidth: 1}})
		}
	}
	return lines
}

// widest gives the width of the widest tick label in whole pixels, as go-chart measures it.
func (s *span) widest() int {
	most := 0
	for _, v := range s.ticks() {
		most = max(most, wholeWidth(s.label(v)))
	}
	return most
}

// wholeWidth is the width of a text rounded up.
func wholeWidth(text string) int { return int(math.Ceil(advance(text))) }
