package results

import (
	"hullfile/engine/finding"
	"hullfile/engine/scantling"
)

// structureResult gives the structure beyond the panels: the sheets, members, opinions, brackets, fittings, models, renewal, and
// what would change it.
func structureResult(r *scantling.Result) object {
	rules := []object{}
	for i := range r.Rules {
		u := &r.Rules[i]
		rules = append(rules, object{{"name", u.Name}, {"cite", u.Cite}, {"governs", u.Governs}, {"refuses", u.Refuses}})
	}
	return object{
		{"rules", rules}, {"members", memberResults(r)}, {"brackets", bracketResults(r)}, {"fittings", fittingResults(r)}, {"models", modelResults(r)},
		{"renewals", renewalResults(r)}, {"headrooms", headroomResults(r)}, {"what_if", whatIfResults(r)}, {"worst", worstResults(r)},
	}
}

func memberResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Members {
		m := &r.Members[i]
		o := object{{"key", m.Record.ID}, {"zone", m.Record.Zone.V}, {"kind", m.Record.Kind.V}, {"section", m.Record.Section.V}, {"count", m.Count}, {"derived", m.Derived},
			{"standing", m.Standing}, {"basis", m.Basis}, {"governs", m.Governs}, {"needs", needResults(m.Needs)}, {"opinions", opinionResults(r, m.Opinions)}, {"together", togetherResults(r, m)}}
		if m.Standing != finding.NotShown {
			o.add("margin", full(m.Margin))
			o.add("pressure_kn_m2", full(m.Pressure))
			o.add("effective_mm", full(m.Effective))
		}
		out = append(out, o)
	}
	return out
}

func needResults(all []scantling.Need) []object {
	out := []object{}
	for _, n := range all {
		if !n.Shown {
			continue
		}
		out = append(out, object{{"what", n.What}, {"symbol", n.Symbol}, {"unit", n.Unit}, {"needed", full(n.Needed)}, {"fitted", full(n.Fitted)}, {"at_most", n.Most}, {"margin", full(n.Margin)}})
	}
	return out
}

func opinionResults(r *scantling.Result, all []scantling.Opinion) []object {
	out := []object{}
	for i := range all {
		o := &all[i]
		one := append(make(object, 0, 12), member{"rule", r.Rules[o.Rule].Name}, member{"standing", o.Standing})
		if o.Standing != finding.NotShown {
			one.add("what", o.What)
			one.add("unit", o.Unit)
			one.add("needed", full(o.Needed))
			one.add("fitted", full(o.Fitted))
			one.add("margin", full(o.Margin))
			one.add("governs", o.Governs)
			one.add("outside", o.Outside)
		}
		if d := &o.Differs; d.Load > 0 {
			one.add("load", full(d.Load))
			one.add("strength", full(d.Strength))
			one.add("rest", full(d.Rest))
		}
		out = append(out, one)
	}
	return out
}

func togetherResults(r *scantling.Result, m *scantling.Member) []object {
	out := []object{}
	for _, t := range m.Together {
		out = append(out, object{{"model", r.Models[t.Model].Name}, {"moment_kn_m", full(t.Moment)}, {"shear_kn", full(t.Shear)}, {"moves_mm", full(t.Moves)},
			{"ratio", full(t.Ratio)}, {"margin", full(t.Margin)}, {"decides", t.Decides}})
	}
	return out
}

func localResult(o object, l *scantling.Local) object {
	o.add("standing", l.Standing)
	o.add("basis", l.Basis)
	o.add("needs", needResults(l.Needs))
	o.add("why", l.Why)
	if l.Standing != finding.NotShown {
		o.add("margin", full(l.Margin))
		o.add("governs", l.Governs.Name)
	}
	return o
}

func bracketResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Brackets {
		b := &r.Brackets[i]
		out = append(out, localResult(object{{"key", b.Record.ID}, {"place", b.ID}, {"member", b.Member}, {"count", b.Count}, {"moment_kn_m", full(b.Moment)}, {"force_kn", full(b.Force)}}, &b.Local))
	}
	return out
}

func fittingResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Fittings {
		f := &r.Fittings[i]
		out = append(out, localResult(object{{"key", f.Record.ID}, {"kind", f.Record.Kind.V}, {"moment_kn_m", full(f.Moment)}, {"force_kn", full(f.Force)}}, &f.Local))
	}
	return out
}

func modelResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Models {
		m := &r.Models[i]
		out = append(out, object{{"name", m.Name}, {"kind", string(m.Kind)}, {"solved", m.Solved}, {"why", m.Why}, {"bars", len(m.Bars)}, {"assumptions", m.Assumptions}})
	}
	return out
}

func renewalResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Renewals {
		n := &r.Renewals[i]
		o := object{{"panel", r.Panels[n.Panel].Record.ID}, {"shown", n.Shown}}
		if n.Shown {
			o.add("least_mm", full(n.Least))
			o.add("room_mm", full(n.Room))
			o.add("practice_mm", full(n.Practice))
			o.add("yard_mm", full(n.Yard))
		}
		read := []object{}
		for j := range n.Gauged {
			g := &n.Gauged[j]
			read = append(read, object{{"key", g.Record.ID}, {"measured_mm", full(g.Measured)}, {"lost_mm", full(g.Lost)}, {"left_mm", full(g.Left)}, {"standing", g.Standing}, {"renew", g.Renew}, {"instrument", g.Instrument}})
		}
		o.add("readings", read)
		out = append(out, o)
	}
	return out
}

func headroomResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Headrooms {
		h := &r.Headrooms[i]
		out = append(out, object{{"rule", r.Rules[h.Rule].Name}, {"of", h.Of}, {"unit", h.Unit}, {"now", full(h.Now)}, {"most", full(h.Most)}, {"ends", h.Ends}, {"shown", h.Shown}, {"limits", h.Limits}, {"never", orEmpty(h.Never)}})
	}
	return out
}

func worstResults(r *scantling.Result) []object {
	out := []object{}
	for _, c := range r.Worst {
		out = append(out, object{{"subject", c.Subject}, {"what", c.What}, {"margin", full(c.Margin)}, {"standing", c.Standing}, {"equal", c.Equal}, {"says", c.Says}})
	}
	return out
}
