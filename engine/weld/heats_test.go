package weld

import (
	"math"
	"os"
	"testing"

	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Arc energy 60 U I / (1000 v), heat input 0.8 of it for process 131: 22 V, 170 A, 600 mm/min gives 0.374 and 0.299 kJ/mm,
// 24 V, 220 A, 600 mm/min gives 0.528 and 0.422 (own arithmetic by the formula that welding institutes print).
func TestHeats(t *testing.T) {
	y, h := sound()
	reading := func(id string, volts, amps, speed float64) record.Weld {
		w := record.Weld{Entry: record.Entry{ID: id}, Procedure: h.Welds[0].Procedure, Revision: h.Welds[0].Revision}
		w.Volts, w.Amperes = record.Val[unit.Volt]{V: unit.Volt(volts), Set: true}, record.Val[unit.Ampere]{V: unit.Ampere(amps), Set: true}
		w.Speed = record.Val[unit.MMPerMin]{V: unit.MMPerMin(speed), Set: speed > 0}
		return w
	}
	h.Welds = []record.Weld{reading("a", 22, 170, 600), reading("b", 24, 220, 600), reading("c", 22, 170, 0), reading("d", 30, 300, 300)}
	h.Welds[3].Procedure = record.Val[string]{}
	alloys, err := material.Load(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	r := Assess(y, h, library(t), alloys, ranges(t))
	want := []struct {
		known         bool
		energy, input float64
	}{{true, 0.374, 0.2992}, {true, 0.528, 0.4224}, {false, 0, 0}, {true, 1.8, 0}}
	for i, w := range want {
		got := r.Heats[i]
		if got.Known != w.known || math.Abs(got.Energy-w.energy) > 1e-9 || math.Abs(got.Input-w.input) > 1e-9 {
			t.Errorf("weld %s: %+v, want %+v", got.Weld.ID, got, w)
		}
	}
	if r.HottestOf == nil || r.HottestOf.ID != "d" || r.Hottest == nil {
		t.Errorf("the hottest is %v", r.HottestOf)
	}
	for i := range y.Welding.Procedures {
		y.Welding.Procedures[i].Pulsed = record.Val[bool]{V: true, Set: true}
	}
	if got := Assess(y, h, library(t), alloys, ranges(t)).Heats[0]; got.Known || !got.Shaped {
		t.Errorf("a machine that shapes the current: %+v", got)
	}
}
