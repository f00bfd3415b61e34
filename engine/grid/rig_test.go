package grid

import (
	"math"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

var here = finding.Place{File: "hull.toml", Line: 1}

func w[T any](v T) record.Val[T] { return record.Written(v, here) }

func at(line int) record.Entry {
	return record.Entry{At: finding.Place{File: "hull.toml", Line: line}}
}

func named(id string, line int) record.Entry {
	e := at(line)
	e.ID = id
	return e
}

// box is a pontoon of own making: 6 m long, 2 m broad, 1 m deep, frames at every metre, a bottom stringer half way out,
// a side stringer half way up; bottom of 6 mm, sides of 4 mm, transom of 8 mm.
func box6() *record.Hull {
	h := &record.Hull{Number: "P1"}
	h.Boat.Draught = w(unit.M(0.4))
	for i := range 4 {
		h.Stations = append(h.Stations, record.Station{Entry: named(string(rune('0'+i)), 10+i), X: w(unit.M(2 * i)), KeelZ: w(unit.M(0)), ChineY: w(unit.M(1)), ChineZ: w(unit.M(0)), SheerY: w(unit.M(1)), SheerZ: w(unit.M(1))})
	}
	h.Sections = []record.Section{{Entry: named("FB", 20), Shape: w("flat bar"), Height: w(unit.MM(60)), Web: w(unit.MM(6)), Alloy: w("6082-T6")}}
	for i := 1; i <= 5; i++ {
		h.Frames = append(h.Frames, record.Frame{Entry: named(string(rune('0'+i)), 30+i), X: w(unit.M(i)), Bottom: w("FB"), Side: w("FB"), Keel: w("fixed"), Chine: w("fixed")})
	}
	plate := func(id, zone string, t unit.MM) record.Plating {
		return record.Plating{Entry: named(id, 40), Zone: w(zone), Thickness: w(t), Alloy: w("5083-H116")}
	}
	h.Platings = []record.Plating{plate("bottom", "bottom", 6), plate("side", "side", 4), plate("transom", "transom", 8)}
	h.Stringers = []record.Stringer{
		{Entry: named("L", 50), Zone: w("bottom"), Offset: w(unit.M(0.5)), Section: w("FB")},
		{Entry: named("K", 51), Kind: w("keel bar"), Zone: w("bottom"), Offset: w(unit.M(0)), Section: w("FB")},
		{Entry: named("S", 52), Zone: w("side"), Offset: w(unit.M(0.5)), Section: w("FB"), Ends: w("simple")},
	}
	h.Brackets = []record.Bracket{
		{Entry: named("BK", 60), Joins: w("frame to keel"), Arms: w(unit.MM(100)), Thickness: w(unit.MM(5)), Throat: w(unit.MM(3))},
		{Entry: named("BC", 61), Joins: w("frame to chine"), Arms: w(unit.MM(100)), Thickness: w(unit.MM(5)), Throat: w(unit.MM(3))},
	}
	return h
}

func derive(h *record.Hull) Result { return Derive(h, lines.FromRecord(&h.HullFile)) }

func panel(t *testing.T, r *Result, id string) *record.Panel {
	t.Helper()
	for i := range r.Panels {
		if r.Panels[i].ID == id {
			return &r.Panels[i]
		}
	}
	var all []string
	for i := range r.Panels {
		all = append(all, r.Panels[i].ID)
	}
	t.Fatalf("no panel %q among %q", id, all)
	return nil
}

func member(t *testing.T, r *Result, id string) *record.Member {
	t.Helper()
	for i := range r.Members {
		if r.Members[i].ID == id {
			return &r.Members[i]
		}
	}
	var all []string
	for i := range r.Members {
		all = append(all, r.Members[i].ID)
	}
	t.Fatalf("no member %q among %q", id, all)
	return nil
}

func near1(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > by {
		t.Errorf("%s: %g, expected %g", what, got, want)
	}
}

func found(r *Result, rule string) *finding.Finding {
	for i := range r.Findings {
		if r.Findings[i].Rule == rule {
			return &r.Findings[i]
		}
	}
	return nil
}
