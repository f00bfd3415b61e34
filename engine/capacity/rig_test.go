package capacity

import (
	"os"
	"sync"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

var line int

func put[T any](v T) record.Val[T] {
	line++
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: line})
}

var library = sync.OnceValues(func() (*method.Library, error) {
	return method.ReadShipped(os.DirFS("../../content/methods")).Library(nil)
})

func sheets(tb testing.TB) *method.Library {
	tb.Helper()
	lib, err := library()
	if err != nil {
		tb.Fatal(err)
	}
	return lib
}

// launch is a hull of 7.4 m whose plate agrees with its records. All values are our own.
func launch() (*record.Hull, *record.Builder, *weight.Result) {
	h := &record.Hull{Number: "H1"}
	h.Boat = record.Boat{
		LengthHull: put(unit.M(7.4)), BeamHull: put(unit.M(2.5)), LoadedMass: put(unit.KG(2760)), LightMass: put(unit.KG(2120)),
		Persons: put(6), Engines: put(2), Power: put(unit.KW(170)), Category: put("C"),
	}
	h.Plate = record.Plate{
		Law: put([]string{"EU"}), MaxLoad: put(unit.KG(492)), Persons: put(6), Category: put("C"), Power: put(unit.KW(170)), PersonMass: put(unit.KG(75)),
		EngineMass: put(unit.KG(366)), Standard: put("ISO 14946:2021"), By: put("mo"), As: put("builder"), Seen: put("the helm, standing"),
	}
	b := &record.Builder{Name: put("Yard"), Address: put("Lane 1\nPort"), People: []record.Person{{Entry: record.Entry{ID: "mo"}, Name: put("Mo Sand")}}}
	return h, b, items(h, 148, 492)
}

// items is a breakdown that carries fuel and other load.
func items(h *record.Hull, fuel, load float64) *weight.Result {
	add := func(id, group string, mass float64, isLoad bool) {
		w := record.Weight{Entry: record.Entry{ID: id, At: put(0).At}, Name: put(id), Group: put(group), Basis: put("weighed"), Load: put(isLoad), Mass: put(unit.KG(mass))}
		h.Weights = append(h.Weights, w)
	}
	h.Weights = nil
	add("hull", "plating", 2120, false)
	add("fuel", "fuel and water", fuel, true)
	add("crew", "people", load, true)
	w := weight.Assess(h, nil)
	return &w
}

// tender is an outboard boat of 5.2 m whose label stands under the law of the United States. All values are our own:
// 4500 lb displaced, boat of 1500 lb, one outboard of 60 hp.
func tender() (*record.Hull, *record.Builder, *weight.Result) {
	h := &record.Hull{Number: "H2"}
	h.Boat = record.Boat{LengthHull: put(unit.M(5.2)), Engines: put(1), Power: put(unit.KW(44.74)), Persons: put(3)}
	h.Plate = record.Plate{Law: put([]string{"US"}), MaxLoad: put(unit.KG(110)), Persons: put(2), Power: put(unit.KW(44.74))}
	h.Capacity = record.Capacity{
		Drive: put("outboard"), Displacement: put(unit.KG(4500 * 0.45359237)), BoatMass: put(unit.KG(1500 * 0.45359237)), Portable: put(false),
		Transom: put(unit.M(1.9)), TransomHeight: put(unit.MM(510)), Remote: put(true), Flat: put(false),
		Below: put(unit.KG(400)), Above: put(unit.KG(50)), Metal: put(unit.KGPerM3(2660)), Foam: put(unit.KGPerM3(35)),
	}
	h.ListTests = []record.ListTest{{Entry: record.Entry{ID: "L1"}, Weight: put(unit.KG(200))}, {Entry: record.Entry{ID: "L2"}, Weight: put(unit.KG(100))}}
	return h, &record.Builder{Name: put("Yard")}, &weight.Result{}
}
