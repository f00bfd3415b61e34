package method

import (
	"os"
	"testing"
)

func BenchmarkLoad(b *testing.B) {
	text, err := os.ReadFile("testdata/trial-plating.toml")
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load("trial-plating.toml", text); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkEvaluatePanel reckons the panel scope: 7 inputs, 10 symbols in 14 steps.
func BenchmarkEvaluatePanel(b *testing.B) {
	s := trial(b)
	above, err := s.Evaluate("craft", boat(), nil)
	if err != nil {
		b.Fatal(err)
	}
	given := panel()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Evaluate("panel", given, above); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkEvaluateWhole reckons craft and panel: 13 inputs, 16 symbols in 21 steps.
func BenchmarkEvaluateWhole(b *testing.B) {
	s, craft, plate := trial(b), boat(), panel()
	b.ReportAllocs()
	for b.Loop() {
		works(b, s, craft, plate)
	}
}

// BenchmarkEvaluateOutside reckons the same with a speed outside the range, which every pressure carries on.
func BenchmarkEvaluateOutside(b *testing.B) {
	s, craft, plate := trial(b), with(boat(), "boat.speed_kn", num(60, "kn")), panel()
	b.ReportAllocs()
	for b.Loop() {
		works(b, s, craft, plate)
	}
}

func BenchmarkText(b *testing.B) {
	w := works(b, trial(b), boat(), panel())
	k, _ := w.Get("n_1")
	b.ReportAllocs()
	for b.Loop() {
		if k.Formula.With(w.Get) == "" {
			b.Fatal("no text")
		}
	}
}
