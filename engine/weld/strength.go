package weld

import (
	"fmt"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// factor asks for the throat that the weld factor of the connection gives. A joint that names no connection is not asked.
func (a *assessor) factor(s *Seam, g method.GivenMap) {
	j, f := s.Joint, &a.ranges.Fillets.Factor
	if !j.Connection.Set {
		return
	}
	c := finding.Check{Rule: ruleFactor, Subject: "joint " + j.ID, Standing: finding.NotShown, Basis: finding.Softer(f.Basis, f.LeastBasis), Source: f.String(),
		Asks: "the throat as drawn reaches that of the weld factor, and the least throat", Places: finding.Places(j.Connection.At, j.Throat.At)}
	w, ok := f.Of[j.Connection.V]
	if !ok {
		c.Says, c.Settle = "the tables at hand have no connection "+j.Connection.V, "write one of the keys of the tables of weld factors"
		a.Checks = append(a.Checks, c)
		return
	}
	mine := method.GivenMap{"seam.factor": {Number: w, Basis: f.Basis, Source: f.String()}, "seam.least_throat_mm": {Number: f.Least, Unit: "mm", Basis: f.LeastBasis},
		"seam.thickness_mm": g["seam.thickness_mm"]}
	if mine["seam.thickness_mm"].Unit == "" {
		delete(mine, "seam.thickness_mm")
	}
	if share, ok := Share(j); ok {
		mine["seam.pitch_over_bead"] = method.Quantity{Number: 1 / share, Place: j.Pattern.At, Source: "pitch over bead; 1 where welded all along"}
	}
	s.Factor = a.evaluate(sheetFactor, mine)
	needed, ok := s.Factor.Value("a_r")
	switch {
	case !ok || !j.Throat.Set:
		c.Says, c.Settle = "throat, thickness or beads of joint "+j.ID+" are not on record", "write throat_mm, thickness_mm and, for a seam in beads, bead_mm and pitch_mm"
	default:
		c.Needed, c.Has, c.Standing = unit.Text(needed, 2)+" mm", unit.Plain(j.Throat.V)+" mm", finding.Met
		c.Says = fmt.Sprintf("throat %s mm drawn, %s mm asked", unit.Text(j.Throat.V, 1), unit.Text(needed, 2))
		if float64(j.Throat.V) < needed-1e-9 {
			c.Standing, c.Settle = finding.Short, "weld a larger throat, or show by forces that less is enough"
		}
	}
	a.Checks = append(a.Checks, c)
	a.beads(j, w)
}

// beads: from a factor on the rule asks for a continuous fillet.
func (a *assessor) beads(j *record.Joint, w float64) {
	f := &a.ranges.Fillets.Factor
	if w >= f.Continuous && (j.Pattern.V == "chain" || j.Pattern.V == "staggered") {
		a.find(finding.Shortfall, rulePattern, "joint "+j.ID, fmt.Sprintf("joint %s is welded in beads; for %s, with a factor of %v, a continuous fillet is asked (%s)", j.ID, j.Connection.V, w, f.String()),
			"weld it through", j.Pattern.At, j.Connection.At)
	}
}

// pattern doubts beads where water stands on one side: they leave gaps in which it stays.
func (a *assessor) pattern(j *record.Joint) {
	beads := j.Pattern.V == "chain" || j.Pattern.V == "staggered"
	if beads && slices.Contains([]string{"shell", "watertight", "slamming zone"}, j.Category.V) {
		a.find(finding.Doubt, rulePattern, "joint "+j.ID, "joint "+j.ID+" is in beads, in the category "+j.Category.V+" (practice: welded through)", "say why it is in beads, or weld it through", j.Pattern.At, j.Category.At)
	}
}

// strength holds a fillet against the forces of its record. A joint without forces is not asked.
func (a *assessor) strength(s *Seam, g method.GivenMap, alloys map[string]string) {
	j, m := s.Joint, &a.ranges.Fillets.Metal
	if !j.Across.Set && !j.Along.Set {
		return
	}
	c := finding.Check{Rule: ruleMetal, Subject: "joint " + j.ID, Standing: finding.NotShown, Basis: m.Basis, Source: m.Work + ", " + m.Edition,
		Asks: "weld metal and the softened plate beside it carry the forces of the record", Places: finding.Places(j.Across.At, j.Along.At, j.Throat.At, j.ForceFrom.At)}
	filler := a.fillerOf(j)
	strength, ok := metalBetween(a.ranges, filler, alloys[j.Part.V], alloys[j.Other.V])
	if !ok {
		c.Says = "no strength of weld metal is at hand for filler " + orNone(filler) + " between " + orNone(alloys[j.Part.V]) + " and " + orNone(alloys[j.Other.V])
		c.Settle = "write alloy of both parts and filler of the procedure"
		a.Checks = append(a.Checks, c)
		return
	}
	mine := method.GivenMap{"seam.metal_n_mm2": {Number: strength, Unit: "N/mm²", Basis: m.Basis, Source: m.String()}, "seam.partial_factor": {Number: m.Partial, Basis: m.Basis, Source: m.String()},
		"seam.across_n_mm": {Number: float64(j.Across.V), Unit: "N/mm", Place: j.Across.At}, "seam.along_n_mm": {Number: float64(j.Along.V), Unit: "N/mm", Place: j.Along.At}}
	for _, name := range []string{"seam.throat_mm", "seam.fillets", "seam.share", "seam.thickness_mm"} {
		if q, ok := g[name]; ok {
			mine[name] = q
		}
	}
	if s.Softened.Known {
		mine["seam.heat_mm"] = method.Quantity{Number: s.Softened.MM, Unit: "mm", Basis: s.Softened.By.Basis, Source: s.Softened.By.Name + ", " + s.Softened.By.String()}
	}
	if q, ok := a.softened(alloys[j.Part.V], alloys[j.Other.V]); ok {
		mine["alloy.welded.tensile_n_mm2"] = q
	}
	s.Strength = a.evaluate(sheetStrength, mine)
	use, ok := s.Strength.Value("u")
	if !ok {
		c.Says, c.Settle = "throat or thickness of joint "+j.ID+" is not on record", "write throat_mm and thickness_mm"
		a.Checks = append(a.Checks, c)
		return
	}
	c.Standing, c.Needed, c.Has = finding.Met, "at most 1.00", unit.Text(use, 2)
	c.Says = "used to " + unit.Text(use, 2) + " of what it carries; " + s.governs(use) + " governs"
	if s.Softened.Known {
		c.Says += "; plate within " + unit.Plain(s.Softened.MM) + " mm of the root is taken as softened"
	}
	if use > 1 {
		c.Standing, c.Settle = finding.Short, "weld a larger throat or a longer seam, or find out the forces better"
	}
	a.Checks = append(a.Checks, c)
}

func metalBetween(r *Ranges, filler, one, other string) (float64, bool) {
	if one == "" || other == "" {
		return 0, false
	}
	return r.Fillets.MetalStrength(filler, one, other)
}

func orNone(s string) string {
	if s == "" {
		return "not on record"
	}
	return s
}

// governs says which of the three decides.
func (s *Seam) governs(use float64) string {
	for _, one := range []struct{ symbol, words string }{{"u_w", "the weld metal"}, {"u_t", "the softened plate at the toe"}, {"u_f", "the softened plate at the line of fusion"}} {
		if v, ok := s.Strength.Value(one.symbol); ok && v == use {
			return one.words
		}
	}
	return "nothing"
}

// fillerOf is the classification of the first filler of the joint's procedure.
func (a *assessor) fillerOf(j *record.Joint) string {
	for i := range a.yard.Welding.Procedures {
		p := &a.yard.Welding.Procedures[i]
		if Number(p) == j.Procedure.V && len(p.Fillers.V) > 0 {
			return p.Fillers.V[0]
		}
	}
	return ""
}

// softened is the lower tensile strength beside the weld of the two parts' alloys, of the source that the strengths of
// weld metal come from.
func (a *assessor) softened(alloys ...string) (method.Quantity, bool) {
	var out method.Quantity
	for _, name := range alloys {
		alloy, ok := a.alloys.Find(name)
		if !ok {
			return out, false
		}
		row, _ := alloy.WeldedBy(material.Asked{Source: a.ranges.Fillets.Metal.Work, Form: "plate"})
		if row == nil {
			return out, false
		}
		if out.Number == 0 || float64(row.Tensile) < out.Number {
			out = method.Quantity{Number: float64(row.Tensile), Unit: "N/mm²", Basis: row.Basis, Source: row.String()}
		}
	}
	return out, out.Number > 0
}
