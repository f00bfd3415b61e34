package tracklog

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/record"
)

// quantity is what a column of a log can hold.
type quantity int

const (
	qTime quantity = iota
	qLat
	qLon
	qSpeed
	qCourse
	qHeading
	qRPM
	qFuel
	qTrim
	qAccX
	qAccY
	qAccZ
	quantities
)

// holds gives the quantities by the words of the record, in their order.
var holds = [quantities]string{
	"time", "latitude", "longitude", "speed", "course", "heading", "engine_rpm", "fuel", "trim", "acceleration_x", "acceleration_y", "acceleration_z",
}

// scale is a unit that a column may be written in: what it measures, and by how much a figure is multiplied.
type scale struct {
	unit string
	of   []quantity
	by   float64
}

// The factors follow from the definitions of knot (1852 m an hour), mile (1609.344 m), gallon (3.785411784 l and
// 4.54609 l) and standard gravity (9.80665 m/s²).
var scales = [...]scale{
	{"utc", []quantity{qTime}, 1},
	{"local", []quantity{qTime}, 1},
	{"s", []quantity{qTime}, 1},
	{"ms", []quantity{qTime}, 1e-3},
	{"deg", []quantity{qLat, qLon, qCourse, qHeading, qTrim}, 1},
	{"rad", []quantity{qCourse, qHeading, qTrim}, 1 / radian},
	{"kn", []quantity{qSpeed}, 1},
	{"m/s", []quantity{qSpeed}, 1 / metresPerSecond},
	{"km/h", []quantity{qSpeed}, 1000 / metresPerMile},
	{"mph", []quantity{qSpeed}, 1609.344 / metresPerMile},
	{"rpm", []quantity{qRPM}, 1},
	{"100 rpm", []quantity{qRPM}, 100},
	{"rev/s", []quantity{qRPM}, 60},
	{"l/h", []quantity{qFuel}, 1},
	{"l/min", []quantity{qFuel}, 60},
	{"gal/h US", []quantity{qFuel}, 3.785411784},
	{"gal/h UK", []quantity{qFuel}, 4.54609},
	{"g", []quantity{qAccX, qAccY, qAccZ}, standardGravity},
	{"m/s2", []quantity{qAccX, qAccY, qAccZ}, 1},
}

// standardGravity in m/s², by definition.
const standardGravity = 9.80665

// column is one column of a CSV log that is used.
type column struct {
	head   string
	holds  quantity
	by     float64
	moment bool // a date with a time of day, not a count of seconds
	local  bool // in the clock of the log, not in UTC
}

// layout is what a CSV log is read by.
type layout struct {
	columns []column
	offset  float64 // seconds by which the clock of the log is ahead of UTC
	begins  float64 // moment of second nought
	counts  bool    // time is a count of seconds
}

// layoutOf takes the columns of a record, and says in words what is wrong with them.
func layoutOf(rec *record.Log, day record.Date) (lay layout, wrong []string) {
	lay.offset = float64(rec.Offset.V) * hourSeconds
	for i := range rec.Columns {
		c := &rec.Columns[i]
		q := quantity(slices.Index(holds[:], c.Holds.V))
		by, fits := factor(q, c.Unit.V)
		if !fits {
			wrong = append(wrong, fmt.Sprintf("column %q holds %s and cannot be in %s", c.Head.V, c.Holds.V, c.Unit.V))
			continue
		}
		one := column{head: strings.TrimSpace(c.Head.V), holds: q, by: by, local: c.Unit.V == "local"}
		one.moment = c.Unit.V == "utc" || one.local
		if q != qRPM && q != qFuel && lay.has(q) {
			wrong = append(wrong, fmt.Sprintf("two columns hold %s", c.Holds.V))
			continue
		}
		lay.columns = append(lay.columns, one)
		lay.counts = lay.counts || q == qTime && !one.moment
	}
	switch {
	case !lay.has(qTime):
		wrong = append(wrong, "no column holds the time")
	case lay.counts && !rec.Begins.Set:
		wrong = append(wrong, "the time is a count of seconds, and begins is not written")
	case lay.local() && !rec.Offset.Set:
		wrong = append(wrong, "the time is local, and utc_offset_h is not written")
	case lay.has(qLat) != lay.has(qLon):
		wrong = append(wrong, "latitude and longitude stand only together")
	}
	if rec.Begins.Set {
		lay.begins, _ = at(rec.Begins.V, day)
	}
	return lay, wrong
}

func (l *layout) has(q quantity) bool {
	return slices.ContainsFunc(l.columns, func(c column) bool { return c.holds == q })
}

func (l *layout) local() bool {
	return slices.ContainsFunc(l.columns, func(c column) bool { return c.local })
}

func factor(q quantity, sign string) (float64, bool) {
	for _, s := range scales {
		if s.unit == sign {
			return s.by, slices.Contains(s.of, q)
		}
	}
	return 0, false
}
