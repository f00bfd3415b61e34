package weld

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// people gives the welders whose stamps stand in the welds of the hull, and the inspectors who looked.
func (a *assessor) people() {
	b := &a.yard.Builder
	for i := range b.Welders {
		w := Welder{Record: &b.Welders[i], Person: person(b, b.Welders[i].Person.V)}
		a.workOf(&w)
		if w.Welds == 0 {
			continue
		}
		for j := range b.Qualifications {
			if q := &b.Qualifications[j]; q.Welder.V == w.Record.ID {
				w.Ranges = append(w.Ranges, a.ranges.OfWelder(q))
			}
		}
		for _, r := range w.Ranges {
			a.qualification(r)
		}
		a.fillets(&w)
		a.Welders = append(a.Welders, w)
	}
	a.stamps()
	looked := map[string]bool{}
	for i := range a.hull.Inspections {
		looked[a.hull.Inspections[i].By.V] = true
	}
	for i := range b.Inspectors {
		if looked[b.Inspectors[i].ID] {
			a.Inspectors = append(a.Inspectors, &b.Inspectors[i])
		}
	}
}

func person(b *record.Builder, key string) *record.Person {
	for i := range b.People {
		if b.People[i].ID == key {
			return &b.People[i]
		}
	}
	return nil
}

// workOf counts the welds that carry a stamp, with the first and the last day.
func (a *assessor) workOf(w *Welder) {
	for i := range a.hull.Welds {
		one := &a.hull.Welds[i]
		if one.Welder.V != w.Record.Stamp.V && one.Welder.V != w.Record.ID {
			continue
		}
		w.Welds++
		if d := one.Date; d.Set {
			if w.First.Year == 0 || d.V.Before(w.First) {
				w.First = d.V
			}
			if w.Last.Before(d.V) {
				w.Last = d.V
			}
		}
	}
}

// qualification holds one certificate against its standard.
func (a *assessor) qualification(r WelderRange) {
	q := r.Record
	subject := "qualification " + q.ID
	switch {
	case r.Scheme == nil && a.ranges.foreign(q.Standard.V) != nil:
		a.find(finding.Shortfall, ruleStandard, subject, "certificate "+q.ID+": "+r.Why, "have the welder tested by a standard for aluminium", q.Standard.At)
		return
	case r.Scheme == nil:
		a.find(finding.Gap, ruleStandard, subject, "certificate "+q.ID+": "+r.Why, "hold it against the text of its standard", q.Standard.At, q.Edition.At)
		return
	}
	if r.Life.Printed.Year != 0 {
		a.find(finding.Contradiction, ruleLife, subject, "certificate "+q.ID+" is printed to hold until "+r.Life.Printed.String()+"; by "+r.Scheme.Work+" it holds "+unit.Count(r.Scheme.Years, "year", "years")+" from the test on "+q.Tested.V.String()+", so until "+lastOf(r).String(),
			"ask the examiner; a life of three years is one of the standard for steel", q.Until.At, q.Tested.At)
	}
	for _, odd := range designated(q) {
		a.find(finding.Contradiction, ruleDesignated, subject, "certificate "+q.ID+": "+odd, "read the certificate again", q.Designation.At)
	}
}

// lastOf is the last day that the years of the standard give, whatever was signed.
func lastOf(r WelderRange) record.Date {
	if r.Record.Prolonged.Set {
		return after(r.Record.Prolonged.V, r.Scheme.ProlongYears, 0)
	}
	return after(r.Record.Tested.V, r.Scheme.Years, 0)
}

// designated holds the printed designation against the fields beside it: process, product, kind of weld and position
// stand in it as words of their own.
func designated(q *record.Qualification) []string {
	if !q.Designation.Set {
		return nil
	}
	in := strings.Fields(q.Designation.V)
	weld := map[string]string{"butt": "BW", "fillet": "FW"}[q.Weld.V]
	var odd []string
	for _, one := range []struct{ name, want string }{
		{"process", q.Process.V}, {"product", q.Product.V}, {"kind of weld", weld}, {"position", q.Position.V},
	} {
		if one.want == "" {
			continue
		}
		found := false
		for _, word := range in {
			found = found || word == one.want
		}
		if !found {
			odd = append(odd, "the designation "+q.Designation.V+" does not name the "+one.name+" "+one.want)
		}
	}
	return odd
}

// fillets tells of a welder with butt tests alone who welds mainly fillets.
func (a *assessor) fillets(w *Welder) {
	secondary := false
	for _, r := range w.Ranges {
		for _, k := range r.Welds {
			if k == "fillet" && !r.Secondary {
				return
			}
		}
		secondary = secondary || r.Secondary
	}
	fillet, other := a.lengths(w)
	if !secondary || fillet <= other {
		return
	}
	a.find(finding.Shortfall, ruleFillets, "welder "+w.Record.ID, "welder "+w.Record.Stamp.V+" has butt tests alone and welded mainly fillets: a butt test covers fillets only where they are not the main work",
		"have a fillet tested", w.Record.At)
}

// lengths adds up the joints that a welder welded, fillets and others.
func (a *assessor) lengths(w *Welder) (fillet, other float64) {
	types := map[string]*record.Joint{}
	for i := range a.hull.Joints {
		types[a.hull.Joints[i].ID] = &a.hull.Joints[i]
	}
	for i := range a.hull.Welds {
		one := &a.hull.Welds[i]
		j := types[one.Joint.V]
		if j == nil || one.Welder.V != w.Record.Stamp.V && one.Welder.V != w.Record.ID {
			continue
		}
		if isFillet(j) {
			fillet += float64(j.Length.V)
		} else {
			other += float64(j.Length.V)
		}
	}
	return fillet, other
}

// isFillet reports a joint that is welded with fillets.
func isFillet(j *record.Joint) bool { return j.Type.V == "fillet" || j.Type.V == "lap" }

// stamps tells of one stamp in two hands at one time.
func (a *assessor) stamps() {
	all := a.yard.Builder.Welders
	used := map[string]bool{}
	for i := range a.hull.Welds {
		used[a.hull.Welds[i].Welder.V] = true
	}
	for i := range all {
		for j := range all[:i] {
			x, y := &all[j], &all[i]
			if used[x.Stamp.V] && x.Stamp.V == y.Stamp.V && x.Person.V != y.Person.V && overlap(x, y) {
				a.find(finding.Contradiction, ruleStamp, "welder "+y.ID, "stamp "+x.Stamp.V+" belongs to two people at one time: "+x.Person.V+" and "+y.Person.V,
					"give each welder a stamp of their own, or write from when to when each had it", y.Stamp.At, x.Stamp.At)
			}
		}
	}
}

func overlap(x, y *record.Welder) bool {
	before := func(end, start record.Val[record.Date]) bool { return end.Set && start.Set && end.V.Before(start.V) }
	return !before(x.Until, y.Since) && !before(y.Until, x.Since)
}
