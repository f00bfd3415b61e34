package weight

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func zones() []Zone {
	return []Zone{{Name: "bottom", Area: 10, X: 3, Z: 0.2}, {Name: "seams", Length: 50, X: 2.5, Z: 0.5}}
}

func at(v float64) record.Val[unit.M] { return record.Written(unit.M(v), finding.Place{Line: 9}) }

// An item that asks for a zone takes area and centre from it; what is written stays. Own arithmetic.
func TestAreaFromTheLines(t *testing.T) {
	word := func(s string) record.Val[string] {
		return record.Written(s, finding.Place{File: "weights.csv", Line: 3})
	}
	area := func(v float64) record.Val[unit.M2] { return record.Written(unit.M2(v), finding.Place{}) }
	mm := record.Written(unit.MM(5), finding.Place{})
	density := record.Written(unit.KGPerM3(2660), finding.Place{})
	bare := record.Weight{AreaFrom: word("bottom"), Thickness: mm, Density: density}
	typed := bare
	typed.Area, typed.X = area(9.5), at(3.4)
	far := bare
	far.Area = area(8)
	massed := bare
	massed.Mass = record.Written(unit.KG(140), finding.Place{})
	seam := record.Weight{LenFrom: word("seams"), Section: record.Written(unit.MM2(40), finding.Place{}), Density: density}
	none := record.Weight{AreaFrom: word("deck"), Thickness: mm, Density: density}
	for _, row := range []struct {
		name     string
		rec      record.Weight
		mass, x  float64
		from     string
		standing finding.Standing // of the check of its zone; empty where there is none
	}{
		{"not written", bare, 10 * 0.005 * 2660, 3, "area of the bottom from the lines", ""},
		{"written and near", typed, 9.5 * 0.005 * 2660, 3.4, "centre from the lines", finding.Met},
		{"written and far", far, 8 * 0.005 * 2660, 3, "centre from the lines", finding.Short},
		{"a mass is written", massed, 140, 3, "area of the bottom from the lines", ""},
		{"seams", seam, 50 * 40e-6 * 2660, 2.5, "length of the seams from the lines", ""},
		{"no such zone", none, 0, 0, "", finding.NotShown},
	} {
		row.rec.ID = "plate"
		h := &record.Hull{}
		h.Weights = []record.Weight{row.rec}
		r := Assess(h, nil, zones()...)
		it := r.Items[0]
		if math.Abs(float64(it.Mass)-row.mass) > 1e-9 || math.Abs(float64(it.Record.X.V)-row.x) > 1e-12 || it.FromLines != row.from {
			t.Errorf("%s: %v kg at x %v, %q; want %v kg at %v, %q", row.name, it.Mass, it.Record.X.V, it.FromLines, row.mass, row.x, row.from)
		}
		if got := standingOfRule(r, "weight-lines"); got != row.standing {
			t.Errorf("%s: the check is %q, want %q", row.name, got, row.standing)
		}
		if h.Weights[0].X.Set != row.rec.X.Set || h.Weights[0].Area.Set != row.rec.Area.Set {
			t.Errorf("%s: the record itself was changed", row.name)
		}
	}
}

func standingOfRule(r Result, rule string) finding.Standing {
	for _, c := range r.Checks {
		if c.Rule == rule {
			return c.Standing
		}
	}
	return ""
}

// A written area that is not that of the lines is a contradiction that names both.
func TestAreaFarFromTheLines(t *testing.T) {
	h := &record.Hull{}
	h.Weights = []record.Weight{{AreaFrom: record.Written("bottom", finding.Place{}), Area: record.Written(unit.M2(2), finding.Place{}),
		Count: record.Written(4, finding.Place{}), Thickness: record.Written(unit.MM(5), finding.Place{})}}
	for _, f := range Assess(h, nil, zones()...).Findings {
		if f.Rule == "weight-lines" {
			if f.Kind != finding.Contradiction || !strings.Contains(f.Says, "8.00 m²") || !strings.Contains(f.Says, "10.00 m²") {
				t.Errorf("%s: %s", f.Kind, f.Says)
			}
			return
		}
	}
	t.Error("no finding")
}
