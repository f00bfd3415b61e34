package seam

import (
	"slices"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/weld"
)

// Range gives what a certificate of a welder covers; ok is false where no table of its standard is at hand.
func (s *Stock) Range(q *record.Qualification) (r weld.WelderRange, ok bool) {
	r, ok = s.ranges[q]
	return r, ok && r.Scheme != nil
}

// Held lists the certificates of a welder that were in force on a day, in the order of the record, and says why the
// others were not. A certificate of a standard without a table holds from its test to the day printed on it.
func (s *Stock) Held(w *record.Welder, day record.Date) (held []*record.Qualification, why []string) {
	for _, q := range s.Qualifications[w.ID] {
		if ok, says := s.holds(q, day); !ok {
			why = append(why, q.ID+": "+says)
			continue
		}
		held = append(held, q)
	}
	if len(s.Qualifications[w.ID]) == 0 {
		why = append(why, "no certificate is on record")
	}
	return held, why
}

func (s *Stock) holds(q *record.Qualification, day record.Date) (ok bool, why string) {
	if r, known := s.Range(q); known {
		return r.Life.Holds(day)
	}
	switch {
	case day.Before(q.Tested.V):
		return false, "tested on " + q.Tested.V.String() + ", later than this day"
	case !q.Until.Set:
		return false, "nothing says how long it holds"
	case q.Until.V.Before(day):
		return false, "ended on " + q.Until.V.String()
	}
	return true, ""
}

// Uncovered says what of a weld lies outside all certificates that its welder held on the day: of the certificate that
// comes nearest. Nothing is said where one covers it, where the welder held none, or where no table is at hand for any.
func (m *Map) Uncovered(j *Joint, w *record.Weld) (certificate *record.Qualification, why []string) {
	who := m.Welder(w.Welder, w.Date)
	if who == nil || !w.Date.Set {
		return nil, nil
	}
	held, _ := m.Held(who, w.Date.V)
	if kind := KindOf(j.Record); kind != "" {
		slices.SortStableFunc(held, func(a, b *record.Qualification) int { return first(a.Weld.V == kind, b.Weld.V == kind) })
	}
	for _, q := range held {
		r, known := m.Range(q)
		if !known {
			return nil, nil
		}
		lacks := m.outside(&r, j, w)
		if len(lacks) == 0 {
			return nil, nil
		}
		if certificate == nil || len(lacks) < len(why) {
			certificate, why = q, lacks
		}
	}
	return certificate, why
}

// first puts what is true before what is not.
func first(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// outside lists what of a weld a certificate does not cover.
func (m *Map) outside(r *weld.WelderRange, j *Joint, w *record.Weld) []string {
	var all []string
	not := func(what, has string, covers []string) {
		if has != "" && len(covers) > 0 && !slices.Contains(covers, has) {
			all = append(all, what+" "+has+", covered "+strings.Join(covers, ", "))
		}
	}
	kind := KindOf(j.Record)
	if p := m.Procedure(w.Procedure, w.Revision); p != nil {
		not("process", p.Process.V, r.Processes)
	}
	not("weld", kind, r.Welds)
	position := w.Position.V
	if !w.Position.Set {
		position = j.Record.Position.V
	}
	if kind == "butt" {
		not("position", position, r.Butt)
	} else {
		not("position", position, r.Fillet)
	}
	for _, t := range m.Plates(j) {
		if !r.Thickness.Holds(t.MM) {
			all = append(all, "plate of "+t.Text+" mm, covered "+r.Thickness.String())
			break
		}
	}
	for _, p := range j.Parts {
		if g := m.Group(p); g != "" {
			major, _, _ := strings.Cut(g, ".")
			not("material group", major, r.Groups)
		}
	}
	return all
}
