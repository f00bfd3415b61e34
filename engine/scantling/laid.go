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
	kind   string // "panel " or "member "
	id     string
	scope  string
	taken  *method.Taken // nil where the sheet cannot take them
	fitted unit.MM       // of a panel
	bar    *bar          // of a member
	of     *metal
	on     unit.MM // plate that a member is welded to
	margin float64 // by the governing sheet as it is
	panel  int     // index, or -1
	member int
	count  int
	stuck  bool // short at every value of the dial that is turned
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
	return laid{kind: "panel ", id: p.Record.ID, scope: "panel", taken: r.take(t), fitted: p.Fitted, of: of, panel: at, member: -1, count: p.Count}, true
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
	return laid{kind: "member ", id: rec.ID, scope: t.scope.Name, taken: r.take(t), bar: b, of: of, on: rec.Attached.V, panel: -1, member: at, count: count}, true
}

// take hands what lies on a tray to the slate of its scope; nil where the sheet cannot take it.
func (r *rule) take(t *tray) *method.Taken {
	s := r.slate(t.scope.Name)
	if s == nil {
		return nil
	}
	taken, err := s.Take(t)
	if err != nil {
		return nil
	}
	return taken
}

// subject is how findings call it.
func (l *laid) subject() string { return l.kind + l.id }

// set changes one number.
func (l *laid) set(from string, v float64) {
	if l.taken != nil {
		l.taken.Set(from, v)
	}
}

// layAll lays everything that a rule shows, that with the least room first.
func layAll(r *rule, bars *bars, rule int, out *Result) []laid {
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
			if l, ok := r.layMember(i, m, bars); ok {
				l.margin = margin
				all = append(all, l)
			}
		}
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].margin < all[b].margin })
	return all
}
