package grid

import "hullfile/engine/record"

// bareness is how much of a zone has no plate on record.
type bareness struct {
	zone        string
	bare, whole float64 // m², to starboard
	where       string  // the first panel without plate
}

// plate finds the plate of a panel by looking at nine places of it. Where there are several the thinnest counts; full is
// false where some of them have none.
func (b *builder) plate(c *cell) (thinnest *record.Plating, several, full bool) {
	full = true
	for _, s := range []float64{0.05, 0.5, 0.95} {
		x := c.aft.x + float64(s*(c.fore.x-c.aft.x))
		on := c.f.course(x)
		in, out := c.f.girth(c.inner, x, on), c.f.girth(c.outer, x, on)
		for _, t := range []float64{0.1, 0.5, 0.9} {
			p := b.plateAt(c.f, x, in+float64(t*(out-in)))
			switch {
			case p == nil:
				full = false
			case thinnest == nil || p.Thickness.V < thinnest.Thickness.V:
				several = several || thinnest != nil
				thinnest = p
			case p != thinnest:
				several = several || p.Thickness.V != thinnest.Thickness.V || p.Alloy.V != thinnest.Alloy.V
			}
		}
	}
	return thinnest, several, full
}

// plateAt finds the plate at one place of a field, the thinner where two lie over each other.
func (b *builder) plateAt(f *field, x, girth float64) *record.Plating {
	if f.one != nil {
		return f.one
	}
	var found *record.Plating
	for _, p := range f.plates {
		if !b.lies(p, x, girth) {
			continue
		}
		if found != nil {
			b.overlap(found, p)
		}
		if found == nil || p.Thickness.V < found.Thickness.V {
			found = p
		}
	}
	return found
}

func (b *builder) lies(p *record.Plating, x, girth float64) bool {
	aft, fore := b.extent(p.Aft, p.Fore)
	_, stem := b.skin.ends()
	if !p.Aft.Set || aft <= 0 {
		aft = -1e9 // a raked transom lies aft of the first station
	}
	if fore >= stem-near {
		fore = 1e9
	}
	const hair = 1e-6
	return x >= aft-hair && x <= fore+hair && girth >= float64(p.Inner.V)-hair && (!p.Outer.Set || girth <= float64(p.Outer.V)+hair)
}
