package method

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// shippedSheets reads every sheet of the content.
func shippedSheets(t testing.TB) []*Sheet {
	t.Helper()
	names, err := filepath.Glob("../../content/methods/*.toml")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d sheets, %v", len(names), err)
	}
	var all []*Sheet
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		s, err := Load(filepath.Base(name), text)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, s)
	}
	return all
}

// everything gives each input of a scope and of those above it a value, but for one.
func everything(s *Scope, number float64, nth, skip int) GivenMap {
	g := GivenMap{}
	for ; s != nil; s = s.above {
		for i, in := range s.Inputs {
			switch {
			case i == skip:
			case in.Words != nil:
				g[in.From] = Quantity{Word: in.Words[nth%len(in.Words)], IsWord: true}
			default:
				g[in.From] = Quantity{Number: number * (1 + float64(i)/7), Unit: in.Unit}
			}
		}
	}
	return g
}

// A slate gives the states and, to the last bit, the values of a working: of every symbol of every shipped sheet, with values
// inside and outside their ranges and with each value missing in turn; and so does one that reckons answers alone.
func TestASlateGivesWhatAWorkingGives(t *testing.T) {
	rows, outside := 0, 0
	for _, sheet := range shippedSheets(t) {
		for _, sc := range sheet.Scopes {
			whole, lean := slates(t, sheet, sc)
			for _, number := range []float64{0.4, 7, 60, 0, 900} {
				for skip := -1; skip < len(sc.Inputs); skip++ {
					given := everything(sc, number, skip+2, skip)
					w := workedThrough(t, sheet, sc, given)
					for _, s := range slices.Concat(whole, lean) {
						if err := s.Reckon(given); err != nil {
							t.Fatal(err)
						}
					}
					for symbol := range sc.spelt {
						rows++
						outside += sameAs(t, w, whole[len(whole)-1], symbol)
					}
					for _, answers := range sc.Gives {
						for _, symbol := range answers {
							sameAs(t, w, lean[len(lean)-1], symbol)
						}
					}
				}
			}
		}
	}
	if rows < 100000 || outside < 1000 {
		t.Errorf("only %d results were held against each other, %d of them outside a range", rows, outside)
	}
}

// slates prepares those of a scope and of the scopes above it, once whole and once for the answers alone.
func slates(t *testing.T, sheet *Sheet, sc *Scope) (whole, lean []*Slate) {
	t.Helper()
	var above *Slate
	if sc.above != nil {
		whole, _ = slates(t, sheet, sc.above)
		above = whole[len(whole)-1]
	}
	one, err := sheet.Slate(sc.Name, above)
	if err != nil {
		t.Fatal(err)
	}
	few, err := sheet.Slate(sc.Name, above, slices.Sorted(maps.Keys(sc.Gives))...)
	if err != nil {
		t.Fatal(err)
	}
	return append(whole, one), []*Slate{few}
}

func workedThrough(t *testing.T, sheet *Sheet, sc *Scope, given Given) *Working {
	t.Helper()
	var above *Working
	if sc.above != nil {
		above = workedThrough(t, sheet, sc.above, given)
	}
	w, err := sheet.Evaluate(sc.Name, given, above)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// sameAs holds one symbol of a slate against the working, and counts it where it is outside a range.
func sameAs(t *testing.T, w *Working, s *Slate, symbol string) int {
	t.Helper()
	shown, _ := w.Get(symbol)
	v, state, ok := s.Get(symbol)
	want := shown.State
	if want == Broken {
		want = Missing
	}
	if !ok || state != want || v != shown.Value && !shown.IsWord {
		t.Fatalf("%s, %s, %s: %v, %s; the working gives %v, %s", w.Sheet.Name, w.Scope.Name, symbol, v, state, shown.Value, shown.State)
	}
	x, has := s.Value(symbol)
	if y, had := w.Value(symbol); has != had || x != y {
		t.Fatalf("%s, %s, value of %s: %v, %v; the working gives %v, %v", w.Sheet.Name, w.Scope.Name, symbol, x, has, y, had)
	}
	if state == Outside {
		return 1
	}
	return 0
}

func TestASlateIsRefused(t *testing.T) {
	s := trial(t)
	craft, err := s.Slate("craft", nil)
	if err != nil {
		t.Fatal(err)
	}
	for name, make := range map[string]func() (*Slate, error){
		"no such scope":     func() (*Slate, error) { return s.Slate("mast", nil) },
		"nothing above":     func() (*Slate, error) { return s.Slate("panel", nil) },
		"something on top":  func() (*Slate, error) { return s.Slate("craft", craft) },
		"of another sheet":  func() (*Slate, error) { return trial(t).Slate("panel", craft) },
		"of the same scope": func() (*Slate, error) { return s.Slate("craft", craft) },
	} {
		if _, err := make(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if err := craft.Reckon(with(boat(), "boat.speed_kn", num(25, "m"))); err == nil {
		t.Error("a speed in metres was taken")
	}
}

// BenchmarkSlatePanel reckons the panel scope of the usual sheet for its thickness alone.
func BenchmarkSlatePanel(b *testing.B) {
	for _, sheet := range shippedSheets(b) {
		if sheet.Name != "iso-12215-5-2008.toml" {
			continue
		}
		craft, err := sheet.Slate("craft", nil)
		if err != nil {
			b.Fatal(err)
		}
		panel, err := sheet.Slate("panel", craft, "needed")
		if err != nil {
			b.Fatal(err)
		}
		given := everything(panel.scope, 7, 0, -1)
		if err := craft.Reckon(given); err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		for b.Loop() {
			if err := panel.Reckon(given); err != nil || panel.Most("needed") == 0 {
				b.Fatal(err)
			}
		}
	}
}
