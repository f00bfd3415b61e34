package site

import (
	"cmp"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// TracePage leads from each cast, filler, procedure and person to the seams of this hull that it touches.
type TracePage struct {
	Number  string
	Says    TraceSays
	Metal   []TraceRow
	Fillers []TraceRow
	Ways    []TraceRow
	People  []TraceRow
	Tools   []TraceRow
	Caution template.HTML
}

// TraceSays is the answer: how many marks there are, and which cast reaches furthest.
type TraceSays struct {
	Metal, Fillers, Ways, People, Tools int
	Joints                              int
	Metres                              string
	Cast                                Link // that touches the most metres
	CastJoints, CastMetres              string
}

// TraceRow is one mark with what it touches. Few joints stand in the row itself, many in groups.
type TraceRow struct {
	Mark   Link
	Says   string
	Parts  []Link
	Joints []Link
	Groups []TraceGroup
	Count  string
	Metres string
	Days   DaySpan
	Place  Link
}

// TraceGroup is the joints of a mark that one procedure, one welder and one lot of filler made.
type TraceGroup struct {
	Says   string
	Count  int
	Metres string
	Joints []Link
}

// DaySpan is a first and a last day; Last is empty where all was done on one day.
type DaySpan struct{ First, Last string }

// fewJoints stand in the row of their mark; more are put into groups, which fold.
const fewJoints = 8

// reach gathers the joints that a mark touches.
type reach struct {
	parts  []Link
	joints []*seam.Joint
	seen   map[*seam.Joint]bool
}

func (r *reach) take(j *seam.Joint) {
	if r.seen == nil {
		r.seen = map[*seam.Joint]bool{}
	}
	if !r.seen[j] {
		r.seen[j] = true
		r.joints = append(r.joints, j)
	}
}

func (l *leaf) tracePage() (TracePage, error) {
	p := TracePage{Number: l.hull.Number, Caution: l.press.notes["trace"]}
	y := l.yard
	reaches := l.traceMetal(&p, y.Stock.Lots)
	l.traceWelding(&p, y)
	l.tracePeople(&p, &y.Builder)
	p.Says = l.traceSays(&p, reaches)
	return p, nil
}

// traceMetal gives the lots from which parts of this hull were cut, and how far each reaches.
func (l *leaf) traceMetal(p *TracePage, lots []record.Lot) []*reach {
	var reaches []*reach
	for i := range lots {
		lot := &lots[i]
		var r reach
		for k := range l.hull.Parts {
			part := &l.hull.Parts[k]
			if part.Lot.V != lot.ID {
				continue
			}
			r.parts = append(r.parts, l.subjectAs("part "+part.ID, part.ID))
			for _, j := range l.dossier.Seams.JointsOf[part.ID] {
				r.take(j)
			}
		}
		if len(r.parts) > 0 {
			reaches = append(reaches, &r)
			p.Metal = append(p.Metal, l.traceRow("lot "+lot.ID, or(lot.Cast.V, lot.ID), "lot "+lot.ID+", "+lot.Alloy.V+", "+unit.Plain(lot.Thickness.V)+" mm", lot.At, &r))
		}
	}
	return reaches
}

// traceWelding gives what seams of this hull were welded with, and by which procedures.
func (l *leaf) traceWelding(p *TracePage, y *record.Yard) {
	m := l.dossier.Seams
	for i := range y.Stock.Consumables {
		c := &y.Stock.Consumables[i]
		r := l.weldsWhere(func(w *record.Weld) bool { return w.Filler.V == c.ID || w.Gas.V == c.ID })
		if len(r.joints) > 0 {
			p.Fillers = append(p.Fillers, l.traceRow("consumable "+c.ID, c.ID, c.Kind.V+" "+c.Classification.V, c.At, r))
		}
	}
	for i := range y.Welding.Procedures {
		proc := &y.Welding.Procedures[i]
		r := l.weldsWhere(func(w *record.Weld) bool { return m.Procedure(w.Procedure, w.Revision) == proc })
		if len(r.joints) > 0 {
			p.Ways = append(p.Ways, l.traceRow("procedure "+proc.ID, proc.ID, proc.Title.V, proc.At, r))
		}
	}
}

// tracePeople gives who welded and looked at seams of this hull, and with what was measured.
func (l *leaf) tracePeople(p *TracePage, b *record.Builder) {
	m := l.dossier.Seams
	for i := range b.Welders {
		who := &b.Welders[i]
		r := l.weldsWhere(func(w *record.Weld) bool { return m.Welder(w.Welder, w.Date) == who })
		if len(r.joints) > 0 {
			p.People = append(p.People, l.traceRow("welder "+who.ID, l.nameOf("person", who.Person.V), "welder, stamp "+who.Stamp.V, who.At, r))
		}
	}
	for i := range b.Inspectors {
		in := &b.Inspectors[i]
		r := l.looksWhere(func(look *record.Inspection) bool { return look.By.V == in.ID })
		if len(r.joints) > 0 {
			p.People = append(p.People, l.traceRow("inspector "+in.ID, l.nameOf("person", in.Person.V), in.Method.V+" inspection", in.At, r))
		}
	}
	for i := range b.Instruments {
		t := &b.Instruments[i]
		r := l.looksWhere(func(look *record.Inspection) bool { return look.Instrument.V == t.ID })
		if len(r.joints) > 0 {
			p.Tools = append(p.Tools, l.traceRow("instrument "+t.ID, t.ID, t.Name.V, t.At, r))
		}
	}
}

func (l *leaf) traceSays(p *TracePage, metal []*reach) TraceSays {
	c := &l.dossier.Coverage
	s := TraceSays{Metal: len(p.Metal), Fillers: len(p.Fillers), Ways: len(p.Ways), People: len(p.People), Tools: len(p.Tools), Joints: c.Joints, Metres: unit.Text(c.Metres, 1)}
	most := 0.0
	for i, r := range metal {
		if m := r.metres(); m > most {
			most, s.Cast, s.CastJoints, s.CastMetres = m, p.Metal[i].Mark, p.Metal[i].Count, p.Metal[i].Metres
		}
	}
	return s
}

func (l *leaf) weldsWhere(is func(*record.Weld) bool) *reach {
	var r reach
	for _, j := range l.dossier.Seams.Joints {
		for _, w := range j.Welds {
			if is(w) {
				r.take(j)
			}
		}
	}
	return &r
}

func (l *leaf) looksWhere(is func(*record.Inspection) bool) *reach {
	var r reach
	for _, j := range l.dossier.Seams.Joints {
		for _, look := range j.Looks {
			if is(look) {
				r.take(j)
			}
		}
	}
	return &r
}

func (l *leaf) traceRow(subject, mark, says string, at finding.Place, r *reach) TraceRow {
	row := TraceRow{Mark: l.subjectAs(subject, mark), Says: says, Parts: r.parts, Count: strconv.Itoa(len(r.joints)), Metres: unit.Text(r.metres(), 1), Days: r.days(), Place: l.place(at)}
	if len(r.joints) <= fewJoints {
		row.Joints = l.jointLinks(r.joints)
		return row
	}
	row.Groups = l.traceGroups(r.joints)
	return row
}

func (l *leaf) jointLinks(all []*seam.Joint) []Link {
	out := make([]Link, 0, len(all))
	for _, j := range all {
		out = append(out, l.subjectAs("joint "+j.Record.ID, j.Record.ID))
	}
	return out
}

// traceGroups puts joints together that the same procedure, welder and lot of filler made, the longest group first.
func (l *leaf) traceGroups(all []*seam.Joint) []TraceGroup {
	type group struct {
		joints reach
		says   string
	}
	var groups []*group
	for _, j := range all {
		says := madeBy(j)
		at := slices.IndexFunc(groups, func(g *group) bool { return g.says == says })
		if at < 0 {
			at, groups = len(groups), append(groups, &group{says: says})
		}
		groups[at].joints.take(j)
	}
	slices.SortStableFunc(groups, func(a, b *group) int { return cmp.Compare(b.joints.metres(), a.joints.metres()) })
	out := make([]TraceGroup, 0, len(groups))
	for _, g := range groups {
		out = append(out, TraceGroup{Says: g.says, Count: len(g.joints.joints), Metres: unit.Text(g.joints.metres(), 1), Joints: l.jointLinks(g.joints.joints)})
	}
	return out
}

// madeBy says by which procedures, stamps and lots of filler a joint was welded.
func madeBy(j *seam.Joint) string {
	var ways, stamps, fillers []string
	for _, w := range j.Welds {
		ways, stamps, fillers = once(ways, w.Procedure.V), once(stamps, w.Welder.V), once(fillers, w.Filler.V)
	}
	if len(j.Welds) == 0 {
		return "no weld on record"
	}
	named := func(what string, all []string) string {
		if len(all) == 0 {
			return "no " + what + " named"
		}
		return what + " " + strings.Join(all, " and ")
	}
	return named("procedure", ways) + ", " + named("stamp", stamps) + ", " + named("filler", fillers)
}

func once(all []string, one string) []string {
	if one == "" || slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

func (r *reach) metres() float64 {
	sum := 0.0
	for _, j := range r.joints {
		sum += j.Metres()
	}
	return sum
}

// days gives the first and the last day on which the joints were welded.
func (r *reach) days() DaySpan {
	var first, last record.Date
	for _, j := range r.joints {
		for _, w := range j.Welds {
			if d := w.Date; d.Set {
				if first.Year == 0 || d.V.Before(first) {
					first = d.V
				}
				if last.Before(d.V) {
					last = d.V
				}
			}
		}
	}
	switch {
	case first.Year == 0:
		return DaySpan{}
	case first == last:
		return DaySpan{First: first.ISO()}
	}
	return DaySpan{first.ISO(), last.ISO()}
}
