package stock

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// printed is one element as a certificate prints it.
type printed struct {
	element, name, key string
	val                record.Val[unit.Percent]
}

func analysis(l *record.Lot) []printed {
	return []printed{
		{"Si", "silicon", "si_percent", l.Si}, {"Fe", "iron", "fe_percent", l.Fe}, {"Cu", "copper", "cu_percent", l.Cu},
		{"Mn", "manganese", "mn_percent", l.Mn}, {"Mg", "magnesium", "mg_percent", l.Mg}, {"Cr", "chromium", "cr_percent", l.Cr},
		{"Zn", "zinc", "zn_percent", l.Zn}, {"Ti", "titanium", "ti_percent", l.Ti},
		{"each", "others, each", "other_each_percent", l.OtherEach}, {"total", "others, together", "other_total_percent", l.OtherTotal},
	}
}

// composition judges the elements of a lot.
func (a *assessor) composition(l *record.Lot) []Value {
	c := finding.Check{Rule: ruleComposition, Subject: "lot " + l.ID, Standing: finding.NotShown, Asks: "every element of " + l.Alloy.V + " lies within its limits"}
	comp, ok := a.alloys.Composition(l.Alloy.V)
	if !ok {
		c.Says, c.Settle = "no source at hand gives composition limits of "+l.Alloy.V, "hold the certificate against the product standard by hand"
		c.Places = finding.Places(l.Alloy.At)
		a.Checks = append(a.Checks, c)
		return nil
	}
	values := judged(comp, append(analysis(l), sumOf(l)...))
	a.Checks = append(a.Checks, tally(c, values, "element", "lot."+l.ID+".", l.At))
	a.soft(ruleComposition, "lot "+l.ID, values)
	return values
}

// sumOf gives manganese and chromium together, where both are printed.
func sumOf(l *record.Lot) []printed {
	if !l.Mn.Set || !l.Cr.Set {
		return []printed{{element: "Mn+Cr", name: "manganese and chromium"}}
	}
	sum := float64(l.Mn.V) + float64(l.Cr.V)
	decimals := max(material.Decimals(l.Mn.Text), material.Decimals(l.Cr.Text))
	text := strconv.FormatFloat(sum, 'f', decimals, 64)
	v := record.Val[unit.Percent]{V: unit.Percent(sum), Set: true, At: l.Mn.At, Text: text}
	return []printed{{element: "Mn+Cr", name: "manganese and chromium", val: v}}
}

// judged holds printed elements against a composition. Only elements for which there is a limit are judged; those that
// are not named by name are shown where the certificate prints them.
func judged(comp *material.Composition, all []printed) []Value {
	var out []Value
	for _, p := range all {
		limit, ok := comp.Of(p.element)
		rest := p.element == "each" || p.element == "total"
		if !ok || rest && !p.val.Set {
			continue
		}
		v := Value{Name: p.name, Unit: "%", Limit: limit.String(), Source: comp.String(), Basis: comp.Basis, Standing: finding.NotShown, Place: p.val.At}
		if p.val.Set {
			v.judge(limit, float64(p.val.V), p.val.Text)
			v.Why = strings.TrimPrefix(v.Why+slipped(limit, float64(p.val.V)), "; ")
		} else {
			v.Why = "not on record"
		}
		out = append(out, v)
	}
	return out
}

// judge holds the value against its limit.
func (v *Value) judge(limit material.Limit, x float64, text string) {
	if text == "" {
		text = strconv.FormatFloat(x, 'f', -1, 64)
	}
	v.Printed, v.Judged, v.Fit = text, true, limit.Judge(x, text)
	v.Standing = v.Fit.Standing()
	switch v.Fit {
	case material.Rounded:
		v.Why = "; inside only once it is rounded to the decimals of the limit"
	case material.Coarse:
		v.Why = "; printed with too few decimals to tell on which side it lies"
	}
}

// slipped says where a value outside its limit would lie inside with the point moved, as it does when a part of one is
// written for a part of a hundred.
func slipped(limit material.Limit, x float64) string {
	if limit.Judge(x, "").Standing() != finding.Short {
		return ""
	}
	for _, f := range []float64{0.01, 0.1, 10, 100} {
		if limit.HasLeast && limit.Judge(x*f, "").Standing() == finding.Met {
			return "; with its point moved it would lie inside"
		}
	}
	return ""
}

// tally gives the check of several values their outcome.
func tally(c finding.Check, values []Value, what, keys string, at finding.Place) finding.Check {
	var outside, open []string
	c.Places = []finding.Place{at}
	for _, v := range values {
		c.Basis = finding.Softer(c.Basis, v.Basis)
		if c.Source == "" {
			c.Source = v.Source
		}
		switch v.Standing {
		case finding.Short:
			outside = append(outside, v.Name+" "+v.Printed+" "+v.Unit+", limit "+v.Limit+why(v.Why))
			c.Places = append(c.Places, v.Place)
		case finding.NotShown:
			open = append(open, v.Name+why(v.Why))
			c.Places = append(c.Places, v.Place)
		}
	}
	c.Places = finding.Places(c.Places...)
	switch {
	case len(outside) > 0:
		c.Standing, c.Says = finding.Short, "outside: "+strings.Join(outside, "; ")
		c.Settle = "hold the record against the certificate; if it is printed like this, the lot is not what was ordered"
	case len(values) == 0 || len(open) > 0:
		c.Standing, c.Says = finding.NotShown, "not shown: "+strings.Join(open, ", ")
		c.Settle = "write the values of the certificate under " + strings.TrimSuffix(keys, ".")
	default:
		c.Standing, c.Says = finding.Met, fmt.Sprintf("%s inside", unit.Count(len(values), what, what+"s"))
	}
	return c
}

func why(s string) string {
	if s == "" {
		return ""
	}
	return " (" + s + ")"
}

// soft doubts what is inside only once it is rounded.
func (a *assessor) soft(rule, subject string, values []Value) {
	for _, v := range values {
		if v.Fit == material.Rounded {
			a.find(finding.Doubt, rule, subject, v.Name+" "+v.Printed+" "+v.Unit+" is inside "+v.Limit+" only once it is rounded to the decimals of the limit",
				"ask the works for the unrounded value, if it matters", v.Place)
		}
	}
}

// strength judges tensile strength, proof strength and elongation for alloy, temper, form and thickness.
func (a *assessor) strength(l *record.Lot) []Value {
	c := finding.Check{Rule: ruleStrength, Subject: "lot " + l.ID, Standing: finding.NotShown, Asks: "tensile strength, proof strength and elongation reach those of " + l.Alloy.V + " at this thickness"}
	alloy, ok := a.alloys.Find(l.Alloy.V)
	if !ok {
		return nil
	}
	row, none := alloy.ParentFor(material.Asked{Thickness: l.Thickness.V, Form: l.Kind.V})
	if row == nil {
		c.Says, c.Settle, c.Places = none, "hold the certificate against the product standard by hand", finding.Places(l.Alloy.At, l.Thickness.At)
		a.Checks = append(a.Checks, c)
		return nil
	}
	limit := func(least, most float64) material.Limit {
		return material.Limit{Least: least, HasLeast: true, Most: most, HasMost: most > 0}
	}
	values := []Value{
		mechanical("tensile strength", "N/mm²", limit(float64(row.Tensile), float64(row.TensileMost)), float64(l.Tensile.V), l.Tensile.Text, l.Tensile.Set, l.Tensile.At, row),
		mechanical("0.2 % proof strength", "N/mm²", limit(float64(row.Yield), 0), float64(l.Yield.V), l.Yield.Text, l.Yield.Set, l.Yield.At, row),
	}
	if row.Elongation > 0 {
		v := mechanical("elongation"+on(l), "%", limit(float64(row.Elongation), 0), float64(l.Elongation.V), l.Elongation.Text, l.Elongation.Set, l.Elongation.At, row)
		values = append(values, v)
	}
	a.Checks = append(a.Checks, tally(c, values, "value", "lot."+l.ID+".", l.At))
	a.soft(ruleStrength, "lot "+l.ID, values)
	return values
}

// on names the gauge length of the elongation: 50 mm up to 12.5 mm of thickness, where nothing else is written.
func on(l *record.Lot) string {
	switch {
	case l.Gauge.Set:
		return " " + l.Gauge.V
	case l.Thickness.V <= 12.5:
		return " A50 (taken)"
	}
	return " A (taken)"
}

// perKSI is N/mm² in one thousand pounds per square inch.
const perKSI = 6.894757

func mechanical(name, sign string, limit material.Limit, x float64, text string, set bool, at finding.Place, row *material.Strength) Value {
	v := Value{Name: name, Unit: sign, Limit: strings.TrimSuffix(limit.String(), " to 0"), Source: row.String(), Basis: row.Basis, Standing: finding.NotShown, Place: at}
	if !set {
		v.Why = "not on record"
		return v
	}
	v.judge(limit, x, text)
	if v.Standing == finding.Short && sign == "N/mm²" && limit.Judge(x*perKSI, "").Standing() == finding.Met {
		v.Why += fmt.Sprintf("; %s thousand pounds per square inch would be %.0f N/mm²", v.Printed, math.Round(x*perKSI))
	}
	v.Why = strings.TrimPrefix(v.Why, "; ")
	return v
}
