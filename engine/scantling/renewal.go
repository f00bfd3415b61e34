package scantling

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// renewalSheet says what class practice and the yard let go of a built thickness.
const renewalSheet = "renewal"

// steps of a millimetre in which least thicknesses are told: a gauge reads no finer.
const steps = 20

// renewals finds how thin each panel may become and holds the readings against it.
func (j *judge) renewals(out *Result) {
	if len(out.Panels) == 0 {
		j.gaugings(out, nil)
		return
	}
	wear, _ := j.in.Library.Sheet(renewalSheet)
	var slate *method.Slate
	if wear != nil {
		slate, _ = wear.Slate("renewal", nil, "least", "yards", "watch", "yards_watch")
	}
	out.Renewals = make([]Renewal, len(out.Panels))
	for i := range out.Panels {
		out.Renewals[i] = j.renewal(i, &out.Panels[i], slate)
	}
	j.gaugings(out, wear)
}

func (j *judge) renewal(at int, p *Panel, wear *method.Slate) Renewal {
	n := Renewal{Panel: at}
	if p.Standing == finding.NotShown {
		n.Why = p.Why
		return n
	}
	least, ok := j.governing().thinnest(p)
	if !ok {
		n.Why = "no thickness up to 60 mm meets the method"
		return n
	}
	n.Shown, n.Least = true, least
	n.Room = unit.MM(settled(float64(p.Fitted - least)))
	if wear == nil || wear.Reckon(j.wearOf(p, least, nil)) != nil {
		return n
	}
	of := func(name string) unit.MM { return unit.MM(settled(wear.Most(name))) }
	n.Practice, n.Yard, n.Watch = of("least"), of("yards"), of("watch")
	if n.Yard > 0 {
		n.Watch = of("yards_watch")
	}
	return n
}

// wearOf hands a panel and a reading to the sheet for diminution.
func (j *judge) wearOf(p *Panel, least unit.MM, g *record.Gauging) method.Given {
	own := method.GivenMap{"renewal.needed_mm": {Number: float64(least), Unit: "mm", Basis: p.Basis, Source: "the governing sheet"}}
	if g != nil {
		own["renewal.gauged_mm"] = method.Quantity{Number: float64(g.Measured.V), Unit: "mm", Place: g.Measured.At}
	}
	return &given{boat: &j.hull.Boat, rules: &j.hull.Rules, kind: "panel", entry: p.Record, own: own}
}

// thinnest is the least thickness in whole steps at which the sheet is still met. What a sheet needs hangs on the
// thickness only by the strength of the alloy, which sources give by ranges of it, so the search begins at what is needed
// as fitted and goes on from one range to the next; more metal never meets less.
func (r *rule) thinnest(p *Panel) (unit.MM, bool) {
	const most = 60 * steps
	k := stepsUp(p.Needed)
	for range most {
		if k > most {
			return 0, false
		}
		needed, ok := r.neededAt(p.Record, k)
		switch {
		case !ok:
			return 0, false
		case stepsUp(needed) > k:
			k = stepsUp(needed)
			continue
		}
		below, ok := r.neededAt(p.Record, k-1)
		if !ok || stepsUp(below) > k-1 {
			return unit.MM(float64(k) / steps), true
		}
		k--
	}
	return 0, false
}

func stepsUp(t unit.MM) int { return int(math.Ceil(float64(t)*steps - 1e-6)) }

// neededAt asks the sheet for the same panel with another thickness.
func (r *rule) neededAt(rec *record.Panel, k int) (unit.MM, bool) {
	if k < 1 {
		return 0, false
	}
	thin := unit.MM(float64(k) / steps)
	if r.metals.same(rec.Alloy, rec.Thickness.V, thin) {
		thin = rec.Thickness.V // the answer is known
	}
	other := *rec
	other.Thickness.V = thin
	p := r.panel(&other, true, false)
	return p.Needed, p.Standing != finding.NotShown
}

// same reports whether an alloy has the same strengths at two thicknesses of plate.
func (a *alloys) same(alloy record.Val[string], one, other unit.MM) bool {
	m, _ := a.of(alloy, one, "plate")
	n, _ := a.of(alloy, other, "plate")
	if m == nil || n == nil {
		return m == n
	}
	for _, name := range strengths {
		p, had := m.Lookup(name)
		q, has := n.Lookup(name)
		if had != has || p.Number != q.Number {
			return false
		}
	}
	return true
}

var strengths = []string{"alloy.welded.tensile_n_mm2", "alloy.welded.yield_n_mm2", "alloy.welded.factor_f1",
	"alloy.parent.tensile_n_mm2", "alloy.parent.yield_n_mm2", "alloy.parent.factor_f1"}
