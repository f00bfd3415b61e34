package weight

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// weighed makes a weighing at two points: 600 kg at x 0.5 m and 400 kg at x 3.0 m net, so 1 000 kg at x 1.5 m.
func weighed(h *record.Hull) *record.Weighing {
	point := func(key string, x unit.M, reading unit.KG) record.WeighPoint {
		return record.WeighPoint{Entry: record.Entry{ID: key}, X: put(x), Reading: put(reading), Tare: put(unit.KG(10))}
	}
	h.Weighings = []record.Weighing{{
		Entry:       record.Entry{ID: "W1", At: finding.Place{File: "hulls/H1/hull.toml", Line: 20}},
		Points:      []record.WeighPoint{point("aft", 0.5, 610), point("fore", 3, 410)},
		AllowedMass: put(unit.Percent(3)), AllowedCentre: put(unit.MM(75)),
	}}
	return &h.Weighings[0]
}

func TestWeighing(t *testing.T) {
	rows := []struct {
		where  string
		items  []record.Weight
		alter  func(*record.Weighing)
		mass   finding.Standing
		centre finding.Standing
	}{
		{"own arithmetic: as reckoned", []record.Weight{item("a", 1000, 1.5, 0, 0)}, nil, finding.Met, finding.Met},
		{"own arithmetic: 40 kg and 4 % apart", []record.Weight{item("a", 960, 1.5, 0, 0)}, nil, finding.Short, finding.Met},
		{"own arithmetic: 100 mm apart", []record.Weight{item("a", 1000, 1.4, 0, 0)}, nil, finding.Met, finding.Short},
		{"own arithmetic: 40 kg too light and 100 mm too far aft", []record.Weight{item("a", 1040, 1.6, 0, 0)}, nil, finding.Short, finding.Short},
		{"ashore is not counted", []record.Weight{item("a", 1000, 1.5, 0, 0), item("seat", 50, 2, 0, 0)},
			func(w *record.Weighing) { w.Ashore = put([]string{"seat"}) }, finding.Met, finding.Met},
		{"own arithmetic: aboard is counted, (900 x 1.4 + 100 x 2.4)/1000", []record.Weight{item("a", 900, 1.4, 0, 0), carry("fuel", 100, 2.4), carry("crew", 300, 1)},
			func(w *record.Weighing) { w.Aboard = put([]string{"fuel"}) }, finding.Met, finding.Met},
		{"no allowance", []record.Weight{item("a", 1000, 1.5, 0, 0)}, func(w *record.Weighing) {
			w.AllowedMass, w.AllowedCentre = record.Val[unit.Percent]{}, record.Val[unit.MM]{}
		}, finding.NotShown, finding.NotShown},
		{"one place only", []record.Weight{item("a", 1000, 1.5, 0, 0)}, func(w *record.Weighing) { w.Points[1].X = put(unit.M(0.5)) }, finding.Met, finding.NotShown},
		{"no items", nil, nil, finding.NotShown, finding.NotShown},
		{"no points", []record.Weight{item("a", 1000, 1.5, 0, 0)}, func(w *record.Weighing) { w.Points = nil }, finding.NotShown, finding.NotShown},
		{"tare above reading", []record.Weight{item("a", 1000, 1.5, 0, 0)}, func(w *record.Weighing) { w.Points[0].Tare = put(unit.KG(700)) }, finding.NotShown, finding.NotShown},
	}
	for _, r := range rows {
		h := boat(r.items...)
		w := weighed(h)
		if r.alter != nil {
			r.alter(w)
		}
		res := Assess(h, nil)
		mass, centre := one(t, res.Checks, "weighing-mass"), one(t, res.Checks, "weighing-centre")
		if mass.Standing != r.mass || centre.Standing != r.centre {
			t.Errorf("%s: mass %s (%s), centre %s (%s)", r.where, mass.Standing, mass.Says, centre.Standing, centre.Says)
		}
		for _, c := range []finding.Check{mass, centre} {
			f, found := finds(res.Findings, c.Rule)
			if found != (c.Standing == finding.Short) || found && f.Kind != finding.Contradiction {
				t.Errorf("%s: %s is %s, finding %+v", r.where, c.Rule, c.Standing, f)
			}
			if c.Standing != finding.Met && c.Settle == "" {
				t.Errorf("%s: nothing said that would settle %s", r.where, c.Rule)
			}
		}
	}
}

func TestWeighingBalance(t *testing.T) {
	h := boat(item("a", 1010, 1.52, 0, 0))
	rec := weighed(h)
	rec.Points[0].Y, rec.Points[1].Y = put(unit.M(0.1)), put(unit.M(-0.1))
	w := Assess(h, nil).Weighings[0]
	close(t, "own arithmetic: 600 + 400", float64(w.Mass), 1000, 1e-9)
	close(t, "own arithmetic: (300 + 1200)/1000", float64(w.X), 1.5, 1e-9)
	close(t, "own arithmetic: (60 - 40)/1000", float64(w.Y), 0.02, 1e-9)
	close(t, "own arithmetic: weighed less reckoned", float64(w.DiffMass), -10, 1e-9)
	close(t, "own arithmetic: weighed less reckoned, centre", float64(w.DiffX), -20, 1e-9)
	text := strings.Join(w.Working, "\n")
	for _, want := range []string{
		"point aft at x 0.500 m: 610.0 − 10.0 = 600.0 kg", "mass: 600.0 + 400.0 = 1\u00a0000.0 kg",
		"(600.0 × 0.500 + 400.0 × 3.000) / 1\u00a0000.0 = 1.500 m", "light craft = 1\u00a0010.0 kg at x 1.520 m",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("working lacks %q:\n%s", want, text)
		}
	}
}

func TestWeighingNamesTheWrongItems(t *testing.T) {
	h := boat(item("a", 1000, 1.5, 0, 0), carry("crew", 150, 2))
	w := weighed(h)
	w.Aboard, w.Ashore = put([]string{"a"}), put([]string{"crew"})
	all := Assess(h, nil).Findings
	for _, rule := range []string{"weighing-aboard", "weighing-ashore"} {
		if _, found := finds(all, rule); !found {
			t.Errorf("no %s in %v", rule, all)
		}
	}
}

func TestAHullThatWasNotWeighed(t *testing.T) {
	h := boat(item("a", 1000, 1.5, 0, 0))
	if c := one(t, Assess(h, nil).Checks, "weighing-mass"); c.Standing != finding.NotShown || c.Subject != "boat" {
		t.Errorf("%+v", c)
	}
	h.Identity.State = put("design")
	for _, c := range Assess(h, nil).Checks {
		if c.Rule == "weighing-mass" {
			t.Errorf("a design on paper is asked for a weighing")
		}
	}
}
