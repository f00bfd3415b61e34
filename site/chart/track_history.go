package chart

import (
	"math"

	"hullfile/engine/tracklog"
	"hullfile/engine/unit"
)

// History is what was measured over time, with the stretches that count shaded.
type History struct {
	ID, Title string
	Zero      float64 // moment at which the axis begins, seconds since 1970
	Minutes   bool    // the axis counts minutes
	Traces    []Trace // one unit on the left and one on the right
	Bands     []Band  // in seconds since 1970
	Note, Why string
}

// Trace is one quantity over time.
type Trace struct {
	Name, Unit string
	Points     []tracklog.Point
	Of         func(*tracklog.Point) float64
	Right      bool
	From0      bool
	Span       float64 // least that the axis covers
	Decimals   int
}

// Over draws a history.
func Over(h History) Figure {
	s := Spec{ID: h.ID, Title: h.Title, X: Axis{Name: "Time from " + tracklog.Clock(h.Zero) + " UTC", Unit: "s"}, Why: h.Why, Note: h.Note}
	per := 1.0
	if h.Minutes {
		s.X.Unit, per = "min", 60
	}
	for _, t := range h.Traces {
		s.trace(t, h.Zero, per)
	}
	for _, b := range h.Bands {
		s.Bands = append(s.Bands, Band{(b.From - h.Zero) / per, (b.To - h.Zero) / per, b.Text})
	}
	s.Table = h.table(per)
	return Plot(s)
}

// trace adds a quantity; a gap in the log or in the quantity is a gap in the line.
func (s *Spec) trace(t Trace, zero, per float64) {
	class := LineA
	if t.Right {
		class = LineB
		s.Y2, s.Least[1] = Axis{Name: t.Name, Unit: t.Unit, From0: t.From0}, t.Span
	} else {
		s.Y, s.Least[0] = Axis{Name: t.Name, Unit: t.Unit, From0: t.From0}, t.Span
	}
	line := Line{Name: t.Name, Class: class, Right: t.Right}
	flush := func() {
		if len(line.X) > 1 {
			s.Lines = append(s.Lines, line)
			line.Name = "" // only the first piece is named
		}
		line.X, line.Y = nil, nil
	}
	line.X, line.Y = make([]float64, 0, len(t.Points)), make([]float64, 0, len(t.Points))
	for i := range t.Points {
		p := &t.Points[i]
		v := t.Of(p)
		if p.Break || math.IsNaN(v) {
			flush()
		}
		if !math.IsNaN(v) {
			line.X, line.Y = append(line.X, (p.Time-zero)/per), append(line.Y, v)
		}
	}
	flush()
}

// table gives the quantities at the moments of the first trace, thinned to what can be read.
func (h History) table(per float64) [][]string {
	head := []string{"Time, UTC"}
	for _, t := range h.Traces {
		head = append(head, t.Name+", "+t.Unit)
	}
	rows := [][]string{head}
	if len(h.Traces) == 0 {
		return rows
	}
	main := h.Traces[0].Points
	step := (len(main) + 119) / 120
	for i := 0; i < len(main); i += max(step, 1) {
		row := append(make([]string, 0, len(head)), tracklog.Clock(main[i].Time))
		for _, t := range h.Traces {
			row = append(row, nearestAt(t, main[i].Time))
		}
		rows = append(rows, row)
	}
	return rows
}

// nearestAt gives the value of a trace within three seconds of a moment.
func nearestAt(t Trace, at float64) string {
	const within = 3.0
	best, apart := math.NaN(), within
	lo, hi := 0, len(t.Points)
	for lo < hi { // the first point not before the stretch
		mid := (lo + hi) / 2
		if t.Points[mid].Time < at-within {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	for ; lo < len(t.Points) && t.Points[lo].Time <= at+within; lo++ {
		if v, d := t.Of(&t.Points[lo]), math.Abs(t.Points[lo].Time-at); !math.IsNaN(v) && d <= apart {
			best, apart = v, d
		}
	}
	return unit.Text(best, t.Decimals)
}
