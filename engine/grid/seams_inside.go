package grid

import (
	"math"
	"strings"

	"hullfile/engine/record"
)

// deckSeams join decks to the sheer and soles to the side, where they reach it.
func (b *builder) deckSeams() {
	for _, f := range b.fields {
		if f.one == nil {
			continue
		}
		aft, fore := f.stops[0].x, f.stops[len(f.stops)-1].x
		mid := (aft + fore) / 2
		path, flat := b.edge(f, true, aft, fore)
		s := Seam{Name: f.name + " to side", Type: "fillet", Thickness: float64(f.one.Thickness.V), Length: long(path), Category: "watertight", Connection: "watertight-boundary", Place: f.at,
			Where: f.name + " to the side plate"}
		side := b.shellZones[len(b.shellZones)-1]
		s.Other = b.thickAt(side, true, mid)
		switch {
		case f.one.Outer.Set:
			continue // ends inside the boat, on what the grid does not know
		case f.zone == "deck":
			s.Connection = "deck-to-side"
			s.Flat = b.onSheer(flat)
		case b.recessOf(f.one) != nil && f.outer(mid) < f.course(mid).long()-near:
			id := b.recessOf(f.one).ID
			s.Name, s.Where = "sole of "+id+" to its side", "sole along the side of "+id
			if b.longer(s.Name, s.Length) {
				continue // plates of one sole are one seam
			}
		default:
			s.Other = b.thickAt(side, false, mid)
		}
		b.propose(s)
	}
}

// longer adds to the seam of a name on both sides; it reports whether there is one.
func (b *builder) longer(name string, by float64) bool {
	found := false
	for i := range b.out.Seams {
		if s := &b.out.Seams[i]; strings.TrimSuffix(strings.TrimSuffix(s.Name, ", port"), ", starboard") == name {
			s.Length = math.Round((s.Length+by)*100) / 100
			found = true
		}
	}
	return found
}

// onSheer takes the edge of a deck, measured from the centre line, to the sheer as it lies on the skin.
func (b *builder) onSheer(flat [][2]float64) [][2]float64 {
	side := b.shellZones[len(b.shellZones)-1]
	out := make([][2]float64, len(flat))
	for i, p := range flat {
		out[i] = [2]float64{p[0], side.base(p[0]) + side.outer(p[0])}
	}
	return out
}

// bulkheadSeams join every plated bulkhead to bottom, sides and deck.
func (b *builder) bulkheadSeams() {
	for _, f := range b.frames {
		if !plated(f) {
			continue
		}
		x, t := float64(f.X.V), float64(f.Plate.V)
		category, connection := "watertight", "watertight-boundary"
		if f.Tight.Set && !f.Tight.V {
			category, connection = "primary", "plate-boundary"
		}
		s := Seam{Type: "fillet", Thickness: t, Category: category, Connection: connection, Place: f.At}
		var bottom float64
		for i, z := range b.shellZones {
			path, flat := limbPath(z.course(x), 0, z.outer(x), z.base(x))
			s.Name, s.Length, s.Flat, s.Other = "bulkhead "+f.ID+" to "+z.name, long(path), flat, b.thickAt(z, false, x)
			s.Where = s.Name
			if i+1 < len(b.shellZones) && b.shellZones[i+1].zone == "chine flat" {
				bottom = s.Length
				continue
			}
			if z.zone == "chine flat" {
				s.Name, s.Length = "bulkhead "+f.ID+" to bottom", s.Length+bottom
				s.Where = s.Name
				s.Flat = append([][2]float64{{x, 0}}, s.Flat...)
			}
			b.propose(s)
		}
		b.bulkheadDeck(f, s)
	}
}

func (b *builder) bulkheadDeck(f *record.Frame, s Seam) {
	x := float64(f.X.V)
	if v, ok := f.Top.Get(); ok && float64(v) < b.skin.deck(x).at[0].Z-near {
		return
	}
	for _, d := range b.fields {
		if d.zone != "deck" || x < d.stops[0].x-near || x > d.stops[len(d.stops)-1].x+near {
			continue
		}
		s.Name, s.Flat, s.Other = "bulkhead "+f.ID+" to "+d.name, nil, float64(d.one.Thickness.V)
		s.Where, s.Length = s.Name, d.outer(x)-d.inner
		if d.central {
			s.Length *= 2
			b.proposeOne(s)
			continue
		}
		b.propose(s)
	}
}

// plated reports whether a bulkhead has a plate on record.
func plated(f *record.Frame) bool { return f.Kind.V == "bulkhead" && f.Plate.Set && f.Alloy.Set }

// memberSeams join frames, girders and stringers to the plate they stand on: the pieces of one frame on one zone, or of one
// stringer, are one seam.
func (b *builder) memberSeams() {
	order, found := []string{}, map[string]*Seam{}
	middle := map[string]bool{}
	for i := range b.pieces {
		p := &b.pieces[i]
		key, s := b.memberSeam(p)
		if key == "" {
			continue
		}
		if found[key] == nil {
			order, found[key] = append(order, key), &s
			middle[key] = p.count == 1
			continue
		}
		found[key].Length += long(p.path)
		found[key].Flat = append(found[key].Flat, p.flat...)
		middle[key] = middle[key] && p.count == 1
	}
	for _, key := range order {
		if middle[key] {
			b.proposeOne(*found[key])
			continue
		}
		b.propose(*found[key])
	}
}

// memberSeam is the seam of one piece, and the key under which pieces of one seam come together; empty where it has none, or
// one that is proposed elsewhere.
func (b *builder) memberSeam(p *piece) (string, Seam) {
	if p.zone == "transom" || p.zone == "bulkhead" || p.plate == nil || p.off || strings.HasSuffix(p.kind, "bar") {
		return "", Seam{}
	}
	s := Seam{Type: "fillet", Thickness: metal(b.sections[p.section]), Other: float64(p.plate.Thickness.V), Length: long(p.path), Category: "secondary", Flat: p.flat, Place: p.at}
	if p.zone == "deck" || p.zone == "sole" {
		s.Flat = nil
	}
	if p.run != nil {
		s.Name, s.Where = p.run.words()+" to "+p.on, p.run.words()+" to "+p.on
		switch {
		case p.run.hard():
			s.Category, s.Connection = "primary", "engine-girder-elsewhere"
			if p.kind == "engine girder" {
				s.Connection = "engine-girder-main"
			}
		case p.zone == "bottom":
			s.Connection = "slamming-secondary"
		default:
			s.Connection = "secondary-stiffener"
		}
		return "run " + p.run.name + " " + p.on, s
	}
	frame := b.frameAt(p)
	if frame == nil || plated(frame) && (p.zone == "bottom" || p.zone == "side" || p.zone == "deck") {
		return "", Seam{} // a bulkhead is joined by its own plate
	}
	s.Name = strings.Fields(p.name)[0] + " of frame " + frame.ID + " to " + p.on
	switch p.zone {
	case "bottom":
		s.Name, s.Category, s.Connection = "frame "+frame.ID+" to bottom", "primary", "floor-elsewhere"
		if b.slams(float64(frame.X.V)) {
			s.Category, s.Connection = "slamming zone", "slamming-primary"
		}
	case "side":
		s.Name, s.Connection = "frame "+frame.ID+" to side", "primary-stiffener"
		if p.primary {
			s.Category = "primary"
		}
	default:
		s.Name, s.Connection = "beam "+frame.ID+" to "+p.on, "secondary-stiffener"
	}
	s.Where = s.Name
	return "frame " + frame.ID + " " + p.on, s
}

// frameAt is the frame that a piece is a part of.
func (b *builder) frameAt(p *piece) *record.Frame {
	for _, f := range b.frames {
		if f.At == p.at {
			return f
		}
	}
	return nil
}

// The part of the waterline, from its aft end, over which the bottom is taken to slam: practice.
const (
	slamsFrom = 0.5
	slamsTo   = 0.9
)

// slams reports whether a frame stands where the bottom slams.
func (b *builder) slams(x float64) bool {
	l, ok := b.rec.Boat.LengthWL.Get()
	at := (x - b.out.AftEnd) / float64(l)
	return ok && at >= slamsFrom && at <= slamsTo
}

// faceSeams join the stiffeners of transom and bulkheads: those of one bulkhead, and of one side, are one seam.
func (b *builder) faceSeams() {
	order, found := []string{}, map[string]*Seam{}
	for i := range b.pieces {
		p := &b.pieces[i]
		if p.zone != "transom" && p.zone != "bulkhead" || p.plate == nil {
			continue
		}
		key := "stiffeners of " + p.on
		category, connection := "secondary", "secondary-stiffener"
		if p.primary {
			key, category, connection = "primary stiffeners of "+p.on, "primary", "primary-stiffener"
		}
		l := long(p.path) * float64(p.count)
		if s := found[key]; s != nil {
			s.Length += l
			continue
		}
		order = append(order, key)
		found[key] = &Seam{Name: key, Type: "fillet", Thickness: metal(b.sections[p.section]), Other: float64(p.plate.Thickness.V), Length: l, Category: category, Connection: connection, Where: key, Place: p.at}
	}
	for _, key := range order {
		b.proposeOne(*found[key])
	}
}

// bracketSeams are the fillets of the locking pieces, each kind together and a side by itself.
func (b *builder) bracketSeams() {
	for i := range b.rec.Brackets {
		r := &b.rec.Brackets[i]
		count := 0
		for _, k := range b.out.Brackets {
			if k.Record == r {
				count += k.Count
			}
		}
		arms := 2 * float64(r.Arms.V)
		if v, ok := r.OtherArm.Get(); ok {
			arms = float64(r.Arms.V + v)
		}
		s := Seam{Name: "brackets " + r.ID, Type: "fillet", Thickness: float64(r.Thickness.V), Length: float64(count) / 2 * arms / 1000, Category: "primary", Connection: "primary-stiffener-end",
			Where: r.Joins.V + ", along both arms", Place: r.At}
		b.propose(s)
	}
}

// tankSeams are the edges of tanks that are built of plate.
func (b *builder) tankSeams() {
	for i := range b.rec.Tanks {
		t := &b.rec.Tanks[i]
		if !t.Plate.Set || !t.Length.Set || !t.Breadth.Set {
			continue
		}
		l, w := float64(t.Length.V), float64(t.Breadth.V)
		if n, ok := t.Parts.Get(); ok {
			w *= float64(n)
		}
		h := float64(t.Volume.V) / 1000 / l / w
		b.proposeOne(Seam{Name: "tank " + t.ID, Type: "corner", Thickness: float64(t.Plate.V), Other: float64(t.Plate.V), Length: math.Round(400*(l+w+h)) / 100, Category: "watertight",
			Connection: "watertight-boundary", Where: "edges of tank " + t.ID, Place: t.At})
	}
}
