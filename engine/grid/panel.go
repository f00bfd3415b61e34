package grid

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// laidPanel is a panel with the patches that stand for it.
type laidPanel struct {
	rec     record.Panel
	names   []string // of the panels it stands for
	patches []int    // of Result.Patches
	plate   string   // key of its plating
	bay     string   // field and bay; panels of one bay may share a record
	across  bool

	first, last  int // strakes
	inner, outer string
	notes        []string
}

// How alike two panels of one bay must be to share a record.
const (
	alikeSide     = 1.0 // mm
	alikeDeadrise = 0.1 // degrees
)

// panels lays the panels of a field.
func (b *builder) panels(f *field) {
	if f.one == nil && len(f.plates) == 0 {
		b.noPlate(f)
		return
	}
	first := len(b.laid)
	for _, c := range b.cells(f) {
		m := b.measure(c)
		if m.breadth < 0.005 || m.long < 0.005 {
			b.noBreadth(c)
			continue
		}
		p, several, full := b.plate(c)
		b.reckonBare(c, &m, p != nil, full)
		if p == nil {
			continue
		}
		l := b.panel(c, &m, p, several)
		b.draw(&l, c, &m)
		if n := len(b.laid); n > first && b.laid[n-1].takes(&l, c) {
			continue
		}
		b.laid = append(b.laid, l)
	}
}

// name is the speaking name of a panel.
func (c *cell) name() string {
	n := c.f.name + " " + bay(c.aft, c.fore)
	if !c.only {
		n += fmt.Sprintf(" strake %d", c.strake)
	}
	return n
}

// panel writes a panel as a record.
func (b *builder) panel(c *cell, m *measure, p *record.Plating, several bool) laidPanel {
	name := c.name()
	short, long := min(m.breadth, m.long), max(m.breadth, m.long)
	count := 2
	if c.across {
		count = 1
	}
	at, edge := c.place(p.At), c.edge(p.At)
	rec := record.Panel{Entry: record.Entry{ID: name, At: p.At},
		Zone:      record.Written(c.f.judged, p.Zone.At),
		X:         record.Written(b.fromAftEnd((c.aft.x+c.fore.x)/2), at),
		Short:     record.Written(mm(short), edge),
		Long:      record.Written(mm(long), at),
		Thickness: p.Thickness, Alloy: p.Alloy, Edges: p.Edges, Lot: p.Lot, Document: p.Document,
		Count: record.Written(count, at),
	}
	if !rec.Edges.Set {
		rec.Edges = record.Written("welded", p.At)
	}
	if m.rise > 0.0005 {
		rec.Camber = record.Written(mm(m.rise), at)
	}
	if c.f.judged == "bottom" {
		rec.Deadrise = record.Written(degrees(m.deadrise), at)
	}
	b.heights(&rec.Z, &rec.HullTop, m.middle.Z, (c.aft.x+c.fore.x)/2, at)
	l := laidPanel{rec: rec, names: []string{name}, plate: p.ID, bay: c.f.name + " " + bay(c.aft, c.fore), across: c.across, first: c.strake, last: c.strake,
		inner: c.inner.words(c.f), outer: c.outer.words(c.f), notes: m.notes(several)}
	l.rec.Where = record.Written(l.where(), at)
	return l
}

// heights writes the height above the waterline, and that of the hull's edge.
func (b *builder) heights(z, top *valM, at, x float64, place finding.Place) {
	if !b.out.HasWaterline {
		return
	}
	*z = record.Written(metres(at-b.out.Waterline), place)
	if edge := b.skin.sheer(x) - b.out.Waterline; edge > 0 {
		*top = record.Written(metres(edge), place)
	}
}

// where says in words where the panels of a record are, and what was taken of them.
func (l *laidPanel) where() string {
	says := l.bay + ", " + l.inner + " to " + l.outer
	if l.first != l.last {
		says = fmt.Sprintf("%s, strakes %d to %d, %s to %s", l.bay, l.first, l.last, l.inner, l.outer)
	}
	if l.across {
		says = l.bay + ", across the centre line, to " + l.outer + " on both sides"
	}
	return strings.Join(append([]string{says}, l.notes...), "; ")
}

// notes says what was taken of a panel that is not plain.
func (m *measure) notes(several bool) []string {
	var out []string
	if m.tapers {
		out = append(out, fmt.Sprintf("tapers from %.0f to %.0f mm, the greater breadth is taken", 1000*m.aft, 1000*m.fore))
	}
	if several {
		out = append(out, "two plates meet inside it, the thinner is taken")
	}
	return out
}

// words names an edge of a strake.
func (e bound) words(f *field) string {
	if e.run != nil {
		return e.run.words()
	}
	return f.edgeWords(e.edge)
}

func (r *run) words() string { return r.kind + " " + r.name }

func (f *field) edgeWords(edge int) string {
	inner := map[string]string{"bottom": "keel", "chine flat": "chine", "side": "chine", "deck": "inner edge", "sole": "inner edge"}
	outer := map[string]string{"bottom": "chine", "chine flat": "outer chine", "side": "sheer", "deck": "sheer", "sole": "edge"}
	if edge < 0 {
		return inner[f.zone]
	}
	return outer[f.zone]
}

// place is the record line that gives a panel its place along the boat.
func (c *cell) place(plate finding.Place) finding.Place {
	for _, s := range []stop{c.aft, c.fore} {
		if s.frame != nil {
			return s.frame.At
		}
	}
	return plate
}

// edge is the record line that gives a panel its breadth.
func (c *cell) edge(plate finding.Place) finding.Place {
	for _, e := range []bound{c.outer, c.inner} {
		if e.run != nil {
			return e.run.at
		}
	}
	return plate
}

// takes adds an equal neighbour of the same bay to a record. The lowest of them gives its height, which loads it most.
func (l *laidPanel) takes(o *laidPanel, c *cell) bool {
	p, q := &l.rec, &o.rec
	alike := l.bay == o.bay && l.across == o.across && close(p.Short, q.Short, alikeSide) && close(p.Long, q.Long, alikeSide) &&
		math.Abs(float64(p.Deadrise.V-q.Deadrise.V)) <= alikeDeadrise && close(p.Camber, q.Camber, alikeSide) &&
		p.Thickness.V == q.Thickness.V && p.Alloy.V == q.Alloy.V && p.Edges.V == q.Edges.V && p.Lot.V == q.Lot.V
	if !alike || c.f.judged == "side" || c.f.zone == "chine flat" {
		return false
	}
	l.names = append(l.names, o.names...)
	l.patches = append(l.patches, o.patches...)
	l.last = o.last
	p.ID = fmt.Sprintf("%s strakes %d-%d", l.bay, l.first, l.last)
	l.outer, l.notes = o.outer, append(l.notes, o.notes...)
	p.Where.V = l.where()
	p.Count.V += q.Count.V
	p.Short.V, p.Long.V = max(p.Short.V, q.Short.V), max(p.Long.V, q.Long.V)
	if q.Z.Set && q.Z.V < p.Z.V {
		p.Z = q.Z
	}
	return true
}

func close(p, q record.Val[unit.MM], by float64) bool { return math.Abs(float64(p.V-q.V)) <= by }

// Rounded once where they are written, so that nothing hangs on the last bit of a machine.
func mm(m float64) unit.MM       { return unit.MM(math.Round(m*1e4) / 10) }
func metres(m float64) unit.M    { return unit.M(math.Round(m*1e4) / 1e4) }
func degrees(d float64) unit.Deg { return unit.Deg(math.Round(d*100) / 100) }

func (b *builder) fromAftEnd(x float64) unit.M { return metres(x - b.out.AftEnd) }
