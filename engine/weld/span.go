package weld

import (
	"math"
	"slices"
	"sort"

	"hullfile/engine/unit"
)

// Span is a range of a measure in millimetres, both ends inside. An open end is an infinity.
type Span struct{ From, To float64 }

// Holds reports whether a measure lies in the span.
func (s Span) Holds(v float64) bool {
	const hair = 1e-9 // 0.7 times 3 is a hair over 2.1
	return v >= s.From-hair && v <= s.To+hair
}

// String gives the span in words.
func (s Span) String() string {
	switch {
	case s.From <= 0 && math.IsInf(s.To, 1):
		return "any"
	case math.IsInf(s.To, 1):
		return unit.Plain(s.From) + " mm and more"
	}
	return unit.Plain(s.From) + " to " + unit.Plain(s.To) + " mm"
}

// spanOf finds the range that follows from a tested measure; ok is false where no row is for it.
func spanOf(rows []Row, tested float64, weld, layers string) (s Span, ok bool) {
	for _, r := range rows {
		if r.Weld != "" && r.Weld != weld || r.Layers != "" && r.Layers != layers || tested <= r.Over || r.To != 0 && tested > r.To {
			continue
		}
		if r.Free {
			return Span{0, math.Inf(1)}, true
		}
		s = Span{max(r.Times*tested, r.From), math.Inf(1)}
		if r.Up > 0 {
			s.To = r.Up * tested
		}
		if r.Most > 0 {
			s.To = min(s.To, r.Most)
		}
		return s, true
	}
	return Span{}, false
}

// Spans is what several tests qualify together.
type Spans []Span

// merged joins spans that touch.
func (all Spans) merged() Spans {
	sorted := slices.Clone(all)
	sort.Slice(sorted, func(i, j int) bool { return sorted[i].From < sorted[j].From })
	var out Spans
	for _, s := range sorted {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// Cover reports whether a whole span lies inside.
func (all Spans) Cover(s Span) bool {
	for _, one := range all.merged() {
		if one.Holds(s.From) && one.Holds(s.To) {
			return true
		}
	}
	return false
}

// String gives the spans in words.
func (all Spans) String() string {
	out := ""
	for i, s := range all.merged() {
		if i > 0 {
			out += ", "
		}
		out += s.String()
	}
	if out == "" {
		return "nothing"
	}
	return out
}
