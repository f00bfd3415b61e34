package grid

import (
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// run is one line that runs fore and aft on a zone: a stringer, a girder, or what holds a deck up from below.
type run struct {
	name      string // "L1", "L 2" for the second of a set
	kind      string
	rec       *record.Stringer // nil for a support
	at        finding.Place
	aft, fore float64
	near, far float64 // offset at the aft and at the fore end
	outside   bool    // measured inwards from the outer edge of the zone
	side      string  // both, port, starboard, middle
	z         float64 // of the sole it belongs to, where that is told
	hasZ      bool
}

// girth is where the run lies at a station, on a zone that is long from edge to edge there.
func (r *run) girth(x, long float64) float64 {
	t := part(x, r.aft, r.fore)
	g := r.near + float64(t*(r.far-r.near))
	if r.outside {
		return long - g
	}
	return g
}

// covers reports whether the run goes through from one stop to the next.
func (r *run) covers(aft, fore float64) bool { return r.aft <= aft+near && r.fore >= fore-near }

// through reports whether a run holds the plate of a bay: it goes through from stop to stop, or past the middle and then
// runs out at an edge of the field.
func (f *field) through(r *run, aft, fore float64) bool {
	if r.covers(aft, fore) {
		return true
	}
	mid := (aft + fore) / 2
	return r.aft <= aft+near && r.fore > mid && f.runsOut(r, r.fore) || r.fore >= fore-near && r.aft < mid && f.runsOut(r, r.aft)
}

// runsOut reports whether a run lies at an edge of the field at one of its ends.
func (f *field) runsOut(r *run, x float64) bool {
	g := r.girth(x, f.course(x).long())
	return g > f.outer(x)-2*near || g < f.inner+2*near && !f.central
}

// touches reports whether some of the run lies between two stops.
func (r *run) touches(aft, fore float64) bool { return r.aft < fore-near && r.fore > aft+near }

// runs lists the runs on a zone in the order of the record; sets are laid out one by one.
func (b *builder) runs(zone string) []*run {
	var out []*run
	for i := range b.rec.Stringers {
		if s := &b.rec.Stringers[i]; s.Zone.V == zone {
			out = append(out, b.setOut(s)...)
		}
	}
	for i := range b.rec.Supports {
		s := &b.rec.Supports[i]
		if s.Under.V != zone || s.Kind.V != "plate" {
			continue
		}
		r := &run{name: s.ID, kind: "support", at: s.At, near: float64(s.Y.V), far: float64(s.Y.V), side: "both", z: float64(s.Z.V), hasZ: s.Z.Set}
		r.aft, r.fore = b.extent(s.Aft, s.Fore)
		out = append(out, r)
	}
	return out
}

// setOut gives the lines of one stringer record.
func (b *builder) setOut(s *record.Stringer) []*run {
	number := 1
	if n, ok := s.Number.Get(); ok {
		number = n
	}
	one := run{kind: "stringer", rec: s, at: s.At, side: "both", z: float64(s.Z.V), hasZ: s.Z.Set, near: float64(s.Offset.V)}
	if k, ok := s.Kind.Get(); ok {
		one.kind = k
	}
	if v, ok := s.Sides.Get(); ok {
		one.side = v
	}
	one.aft, one.fore = b.extent(s.Aft, s.Fore)
	one.outside = outward(s)
	one.far = float64(s.Offset.V)
	if v, ok := s.ForeOff.Get(); ok {
		one.far = float64(v)
	}
	step := float64(s.Spacing.V) / 1000
	foreStep := step
	if v, ok := s.ForeGap.Get(); ok {
		foreStep = float64(v) / 1000
	}
	var out []*run
	for i := range number {
		r := one
		r.name = s.ID
		if number > 1 {
			r.name += " " + strconv.Itoa(i+1)
		}
		r.near += float64(float64(i) * step)
		r.far += float64(float64(i) * foreStep)
		out = append(out, &r)
	}
	return out
}

// outward reports whether the offset is measured from the outer edge of the zone.
func outward(s *record.Stringer) bool {
	return s.Zone.V == "bottom" && s.Edge.V == "chine" || s.Edge.V == "sheer"
}

// extent gives from where to where something reaches; the ends of the hull where it does not say.
func (b *builder) extent(aft, fore valM) (from, to float64) {
	from, to = b.skin.ends()
	if v, ok := aft.Get(); ok {
		from = float64(v)
	}
	if v, ok := fore.Get(); ok {
		to = float64(v)
	}
	return from, to
}
