package scantling

import (
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// held is a member by one sheet, with what its check has to say beside the result.
type held struct {
	Member
	rule    *rule
	bar     *bar
	missing []string
	clause  string
	asked   string
	under   footing
	governs Need
	rests   []finding.Place
	wrong   string // why bar and plating make no section
}

// memberStandIns are values for what a record may leave out: a member without a rise is straight, which is asked the most.
var memberStandIns = method.GivenMap{"member.curve_mm": {Unit: "mm", Source: "no rise is written: a straight member"}}

// scopeOf is the scope of a sheet in which a member is judged.
func scopeOf(rec *record.Member) string {
	if rec.Role.V == "primary" {
		return "primary"
	}
	return "stiffener"
}

// member judges one member. keep is as for panels.
func (r *rule) member(rec *record.Member, all *bars, derived, keep bool) held {
	m := held{rule: r, Member: Member{Record: rec, Derived: derived, Count: 1, Scope: scopeOf(rec), Standing: finding.NotShown}}
	if n, ok := rec.Count.Get(); ok {
		m.Count = n
	}
	if why, missing := m.begin(all); why != "" {
		m.Why, m.missing = why, missing
		return m
	}
	of, noMetal := r.metals.of(m.bar.record.Alloy, unit.MM(m.bar.thickness()), m.bar.form())
	t := r.tray(m.Scope, &bound{given: given{boat: r.boat, rules: r.rules, kind: "member", entry: rec, own: memberStandIns, alloy: of}, bar: m.bar.values})
	if t == nil {
		m.Why = r.name + " has no scope for " + m.Scope + " members"
		return m
	}
	return m.reckon(t, of, noMetal, keep)
}

// bound is given with the values of a section.
type bound struct {
	given
	bar method.GivenMap
}

// Lookup finds the value that a sheet asks for.
func (b *bound) Lookup(from string) (method.Quantity, bool) {
	w := want(from)
	return b.find(&w)
}

func (b *bound) find(w *wanted) (method.Quantity, bool) {
	if w.kind == "section" {
		q, ok := b.bar[w.from]
		return q, ok
	}
	return b.given.find(w)
}

// begin finds the section of a member and says why nothing can be judged.
func (m *held) begin(all *bars) (why string, missing []string) {
	rec := m.Record
	if m.rule.refuses != "" {
		return m.rule.refuses, m.rule.missing
	}
	name, named := rec.Section.Get()
	if !named {
		return "no section is written", []string{m.key("section")}
	}
	m.bar = all.found[name]
	switch {
	case m.bar == nil:
		return "section " + name + " is not on record", []string{"section." + name}
	case m.bar.wrong != "":
		return m.bar.wrong, []string{"section." + name}
	case m.bar.values == nil:
		return "section " + name + " has no web to carry shear", []string{"section." + name}
	}
	return "", nil
}

func (m *held) key(name string) string { return "member." + m.Record.ID + "." + name }

// thickness is that of the thickest piece that a bar is sure to have, for which strengths are asked.
func (b *bar) thickness() float64 {
	return b.values["section.web_thickness_mm"].Number
}

// reckon turns the sheet and holds the bar against its answers.
func (m *held) reckon(t *tray, of *metal, noMetal string, keep bool) held {
	r := m.rule
	r.key = append(append(t.key(r.key), '/'), m.bar.record.ID...)
	if before, known := r.kept[string(r.key)]; known && (m.Derived || !keep) {
		return before.again(m, keep, t)
	}
	w, err := r.reckon(m.Scope, t, keep)
	if err != nil {
		m.Why = err.Error()
		return *m
	}
	m.judge(w, of, noMetal)
	switch {
	case keep:
		m.Working, m.rests = w, t.places()
	case m.Why != "" && w.Again(t) == nil: // now with the sentences
		m.reasons(w, of, noMetal)
	}
	if m.Standing != finding.NotShown && len(m.missing) == 0 {
		r.kept[string(r.key)] = *m
	}
	return *m
}

// again gives the outcome of an equal member to another one.
func (before held) again(m *held, keep bool, t *tray) held {
	out := before
	out.Record, out.Derived, out.Count, out.Same = m.Record, m.Derived, m.Count, before.Record.ID
	if keep {
		out.rests = t.places()
	}
	return out
}

// judge reads the working of a member.
func (m *held) judge(w *method.Working, of *metal, noMetal string) {
	m.Pressure = pressure(w)
	m.Moment, m.Force = greatest(w, "moment"), greatest(w, "force")
	if m.fit(w) {
		m.needs(w, of)
		m.weigh(w)
	}
	if m.Standing != finding.Met {
		m.reasons(w, of, noMetal)
	}
}

// reasons says why a member is not shown, and which record keys would show it.
func (m *held) reasons(w *method.Working, of *metal, noMetal string) {
	l := lacks{kind: "member", id: m.Record.ID, derived: m.Derived, section: "section." + m.bar.record.ID, alloy: "section." + m.bar.record.ID + ".alloy", of: of, noMetal: noMetal}
	if !m.Record.Attached.Set {
		l.miss(l.key("attached_mm"))
		l.why("the thickness of the plate that it is welded to is not written")
	}
	if m.wrong != "" {
		l.why(m.wrong)
	}
	for _, answer := range []string{"effective", "modulus", "shear", "inertia", "slender"} {
		l.look(w, w.Scope.Gives[answer])
	}
	if len(l.whys) == 0 && m.Standing == finding.NotShown {
		l.why("the sheet asks for nothing of such a member")
	}
	m.Why, m.missing = strings.Join(l.whys, "; "), l.missing
}

// greatest of the values that a sheet gives under one name; nought where there is none.
func greatest(w *method.Working, gives string) float64 {
	out := 0.0
	for _, symbol := range w.Scope.Gives[gives] {
		if v, ok := w.Value(symbol); ok {
			out = math.Max(out, v)
		}
	}
	return out
}

// fit puts the bar on the plating that the sheet lets count; false where that is not shown.
func (m *held) fit(w *method.Working) bool {
	thick, written := m.Record.Attached.Get()
	breadth := unit.MM(greatest(w, "effective"))
	if !written || thick > 0 && breadth <= 0 {
		return false
	}
	f, err := m.bar.with(thick, breadth)
	if err != nil {
		m.wrong = err.Error()
		return false
	}
	m.Bar, m.Fitted, m.Effective = f.section, f.props, breadth
	if thick == 0 {
		m.Effective = 0
	}
	return true
}
