package hydrostatics

import "math"

// Form is the body at one draught on an even keel: a row of the hydrostatic table. Lengths in metres in the axes of the
// body.
type Form struct {
	Level    float64 // of the water above the origin of the body
	Volume   float64 // cubic metre
	Mass     float64 // kilogram, at the density asked for
	LCB      float64 // centre of buoyancy, x
	KB       float64 // centre of buoyancy above the origin
	Plane    float64 // area of the water plane, square metre
	LCF      float64 // its centre, x
	BM       float64 // transverse metacentre above the centre of buoyancy
	BML      float64 // longitudinal metacentre above the centre of buoyancy
	Length   float64 // of the waterline
	PerCM    float64 // mass that sinks the body by a centimetre, kilogram
	TrimCM   float64 // moment that trims it by a centimetre over the waterline, kilogram metre
	Wetted   float64 // skin under water, square metre
	Overflow bool    // the water plane has no area: the body is wholly under water
}

// Form gives the body at every level of the water, on an even keel. skin tells the edges of the outline that are plate
// against the water (see Wetted). Levels at which nothing is under water are left out.
//
// BM and BML are the second moments of the water plane over the volume; the moment to trim is mass × BML / (100 × length):
// the longitudinal metacentre above the centre of buoyancy is taken for the one above the centre of gravity, which is not
// known without a load. Classical hydrostatics.
func (b *Body) Form(levels []float64, density float64, skin func(edge int) bool) []Form {
	out := make([]Form, 0, len(levels))
	for _, z := range levels {
		at := Attitude{Level: z}
		im := b.Immerse(at)
		if !(im.Volume > 0) {
			continue
		}
		f := Form{Level: z, Volume: im.Volume, Mass: im.Volume * density, LCB: im.Centre.X, KB: im.Centre.Z, Plane: im.Plane,
			Wetted: b.Wetted(at, skin), Overflow: im.Plane < 1e-9}
		if !f.Overflow {
			f.ofPlane(im, density)
		}
		out = append(out, f)
	}
	return out
}

func (f *Form) ofPlane(im Immersed, density float64) {
	f.LCF = im.PlaneAt.X
	f.BM, f.BML = im.SecondT/im.Volume, im.SecondL/im.Volume
	f.PerCM = im.Plane * density / 100
	f.Over(im.Waterline[1] - im.Waterline[0])
}

// Over sets the length of the waterline, where it is known better than from section to section, and what follows from it.
func (f *Form) Over(length float64) {
	f.Length, f.TrimCM = length, 0
	if length > 0 {
		f.TrimCM = f.Mass * f.BML / (100 * length)
	}
}

// Levels gives round levels from low to high, step metres apart: whole multiples of the step strictly between the two.
func Levels(low, high, step float64) []float64 {
	var out []float64
	if !(step > 0) || !(high > low) || (high-low)/step > 1000 {
		return nil
	}
	for k := int(math.Floor(low/step)) + 1; float64(float64(k)*step) < high-1e-9; k++ {
		out = append(out, float64(k)*step)
	}
	return out
}
