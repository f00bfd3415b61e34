package method

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
)

// FuzzLoad holds that any bytes give a sheet or faults with their place, that no message carries what a terminal would
// obey, and that what loads can be evaluated with nothing given and written out.
func FuzzLoad(f *testing.F) {
	text, err := os.ReadFile("testdata/trial-plating.toml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Add([]byte(step("x > 1 ? K(x) : min(x, 2)**2")))
	f.Add([]byte(step("not (zone in [\"side\"]) ? -x : 1/x")))
	f.Add([]byte("[a]\nabove='a'\n[[a.step]]\n[table]\nx=1\n[[b]]\n"))
	f.Add([]byte("\"\r\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := Load("f.toml", text)
		if err != nil {
			var faults finding.Faults
			if !errors.As(err, &faults) || len(faults) == 0 {
				t.Fatalf("error without faults: %v", err)
			}
			for _, one := range faults {
				if one.Place.File != "f.toml" || one.Place.Line < 1 || one.Place.Col < 1 || one.Says == "" || !clean(one.String()+one.Hint) {
					t.Errorf("fault %#v", one)
				}
			}
			return
		}
		for _, sc := range s.Scopes {
			evaluated(t, s, sc)
		}
	})
}

// FuzzFormula holds the same of the text of one formula, reckoned with values.
func FuzzFormula(f *testing.F) {
	for _, text := range []string{"a + b_1*σ_d/2", "z in [\"side\"] ? -a**2 : T(a)", "clamp(a, 0, 1) < 3 < b_1 ? 1 : sind(pi)", "::abs(a) ?: 1", "{#a..b}?.c", "a // b", "not a > 1 ? 1e400 : .5"} {
		f.Add(text)
	}
	given := GivenMap{"boat.a": {Number: 2}, "boat.b": {Number: -1.5}, "boat.mass": {Number: 2750}, "boat.stress": {Number: 0}, "boat.z": {Word: "side", IsWord: true}}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Load("f.toml", []byte(sheetOf(text)))
		if err != nil {
			if !clean(err.Error()) {
				t.Errorf("message %q", err)
			}
			return
		}
		w, err := s.Evaluate("c", given, nil)
		if err != nil {
			t.Fatal(err)
		}
		y := w.Steps[0]
		if y.State == Sound && (math.IsNaN(y.Value) || math.IsInf(y.Value, 0)) {
			t.Errorf("%s = %v and is called sound", text, y.Value)
		}
		if y.State != Sound && y.Why() == "" {
			t.Errorf("%s is %q and nobody says why", text, y.State)
		}
	})
}

// evaluated reckons a scope and those above it with nothing given.
func evaluated(t *testing.T, s *Sheet, sc *Scope) *Working {
	var above *Working
	if sc.above != nil {
		above = evaluated(t, s, sc.above)
	}
	w, err := s.Evaluate(sc.Name, GivenMap{}, above)
	if err != nil {
		t.Fatal(err)
	}
	for _, st := range w.Steps {
		if st.State == "" || st.State != Sound && st.Why() == "" {
			t.Errorf("%s is %q, why %q", st.Symbol, st.State, st.Why())
		}
		if text := st.Formula.With(w.Get); !clean(text) {
			t.Errorf("%s is written %q", st.Symbol, text)
		}
	}
	return w
}

// TestHostile holds that sheets made to be slow or deep are refused or read in no time.
func TestHostile(t *testing.T) {
	deep := strings.Repeat("(", 900) + "x" + strings.Repeat(")", 900)
	steps := &strings.Builder{}
	for i := range 1500 {
		steps.WriteString(further("s"+strings.Repeat("a", i%7)+string(rune('0'+i%10))+"_"+strings.Repeat("b", i/100), "formula='1'"))
	}
	rows := []struct{ name, text string }{
		{"open brackets", head + "x = " + strings.Repeat("[", 200_000)},
		{"open inline tables", head + "x = " + strings.Repeat("{a=", 60_000)},
		{"dotted key", head + strings.Repeat("a.", 100_000) + "a = 1"},
		{"brackets in a formula", step(deep)},
		{"case in case", step(strings.Repeat("x > (", 35) + "1" + strings.Repeat(") ? 1 : 2", 35))},
		{"many steps", step("1") + steps.String()},
		{"too large", head + strings.Repeat("# remark\n", 40_000)},
		{"long unknown symbol", step(strings.Repeat("q", 1900))},
	}
	for _, r := range rows {
		start := time.Now()
		_, err := Load("f.toml", []byte(r.text))
		if took := time.Since(start); took > 3*time.Second {
			t.Errorf("%s took %v", r.name, took)
		}
		if err != nil && len(err.Error()) > 400_000 {
			t.Errorf("%s gives %d bytes of messages", r.name, len(err.Error()))
		}
	}
}
