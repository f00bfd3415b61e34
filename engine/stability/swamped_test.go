package stability

import (
	"math"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// open is the boat without a deck and with half a tonne of hull in plate, so that it can be swamped.
func open() *record.Hull {
	h := boat()
	h.Boat.LengthHull = set(unit.M(5.9))
	h.Lines.Sides = set("open")
	plate := item("hull", "plating", false, 0, 3, 0, 0.4)
	plate.Mass = record.Val[unit.KG]{}
	plate.Area, plate.Thickness, plate.Density = set(unit.M2(40)), set(unit.MM(5)), set(unit.KGPerM3(2660))
	h.Weights = []record.Weight{plate}
	return h
}

func TestSwampedWeightIsThatUnderWater(t *testing.T) {
	h := open()
	h.Buoyancy = []record.Buoyancy{foam(250, 0.8, 0.6)}
	r := assess(t, h, prism())
	s := r.Flotation.Swamped
	// own arithmetic: 0.2 m³ of plate weigh 532 - 200 kg under water; 2/15 of 300 kg of people.
	near(t, "under water", s.Burden, 0.2*2660-200+2.0/15*300, 1e-9)
	near(t, "foam carries", s.Lift, 500, 1e-9)
	if !s.Floats || check(t, r, "swamped-floats", "").Standing != finding.Met {
		t.Errorf("%+v", s)
	}
	near(t, "foam high on both sides keeps it upright", s.Heel, 0, 0.1)
	h.Buoyancy = []record.Buoyancy{foam(150, 0.8, 0.6)}
	if c := check(t, assess(t, h, prism()), "swamped-floats", ""); c.Standing != finding.Short {
		t.Errorf("300 l carry 372 kg: %s", c.Says)
	}
	h.Buoyancy = nil
	if c := check(t, assess(t, h, prism()), "swamped-floats", ""); c.Standing != finding.NotShown {
		t.Errorf("nothing on record, yet %s", c.Standing)
	}
}

// One mass under one cube of foam: the cube swims with the mass below it, and the water stands where the volumes say.
func TestRestOfAFloatAndAWeight(t *testing.T) {
	b := burden{masses: []mass{{300, hydrostatics.Vector{}}}, lumps: []lump{{0.5, 0.5, hydrostatics.Vector{Z: 1}}}}
	at := b.rest()
	near(t, "heel", at.Heel, 0, 1e-3)
	near(t, "trim", at.Trim, 0, 1e-3)
	near(t, "own arithmetic: three fifths of the cube under water", at.Level, 0.75+0.6*0.5, 1e-4)
	over := burden{masses: []mass{{300, hydrostatics.Vector{Z: 1}}}, lumps: []lump{{0.5, 0.5, hydrostatics.Vector{}}}}
	if at := over.rest(); math.Abs(at.Heel) < 80*degree && math.Abs(at.Trim) < 40*degree {
		t.Errorf("the weight stays above the float: heel %.1f, trim %.1f", at.Heel/degree, at.Trim/degree)
	}
}

// Foam on one side only heels the boat to the other.
func TestFoamOnOneSide(t *testing.T) {
	h := open()
	one := foam(500, 0.8, 0.6)
	one.Both = set(false)
	h.Buoyancy = []record.Buoyancy{one}
	r := assess(t, h, prism())
	if s := r.Flotation.Swamped; !s.Floats || !(s.Heel < -10) {
		t.Errorf("foam to starboard, heel %.1f°", s.Heel)
	}
	doubted := false
	for _, f := range r.Findings {
		doubted = doubted || f.Rule == "swamped-attitude"
	}
	if !doubted {
		t.Error("a boat that floats on its side is not doubted")
	}
}

// The two largest chambers are left out: 33 CFR 183.105.
func TestTwoLargestChambersLeftOut(t *testing.T) {
	chamber := func(id string, l unit.Litre, both bool) record.Buoyancy {
		return record.Buoyancy{Entry: record.Entry{ID: id}, Kind: set("chamber"), Volume: set(l), Both: set(both)}
	}
	rows := []struct {
		all  []record.Buoyancy
		want float64
	}{
		{[]record.Buoyancy{chamber("a", 100, false), chamber("b", 300, false), chamber("c", 200, false)}, 100},
		{[]record.Buoyancy{chamber("a", 100, true)}, 0},
		{[]record.Buoyancy{chamber("a", 100, true), chamber("b", 150, false)}, 100},
		{[]record.Buoyancy{foam(80, 0, 0), chamber("b", 150, false)}, 160},
	}
	for i, r := range rows {
		sum := 0.0
		for _, p := range pieces(r.all) {
			if p.Counts {
				sum += p.Litres
			}
		}
		near(t, "own arithmetic, row "+string(rune('1'+i)), sum, r.want, 1e-9)
	}
}
