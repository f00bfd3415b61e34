package section

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/unit"
	"pgregory.net/rapid"
)

func TestImpossibleSections(t *testing.T) {
	for _, row := range []struct {
		shape Shape
		want  string
	}{
		{Shape{Kind: "channel"}, `kind: "channel" is not known; the kinds are flat bar, angle, tee, bulb flat, top hat, box, pipe, built up`},
		{Shape{Kind: FlatBar, Height: 50}, "web thickness: 0 mm, must be above nought"},
		{Shape{Kind: FlatBar, Height: 5, Web: 50}, "height: 5 mm is not above the web thickness, 50 mm: the bar would lie flat"},
		{Shape{Kind: FlatBar, Height: -3, Web: unit.MM(math.NaN()), Flange: 20}, "height: -3 mm, must be above nought\nweb thickness: NaN mm, must be above nought\nflange breadth: 20 mm is given, but a flat bar has none"},
		{Shape{Kind: Angle, Height: 8, Web: 6, Flange: 5, FlangeThickness: 8}, "height: 8 mm leaves no web under a flange of 8 mm\nflange breadth: 5 mm is not above the web thickness, 6 mm"},
		{Shape{Kind: Tee, Height: 80, Web: 6, Flange: 40}, "flange thickness: 0 mm, must be above nought"},
		{Shape{Kind: Pipe, Diameter: 40, Wall: 20}, "wall thickness: 20 mm is not below the radius, 20 mm"},
		{Shape{Kind: Box, Height: 10, Web: 30, Flange: 60, FlangeThickness: 5}, "height: 10 mm leaves no side between top and bottom of 5 mm\nflange breadth: 60 mm leaves no hollow between two sides of 30 mm"},
		{Shape{Kind: Bulb, Height: 120, Web: 6, Area: 931}, "area: of area and centroid only one is given; give both or neither"},
		{Shape{Kind: Bulb, Height: 120, Web: 6, Area: 700, Centroid: 70}, "area: 700 mm² is not above that of the web alone, 720 mm²"},
		{Shape{Kind: Bulb, Height: 120, Web: 6, Area: 931, Centroid: 100}, "centroid: 100 mm puts the bulb at 236.5 mm above the foot, which is not in the upper half of the bar"},
		{Shape{Kind: TopHat, Height: 60, Web: 4, Flange: 50, FlangeThickness: 4, Foot: 20}, "foot breadth: 20 mm with a thickness of 0 mm: give both or neither"},
		{Shape{Kind: BuiltUp}, "pieces: 0 given, must be 1 to 200"},
		{Shape{Kind: BuiltUp, Pieces: []Piece{{"a", Flange, -20, 0, 40, 5}, {"b", "rib", 30, 5, 5, 0}}}, "piece 2 (b) height: 0 mm, must be above nought\npiece 2 (b) role: \"rib\" is not one of web, flange, foot"},
		{Shape{Kind: BuiltUp, Pieces: []Piece{{"a", Flange, -20, 2, 40, 5}, {"b", Flange, 30, 7, 5, 9}, {"c", Flange, 0, 4, 10, 10}}},
			"piece 2 (b): touches none of the others\npiece 3 (c): touches none of the others\npiece 3 (c): lies over piece 1 (a)\npieces: none is a web\npieces: the lowest begins 2.000 mm above the foot, one must begin at nought"},
	} {
		_, err := New(row.shape)
		if err == nil || err.Error() != row.want {
			t.Errorf("%+v:\n%v\nwant\n%s", row.shape, err, row.want)
		}
	}
}

func TestPlatingTwice(t *testing.T) {
	on, err := must(t, Shape{Kind: FlatBar, Height: 50, Web: 5}).With(6, 200)
	if err != nil {
		t.Fatal(err)
	}
	_, err = on.With(0, -1)
	if err == nil || strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("%v, want three faults", err)
	}
}

// Whatever is entered, New ends with a section that has area and inertia, or with faults.
func TestAnyShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string) unit.MM {
			odd := []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e-12, 1e12}
			if k := rapid.IntRange(0, 40).Draw(t, "odd "+name); k < len(odd) {
				return unit.MM(odd[k])
			}
			return unit.MM(rapid.Float64Range(0, 200).Draw(t, name))
		}
		s, err := New(Shape{Kind: rapid.SampledFrom(append(Kinds(), "none")).Draw(t, "kind"), Height: size("h"), Web: size("w") / 10, Flange: size("b"), FlangeThickness: size("tf") / 10,
			Foot: size("foot"), FootThickness: size("tfoot") / 10, Base: size("base"), Diameter: size("d"), Wall: size("wall") / 10})
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		if p := s.Properties(); !(p.Area > 0) || !(p.I > 0) || !(p.AtPlate > 0) || !(p.AtEdge > 0) {
			t.Fatalf("%+v: %+v", s.Shape, p)
		}
	})
}
