package chart

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// sampleShapes are one section of each kind, of our own making.
func sampleShapes() []section.Shape {
	return []section.Shape{
		{Kind: section.FlatBar, Height: 50, Web: 5},
		{Kind: section.Angle, Height: 80, Web: 6, Flange: 40, FlangeThickness: 8},
		{Kind: section.Tee, Height: 120, Web: 6, Flange: 60, FlangeThickness: 8, Joined: true},
		{Kind: section.Bulb, Height: 100, Web: 6},
		{Kind: section.Bulb, Height: 120, Web: 6, Area: 931, Centroid: 72},
		{Kind: section.TopHat, Height: 60, Web: 4, Flange: 50, FlangeThickness: 4, Foot: 25, FootThickness: 4, Base: 90},
		{Kind: section.Box, Height: 80, Web: 4, Flange: 50, FlangeThickness: 5},
		{Kind: section.Pipe, Diameter: 60, Wall: 4},
		{Kind: section.BuiltUp, Joined: true, Pieces: []section.Piece{{Name: "web", Role: section.Web, Left: -3, Foot: 0, Breadth: 6, Height: 90}, {Name: "cap", Role: section.Flange, Left: -20, Foot: 90, Breadth: 55, Height: 8}}},
	}
}

// sectionOf draws a shape, on plating where some is given, softened where it is.
func sectionOf(t testing.TB, s section.Shape, plating, counts unit.MM) Figure {
	t.Helper()
	sec, err := section.New(s)
	if err != nil {
		t.Fatal(err)
	}
	if plating > 0 {
		if sec, err = sec.With(plating, counts); err != nil {
			t.Fatal(err)
		}
	}
	soft, err := sec.Heated(section.Heat{Half: 25, Bar: 0.58, Plate: 0.58, Source: "sample", Basis: finding.Practice})
	if err != nil {
		t.Fatal(err)
	}
	return Section("L1"+string(s.Kind)+unit.Plain(s.Area)+unit.Plain(plating), "stringer L1", sec, &soft)
}

func TestSectionsAreSound(t *testing.T) {
	for _, shape := range sampleShapes() {
		for _, on := range [][2]unit.MM{{0, 0}, {6, 200}, {4, 40}, {8, 900}} {
			f := sectionOf(t, shape, on[0], on[1])
			sound(t, string(shape.Kind), f)
			if f.Empty {
				t.Errorf("%s is not drawn", shape.Kind)
			}
			if on[0] > 0 && !strings.Contains(f.SVG, "g-hatch") {
				t.Errorf("%s: what heat softened is not hatched", shape.Kind)
			}
		}
	}
}

// A pipe on plating is softened at its foot alone: every stroke of its hatching lies in the lower half.
func TestPipeIsSoftenedAtItsFoot(t *testing.T) {
	f := sectionOf(t, section.Shape{Kind: section.Pipe, Diameter: 60, Wall: 4}, 6, 300)
	all, err := drawingsOf(f.SVG)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range all {
		if len(d.of["g-hatch"]) == 0 || len(d.of["g-stiff"]) != 1 {
			t.Fatalf("%d places of hatching, %d hollows", len(d.of["g-hatch"]), len(d.of["g-stiff"]))
		}
		for _, p := range d.of["g-hatch"] {
			if p.y < d.of["g-stiff"][0].y {
				t.Errorf("hatched at %v, above the middle of the pipe at %v", p, d.of["g-stiff"][0])
			}
		}
	}
}

// The picture and the table say the same: figures of a flat bar on plating, own arithmetic.
func TestSectionSays(t *testing.T) {
	f := sectionOf(t, section.Shape{Kind: section.FlatBar, Height: 50, Web: 5}, 6, 200)
	for _, want := range []string{">neutral axis<", ">7.8 mm<", ">200 mm count<", ">50 mm<", ">I 21.8 cm⁴<", ">W at the free edge 4.52 cm³<"} {
		if !strings.Contains(f.SVG, want) {
			t.Errorf("the drawing does not show %q", want)
		}
	}
	if !strings.Contains(f.Alt, "Neutral axis 7.8 mm above the outer face of the plating") || len(f.Table) != 7 || f.Table[3][1] != "21.8" || len(f.Table[0]) != 4 {
		t.Errorf("said %q, table %v", f.Alt, f.Table)
	}
	if !strings.Contains(f.Note, "softened by welding, 25 mm each way") {
		t.Errorf("note %q", f.Note)
	}
	if !Section("x", "y", section.Section{}, nil).Empty {
		t.Error("a section without metal is drawn")
	}
	hostileName := Section(hostile, hostile, mustSection(t), nil)
	sound(t, "hostile", hostileName)
	if strings.Contains(hostileName.SVG, "<script") || strings.Contains(hostileName.SVG, "<x ") {
		t.Error("a section lets markup through")
	}
}

func mustSection(t testing.TB) section.Section {
	t.Helper()
	s, err := section.New(section.Shape{Kind: section.FlatBar, Height: 50, Web: 5})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestAnySectionIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string, lo, hi float64) unit.MM { return unit.MM(rapid.Float64Range(lo, hi).Draw(t, name)) }
		s, err := section.New(section.Shape{Kind: rapid.SampledFrom([]section.Kind{section.Angle, section.Tee, section.Box, section.TopHat}).Draw(t, "kind"),
			Height: size("h", 10, 4000), Web: size("w", 0.5, 60), Flange: size("b", 2, 3000), FlangeThickness: size("tf", 0.5, 60), Joined: true})
		if err != nil {
			return
		}
		if on, err := s.With(size("plating", 0.3, 80), size("counts", 0.5, 5000)); err == nil && rapid.Bool().Draw(t, "plated") {
			s = on
		}
		soft, err := s.Heated(section.Heat{Half: size("reach", 0.1, 300), Bar: 0.5, Plate: 0.5})
		if err != nil {
			t.Fatal(err)
		}
		check(t, Section("k", wildName(t), s, &soft))
	})
}

func BenchmarkSection(b *testing.B) {
	shape := sampleShapes()[2]
	run(b, func() Figure { return sectionOf(b, shape, 6, 300) })
}
