package scantling

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// poisson of aluminium, for the breadth of plate that works with a member under a fitting.
const poisson = 0.33

// fittings judges every place where a load comes in at a point.
func (j *judge) fittings(out *Result) {
	if len(j.hull.Fittings) == 0 {
		return
	}
	r := newLocal(spotSheet, j.in, j.wires)
	for i := range j.hull.Fittings {
		f, c := j.fitting(&j.hull.Fittings[i], r)
		out.Fittings = append(out.Fittings, f)
		out.Checks = append(out.Checks, c)
	}
	out.Collision = j.collision(r)
}

func (j *judge) fitting(rec *record.Fitting, r *rule) (Fitting, finding.Check) {
	f := Fitting{Record: rec}
	l := local{rule: r, subject: "fitting " + rec.ID, asks: "plate, member and welds under it carry the load that comes in there",
		settle: "a thicker plate or insert, a larger member under it, longer or larger welds, or a smaller load"}
	var of *metal
	var noMetal string
	if r.refuses == "" {
		of, noMetal = r.metals.of(rec.Alloy, rec.Plate.V, "plate")
	}
	l.lacks = lacks{kind: "spot", id: rec.ID, alloy: "fitting." + rec.ID + ".alloy", section: "fitting." + rec.ID + ".section", of: of, noMetal: noMetal}
	own := method.GivenMap{
		"spot.shared_by": {Number: 1, Source: "nothing is written: one place carries it"},
		"spot.engines":   {Number: 1, Source: "nothing is written: one engine"},
	}
	if rec.Plate.Set && rec.Doubler.Set && rec.Doubler.V > rec.Plate.V {
		own["spot.plate_mm"] = method.Quantity{Number: float64(rec.Doubler.V), Unit: "mm", Place: rec.Doubler.At, Source: "the doubler or insert"}
	}
	j.under(rec, own, &l.lacks)
	g := &spot{bound{given: given{boat: r.boat, rules: r.rules, kind: "spot", entry: rec, own: own, alloy: of}, bar: own}}
	l.judge("spot", g)
	l.lacks.kind = "fitting"
	if w := l.Working; w != nil {
		plate, there := g.Lookup("spot.plate_mm")
		if len(w.Scope.Gives["fitted"]) == 0 {
			l.fitted(w, "needed", plate.Number, there)
			l.weigh(w)
		}
		loads := w.Scope.Gives["load"]
		for i, into := range []*float64{&f.Force, &f.Moment} {
			if i < len(loads) {
				*into, _ = w.Value(loads[i])
			}
		}
	}
	for i, key := range l.lacks.missing {
		l.lacks.missing[i] = fittingKey(key)
	}
	f.Local = l.Local
	return f, l.check(ruleSpot)
}

// fittingKey turns the name by which the sheet asks into the key of the record.
func fittingKey(key string) string {
	if len(key) > 5 && key[:5] == "spot." {
		return "fitting." + key[5:]
	}
	return key
}

// spot is bound with what stands over the record: a doubler in place of the plate.
type spot struct{ bound }

// Lookup finds the value that a sheet asks for.
func (s *spot) Lookup(from string) (method.Quantity, bool) {
	w := want(from)
	return s.find(&w)
}

func (s *spot) find(w *wanted) (method.Quantity, bool) {
	if w.from == "spot.plate_mm" {
		if q, ok := s.own[w.from]; ok {
			return q, true
		}
	}
	return s.bound.find(w)
}

// under hands the member under a fitting to the sheet, with the plate that works with it by plate theory.
func (j *judge) under(rec *record.Fitting, own method.GivenMap, l *lacks) {
	name, named := rec.Section.Get()
	if !named {
		return
	}
	b := j.bars.found[name]
	if b == nil || b.wrong != "" {
		l.why("section " + name + " is not on record, or is no section")
		return
	}
	thick, breadth := rec.Plate.V, unit.MM(0)
	if thick > 0 && rec.Span.V > 0 {
		breadth, _ = section.Lag(rec.Span.V, rec.Span.V, poisson)
	}
	if breadth <= 0 {
		thick = 0
	}
	on, err := b.with(thick, breadth)
	if err != nil {
		l.why(err.Error())
		return
	}
	source := "section " + name
	own["section.modulus_cm3"] = method.Quantity{Number: min(float64(on.props.AtPlate), float64(on.props.AtEdge)), Unit: "cm³", Place: b.record.At, Source: source}
	own["section.shear_cm2"] = method.Quantity{Number: float64(on.props.Web), Unit: "cm²", Place: b.record.At, Source: source}
}

// collision reckons the stated case of running into something, where the depth of the hull is known.
func (j *judge) collision(r *rule) *Collision {
	if r.refuses != "" || j.in.Depth <= 0 {
		return nil
	}
	g := r.given()
	g.own = method.GivenMap{"collision.depth_m": {Number: float64(j.in.Depth), Unit: "m", Source: "the lines"}}
	t := r.tray("collision", g)
	if t == nil {
		return nil
	}
	w, err := r.work("collision", t)
	if err != nil {
		return nil
	}
	c := &Collision{Working: w, Force: greatest(w, "load"), Acceleration: greatest(w, "acceleration")}
	c.Shown = c.Force > 0
	if !c.Shown {
		l := lacks{kind: "collision"}
		l.look(w, w.Scope.Gives["load"])
		c.Why = strings.Join(l.whys, "; ")
	}
	return c
}
