package scantling

import (
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
	l, ok := r.layOn(at, m.Record, m.Count, b)
	if ok {
		l.tray = l.tray.copy()
	}
	return l, ok
}

// layOn lays a member with a bar that may not be its own, to be asked before anything else is laid.
func (r *rule) layOn(at int, rec *record.Member, count int, b *bar) (laid, bool) {
	of, _ := r.metals.of(b.record.Alloy, unit.MM(b.thickness()), b.form())
	t := r.tray(scopeOf(rec), &bound{given: given{boat: r.boat, rules: r.rules, kind: "member", entry: rec, own: memberStandIns, alloy: of}, bar: b.values})
	if t == nil {
		return laid{}, false
	}
	return laid{subject: "member " + rec.ID, tray: t, bar: b, of: of, on: rec.Attached.V, panel: -1, member: at, count: count}, true
}

func (t *tray) copy() *tray {
	out := *t
	out.lies, out.there = append([]method.Quantity(nil), t.lies...), append([]bool(nil), t.there...)
	return &out
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
