package grid

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
)

// piece is one stretch of a member as it was laid, before it becomes a record.
type piece struct {
	name    string
	group   string // pieces of one group that stand beside each other may share a record; empty for one that stands alone
	number  int    // in its group
	kind    string
	primary bool
	zone    string // as in Patch
	on      string
	judged  string // as in record.Member
	where   string
	path    []hydrostatics.Vector // from end to end, to starboard
	flat    [][2]float64
	spacing float64 // metres
	tapers  string  // what is said of a spacing that differs from end to end
	fixed   bool
	section string
	plate   *record.Plating
	run     *run // what runs fore and aft, nil for what stands across
	off     bool // stands on stringers and not on plate
	head    float64
	count   int
	one     string // port or starboard, where it is on one side only
	at      finding.Place
	spaced  finding.Place // where the spacing comes from
}

// laidMember is a member with the lines that stand for it.
type laidMember struct {
	rec   record.Member
	names []string
	lines []int
	piece piece
	last  int
}

// member writes a piece as a record, or adds it to an equal neighbour.
func (b *builder) member(p piece) {
	b.pieces = append(b.pieces, p)
	l := laidMember{rec: b.memberRecord(&p), names: []string{p.name}, piece: p, last: p.number}
	b.drawMember(&l)
	if n := len(b.members); n > 0 && b.members[n-1].takes(&l) {
		return
	}
	b.members = append(b.members, l)
}

func (b *builder) memberRecord(p *piece) record.Member {
	span, middle := long(p.path), halfWay(p.path)
	rec := record.Member{Entry: record.Entry{ID: p.name, At: p.at},
		Kind:    record.Written(p.kind, p.at),
		Role:    record.Written(role(p.primary), p.at),
		Zone:    record.Written(p.judged, p.at),
		Where:   record.Written(p.where+p.tapers, p.at),
		X:       record.Written(b.fromAftEnd(middle.X), p.at),
		Span:    record.Written(mm(span), p.at),
		Spacing: record.Written(mm(p.spacing), p.spaced),
		Curve:   record.Written(mm(sagOf(p.path)), p.at),
		Ends:    record.Written(ends(p.fixed), p.at),
		Section: record.Written(p.section, p.at),
		Count:   record.Written(p.count, p.at),
	}
	if !p.spaced.Known() {
		rec.Spacing.At = p.at
	}
	if p.judged == "bottom" {
		rec.Deadrise = record.Written(degrees(b.skin.at(middle.X).station.Deadrise()), p.at)
	}
	if p.head > 0 {
		rec.Head = record.Written(metres(p.head), p.at)
	}
	switch {
	case p.off:
		rec.Attached = record.Written(mm(0), p.at)
	case p.plate != nil:
		rec.Attached, rec.AttachedAlloy = p.plate.Thickness, p.plate.Alloy
	}
	b.heights(&rec.Z, &rec.HullTop, middle.Z, middle.X, p.at)
	return rec
}

func role(primary bool) string {
	if primary {
		return "primary"
	}
	return "secondary"
}

func ends(fixed bool) string {
	if fixed {
		return "fixed"
	}
	return "simple"
}

// takes adds an equal neighbour to a record.
func (l *laidMember) takes(o *laidMember) bool {
	p, q := &l.rec, &o.rec
	alike := l.piece.group != "" && l.piece.group == o.piece.group && close(p.Span, q.Span, alikeSide) && close(p.Spacing, q.Spacing, alikeSide) &&
		close(p.Curve, q.Curve, alikeSide) && p.Section.V == q.Section.V && p.Attached == q.Attached && p.Ends.V == q.Ends.V && l.piece.judged != "side"
	if !alike {
		return false
	}
	l.names = append(l.names, o.names...)
	l.lines = append(l.lines, o.lines...)
	l.last = o.last
	p.ID = fmt.Sprintf(l.piece.group, fmt.Sprintf("s %d-%d", l.piece.number, l.last))
	p.Where.V = fmt.Sprintf("%s to %s", l.piece.where, o.piece.where) + o.piece.tapers
	p.Count.V += q.Count.V
	p.Span.V, p.Spacing.V, p.Curve.V = max(p.Span.V, q.Span.V), max(p.Spacing.V, q.Spacing.V), min(p.Curve.V, q.Curve.V)
	if q.Z.Set && q.Z.V < p.Z.V {
		p.Z = q.Z
	}
	return true
}

// drawMember adds the lines of a member: to starboard and to port, or one in the middle.
func (b *builder) drawMember(l *laidMember) {
	p := &l.piece
	line := Line{ID: p.name, Kind: p.kind, Zone: p.zone, On: p.on, Points: p.path, Flat: p.flat}
	add := func(line Line) {
		l.lines = append(l.lines, len(b.out.Lines))
		b.out.Lines = append(b.out.Lines, line)
	}
	if p.one != "port" {
		add(line)
	}
	if p.count > 1 || p.one == "port" {
		add(line.toPort())
	}
}

func long(path []hydrostatics.Vector) float64 {
	sum := 0.0
	for i := 1; i < len(path); i++ {
		sum += distance(path[i-1], path[i])
	}
	return sum
}

func halfWay(path []hydrostatics.Vector) hydrostatics.Vector {
	c := newCourse(path)
	return c.point(c.long() / 2)
}

func sagOf(path []hydrostatics.Vector) float64 {
	c := newCourse(path)
	return c.sag(0, c.long())
}
