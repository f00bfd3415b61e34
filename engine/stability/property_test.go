package stability

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// Whatever the records say, the result is made of numbers, outcomes that exist and places that can be looked up.
func TestAnyRecordGivesAnAnswer(t *testing.T) {
	lib := library(t)
	floated, not := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		h, l := anyBoat(rt)
		w := weight.Assess(h, nil)
		load := loading.Assess(h, w, l)
		r := Assess(h, w, l, load, lib)
		if len(r.Conditions) > 0 {
			floated++
		} else {
			not++
		}
		for _, c := range append(load.Checks, r.Checks...) {
			sane(t, c)
			if c.Standing != finding.Met && c.Standing != finding.Short && c.Standing != finding.NotShown {
				rt.Fatalf("%s is %q", c.Rule, c.Standing)
			}
		}
		for _, h := range r.Heelings {
			if math.IsNaN(h.Heel) || math.IsNaN(h.Least) || h.Rests && (h.Heel < 0 || h.Heel > 180) {
				rt.Fatalf("%+v", h)
			}
		}
	})
	if floated == 0 || not == 0 {
		t.Errorf("%d boats floated and %d did not: one of the two is not tried", floated, not)
	}
}

func anyBoat(t *rapid.T) (*record.Hull, *lines.Hull) {
	h, l := boat(), prism()
	l.Stations = []lines.Station{l.Stations[0], l.Stations[len(l.Stations)-1]} // the same prism, in a third of the time
	num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	h.Weights[0].Mass = set(unit.KG(num("mass", 50, 12000)))
	h.Weights[0].X, h.Weights[0].Y, h.Weights[0].Z = set(unit.M(num("x", 0, 6))), set(unit.M(num("y", -0.5, 0.5))), set(unit.M(num("z", 0, 3)))
	h.Boat.Persons = set(rapid.IntRange(1, 60).Draw(t, "persons"))
	h.Boat.Category = set(rapid.SampledFrom([]string{"A", "B", "C", "D"}).Draw(t, "category"))
	h.Lines.Sides = set(rapid.SampledFrom([]string{"open", "partly decked", "fully decked"}).Draw(t, "decked"))
	if rapid.Bool().Draw(t, "recess") {
		l.Recesses = []lines.Recess{{ID: "cockpit", Aft: 0.5, Fore: num("fore", 1, 5.5), Half: num("half", 0.1, 1.1), Sole: num("sole", 0.05, 0.8), Drains: rapid.Bool().Draw(t, "drains")}}
	}
	if rapid.Bool().Draw(t, "opening") {
		l.Openings = []lines.Opening{{ID: "o", Name: "vent", At: []hydrostatics.Vector{{X: num("ox", 0, 6), Y: num("oy", -1, 1), Z: num("oz", 0, 2)}}, Area: num("area", 0, 1e5)}}
	}
	if rapid.Bool().Draw(t, "foam") {
		h.Buoyancy = []record.Buoyancy{foam(unit.Litre(num("litres", 1, 9000)), unit.M(num("fy", -1, 1)), unit.M(num("fz", 0, 1)))}
	}
	if rapid.Bool().Draw(t, "short") {
		h.Boat.LengthHull = set(unit.M(5.5))
	}
	return h, l
}

// Mass that goes down makes the heel of the same people less.
func TestMassDownLessHeel(t *testing.T) {
	heel := func(z float64) float64 {
		h := boat()
		h.Weights[0].Z = set(unit.M(z))
		w := weight.Assess(h, nil)
		load := loading.Assess(h, w, prism())
		c := Assess(h, w, prism(), load, library(t)).find("loaded ready")
		return c.heeled("crew", 1500, true).Heel
	}
	last := heel(0.6)
	for z := 0.5; z >= 0.1; z -= 0.1 {
		now := heel(z)
		if now >= last {
			t.Errorf("centre of the hull at %.1f m: heel %.3f°, not below %.3f°", z, now, last)
		}
		last = now
	}
}
