package grid

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
)

// seams proposes the weld map: what has to be welded for the pieces of the grid to hang together, one seam a side.
func (b *builder) seams() {
	if len(b.shellZones) == 0 {
		return
	}
	b.keelSeams()
	b.chineSeams()
	b.butts()
	b.transomSeams()
	b.deckSeams()
	b.bulkheadSeams()
	b.memberSeams()
	b.faceSeams()
	b.bracketSeams()
	b.tankSeams()
}

// propose adds a seam to starboard and the same to port.
func (b *builder) propose(s Seam) {
	name := s.Name
	s.Name = name + ", port"
	port := s
	if s.Flat != nil {
		_, port.Flat = otherSide(nil, s.Flat, 1)
	}
	b.proposeOne(port)
	s.Name = name + ", starboard"
	b.proposeOne(s)
}

// proposeOne adds a seam of which there is one only. Lengths are rounded to the centimetre, as they are drawn.
func (b *builder) proposeOne(s Seam) {
	s.Length = math.Round(s.Length*100) / 100
	if s.Length > 0 {
		b.out.Seams = append(b.out.Seams, s)
	}
}

// edge is the course of an edge of a zone along the boat, with its way on the unrolled skin.
func (b *builder) edge(f *field, outer bool, aft, fore float64) (path []hydrostatics.Vector, flat [][2]float64) {
	xs := append([]float64{aft}, b.skin.between(aft, fore, false)...)
	for _, x := range append(xs, fore) {
		g := f.inner
		if outer {
			g = f.outer(x)
		}
		p := f.course(x).point(g)
		path, flat = append(path, p), append(flat, [2]float64{x, f.base(x) + g})
	}
	return path, flat
}

// thickAt is the thickness of the plate of a zone at mid-length at one of its edges, mm.
func (b *builder) thickAt(f *field, outer bool, x float64) float64 {
	g := f.inner + 0.01
	if outer {
		g = f.outer(x) - 0.01
	}
	if p := b.plateAt(f, x, g); p != nil {
		return float64(p.Thickness.V)
	}
	return 0
}

// barOf is the run of a kind on the shell, and the thickness of its metal.
func (b *builder) barOf(kinds ...string) (*run, float64) {
	for _, f := range b.shellZones {
		for _, r := range f.runs {
			for _, kind := range kinds {
				if r.kind == kind && r.rec.Section.Set {
					return r, metal(b.sections[r.rec.Section.V])
				}
			}
		}
	}
	return nil, 0
}

// metal is the thickness with which a section stands on plate.
func metal(s *record.Section) float64 {
	switch {
	case s == nil:
		return 0
	case s.Web.Set:
		return float64(s.Web.V)
	}
	return float64(s.Wall.V)
}

// keelSide is how far from the centre line the fillets of a keel bar are drawn, metres.
const keelSide = 0.03

// keelSeams join the two bottom plates, over a keel bar where there is one.
func (b *builder) keelSeams() {
	f := b.shellZones[0]
	aft, fore := b.skin.ends()
	path, flat := b.edge(f, false, aft, fore)
	t := b.thickAt(f, false, (aft+fore)/2)
	s := Seam{Type: "butt", Thickness: t, Other: t, Length: long(path), Category: "shell", Flat: flat, Name: "keel", Where: "bottom plate to bottom plate, transom to stem", Place: f.place()}
	bar, thick := b.barOf("keel bar")
	if bar == nil {
		b.proposeOne(s)
		return
	}
	for i := range s.Flat {
		s.Flat[i][1] += keelSide // so that it can be told from the one on the other side
	}
	s.Type, s.Other, s.Name, s.Where = "fillet", thick, "keel bar to bottom", "bottom plate to keel bar, transom to stem"
	b.propose(s)
	b.proposeOne(Seam{Name: "keel bar to transom", Type: "fillet", Thickness: thick, Other: b.transomThick(), Length: 2 * b.heightOf(bar), Category: "shell", Where: "end of the keel bar, both sides of it", Place: bar.at})
}

// heightOf is the height of the section of a run, metres.
func (b *builder) heightOf(r *run) float64 {
	return float64(b.sections[r.rec.Section.V].Height.V) / 1000
}

// place is the record line of the first plate of a field.
func (f *field) place() finding.Place {
	if len(f.plates) > 0 {
		return f.plates[0].At
	}
	return f.at
}

// chineSeams join the bottom, or the chine flat bent from it, to the side; a flat of its own plate is joined to both.
func (b *builder) chineSeams() {
	aft, fore := b.skin.ends()
	mid := (aft + fore) / 2
	for i := 1; i < len(b.shellZones); i++ {
		in, out := b.shellZones[i-1], b.shellZones[i]
		if in.zone == "bottom" && out.zone == "chine flat" && len(b.platingsFor("chine flat")) == 0 {
			continue // bent from the bottom plate
		}
		path, flat := b.edge(out, false, aft, fore)
		s := Seam{Name: in.name + " to " + out.name, Type: "fillet", Thickness: b.thickAt(in, true, mid), Other: b.thickAt(out, false, mid), Length: long(path),
			Category: "shell", Flat: flat, Where: "chine, transom to stem", Place: out.place()}
		if bar, thick := b.barOf("chine bar"); bar != nil && out.zone == "side" {
			s.Name, s.Other, s.Where = in.name+" to chine bar", thick, "bottom to chine bar, transom to stem"
			b.propose(s)
			s.Name, s.Thickness, s.Other, s.Where = "side to chine bar", b.thickAt(out, false, mid), thick, "side to chine bar, transom to stem"
		}
		b.propose(s)
	}
}

// platingsFor lists the plates written for a zone itself.
func (b *builder) platingsFor(zone string) []*record.Plating {
	var out []*record.Plating
	for i := range b.rec.Platings {
		if b.rec.Platings[i].Zone.V == zone {
			out = append(out, &b.rec.Platings[i])
		}
	}
	return out
}

// butts join plates of one zone where one ends and the next begins.
func (b *builder) butts() {
	for _, f := range b.shellZones {
		all := b.platingsFor(f.zone)
		for _, p := range all {
			for _, q := range all {
				if p != q && p.Fore.Set && q.Aft.Set && math.Abs(float64(p.Fore.V-q.Aft.V)) < near {
					b.butt(f, p, q)
				}
			}
		}
	}
}

func (b *builder) butt(f *field, p, q *record.Plating) {
	x := float64(p.Fore.V)
	from, to := max(float64(p.Inner.V), float64(q.Inner.V)), f.outer(x)
	for _, o := range []*record.Plating{p, q} {
		if v, ok := o.Outer.Get(); ok {
			to = min(to, float64(v))
		}
	}
	path, flat := limbPath(f.course(x), from, to, f.base(x))
	if len(path) < 2 || to <= from {
		return
	}
	b.propose(Seam{Name: "plate " + p.ID + " to plate " + q.ID, Type: "butt", Thickness: float64(p.Thickness.V), Other: float64(q.Thickness.V), Length: long(path), Category: "shell",
		Flat: flat, Where: "butt of the " + f.name + " plates", Place: q.At})
}

func (b *builder) transomThick() float64 {
	if all := b.platingsFor("transom"); len(all) > 0 {
		return float64(all[0].Thickness.V)
	}
	return 0
}

// transomSeams join the transom to the shell, a zone at a time; a bent chine flat is one with the bottom.
func (b *builder) transomSeams() {
	aft, _ := b.skin.ends()
	var s Seam
	for i, f := range b.shellZones {
		path, flat := limbPath(f.course(aft), 0, f.outer(aft), f.base(aft))
		if f.zone == "chine flat" && len(b.platingsFor("chine flat")) == 0 && i > 0 {
			b.out.Seams = b.out.Seams[:len(b.out.Seams)-2]
			s.Length += long(path)
			s.Flat = append(s.Flat, flat...)
			b.propose(s)
			continue
		}
		s = Seam{Name: "transom to " + f.name, Type: "fillet", Thickness: b.thickAt(f, false, aft+0.01), Other: b.transomThick(), Length: long(path), Category: "shell", Flat: flat,
			Where: "transom to " + f.name, Place: f.place()}
		b.propose(s)
	}
}
