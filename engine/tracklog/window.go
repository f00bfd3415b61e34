package tracklog

import (
	"math"
	"slices"
)

const (
	windowPad    = 15.0 // seconds before and behind a window that its picture shows
	windowPoints = 900  // most points that are kept of one window
)

// Window is a stretch of a log between two moments that a record names, with what was measured in it.
type Window struct {
	From, To float64 // seconds since 1970-01-01 UTC
	Samples  int
	First    float64 // time of the first sample inside
	Last     float64
	At, End  int // lines of the first and the last sample
	Gaps     int // gaps inside
	Speed    Measure
	Derived  int // speeds that were made of positions
	Toward   Direction
	RPM      Measure
	Fuel     Measure
	Trim     Measure
	Points   []Point // thinned, with some before and behind

	start, stop Point
	keep        thin
	inside      bool
}

// newWindow is an empty window.
func newWindow(from, to float64) *Window {
	return &Window{From: from, To: to, keep: newThin(windowPoints)}
}

// take adds a sample. Those a little before and behind are kept for the picture only.
func (w *Window) take(s *Sample) {
	w.keep.take(s)
	if s.Time < w.From || s.Time > w.To {
		return
	}
	if w.Samples == 0 {
		w.First, w.At = s.Time, s.Line
	} else if s.Break {
		w.Gaps++
	}
	w.Samples++
	w.Last, w.End = s.Time, s.Line
	w.Speed.take(s.Speed)
	if s.Derived {
		w.Derived++
	}
	w.Toward.take(s.toward())
	w.RPM.take(s.RPM)
	w.Fuel.take(s.Fuel)
	w.Trim.take(s.Trim)
	if s.placed() {
		w.place(s)
	}
}

func (w *Window) place(s *Sample) {
	p := Point{Time: s.Time, Lat: s.Lat, Lon: s.Lon}
	if !w.inside {
		w.start, w.inside = p, true
	}
	w.stop = p
}

// close ends the window.
func (w *Window) close() { w.Points = w.keep.all }

// Seconds is how long the samples inside reach.
func (w *Window) Seconds() float64 { return w.Last - w.First }

// Straight gives the straight way from the first to the last position inside, in metres, and its direction; ok is false
// without two positions.
func (w *Window) Straight() (metres, toward float64, ok bool) {
	if !w.inside || w.stop.Time <= w.start.Time {
		return 0, 0, false
	}
	return Distance(w.start.Lat, w.start.Lon, w.stop.Lat, w.stop.Lon), Bearing(w.start.Lat, w.start.Lon, w.stop.Lat, w.stop.Lon), true
}

// SpeedMade gives the speed of the window in knots: the mean of what the receiver says, and where it says nothing, the
// straight way over the time it took.
func (w *Window) SpeedMade() (kn float64, ok bool) {
	if w.Derived == 0 {
		return w.Speed.Mean, w.Speed.Has()
	}
	metres, _, ok := w.Straight()
	if !ok {
		return math.NaN(), false
	}
	return metres / (w.stop.Time - w.start.Time) / metresPerSecond, true
}

// Inside gives the points between the two moments. Where they follow each other they are part of Points.
func (w *Window) Inside() []Point {
	first := slices.IndexFunc(w.Points, w.between)
	if first < 0 {
		return nil
	}
	end := first
	for end < len(w.Points) && w.between(w.Points[end]) {
		end++
	}
	if !slices.ContainsFunc(w.Points[end:], w.between) {
		return w.Points[first:end:end]
	}
	var all []Point
	for _, p := range w.Points {
		if w.between(p) {
			all = append(all, p)
		}
	}
	return all
}

func (w *Window) between(p Point) bool { return p.Time >= w.From && p.Time <= w.To }
