package scantling

import (
	"math"
	"sort"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// laid is a panel or member with all its inputs looked up once, so that it can be asked many times with one value
// changed.
type laid struct {
	subject string
	tray    *tray
	fitted  unit.MM // of a panel
	bar     *bar    // of a member
	of      *metal
	on      unit.MM // plate that a member is welded to
	margin  float64 // by the governing sheet as it is
	panel   int     // index, or -1
	member  int
	count   int
	stuck   bool // short at every value of the dial that is turned
}

// lay looks up everything of a panel by a rule.
func (r *rule) layPanel(at int, p *Panel) (laid, bool) {
	of, _ := r.metals.of(p.Record.Alloy, p.Record.Thickness.V, "plate")
	g := r.given()
	g.kind, g.entry, g.own, g.alloy = "panel", p.Record, panelStandIns, of
	t := r.tray("panel", g)
	if t == nil {
		return laid{}, false
	}
	return laid{subject: "panel " + p.Record.ID, tray: t.copy(), fitted: p.Fitted, of: of, panel: at, member: -1, count: p.Count}, true
}

func (r *rule) layMember(at int, m *Member, all *bars) (laid, bool) {
	b := all.found[m.Record.Section.V]
	if b == nil || b.values == nil || !m.Record.Attached.Set {
		return laid{}, false
	}
	return r.layOn(at, m.Record, m.Count, b)
}

// layOn lays a member with a bar that may not be its own.
func (r *rule) layOn(at int, rec *record.Member, count int, b *bar) (laid, bool) {
	of, _ := r.metals.of(b.record.Alloy, unit.MM(b.thickness()), b.form())
	t := r.tray(scopeOf(rec), &bound{given: given{boat: r.boat, rules: r.rules, kind: "member", entry: rec, own: memberStandIns, alloy: of}, bar: b.values})
	if t == nil {
		return laid{}, false
	}
	return laid{subject: "member " + rec.ID, tray: t.copy(), bar: b, of: of, on: rec.Attached.V, panel: -1, member: at, count: count}, true
}

func (t *tray) copy() *tray {
	out := *t
	out.lies, out.there = append([]method.Quantity(nil), t.lies...), append([]bool(nil), t.there...)
	return &out
}

// room asks a sheet and gives what is fitted over what is needed; ok is false where that is not shown.
func (r *rule) room(l *laid) (margin float64, ok bool) {
	w, err := r.turn(l.tray.scope.Name, l.tray)
	if err != nil {
		return 0, false
	}
	if l.bar != nil {
		return l.roomOfBar(w)
	}
	needed, ok := neededBy(w)
	if !ok {
		return 0, false
	}
	return float64(l.fitted) / needed, true
}

// neededBy is the greatest thickness that a working of a panel asks for; ok is false where one is missing.
func neededBy(w *method.Working) (float64, bool) {
	most := 0.0
	for _, symbol := range w.Scope.Gives["needed"] {
		s, ok := w.Get(symbol)
		switch {
		case !ok || s.State == method.NotSet:
			continue
		case s.State == method.Missing || s.State == method.Broken:
			return 0, false
		}
		most = math.Max(most, settled(s.Value))
	}
	return most, most > 0
}

func (l *laid) roomOfBar(w *method.Working) (float64, bool) {
	breadth := unit.MM(greatest(w, "effective"))
	if l.on > 0 && breadth <= 0 {
		return 0, false
	}
	f, err := l.bar.with(l.on, breadth)
	if err != nil {
		return 0, false
	}
	least := math.Inf(1)
	for _, one := range []struct {
		gives string
		has   float64
	}{{"modulus", f.modulus()}, {"shear", float64(f.props.Web)}, {"inertia", float64(f.props.I)}} {
		for _, symbol := range w.Scope.Gives[one.gives] {
			v, there, applies := valueOf(w, symbol)
			switch {
			case !applies:
				continue
			case !there:
				return 0, false
			case v > 0:
				least = math.Min(least, settled(one.has)/settled(v))
			}
		}
	}
	ratio, ok := l.slender(w, f)
	if ratio > 0 {
		least = math.Min(least, 1/ratio)
	}
	return least, ok && !math.IsInf(least, 1)
}

// slender is the greatest slenderness over its limit.
func (l *laid) slender(w *method.Working, f *fitted) (float64, bool) {
	most := 0.0
	if !l.bar.open() {
		yield, young := l.of.yield(), l.of.young()
		if yield <= 0 || young <= 0 {
			return 0, false
		}
		return settled(math.Sqrt(yield / (f.elastic() * young))), true
	}
	for _, symbol := range w.Scope.Gives["slender"] {
		v, there, applies := valueOf(w, symbol)
		if applies && !there {
			return 0, false
		}
		most = math.Max(most, settled(v))
	}
	return most, true
}

// valueOf is the value of a symbol, whether it is there, and whether it applies.
func valueOf(w *method.Working, symbol string) (v float64, there, applies bool) {
	s, ok := w.Get(symbol)
	if !ok || s.State == method.NotSet {
		return 0, false, false
	}
	if s.State == method.Missing || s.State == method.Broken {
		return 0, false, true
	}
	return s.Value, true, true
}

// modulus is the lesser of those to the plate and to the free edge, cm³.
func (f *fitted) modulus() float64 {
	return math.Min(float64(f.props.AtPlate), float64(f.props.AtEdge))
}

// elastic is the least elastic buckling stress of its parts, as a part of the modulus of elasticity.
func (f *fitted) elastic() float64 {
	if f.least == 0 {
		f.least = math.Inf(1)
		for _, s := range f.section.Slender(1) {
			f.least = math.Min(f.least, float64(s.Elastic))
		}
	}
	return f.least
}

// layAll lays everything that a rule shows, that with the least room first.
func (j *judge) layAll(r *rule, rule int, out *Result) []laid {
	all := make([]laid, 0, len(out.Panels)+len(out.Members))
	for i := range out.Panels {
		p := &out.Panels[i]
		if s, margin := p.by(rule); s != finding.NotShown && p.Same == "" {
			if l, ok := r.layPanel(i, p); ok {
				l.margin = margin
				all = append(all, l)
			}
		}
	}
	for i := range out.Members {
		m := &out.Members[i]
		if s, margin := m.by(rule); s != finding.NotShown && m.Same == "" {
			if l, ok := r.layMember(i, m, j.bars); ok {
				l.margin = margin
				all = append(all, l)
			}
		}
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].margin < all[b].margin })
	return all
}
