package method

import (
	"reflect"
	"strings"
	"testing"
)

// boat is a craft for the trial sheet: a seven metre boat on the plane.
func boat() GivenMap {
	return GivenMap{
		"boat.category":           {Word: "C", IsWord: true},
		"boat.waterline_length_m": {Number: 5.9, Unit: "m"},
		"boat.chine_beam_m":       {Number: 2.1, Unit: "m"},
		"boat.deadrise_deg":       {Number: 18, Unit: "°"},
		"boat.loaded_mass_kg":     {Number: 2750, Unit: "kg"},
		"boat.speed_kn":           {Number: 34, Unit: "kn"},
	}
}

// panel is a bottom panel for the trial sheet; nobody wrote its height.
func panel() GivenMap {
	return GivenMap{
		"panel.zone":                 {Word: "bottom", IsWord: true},
		"panel.short_side_mm":        {Number: 210, Unit: "mm"},
		"panel.long_side_mm":         {Number: 900, Unit: "mm"},
		"panel.x_m":                  {Number: 4, Unit: "m"},
		"alloy.welded.tensile_n_mm2": {Number: 275, Unit: "N/mm²"},
		"alloy.welded.yield_n_mm2":   {Number: 125, Unit: "N/mm²"},
	}
}

// with gives a copy of the values with one changed; a nil quantity takes it out.
func with(given GivenMap, name string, q *Quantity) GivenMap {
	out := GivenMap{}
	for k, v := range given {
		out[k] = v
	}
	delete(out, name)
	if q != nil {
		out[name] = *q
	}
	return out
}

func works(t testing.TB, s *Sheet, craft, plate GivenMap) *Working {
	t.Helper()
	above, err := s.Evaluate("craft", craft, nil)
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Evaluate("panel", plate, above)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestEvaluateBottomPanel(t *testing.T) {
	w := works(t, trial(t), boat(), panel())
	rows := []struct{ symbol, want string }{
		// own arithmetic, reckoned apart from this package
		{"mode", "planing"}, {"n_1", "6.93 g"}, {"n_CG", "4.42 g"}, {"k_DC", "0.6"}, {"P_base", "98.2 kN/m²"},
		{"P_min", "9.33 kN/m²"}, {"k_L", "1"}, {"A_D", "0.110 m²"}, {"k_AR", "0.636"}, {"P", "62.4 kN/m²"}, {"k_2", "0.5"},
		{"sigma_d", "112.5 N/mm²"}, {"σ_d", "112.5 N/mm²"}, {"t_P", "3.50 mm"}, {"t_min", "3.04 mm"},
	}
	for _, r := range rows {
		got, ok := w.Get(r.symbol)
		if !ok {
			t.Errorf("own arithmetic: %s is not there", r.symbol)
			continue
		}
		if figure := spaced(got.Figure()); got.State != Sound || figure != r.want {
			t.Errorf("own arithmetic: %s = %q, %s %s, want %q", r.symbol, figure, got.State, got.Why(), r.want)
		}
	}
}

// spaced writes common spaces for the no-break ones, so that tests can be read.
func spaced(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// Again overwrites a working with what a fresh one would hold, also after a turn in which something was missing.
func TestAgainIsAFreshEvaluation(t *testing.T) {
	s, err := Load("f.toml", []byte(`title = "t"
work = "w"
edition = "e"
standing = "own"
[[a.input]]
symbol = "x"
name = "x"
unit = "m"
from = "boat.x_m"
most = 5.0
[[a.step]]
symbol = "y"
name = "y"
unit = "m"
formula = "2*x"
clause = "1"
basis = "derived"
`))
	if err != nil {
		t.Fatal(err)
	}
	turns := []GivenMap{{"boat.x_m": {Number: 3, Unit: "m"}}, {}, {"boat.x_m": {Number: 9, Unit: "m"}}, {"boat.x_m": {Number: 4, Unit: "m"}}}
	w, err := s.Evaluate("a", turns[0], nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, g := range turns {
		if err := w.Again(g); err != nil {
			t.Fatal(err)
		}
		fresh, err := s.Evaluate("a", g, nil)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(w.Inputs, fresh.Inputs) || !reflect.DeepEqual(w.Steps, fresh.Steps) {
			t.Errorf("turn %d: %+v, fresh %+v", i, w.Steps, fresh.Steps)
		}
	}
	if err := w.Again(GivenMap{"boat.x_m": {Number: 1, Unit: "kg"}}); err == nil {
		t.Error("another unit was taken")
	}
}
