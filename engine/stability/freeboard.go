package stability

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Freeboards is one set of freeboards measured afloat, reduced to the mass that floats so.
type Freeboards struct {
	Record   *record.FreeboardTest
	Water    Plane
	Mass     float64 // displaced, kg
	LCB      float64 // centre of buoyancy fore and aft: the centre of gravity lies over it
	Reckoned float64 // mass of the items on board that day
	OK       bool
	Why      string
}

// Plane is the water surface in the axes of the boat: z = Level + Along x + Across y, with how far the points lie off it.
type Plane struct {
	Level, Along, Across float64
	Off                  []float64 // metres, one a point
	OK                   bool
}

// FitPlane lays a plane through points by least squares. Points that all lie on one line athwart or fore and aft give none;
// where none lies off the centre line the boat is taken as upright.
func FitPlane(points []hydrostatics.Vector) Plane {
	cols := 3
	if narrow(points) {
		cols = 2
	}
	if len(points) < cols {
		return Plane{}
	}
	a := mat.NewDense(len(points), cols, nil)
	b := mat.NewVecDense(len(points), nil)
	for i, p := range points {
		a.Set(i, 0, 1)
		a.Set(i, 1, p.X)
		if cols == 3 {
			a.Set(i, 2, p.Y)
		}
		b.SetVec(i, p.Z)
	}
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		return Plane{}
	}
	pl := Plane{Level: x.AtVec(0), Along: x.AtVec(1), OK: true}
	if cols == 3 {
		pl.Across = x.AtVec(2)
	}
	for _, p := range points {
		pl.Off = append(pl.Off, p.Z-pl.at(p.X, p.Y))
	}
	return pl
}

func narrow(points []hydrostatics.Vector) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range points {
		low, high = math.Min(low, p.Y), math.Max(high, p.Y)
	}
	return high-low < 0.2
}

func (p Plane) at(x, y float64) float64 { return p.Level + float64(p.Along*x) + float64(p.Across*y) }

// attitude is that of the boat whose water surface the plane is.
func (p Plane) attitude() hydrostatics.Attitude {
	n := math.Sqrt(1 + float64(p.Along*p.Along) + float64(p.Across*p.Across))
	trim := math.Asin(-p.Along / n)
	heel := math.Asin(math.Max(-1, math.Min(1, p.Across/n/math.Cos(trim))))
	return hydrostatics.Attitude{Heel: heel, Trim: trim, Level: p.Level / n}
}

// freeboards reduces every set and holds it against the weights.
func (j *judge) freeboards() {
	for i := range j.hull.Freeboards {
		f := j.floated(&j.hull.Freeboards[i])
		j.holdFreeboards(&f)
		j.out.Freeboards = append(j.out.Freeboards, f)
	}
}

// floated finds the mass that floats as measured. Freeboards are taken along the boat's own vertical, which for the small
// heel and trim of a boat at rest is the same within a thousandth.
func (j *judge) floated(rec *record.FreeboardTest) Freeboards {
	f := Freeboards{Record: rec}
	var points []hydrostatics.Vector
	for i := range rec.Points {
		p := &rec.Points[i]
		z := j.lines.Section(float64(p.X.V)).At[lines.Sheer].Z
		if p.Z.Set {
			z = float64(p.Z.V)
		}
		points = append(points, hydrostatics.Vector{X: float64(p.X.V), Y: float64(p.Y.V), Z: z - float64(p.Freeboard.V)/1000})
	}
	f.Water = FitPlane(points)
	if !f.Water.OK {
		f.Why = "the points give no water surface; measure at two places along the boat at least, on both sides"
		return f
	}
	im := j.dry.Immerse(f.Water.attitude())
	f.Mass, f.LCB, f.OK = im.Volume*float64(rec.Density.V), im.Centre.X, im.Volume > 0
	if !f.OK {
		f.Why = "by these freeboards the boat does not touch the water"
	}
	for i, off := range f.Water.Off {
		if math.Abs(off) > mostOff {
			j.say(finding.Doubt, "freeboard-point", "freeboard "+rec.ID, fmt.Sprintf("point %s lies %s mm off the plane of the others", rec.Points[i].ID, unit.Text(off*1000, 0)),
				"measure that point again, in calmer water", rec.Points[i].At)
		}
	}
	return f
}

// mostOff is how far a measured point may lie off the plane of all before it is doubted, metres (practice).
const mostOff = 0.015

func (j *judge) holdFreeboards(f *Freeboards) {
	rec := f.Record
	c := finding.Check{Rule: "freeboard-mass", Subject: "freeboard " + rec.ID, Standing: finding.NotShown,
		Asks:  "the mass that floats as measured is that of the items on board that day, within the allowance of the record",
		Basis: finding.Yard, Source: "allowance of the record", Places: finding.Places(rec.At, rec.Allowed.At)}
	d := j.day(rec.Aboard, rec.Ashore)
	switch {
	case !f.OK:
		c.Says, c.Settle = f.Why, "read the test sheet again"
	case d.why() != "":
		c.Says, c.Settle = "the freeboards give "+kilo(f.Mass)+"; "+d.why(), "complete the weight breakdown"
	default:
		f.Reckoned = d.mass
		part := 100 * (f.Mass - d.mass) / d.mass
		c.Has = unit.Text(part, 1) + " %"
		c.Says = fmt.Sprintf("the freeboards give %s on the lines, the items on board that day add up to %s: %s %%", kilo(f.Mass), kilo(d.mass), unit.Text(part, 1))
		j.decideBy(&c, math.Abs(part), allowance{float64(rec.Allowed.V), rec.Allowed.Set, " %", 1, "freeboard." + rec.ID + ".allowance_mass_percent"})
	}
	j.show(Shown{Check: c})
}
