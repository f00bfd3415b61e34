package chart

import "testing"

func BenchmarkSpeedFuel(b *testing.B) {
	t := sampleTrial()
	run(b, func() Figure { return SpeedFuel(t) })
}
func BenchmarkMileRange(b *testing.B) {
	t := sampleTrial()
	run(b, func() Figure { return MileRange(t) })
}
func BenchmarkTrim(b *testing.B) { t := sampleTrial(); run(b, func() Figure { return Trim(t) }) }
func BenchmarkMargins(b *testing.B) {
	p := samplePanels(26)
	run(b, func() Figure { return Margins(p, nil) })
}
func BenchmarkPanel(b *testing.B) {
	p := samplePanels(1)[0]
	run(b, func() Figure { return Panel(p, sampleBoat()) })
}
func BenchmarkWeightGroups(b *testing.B) {
	w := sampleWeight()
	run(b, func() Figure { return WeightGroups(w) })
}
func BenchmarkCentres(b *testing.B) {
	w := sampleWeight()
	run(b, func() Figure { return Centres(w, sampleBoat()) })
}
func BenchmarkWeighing(b *testing.B) {
	w := sampleWeighing()
	run(b, func() Figure { return Weighing(w) })
}
func BenchmarkSensitivity(b *testing.B) {
	w := sampleWeight()
	run(b, func() Figure { return Sensitivity(w) })
}

// run draws one figure again and again, both widths with table and words, and reports its size.
func run(b *testing.B, draw func() Figure) {
	f := draw()
	if f.Empty {
		b.Fatal("nothing drawn")
	}
	b.ReportAllocs()
	b.SetBytes(int64(len(f.SVG)))
	for b.Loop() {
		draw()
	}
}
