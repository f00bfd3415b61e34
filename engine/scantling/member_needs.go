package scantling

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// needs gathers what the sheet asks of the bar.
func (m *held) needs(w *method.Working, of *metal) {
	p := &m.Fitted
	m.need(w, "bending", "modulus", "cm³", math.Min(float64(p.AtPlate), float64(p.AtEdge)))
	m.need(w, "shear", "shear", "cm²", float64(p.Web))
	m.need(w, "inertia", "inertia", "cm⁴", float64(p.I))
	if m.bar.open() {
		m.slender(w)
		return
	}
	m.parts(of)
}

func (m *held) need(w *method.Working, what, gives, sign string, has float64) {
	for _, symbol := range w.Scope.Gives[gives] {
		shown, ok := w.Get(symbol)
		if !ok {
			continue
		}
		n := Need{What: what, Symbol: symbol, Name: shown.Name, Unit: sign, State: shown.State, reason: reasonOf(shown), Fitted: settled(has)}
		if v, ok := w.Value(symbol); ok && v > 0 {
			n.Needed, n.Shown = settled(v), true
			n.Margin = n.Fitted / n.Needed
		}
		m.Needs = append(m.Needs, n)
	}
}

// slender takes over the ratios of the sheet, each slenderness over its limit.
func (m *held) slender(w *method.Working) {
	for _, symbol := range w.Scope.Gives["slender"] {
		shown, ok := w.Get(symbol)
		if !ok {
			continue
		}
		n := Need{What: "slenderness", Symbol: symbol, Name: shown.Name, Most: true, Needed: 1, State: shown.State, reason: reasonOf(shown)}
		if v, ok := w.Value(symbol); ok && v > 0 {
			n.Fitted, n.Shown = settled(v), true
			n.Margin = 1 / n.Fitted
		}
		m.Needs = append(m.Needs, n)
	}
}

// parts reckons the slenderness of hats, boxes, bulbs, pipes and built-up sections part by part: root of the proof
// strength beside the weld over the elastic buckling stress, which is what the ratios of the sheets are too.
func (m *held) parts(of *metal) {
	yield, young := of.yield(), of.young()
	if yield <= 0 || young <= 0 {
		m.Needs = append(m.Needs, Need{What: "slenderness", Name: "slenderness of its parts", Most: true, Needed: 1, State: method.Missing, reason: reason{says: "no strength or stiffness of the alloy"}})
		return
	}
	for _, s := range m.Bar.Slender(unit.MPa(young)) {
		r := settled(math.Sqrt(yield / float64(s.Elastic)))
		m.Needs = append(m.Needs, Need{What: "slenderness", Name: "slenderness of the " + s.Part + " over its limit", Most: true, Needed: 1, Fitted: r, Margin: 1 / r, Shown: true, State: method.Sound})
	}
}

// weigh takes the need with the least room. One that is not reached makes the member short, whatever else is missing.
func (m *held) weigh(w *method.Working) {
	open, shown := false, false
	for _, n := range m.Needs {
		switch {
		case n.Shown && (!shown || n.Margin < m.governs.Margin):
			m.governs, shown = n, true
		case !n.Shown && n.State != method.NotSet:
			open = true
		}
	}
	switch {
	case !shown:
		return
	case m.governs.Margin < 1:
		m.Standing = finding.Short
	case open:
		return
	default:
		m.Standing = finding.Met
	}
	m.Governs, m.Margin, m.asked = m.governs.What, m.governs.Margin, m.governs.Name
	if s, ok := w.Get(m.governs.Symbol); ok {
		m.Basis, m.clause = s.Rests, s.Clause
		m.under = underStep(w, m.governs.Symbol)
	} else {
		m.Basis = finding.Derived
	}
}
