package method

import (
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
			t.Errorf("own arithmetic: %s = %q, %s %s, want %q", r.symbol, figure, got.State, got.Why, r.want)
		}
	}
}

// spaced writes common spaces for the no-break ones, so that tests can be read.
func spaced(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }
