package scantling

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// opinion turns the judgement of a panel by a sheet that does not govern into an opinion beside the governing one.
func (p *judged) opinion(at int, governing *judged) Opinion {
	o := Opinion{Rule: at, What: "thickness", Unit: "mm", Fitted: float64(p.Fitted), Standing: p.Standing, Why: p.Why}
	if p.Standing == finding.NotShown {
		return o
	}
	o.Needed, o.Margin, o.Governs, o.Asked, o.Clause = float64(p.Needed), p.Margin, p.Governs, p.asked, p.clause
	o.Basis, o.Outside = p.Basis, p.beyond()
	o.Pressure, o.Stress, o.Minimum = p.under.pressure, p.under.stress, !p.under.loaded
	if governing.Standing != finding.NotShown {
		o.Differs = differs(size{o.Needed, p.under, p.rule}, size{float64(governing.Needed), governing.under, governing.rule}, plateLaw)
	}
	return o
}

// opinion turns the judgement of a member by a sheet that does not govern into an opinion beside the governing one.
func (m *held) opinion(at int, governing *held) Opinion {
	n := m.governs
	o := Opinion{Rule: at, Standing: m.Standing, Why: m.Why}
	if m.Standing == finding.NotShown {
		return o
	}
	o.What, o.Unit, o.Needed, o.Fitted, o.Margin, o.Governs, o.Asked, o.Clause = n.What, n.Unit, n.Needed, n.Fitted, m.Margin, n.Symbol, m.asked, m.clause
	o.Basis, o.Outside = m.Basis, m.beyond()
	o.Pressure, o.Stress, o.Minimum = m.under.pressure, m.under.stress, !m.under.loaded
	l, comparable := laws[n.What]
	if comparable && governing.Standing != finding.NotShown {
		if same, ok := governing.Need(n.What); ok {
			o.Differs = differs(size{n.Needed, m.under, m.rule}, size{same.Needed, governing.underNeed(same), governing.rule}, l)
		}
	}
	return o
}

// underNeed is what lies under one need of a member; that of what governs is known.
func (m *held) underNeed(n Need) footing {
	if n.Symbol == m.governs.Symbol || m.Working == nil {
		return m.under
	}
	return underStep(m.Working, n.Symbol)
}

// size is what one sheet asks for, and what lies under it.
type size struct {
	needed float64
	footing
	rule *rule
}

// law is how a size follows from a load: of the power by which it grows with the pressure over the stress, and how its
// size is written.
type law struct {
	power float64
	what  string
	sign  string
}

var plateLaw = law{0.5, "thickness", "mm"}

// laws of what a member needs. Slenderness follows from no load.
var laws = map[string]law{"bending": {1, "section modulus", "cm³"}, "shear": {1, "web area", "cm²"}, "inertia": {1, "inertia", "cm⁴"}}

// differs parts the ratio of two sizes into what pressure, stress and form make of it.
func differs(one, other size, l law) Differs {
	if one.needed <= 0 || other.needed <= 0 {
		return Differs{}
	}
	d := Differs{Needed: one.needed / other.needed}
	head := fmt.Sprintf("asks for %s %s, %s for %s", unit.Figures(one.needed, 3), l.sign, other.rule.sheet.Cite(""), unit.Figures(other.needed, 3))
	switch {
	case !one.loaded && !other.loaded:
		d.Says = head + "; both take their minimum"
		return d
	case !one.loaded:
		d.Says = head + "; it takes its minimum, which knows no pressure"
		return d
	case !other.loaded:
		d.Says = head + "; it goes by pressure, the other takes its minimum"
		return d
	}
	d.Load = power(one.pressure/other.pressure, l.power)
	d.Strength = 1
	says := head + fmt.Sprintf(": pressure %s against %s kN/m², %s times the %s", unit.Text(one.pressure, 1), unit.Text(other.pressure, 1), unit.Text(d.Load, 2), l.what)
	if one.stressed && other.stressed {
		d.Strength = power(other.stress/one.stress, l.power)
		says += fmt.Sprintf("; allowed stress %s against %s N/mm², %s times", unit.Text(one.stress, 0), unit.Text(other.stress, 0), unit.Text(d.Strength, 2))
	}
	d.Rest = d.Needed / (d.Load * d.Strength)
	if math.Abs(d.Rest-1) >= 0.005 {
		form := "the form of the formula"
		if !one.stressed || !other.stressed {
			form = "allowed stress and the form of the formula"
		}
		says += fmt.Sprintf("; %s, %s times", form, unit.Text(d.Rest, 2))
	}
	d.Says = says
	return d
}

func power(x, p float64) float64 {
	if !(x > 0) || math.IsInf(x, 1) {
		return 0
	}
	return math.Pow(x, p)
}
