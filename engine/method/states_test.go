package method

import (
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"hullfile/engine/finding"
)

// number and word give quantities as a record would.
func num(v float64, unit string) *Quantity { return &Quantity{Number: v, Unit: unit} }
func say(w string) *Quantity               { return &Quantity{Word: w, IsWord: true} }

func TestStates(t *testing.T) {
	s := trial(t)
	rows := []struct {
		name         string
		craft, plate GivenMap
		symbol       string
		state        State
		why          string
		causes       []string
		lacks        []string
	}{
		{"input not written", boat(), with(panel(), "panel.x_m", nil), "x", Missing, "not given", []string{"x"}, []string{"panel.x_m"}},
		{"step under a missing input", boat(), with(panel(), "panel.x_m", nil), "k_L", Missing, "distance forward of the aft end of the waterline is not given", []string{"x"}, []string{"panel.x_m"}},
		{"result far under it", boat(), with(panel(), "panel.x_m", nil), "t_P", Missing, "distance forward of the aft end of the waterline is not given", []string{"x"}, []string{"panel.x_m"}},
		{"result beside it", boat(), with(panel(), "panel.x_m", nil), "t_min", Sound, "", nil, nil},
		{"all that is missing is named", with(boat(), "boat.loaded_mass_kg", nil), with(panel(), "panel.x_m", nil), "P", Missing,
			"loaded mass and distance forward of the aft end of the waterline are not given", []string{"m_LDC", "x"}, []string{"boat.loaded_mass_kg", "panel.x_m"}},
		{"condition cannot be told", with(boat(), "boat.loaded_mass_kg", nil), panel(), "n_CG", Missing, "loaded mass is not given", []string{"m_LDC"}, []string{"boat.loaded_mass_kg"}},
		{"input above its most", with(boat(), "boat.speed_kn", num(52, "kn")), panel(), "V", Outside, "52 kn is above 50 kn, the most that the method was made for", []string{"V"}, nil},
		{"input below its least", boat(), with(panel(), "panel.short_side_mm", num(40, "mm")), "b", Outside, "40 mm is below 50 mm, the least that the method was made for", []string{"b"}, nil},
		{"result under an input outside", with(boat(), "boat.speed_kn", num(52, "kn")), panel(), "t_P", Outside,
			"rests on speed V: 52 kn is above 50 kn, the most that the method was made for", []string{"V"}, nil},
		{"range of a step not held", boat(), with(panel(), "panel.long_side_mm", num(150, "mm")), "k_2", Outside,
			"made for cases where long side is at least short side; here 150 mm against 210 mm", []string{"k_2"}, nil},
		{"result under it", boat(), with(panel(), "panel.long_side_mm", num(150, "mm")), "t_P", Outside,
			"rests on aspect-ratio factor k_2: made for cases where long side is at least short side; here 150 mm against 210 mm", []string{"k_2"}, nil},
		{"word outside", boat(), with(panel(), "panel.zone", say("keel")), "zone", Outside, "keel is none of the words that the method knows: bottom, side or deck", []string{"zone"}, nil},
		{"no step holds", boat(), with(panel(), "panel.zone", say("deck")), "P", NotSet, "applies where place of the panel is bottom or side; here it is deck", []string{"P"}, nil},
		{"result under what does not apply", boat(), with(panel(), "panel.zone", say("deck")), "t_P", Missing,
			"needs design pressure P: applies where place of the panel is bottom or side; here it is deck", []string{"P"}, nil},
		{"row of words that is not there", boat(), with(panel(), "panel.zone", say("deck")), "t_min", Broken, "A(zone) has no finite value: place of the panel zone is deck", []string{"t_min"}, nil},
		{"division by nothing", with(boat(), "boat.chine_beam_m", num(0, "m")), panel(), "n_1", Broken, "l_WL / (10 B_C) has no finite value: length on the waterline l_WL is 5.9 m and chine beam B_C is 0 m", []string{"n_1"}, nil},
		{"result under it", with(boat(), "boat.chine_beam_m", num(0, "m")), panel(), "P_base", Broken, "needs dynamic load factor, first form n_1: l_WL / (10 B_C) has no finite value: length on the waterline l_WL is 5.9 m and chine beam B_C is 0 m", []string{"n_1"}, nil},
		{"root of a negative number", boat(), with(panel(), "alloy.welded.yield_n_mm2", num(-125, "N/mm²")), "t_min", Broken,
			"√(125/σ_yw) has no finite value: proof stress, as welded σ_yw is −125 N/mm²", []string{"t_min"}, nil},
		{"height is not needed on the bottom", boat(), panel(), "P", Sound, "", nil, nil},
		{"height is needed on the side", boat(), with(panel(), "panel.zone", say("side")), "P", Missing, "height above the waterline is not given", []string{"z"}, []string{"panel.z_m"}},
	}
	for _, r := range rows {
		got, ok := works(t, s, r.craft, r.plate).Get(r.symbol)
		if !ok {
			t.Errorf("%s: %s is not there", r.name, r.symbol)
			continue
		}
		if got.State != r.state || spaced(got.Why()) != r.why || !slices.Equal(got.Causes(), r.causes) || !slices.Equal(got.Lacks(), r.lacks) {
			t.Errorf("%s: %s is %q, why %q, causes %v, lacks %v; want %q, %q, %v, %v", r.name, r.symbol, got.State, spaced(got.Why()), got.Causes(), got.Lacks(), r.state, r.why, r.causes, r.lacks)
		}
		if usable := got.State == Sound || got.State == Outside; !usable && got.Value != 0 {
			t.Errorf("%s: %s is %q and has the value %v", r.name, r.symbol, got.State, got.Value)
		}
	}
}

func TestMissingInputsOfEachStep(t *testing.T) {
	w := works(t, trial(t), GivenMap{}, GivenMap{})
	for _, all := range [][]Shown{w.Above.Inputs, w.Above.Steps, w.Inputs, w.Steps} {
		for _, s := range all {
			if s.State != Missing || len(s.Lacks()) == 0 || s.Why() != "not given" && !strings.Contains(s.Why(), called(w, s.Lacks()[0])) {
				t.Errorf("%s is %q (%s) with nothing given, lacks %v", s.Symbol, s.State, s.Why(), s.Lacks())
			}
		}
	}
}

func TestBasisTravels(t *testing.T) {
	s := trial(t)
	rows := []struct {
		symbol       string
		basis, rests finding.Basis
	}{
		{"mode", finding.Read, finding.Read},
		{"k_DC", finding.Read, finding.Recalled}, // read, out of a recalled table
		{"P_min", finding.Read, finding.Recalled},
		{"t_P", finding.Read, finding.Recalled},
		{"V", "", ""},
	}
	w := works(t, s, boat(), panel())
	for _, r := range rows {
		if got, _ := w.Get(r.symbol); got.Basis != r.basis || got.Rests != r.rests {
			t.Errorf("%s: basis %q rests on %q, want %q and %q", r.symbol, got.Basis, got.Rests, r.basis, r.rests)
		}
	}
	soft := boat()["boat.speed_kn"]
	soft.Basis = finding.Practice
	w = works(t, s, with(boat(), "boat.speed_kn", &soft), panel())
	if got, _ := w.Get("mode"); got.Basis != finding.Read || got.Rests != finding.Practice {
		t.Errorf("mode: basis %q rests on %q after a soft input", got.Basis, got.Rests)
	}
}

func TestWhatIsRecorded(t *testing.T) {
	w := works(t, trial(t), boat(), panel())
	n, _ := w.Get("n_CG")
	if len(n.Passed) != 1 || n.Passed[0].When.String() != "n_1 ≤ 3" || n.When.String() != "n_1 > 3" || n.Note != "the second form" {
		t.Errorf("n_CG: passed %v, when %v, note %q", n.Passed, n.When, n.Note)
	}
	if want := []string{"V", "m_LDC", "n_1"}; !slices.Equal(n.Uses, want) {
		t.Errorf("n_CG uses %v, want %v", n.Uses, want)
	}
	if n.Name != "dynamic load factor" || n.Unit != "g" || n.Clause != "1.3" {
		t.Errorf("n_CG: name %q, unit %q, clause %q: the second step takes them from the first", n.Name, n.Unit, n.Clause)
	}
	place := finding.Place{File: "hull.toml", Line: 7, Col: 3}
	w = works(t, trial(t), boat(), with(panel(), "panel.x_m", &Quantity{Number: 4, Unit: "m", Place: place, Source: "a drawing"}))
	if x, _ := w.Get("x"); x.Place != place || x.Source != "a drawing" || x.From != "panel.x_m" || x.Formula != nil {
		t.Errorf("x: place %v, source %q, from %q", x.Place, x.Source, x.From)
	}
	if v, ok := w.Value("t_P"); !ok || math.Abs(v-3.498462250978972) > 1e-12 {
		t.Errorf("own arithmetic: t_P = %v %v, want 3.4984622509789", v, ok)
	}
	for _, symbol := range []string{"mode", "z", "nothing"} {
		if v, ok := w.Value(symbol); ok {
			t.Errorf("Value(%s) = %v, want none", symbol, v)
		}
	}
}

func TestOrderKeepsTheSheet(t *testing.T) {
	s := trial(t)
	var got []string
	for _, st := range s.Scopes[0].Steps {
		got = append(got, st.Symbol)
	}
	if want := []string{"mode", "n_1", "n_CG", "n_CG", "k_DC", "P_base", "P_min"}; !slices.Equal(got, want) {
		t.Errorf("order %v, want %v: n_1 stands before what needs it, the rest as in the sheet", got, want)
	}
}

func TestLazy(t *testing.T) {
	rows := []struct {
		formula string
		state   State
		value   float64
	}{
		// own arithmetic; x is 2, nobody wrote w
		{"x > 1 ? x : w", Sound, 2},
		{"x > 3 ? w : x", Sound, 2},
		{"x > 1 or w > 1 ? 1 : 2", Sound, 1},
		{"w > 1 or x > 1 ? 1 : 2", Sound, 1},
		{"w > 1 and x > 3 ? 1 : 2", Sound, 2},
		{"not (w > 1 and x > 3) ? 1 : 2", Sound, 1},
		{"w > 1 and x > 1 ? 1 : 2", Missing, 0},
		{"w > 1 ? 1 : 1", Missing, 0},
		{"x + w", Missing, 0},
		{"0*w", Missing, 0},
		{"min(x, w)", Missing, 0},
		{"x > 1 or 1/(x - 2) > 1 ? 1 : 2", Sound, 1},
		{"1/(x - 2) > 1 ? 1 : 2", Broken, 0},
		{"min(1/(x - 2), 3)", Broken, 0},
		{"x > 1 ? 1 : 1/(x - 2)", Sound, 1},
		{"10**400", Broken, 0},
		{"K(x)", Sound, 20},
		{"K(x + 0.5)", Sound, 25},
		{"K(x/4)", Outside, 10},
		{"K(x*4)", Outside, 40},
		{"S(x)", Sound, 20},
		{"S(x + 0.5)", Sound, 20},
		{"S(x*4)", Sound, 40},
		{"S(x/4)", Outside, 10},
	}
	for _, r := range rows {
		s, err := Load("f.toml", []byte(head+"[[c.input]]\nsymbol='x'\nname='x'\nunit='m'\nfrom='boat.x_m'\n[[c.input]]\nsymbol='w'\nname='w'\nunit='m'\nfrom='boat.w_m'\n"+
			"[[c.step]]\nsymbol='y'\nname='y'\nunit='m'\nclause='1'\nbasis='read'\nformula='"+r.formula+"'\n"+
			"[table.K]\ntitle='k'\nclause='1'\nbasis='read'\nx=[1,2,3,4]\ny=[10,20,30,40]\n[table.S]\ntitle='s'\nclause='1'\nbasis='read'\nstep=true\nx=[1,2,3,4]\ny=[10,20,30,40]\n"))
		if err != nil {
			t.Errorf("%s: %v", r.formula, err)
			continue
		}
		w, err := s.Evaluate("c", GivenMap{"boat.x_m": *num(2, "m")}, nil)
		if err != nil {
			t.Errorf("%s: %v", r.formula, err)
			continue
		}
		if y := w.Steps[0]; y.State != r.state || y.Value != r.value {
			t.Errorf("own arithmetic: %s = %v, %s (%s), want %v, %s", r.formula, y.Value, y.State, y.Why(), r.value, r.state)
		}
	}
}

func TestWrongHandingOver(t *testing.T) {
	s := trial(t)
	craft, err := s.Evaluate("craft", boat(), nil)
	if err != nil {
		t.Fatal(err)
	}
	other, err := trial(t).Evaluate("craft", boat(), nil)
	if err != nil {
		t.Fatal(err)
	}
	rows := []struct {
		name, scope string
		given       GivenMap
		above       *Working
		want        string
	}{
		{"scope", "stiffener", boat(), nil, `trial-plating.toml has no scope "stiffener"`},
		{"nothing above", "panel", panel(), nil, "trial-plating.toml: scope panel needs the working of scope craft of the same sheet"},
		{"another sheet above", "panel", panel(), other, "trial-plating.toml: scope panel needs the working of scope craft of the same sheet"},
		{"something above the top", "craft", boat(), craft, "trial-plating.toml: scope craft stands above all others and takes no working"},
		{"unit", "panel", with(panel(), "panel.x_m", num(4000, "mm")), craft, `trial-plating.toml, scope panel, input x: panel.x_m is given in "mm", the sheet asks for "m"`},
		{"word for a number", "panel", with(panel(), "panel.x_m", say("aft")), craft, `trial-plating.toml, scope panel, input x: panel.x_m is the word "aft", the sheet asks for a number`},
		{"number for a word", "panel", with(panel(), "panel.zone", num(1, "")), craft, "trial-plating.toml, scope panel, input zone: panel.zone is a number, the sheet asks for a word"},
		{"not finite", "panel", with(panel(), "panel.x_m", num(math.Inf(1), "m")), craft, "trial-plating.toml, scope panel, input x: panel.x_m is no finite number"},
	}
	for _, r := range rows {
		_, err := s.Evaluate(r.scope, r.given, r.above)
		if err == nil || err.Error() != r.want {
			t.Errorf("%s: got %v, want %s", r.name, err, r.want)
		}
	}
}

func TestNothingGivenAtAll(t *testing.T) {
	w, err := trial(t).Evaluate("craft", nil, nil)
	if err != nil || w.Inputs[0].State != Missing {
		t.Errorf("nothing given: %v, %v", w, err)
	}
}

func TestWordNeedsNoUnit(t *testing.T) {
	s, err := Load("f.toml", []byte(strings.Replace(step(`x > 1 ? "wide" : zone`), "unit = ''\n", "", 1)))
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Evaluate("c", GivenMap{"panel.x_mm": *num(2, "mm")}, nil)
	if err != nil || w.Steps[0].Word != "wide" || !w.Steps[0].IsWord {
		t.Errorf("got %+v, %v, want the word wide", w.Steps[0], err)
	}
}

func TestManyAtOnce(t *testing.T) {
	s := trial(t)
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for i := range 50 {
				w := works(t, s, boat(), with(panel(), "panel.x_m", num(float64(i)/10, "m")))
				k, _ := w.Get("k_L")
				k.Uses = append(k.Uses, "mine")
				if _, ok := w.Value("t_P"); !ok {
					t.Error("no thickness")
				}
			}
		})
	}
	all.Wait()
	if k, _ := works(t, s, boat(), panel()).Get("k_L"); slices.Contains(k.Uses, "mine") {
		t.Errorf("k_L uses %v: results of one evaluation reach another", k.Uses)
	}
}

// called is the name that the sheet gives to a record value.
func called(w *Working, from string) string {
	for _, all := range [][]Shown{w.Above.Inputs, w.Inputs} {
		for _, s := range all {
			if s.From == from {
				return s.Name
			}
		}
	}
	return "no name for " + from
}
