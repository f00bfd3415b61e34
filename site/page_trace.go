package site

import (
	"html/template"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// TracePage leads from each cast, filler, procedure and person to the seams of this hull that it touches.
type TracePage struct {
	Number  string
	Metal   []TraceRow
	Fillers []TraceRow
	Ways    []TraceRow
	People  []TraceRow
	Tools   []TraceRow
	Caution template.HTML
}

// TraceRow is one mark with what it touches.
type TraceRow struct {
	Mark   Link
	Says   string
	Parts  []Link
	Joints []Link
	Count  string
	Metres string
	Place  Link
}

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
	m := l.dossier.Seams
	p := TracePage{Number: l.hull.Number, Caution: l.press.notes["trace"]}
	y := l.press.job.Yard
	for i := range y.Stock.Lots {
		lot := &y.Stock.Lots[i]
		var r reach
		for k := range l.hull.Parts {
			part := &l.hull.Parts[k]
			if part.Lot.V != lot.ID {
				continue
			}
			r.parts = append(r.parts, l.subjectAs("part "+part.ID, part.ID))
			for _, j := range m.JointsOf[part.ID] {
				r.take(j)
			}
		}
		if len(r.parts) > 0 {
			p.Metal = append(p.Metal, l.traceRow("lot "+lot.ID, or(lot.Cast.V, lot.ID), "lot "+lot.ID+", "+lot.Alloy.V+", "+unit.Plain(lot.Thickness.V)+" mm", lot.At, &r))
		}
	}
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
	for i := range y.Builder.Welders {
		who := &y.Builder.Welders[i]
		r := l.weldsWhere(func(w *record.Weld) bool { return m.Welder(w.Welder, w.Date) == who })
		if len(r.joints) > 0 {
			p.People = append(p.People, l.traceRow("welder "+who.ID, l.nameOf("person", who.Person.V), "welder, stamp "+who.Stamp.V, who.At, r))
		}
	}
	for i := range y.Builder.Inspectors {
		in := &y.Builder.Inspectors[i]
		r := l.looksWhere(func(look *record.Inspection) bool { return look.By.V == in.ID })
		if len(r.joints) > 0 {
			p.People = append(p.People, l.traceRow("inspector "+in.ID, l.nameOf("person", in.Person.V), in.Method.V+" inspection", in.At, r))
		}
	}
	for i := range y.Builder.Instruments {
		t := &y.Builder.Instruments[i]
		r := l.looksWhere(func(look *record.Inspection) bool { return look.Instrument.V == t.ID })
		if len(r.joints) > 0 {
			p.Tools = append(p.Tools, l.traceRow("instrument "+t.ID, t.ID, t.Name.V, t.At, r))
		}
	}
	return p, nil
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
	row := TraceRow{Mark: l.subjectAs(subject, mark), Says: says, Parts: r.parts, Count: strconv.Itoa(len(r.joints)), Place: l.place(at)}
	metres := 0.0
	for _, j := range r.joints {
		metres += j.Metres()
		row.Joints = append(row.Joints, l.subjectAs("joint "+j.Record.ID, j.Record.ID))
	}
	row.Metres = unit.Text(metres, 1)
	return row
}
