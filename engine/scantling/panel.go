package scantling

import (
	"encoding/binary"
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// judged is a panel by one sheet, with what its check has to say beside the result.
type judged struct {
	Panel
	rule    *rule
	missing []string // record keys
	clause  string   // of the governing step
	asked   string   // name of the governing step
	under   footing
	rests   []finding.Place // record lines below the outcome
}

// panel judges one panel. Where it keeps, the working is the panel's own, or that of an equal panel before it that was laid out
// from the grid too; otherwise the working is overwritten by the next panel and is not handed out.
func (r *rule) panel(rec *record.Panel, derived, keep bool) judged {
	p := judged{rule: r, Panel: Panel{Record: rec, Derived: derived, Count: 1, Standing: finding.NotShown, Fitted: rec.Thickness.V}}
	if n, ok := rec.Count.Get(); ok {
		p.Count = n
	}
	if r.refuses != "" {
		p.Why, p.missing = r.refuses, r.missing
		return p
	}
	of, noMetal := r.metals.of(rec.Alloy, rec.Thickness.V, "plate")
	g := r.given()
	g.kind, g.entry, g.own, g.alloy = "panel", rec, panelStandIns, of
	t := r.tray("panel", g)
	if t == nil {
		p.Why = r.name + " has no scope for panels"
		return p
	}
	r.key = binary.LittleEndian.AppendUint64(t.key(r.key), math.Float64bits(float64(rec.Thickness.V)))
	if before, known := r.memo[string(r.key)]; known && (derived || !keep) {
		return before.again(p, keep, t)
	}
	w, err := r.reckon("panel", t, keep)
	if err != nil {
		p.Why = err.Error()
		return p
	}
	p.judge(w, of, noMetal)
	switch {
	case keep:
		p.Working, p.rests = w, t.places()
	case p.Why != "" && w.Again(t) == nil: // now with the sentences
		p.reasons(w, of, noMetal)
	}
	if p.Standing != finding.NotShown && len(p.missing) == 0 {
		r.memo[string(r.key)] = p
	}
	return p
}

// reckon evaluates what lies on a tray, in a working to keep or in the one that is turned again and again.
func (r *rule) reckon(scope string, t *tray, keep bool) (*method.Working, error) {
	if keep {
		return r.work(scope, t)
	}
	return r.turn(scope, t)
}

// again gives the outcome of an equal panel to another one, whose records stand on other lines.
func (before judged) again(p judged, keep bool, t *tray) judged {
	out := before
	out.Record, out.Derived, out.Count, out.Same = p.Record, p.Derived, p.Count, before.Record.ID
	if keep {
		out.rests = t.places()
	}
	return out
}

// judge reads the working of a panel.
func (p *judged) judge(w *method.Working, of *metal, noMetal string) {
	p.Pressure = pressure(w)
	p.ask(w)
	p.weigh()
	if p.Governs != "" {
		p.under = underStep(w, p.Governs)
	}
	p.reasons(w, of, noMetal)
}

// panelStandIns are values for what a record may leave out: the record asks to leave the camber out for flat plate, and
// flat plate is asked for the most.
var panelStandIns = method.GivenMap{"panel.camber_mm": {Unit: "mm", Source: "no camber is written: flat plate"}}

// pressure is the design pressure, where the sheet gives one.
func pressure(w *method.Working) float64 {
	for _, symbol := range w.Scope.Gives["pressure"] {
		if v, ok := w.Value(symbol); ok {
			return v
		}
	}
	return 0
}

// ask gathers every thickness that the sheet asks for.
func (p *judged) ask(w *method.Working) {
	for _, symbol := range w.Scope.Gives["needed"] {
		shown, ok := w.Get(symbol)
		if !ok {
			continue
		}
		a := Ask{Symbol: symbol, Name: shown.Name, State: shown.State, reason: reasonOf(shown)}
		v, ok := w.Value(symbol)
		if ok {
			a.Value, a.Shown = unit.MM(settled(v)), true
		}
		p.Asks = append(p.Asks, a)
		if !ok || a.Value <= p.Needed {
			continue
		}
		p.Needed, p.Governs, p.Basis = a.Value, symbol, shown.Rests
		p.asked, p.clause = shown.Name, shown.Clause
	}
}

// settled rounds a thickness to a millionth of a thousandth of a millimetre, so that the outcome does not hang on the
// last bit, which differs between machines that fuse a multiplication with an addition and those that do not.
func settled(mm float64) float64 { return math.Round(mm*1e9) / 1e9 }

// weigh holds what is fitted against what is needed. One thickness that is not reached makes the panel short, whatever
// else is missing; the panel is met only when everything that the sheet asks for is there and reached.
func (p *judged) weigh() {
	open := slices.ContainsFunc(p.Asks, func(a Ask) bool { return !a.Shown && a.State != method.NotSet })
	fitted := p.Record.Thickness.Set
	switch {
	case fitted && p.Needed > p.Fitted:
		p.Standing = finding.Short
	case open || !fitted || p.Needed <= 0:
		p.Needed, p.Governs, p.Basis = 0, "", ""
		p.asked, p.clause = "", ""
		return
	default:
		p.Standing = finding.Met
	}
	p.Margin = float64(p.Fitted) / float64(p.Needed)
}
