package scantling

import (
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// judged is a panel with what its check has to say beside the result.
type judged struct {
	Panel
	missing []string // record keys
	clause  string   // of the governing step
	asked   string   // name of the governing step
}

// panel judges one panel.
func (j *judge) panel(rec *record.Panel) judged {
	p := judged{Panel: Panel{Record: rec, Count: 1, Standing: finding.NotShown, Fitted: rec.Thickness.V}}
	if n, ok := rec.Count.Get(); ok {
		p.Count = n
	}
	if j.refuses != "" {
		p.Why, p.missing = j.refuses, j.missing
		return p
	}
	metal, noMetal := j.alloys.of(rec)
	w, err := j.sheet.Evaluate("panel", &given{boat: &j.hull.Boat, panel: rec, alloy: metal}, j.craft)
	if err != nil {
		p.Why = err.Error()
		return p
	}
	p.Working = w
	p.Pressure = pressure(w)
	p.ask(w)
	p.weigh()
	p.reasons(w, metal, noMetal)
	return p
}

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
		a := Ask{Symbol: symbol, Name: shown.Name, State: shown.State, Why: shown.Why}
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
