package results

import (
	"hullfile/engine/scantling"
)

// whatIfResults gives what another spacing, plate or bar would do, zone by zone.
func whatIfResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.WhatIfs {
		q := &r.WhatIfs[i]
		o := object{{"zone", q.Zone}, {"panel", r.Panels[q.Panel].Record.ID}, {"fitted_mm", full(q.Fitted)}, {"spacing_mm", full(q.Spacing)}, {"curves", curveResults(r, q)}, {"greatest", greatestResults(r, q)}, {"builds", buildResults(q)}}
		if q.Member >= 0 {
			o.add("member", r.Members[q.Member].Record.ID)
			o.add("carries_mm", full(q.Carries))
		}
		out = append(out, o)
	}
	return out
}

// curveResults gives the points of each rule: what it needs, and under which pressure where it goes by one. The stress
// that it allows does not change with the spacing.
func curveResults(r *scantling.Result, q *scantling.WhatIf) []object {
	out := []object{}
	for _, c := range q.Curves {
		needed, under, stress := [][2]full{}, [][2]full{}, 0.0
		for _, p := range c.Points {
			if !p.Shown {
				continue
			}
			needed = append(needed, [2]full{full(p.Spacing), full(p.Needed)})
			if p.Pressure > 0 {
				under = append(under, [2]full{full(p.Spacing), full(p.Pressure)})
			}
			stress = max(stress, p.Stress)
		}
		o := object{{"rule", r.Rules[c.Rule].Name}, {"spacing_needed_mm", needed}, {"spacing_mm_pressure_kn_m2", under}}
		if stress > 0 {
			o.add("stress_n_mm2", full(stress))
		}
		out = append(out, o)
	}
	return out
}

func greatestResults(r *scantling.Result, q *scantling.WhatIf) []object {
	out := []object{}
	for _, s := range q.Greatest {
		o := object{{"rule", r.Rules[s.Rule].Name}}
		if s.Plate > 0 {
			o.add("plate_mm", full(s.Plate))
			o.add("plate_ends", s.PlateEnds)
		}
		if s.Member > 0 {
			o.add("member_mm", full(s.Member))
			o.add("member_ends", s.MemberEnds)
		}
		out = append(out, o)
	}
	return out
}

func buildResults(q *scantling.WhatIf) []object {
	out := []object{}
	for _, b := range q.Builds {
		out = append(out, object{{"plate_mm", full(b.Plate)}, {"section", b.Section}, {"part", full(b.Part)}, {"spacing_mm", full(b.Spacing)}, {"mass_kg", full(b.Mass)}, {"weld_m", full(b.Weld)}, {"saved_kg", full(b.Saved)}, {"spared_m", full(b.Spared)}, {"meets", b.Meets}})
	}
	return out
}
