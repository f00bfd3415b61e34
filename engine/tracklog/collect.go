package tracklog

import (
	"io"
	"slices"

	"hullfile/engine/record"
)

// trackPoints is how many points of a whole log are kept for its picture.
const trackPoints = 2400

// Report is what one reading of a log found.
type Report struct {
	Lines   int
	Used    int // sentences, rows or points that were used
	Samples int // moments with a time that goes forward
	First   float64
	Last    float64
	Notes   []Note // what could not be used, in the order in which it first came
	Track   []Point
	Steady  []Steady
	More    int // steady stretches beyond those that are kept
	Placed  int // samples with a position
	Speeds  int // with a speed of the receiver
	Derived int // with a speed between two positions
	RPM     Measure
	Fuel    Measure
	Trim    Measure
}

// Has reports how often a trouble came.
func (r *Report) Has(what Trouble) int {
	if i := slices.IndexFunc(r.Notes, func(n Note) bool { return n.Trouble == what }); i >= 0 {
		return r.Notes[i].Count
	}
	return 0
}

// collector is what samples go to.
type collector struct {
	*Report
	track   thin
	find    finder
	windows []*Window // in order of their beginning
	active  []*Window
}

func newCollector(windows []*Window) *collector {
	c := &collector{Report: &Report{}, track: newThin(trackPoints)}
	c.windows = slices.Clone(windows)
	slices.SortStableFunc(c.windows, func(a, b *Window) int {
		switch {
		case a.From < b.From:
			return -1
		case a.From > b.From:
			return 1
		}
		return 0
	})
	return c
}

func (c *collector) take(s *Sample) {
	if c.Samples == 0 {
		c.First = s.Time
	}
	c.Samples++
	c.Last = s.Time
	if s.placed() {
		c.Placed++
	}
	switch {
	case s.Derived:
		c.Derived++
	case known(s.Speed):
		c.Speeds++
	}
	c.RPM.take(s.RPM)
	c.Fuel.take(s.Fuel)
	c.Trim.take(s.Trim)
	c.track.take(s)
	c.find.take(s)
	c.hand(s)
}

// hand gives the sample to the windows that are open.
func (c *collector) hand(s *Sample) {
	for len(c.windows) > 0 && c.windows[0].From-windowPad <= s.Time {
		c.active, c.windows = append(c.active, c.windows[0]), c.windows[1:]
	}
	ended := false
	for _, w := range c.active {
		if s.Time > w.To+windowPad {
			ended = true
			continue
		}
		w.take(s)
	}
	if ended {
		c.active = slices.DeleteFunc(c.active, func(w *Window) bool { return s.Time > w.To+windowPad })
	}
}

// Scan reads a log once from beginning to end and fills the windows. What is wrong inside it is in the notes of the report;
// the error says why nothing, or no more, could be read.
func Scan(r io.Reader, rec *record.Log, day record.Date, windows []*Window) (Report, error) {
	c := newCollector(windows)
	t := &told{}
	o := &order{told: t, out: c.take, gap: usualGap}
	if rec.Gap.Set {
		o.gap = float64(rec.Gap.V)
	}
	var err error
	c.Lines, c.Used, err = read(source{r, rec, day, t, o.take})
	o.end()
	c.find.stop()
	for _, w := range windows {
		w.close()
	}
	c.Track, c.Steady, c.More, c.Notes = c.track.all, c.find.found, c.find.more, t.notes
	return *c.Report, err
}
