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
	if strings.HasPrefix(from, "section.") {
		q, ok := b.bar[from]
		return q, ok
	}
	return b.given.Lookup(from)
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
		n := Need{What: what, Symbol: symbol, Name: shown.Name, Unit: sign, State: shown.State, Why: shown.Why, Fitted: settled(has)}
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
		n := Need{What: "slenderness", Symbol: symbol, Name: shown.Name, Most: true, Needed: 1, State: shown.State, Why: shown.Why}
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
		m.Needs = append(m.Needs, Need{What: "slenderness", Name: "slenderness of its parts", Most: true, Needed: 1, State: method.Missing, Why: "no strength or stiffness of the alloy"})
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

// yield is the proof strength beside the weld; a source that gives a factor alone means 240 N/mm² times it.
func (m *metal) yield() float64 {
	if m == nil {
		return 0
	}
	if q, ok := m.Lookup("alloy.welded.yield_n_mm2"); ok {
		return q.Number
	}
	if q, ok := m.Lookup("alloy.welded.factor_f1"); ok {
		return 240 * q.Number
	}
	return 0
}

// young is the modulus of elasticity in N/mm².
func (m *metal) young() float64 {
	if m == nil {
		return 0
	}
	q, _ := m.Lookup("alloy.elastic_kn_mm2")
	return 1000 * q.Number
}
