package chart

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	bending "hullfile/engine/beam"
)

// sampleRing is a frame of our own making.
func sampleRing() bending.Ring {
	load := bending.RingLoad{Bottom: bending.Run{First: 31, Last: 31}, Side: bending.Run{First: 5, Last: 3}, Deck: bending.Run{First: 2.5, Last: 2.5}}
	return bending.Ring{
		Chine: bending.Place{Y: 1, Z: 0.36}, Sheer: bending.Place{Y: 1.12, Z: 1.15}, Camber: 0.04,
		Bottom: bending.Stiffness{EI: 70, EA: 90000}, Side: bending.Stiffness{EI: 35, EA: 60000}, Deck: bending.Stiffness{EI: 25, EA: 50000},
		AtKeel: bending.Rigid, AtChine: bending.Rigid, AtSheer: bending.Hinge, KeelHeld: bending.Firmly, ChineHeld: bending.Upright, SheerHeld: bending.Loosely,
		Starboard: load, Port: load,
	}
}

func ringFigure(t testing.TB, r bending.Ring) Figure {
	t.Helper()
	out, err := r.Solve()
	if err != nil {
		t.Fatal(err)
	}
	return FrameRing("F4", "frame F4", r, out)
}

func TestFrameRing(t *testing.T) {
	r := sampleRing()
	f := ringFigure(t, r)
	sound(t, "ring", f)
	out, _ := r.Solve()
	if f.Empty || len(f.Table) != 7 || !strings.Contains(f.Alt, "bottom frame") || !strings.Contains(f.SVG, ">chine<") {
		t.Errorf("said %q, table %v", f.Alt, f.Table)
	}
	if want := ">" + f.Table[1][2]; !strings.Contains(f.SVG, strings.ReplaceAll(want, "−", "")) {
		t.Errorf("the drawing does not show the moment of the table, %s; %+v", want, out.Beside[0].Moment)
	}
	if !FrameRing("x", "y", r, bending.RingResult{}).Empty {
		t.Error("a ring without a solution is drawn")
	}
	name := FrameRing(hostile, hostile, r, out)
	sound(t, "hostile", name)
	if strings.Contains(name.SVG, "<script") || strings.Contains(name.SVG, "<x ") {
		t.Error("a ring lets markup through")
	}
}

func TestAnyRingIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := sampleRing()
		size := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		r.Chine = bending.Place{Y: size("chine y", 0.05, 6), Z: size("chine z", -1, 3)}
		r.Sheer = bending.Place{Y: size("sheer y", 0.05, 6), Z: r.Chine.Z + size("side", 0.02, 5)}
		r.Starboard.Bottom.First, r.Port.Side.Last = size("starboard", -90, 90), size("port", -90, 90)
		r.AtChine = rapid.SampledFrom([]bending.Joint{bending.Rigid, bending.Hinge}).Draw(t, "chine")
		out, err := r.Solve()
		if err != nil {
			return
		}
		check(t, FrameRing("k", wildName(t), r, out))
	})
}

func BenchmarkFrameRing(b *testing.B) {
	r := sampleRing()
	run(b, func() Figure { return ringFigure(b, r) })
}
