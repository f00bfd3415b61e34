package seam

import (
	"cmp"
	"slices"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Term is one paper, calibration or lot that runs out, beside the days on which the building of the hull rested on it.
type Term struct {
	Subject     string // "qualification q1", "inspector i1", "instrument weld-gauge-1", "consumable wire-1", "procedure P1"
	From, Until record.Date
	HasUntil    bool
	Ends        string // why it ends then
	First, Last record.Date
	Uses        int
	Outside     int // uses before it began or after it ended
	Standing    finding.Standing
	Says        string
	At          finding.Place
}

// use counts one day; a use without a day says nothing of it.
func (t *Term) use(day record.Val[record.Date]) {
	t.Uses++
	if !day.Set {
		return
	}
	if t.First.Year == 0 || day.V.Before(t.First) {
		t.First = day.V
	}
	if t.Last.Before(day.V) {
		t.Last = day.V
	}
	if day.V.Before(t.From) || t.HasUntil && t.Until.Before(day.V) {
		t.Outside++
	}
}

// settle says what the days come to. open says that no end means that it is in use.
func (t *Term) settle(open bool) {
	switch {
	case t.Outside > 0:
		t.Standing, t.Says = finding.Short, "not in date on every day"
	case !t.HasUntil && !open:
		t.Standing, t.Says = finding.NotShown, "its end is not on record"
	case t.First.Year == 0:
		t.Standing, t.Says = finding.NotShown, "no day of use is on record"
	default:
		t.Standing, t.Says = finding.Met, "in date on every day"
	}
}

// Terms lists everything with an end that welds and inspections of the hull rest on, those that ended first before the
// others. What nothing used is not listed.
func (m *Map) Terms() []Term {
	var all []Term
	take := func(t Term, open bool) {
		if t.Uses > 0 {
			t.settle(open)
			all = append(all, t)
		}
	}
	for i := range m.Builder.Welders {
		all = append(all, m.certificates(&m.Builder.Welders[i])...)
	}
	for i := range m.Builder.Inspectors {
		take(m.inspectorTerm(&m.Builder.Inspectors[i]), false)
	}
	for i := range m.Builder.Instruments {
		take(m.instrumentTerm(&m.Builder.Instruments[i]), false)
	}
	for _, c := range m.lots() {
		take(m.lotTerm(c), false)
	}
	for _, p := range m.procedures() {
		take(m.procedureTerm(p), true)
	}
	slices.SortStableFunc(all, func(a, b Term) int {
		return cmp.Or(first(a.HasUntil, b.HasUntil), cmp.Compare(number(a.Until), number(b.Until)))
	})
	return all
}

// certificates gives those of one welder. A day on which one had ended is no fault where another held.
func (m *Map) certificates(who *record.Welder) []Term {
	var mine []*record.Weld
	bare := false
	for i := range m.Hull.Welds {
		w := &m.Hull.Welds[i]
		if m.Welder(w.Welder, w.Date) != who {
			continue
		}
		mine = append(mine, w)
		if held, _ := m.Held(who, w.Date.V); w.Date.Set && len(held) == 0 {
			bare = true
		}
	}
	var all []Term
	for _, q := range m.Qualifications[who.ID] {
		t := Term{Subject: "qualification " + q.ID, From: q.Tested.V, Until: q.Until.V, HasUntil: q.Until.Set, Ends: "printed on it", At: q.At}
		if r, known := m.Range(q); known {
			t.Until, t.HasUntil, t.Ends = r.Life.Until, true, r.Life.Ends
		}
		for _, w := range mine {
			t.use(w.Date)
		}
		if t.Uses == 0 {
			continue
		}
		t.settle(false)
		if t.Outside > 0 && !bare {
			t.Standing, t.Says = finding.Met, "another certificate of this welder held on the other days"
		}
		all = append(all, t)
	}
	return all
}

func (m *Map) inspectorTerm(i *record.Inspector) Term {
	t := Term{Subject: "inspector " + i.ID, From: i.From.V, Until: i.Until.V, HasUntil: i.Until.Set, Ends: "printed on it", At: i.At}
	for k := range m.Hull.Inspections {
		if look := &m.Hull.Inspections[k]; look.By.V == i.ID {
			t.use(look.Date)
		}
	}
	return t
}

func (m *Map) instrumentTerm(i *record.Instrument) Term {
	t := Term{Subject: "instrument " + i.ID, From: i.Calibrated.V, Until: i.Due.V, HasUntil: i.Due.Set, Ends: "due again", At: i.At}
	for k := range m.Hull.Inspections {
		if look := &m.Hull.Inspections[k]; look.Instrument.V == i.ID {
			t.use(look.Date)
		}
	}
	for k := range m.Hull.Welds {
		if w := &m.Hull.Welds[k]; w.Machine.V == i.ID {
			t.use(w.Date)
		}
	}
	for k := range m.Hull.LeakTests {
		if l := &m.Hull.LeakTests[k]; l.Instrument.V == i.ID {
			t.use(l.Date)
		}
	}
	return t
}

// lotTerm: a lot ends on its last day, or when it has been open for its life.
func (m *Map) lotTerm(c *record.Consumable) Term {
	t := Term{Subject: "consumable " + c.ID, From: c.Received.V, Until: c.Expires.V, HasUntil: c.Expires.Set, Ends: "last day on the pack", At: c.At}
	if c.Opened.Set && c.OpenLife.Set {
		d := c.Opened.V
		at := time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC).AddDate(0, 0, c.OpenLife.V)
		if end := (record.Date{Year: at.Year(), Month: at.Month(), Day: at.Day()}); !t.HasUntil || end.Before(t.Until) {
			t.Until, t.HasUntil, t.Ends = end, true, "open since "+d.String()
		}
	}
	for k := range m.Hull.Welds {
		if w := &m.Hull.Welds[k]; w.Filler.V == c.ID || w.Gas.V == c.ID {
			t.use(w.Date)
		}
	}
	return t
}

func (m *Map) procedureTerm(p *record.Procedure) Term {
	t := Term{Subject: "procedure " + p.ID, From: p.From.V, Until: p.Until.V, HasUntil: p.Until.Set, Ends: "taken out of use", At: p.At}
	for k := range m.Hull.Welds {
		if w := &m.Hull.Welds[k]; m.Procedure(w.Procedure, w.Revision) == p {
			t.use(w.Date)
		}
	}
	return t
}

// lots gives the consumables in the order of their keys.
func (s *Stock) lots() []*record.Consumable {
	all := make([]*record.Consumable, 0, len(s.Consumables))
	for _, c := range s.Consumables {
		all = append(all, c)
	}
	slices.SortFunc(all, func(a, b *record.Consumable) int { return cmp.Compare(a.ID, b.ID) })
	return all
}

// procedures gives all revisions in the order of their keys.
func (s *Stock) procedures() []*record.Procedure {
	var all []*record.Procedure
	for _, some := range s.Procedures {
		all = append(all, some...)
	}
	slices.SortFunc(all, func(a, b *record.Procedure) int { return cmp.Compare(a.ID, b.ID) })
	return all
}
