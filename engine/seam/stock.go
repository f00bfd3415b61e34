// Package seam follows the seams of a hull: what each joins, what that was cut from, who welded it by what, who looked at
// it and what was found. It counts and links; it judges no range and no limit.
//
//   - Question: what joins here, made of what, by whom, seen by whom?
//   - In: the yard and one hull.
//   - Out: the seams with parts, lots, welds, welders, procedures, looks and repairs.
//   - Source: groups of metal by ISO/TR 15608, recalled.
package seam

import (
	"hullfile/engine/record"
	"hullfile/engine/weld"
)

// Stock is what a whole yard knows, by its keys. It is built once and only read.
type Stock struct {
	Builder        *record.Builder
	Lots           map[string]*record.Lot
	Consumables    map[string]*record.Consumable
	Procedures     map[string][]*record.Procedure // all revisions, by number
	Tests          map[string]*record.ProcedureTest
	Stamps         map[string][]*record.Welder        // by stamp and by key; more than one where a stamp stands for two people
	Qualifications map[string][]*record.Qualification // by the key of the welder
	Inspectors     map[string]*record.Inspector
	Instruments    map[string]*record.Instrument
	People         map[string]*record.Person

	ranges map[*record.Qualification]weld.WelderRange
}

// NewStock links the records of a yard. ranges says what certificates of welders cover; without it a certificate holds as
// long as it is printed to.
func NewStock(y *record.Yard, ranges *weld.Ranges) *Stock {
	s := &Stock{
		Builder: &y.Builder, Lots: byKey(y.Stock.Lots, func(l *record.Lot) string { return l.ID }),
		Consumables:    byKey(y.Stock.Consumables, func(c *record.Consumable) string { return c.ID }),
		Tests:          byKey(y.Welding.Tests, func(t *record.ProcedureTest) string { return t.ID }),
		Inspectors:     byKey(y.Builder.Inspectors, func(i *record.Inspector) string { return i.ID }),
		Instruments:    byKey(y.Builder.Instruments, func(i *record.Instrument) string { return i.ID }),
		People:         byKey(y.Builder.People, func(p *record.Person) string { return p.ID }),
		Procedures:     map[string][]*record.Procedure{},
		Stamps:         map[string][]*record.Welder{},
		ranges:         map[*record.Qualification]weld.WelderRange{},
		Qualifications: map[string][]*record.Qualification{},
	}
	for i := range y.Welding.Procedures {
		p := &y.Welding.Procedures[i]
		s.Procedures[weld.Number(p)] = append(s.Procedures[weld.Number(p)], p)
	}
	for i := range y.Builder.Welders {
		w := &y.Builder.Welders[i]
		s.Stamps[w.Stamp.V] = append(s.Stamps[w.Stamp.V], w)
		if w.ID != w.Stamp.V {
			s.Stamps[w.ID] = append(s.Stamps[w.ID], w)
		}
	}
	for i := range y.Builder.Qualifications {
		q := &y.Builder.Qualifications[i]
		s.Qualifications[q.Welder.V] = append(s.Qualifications[q.Welder.V], q)
		if ranges != nil {
			s.ranges[q] = ranges.OfWelder(q)
		}
	}
	return s
}

func byKey[T any](all []T, key func(*T) string) map[string]*T {
	out := make(map[string]*T, len(all))
	for i := range all {
		out[key(&all[i])] = &all[i]
	}
	return out
}

// Procedure gives the revision of a procedure that a weld names. Where no revision is named and only one is kept, that
// is it; otherwise nil: a revision is not guessed.
func (s *Stock) Procedure(number, revision record.Val[string]) *record.Procedure {
	all := s.Procedures[number.V]
	if !number.Set {
		return nil
	}
	if !revision.Set {
		if len(all) == 1 {
			return all[0]
		}
		return nil
	}
	for _, p := range all {
		if p.Revision.V == revision.V {
			return p
		}
	}
	return nil
}

// Welder gives who used a stamp on a day: of several owners of one stamp the one whose days hold it. nil where the stamp
// is in no register.
func (s *Stock) Welder(stamp record.Val[string], day record.Val[record.Date]) *record.Welder {
	all := s.Stamps[stamp.V]
	if !stamp.Set || len(all) == 0 {
		return nil
	}
	for _, w := range all {
		if day.Set && !(w.Since.Set && day.V.Before(w.Since.V)) && !(w.Until.Set && w.Until.V.Before(day.V)) {
			return w
		}
	}
	return all[0]
}

// PersonOf gives the person behind an inspector, or "".
func (s *Stock) PersonOf(inspector string) string {
	if i := s.Inspectors[inspector]; i != nil {
		return i.Person.V
	}
	return ""
}
