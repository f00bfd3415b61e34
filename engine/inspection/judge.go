package inspection

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Flaw is one imperfection as it was measured. A value that is not known is NaN.
type Flaw struct {
	Imperfection string  // number in ISO 6520-1
	Seen         string  // "surface" or "inside", by the method that found it
	Size         float64 // in the unit of its row: mm or %
	Length       float64 // along the weld, mm
}

// Weld gives the dimensions that limits are a part of, in millimetres. What is not known is NaN.
type Weld struct {
	Fillet bool
	T      float64 // plate, the thinner of the two
	S      float64 // nominal butt thickness
	A      float64 // throat of the fillet
	B      float64 // width of the bead
}

// Verdict is one imperfection held against a level.
type Verdict struct {
	Row      *Row
	Standing finding.Standing
	Allowed  float64 // in the unit of the row; NaN where nothing is permitted or it could not be reckoned
	Says     string
	Basis    finding.Basis
}

// Judge holds an imperfection against quality level "B", "C" or "D". What has no row, or lacks a dimension that the
// limit is a part of, is not shown; it is never met.
func (l *Limits) Judge(f Flaw, level string, w Weld) Verdict {
	v := Verdict{Standing: finding.NotShown, Allowed: math.NaN()}
	row := l.row(f, w.T)
	if row == nil {
		v.Says = fmt.Sprintf("there is no limit for imperfection %s in %s", f.Imperfection, l.name())
		return v
	}
	v.Row, v.Basis = row, row.Basis
	at, known := row.level(level)
	if !known {
		v.Says = fmt.Sprintf("%q is no quality level; B, C and D are", level)
		return v
	}
	if at.No {
		v.Standing = finding.Short
		v.Says = fmt.Sprintf("%s (%s) is not permitted at level %s", row.Name, f.Imperfection, level)
		return v
	}
	of, what := w.dimension(row.Of)
	if at.Times > 0 && math.IsNaN(of) {
		v.Says = fmt.Sprintf("the limit for %s (%s) is a part of %s, which is not on record", row.Name, f.Imperfection, what)
		return v
	}
	v.Allowed = at.leaves(of)
	v.measured(f, at, level)
	return v
}

// measured compares what was measured with what is left.
func (v *Verdict) measured(f Flaw, at Level, level string) {
	row := v.Row
	if math.IsNaN(f.Size) {
		v.Says = fmt.Sprintf("%s (%s): its size is not on record; level %s leaves %s", row.Name, f.Imperfection, level, size(v.Allowed, row.Unit))
		return
	}
	says := fmt.Sprintf("%s (%s) of %s; level %s leaves %s", row.Name, f.Imperfection, size(f.Size, row.Unit), level, size(v.Allowed, row.Unit))
	switch {
	case f.Size > v.Allowed+1e-9:
		v.Standing, v.Says = finding.Short, says
	case (at.Short || at.AlsoLong) && math.IsNaN(f.Length):
		v.Says = says + ", if it is short; its length is not on record"
	case at.AlsoLong && f.Length > v.Allowed+1e-9:
		v.Standing, v.Says = finding.Short, fmt.Sprintf("%s, in depth and in length, and it is %s mm long", says, unit.Text(f.Length, 1))
	case at.Short && f.Length > shortRun:
		v.Standing, v.Says = finding.Short, fmt.Sprintf("%s, and only where it is short; it is %s mm long", says, unit.Text(f.Length, 0))
	default:
		v.Standing, v.Says = finding.Met, says
	}
}

// shortRun is the most of a short imperfection in any 100 mm of weld, in millimetres (ISO 10042, terms; recalled).
const shortRun = 25

// row finds the limit: that of the number itself, of its group (4011 is a kind of 401, 1011 of 100), in its range of thickness.
func (l *Limits) row(f Flaw, t float64) *Row {
	for _, number := range family(f.Imperfection) {
		for i := range l.Rows {
			r := &l.Rows[i]
			if r.Imperfection == number && (r.Seen == "" || f.Seen == "" || r.Seen == f.Seen) && r.holds(t) {
				return r
			}
		}
	}
	return nil
}

// family lists the numbers under which an imperfection can have a limit, its own first.
func family(number string) []string {
	all := []string{number}
	if len(number) > 3 {
		all = append(all, number[:3])
	}
	if strings.HasPrefix(number, "10") && number != "104" && !strings.HasPrefix(number, "104") {
		all = append(all, "100")
	}
	return all
}

// holds reports whether a plate thickness is in the range of the row. One that is not known is only in an open range.
func (r *Row) holds(t float64) bool {
	if math.IsNaN(t) {
		return r.Over == 0 && r.To == 0
	}
	return t > r.Over && (r.To == 0 || t <= r.To)
}

func (r *Row) level(name string) (Level, bool) {
	switch name {
	case "B":
		return r.B, true
	case "C":
		return r.C, true
	case "D":
		return r.D, true
	}
	return Level{}, false
}

func (l Level) leaves(of float64) float64 {
	v := l.Plus
	if l.Times > 0 {
		v += float64(l.Times * of)
	}
	if l.Most > 0 {
		v = math.Min(v, l.Most)
	}
	return math.Round(v*1e6) / 1e6
}

// dimension gives what a limit is a part of, and its name in words.
func (w Weld) dimension(of string) (mm float64, words string) {
	switch {
	case of == "t":
		return w.T, "the plate thickness"
	case of == "b":
		return w.B, "the width of the bead"
	case of == "a" || of == "s or a" && w.Fillet:
		return w.A, "the throat of the fillet"
	}
	return w.S, "the thickness of the butt weld"
}

func (l *Limits) name() string { return l.Work + ":" + l.Edition }

// size gives a measured imperfection in words.
func size(v float64, sign string) string {
	if sign == "%" {
		return unit.Text(v, 1) + " %"
	}
	return unit.Text(v, 2) + " mm"
}
