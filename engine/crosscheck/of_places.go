package crosscheck

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/record"
)

// clock gives the minute of the day of 09:14:00 or 2026-03-03T09:14:00.
func clock(v record.Val[string]) (minute float64, ok bool) {
	text := v.V
	if _, after, found := strings.Cut(text, "T"); found {
		text = after
	}
	parts := strings.Split(text, ":")
	if !v.Set || len(parts) < 2 {
		return 0, false
	}
	h, errH := strconv.Atoi(parts[0])
	m, errM := strconv.Atoi(parts[1])
	s := 0.0
	if len(parts) > 2 {
		s, _ = strconv.ParseFloat(parts[2], 64)
	}
	return float64(h*60+m) + s/60, errH == nil && errM == nil
}

// shift is one weld with its hours on one day.
type shift struct {
	hull     *record.Hull
	w        *record.Weld
	from, to float64 // minutes
}

// stint is one welder's stamp on one day.
type stint struct {
	stamp string
	day   record.Date
}

// hours are the shifts of all hulls of a yard, by stamp and day, in order of hull and record.
type hours map[stint][]shift

func hoursOf(hulls []*record.Hull) hours {
	all := hours{}
	for _, h := range hulls {
		for i := range h.Welds {
			if s, ok := shiftOf(h, &h.Welds[i]); ok {
				all[s.stint()] = append(all[s.stint()], s)
			}
		}
	}
	return all
}

func shiftOf(h *record.Hull, w *record.Weld) (shift, bool) {
	from, okFrom := clock(w.Begin)
	to, okTo := clock(w.End)
	return shift{h, w, from, to}, okFrom && okTo && w.Date.Set && w.Welder.Set && to > from
}

func (s shift) stint() stint { return stint{s.w.Welder.V, s.w.Date.V} }

// inTwoPlaces finds a welder who was welding at two joints at one time, on this hull or on this hull and another. All such
// welds of one day are told in one finding.
func inTwoPlaces(b *build) []told {
	yard := record.Once(b.yard, hoursOf)
	asked := map[stint]bool{}
	var all []told
	for i := range b.Hull.Welds {
		s, ok := shiftOf(b.Hull, &b.Hull.Welds[i])
		if !ok || asked[s.stint()] {
			continue
		}
		asked[s.stint()] = true
		if at := b.clashing(yard[s.stint()]); len(at) > 0 {
			all = append(all, b.twice(at))
		}
	}
	return all
}

// clashing gives the shifts of one welder on one day that lie in a run of hours without a gap at more than one joint, of
// which one at least is on this hull; those of this hull first. Sorted by their beginning, a shift that begins before all
// earlier ones have ended belongs to their run.
func (b *build) clashing(day []shift) []shift {
	sorted := slices.SortedStableFunc(slices.Values(day), func(x, y shift) int { return cmp.Compare(x.from, y.from) })
	var all []shift
	for len(sorted) > 0 {
		n, end := 1, sorted[0].to
		for n < len(sorted) && sorted[n].from < end {
			end = max(end, sorted[n].to)
			n++
		}
		if run := sorted[:n]; b.touches(run) && severalJoints(run) {
			all = append(all, run...)
		}
		sorted = sorted[n:]
	}
	slices.SortStableFunc(all, b.ownFirst)
	return all
}

func (b *build) ownFirst(x, y shift) int {
	switch {
	case x.hull == b.Hull && y.hull != b.Hull:
		return -1
	case x.hull != b.Hull && y.hull == b.Hull:
		return 1
	}
	return 0
}

func (b *build) touches(run []shift) bool {
	return slices.ContainsFunc(run, func(s shift) bool { return s.hull == b.Hull })
}

func severalJoints(run []shift) bool {
	first := run[0]
	return slices.ContainsFunc(run[1:], func(s shift) bool { return s.hull != first.hull || s.w.Joint.V != first.w.Joint.V })
}

// twice tells of the shifts of one welder on one day that cannot all be true.
func (b *build) twice(at []shift) told {
	var g gathered
	for _, s := range at {
		where := "joint " + s.w.Joint.V
		if s.hull != b.Hull {
			where += " of hull " + s.hull.Number
		}
		g.add(fmt.Sprintf("%s from %s to %s", where, s.w.Begin.V, s.w.End.V), s.w.Begin.At)
	}
	first := at[0].w
	return tell("weld "+first.ID, "find out who welded which, and correct the hours or the stamp", g.places,
		"on %s welder %s is on record at %d seams whose hours overlap: %s", first.Date.V, first.Welder.V, len(at), g.list())
}
