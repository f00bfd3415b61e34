package section

import (
	"math"
	"testing"

	"hullfile/engine/unit"
	"pgregory.net/rapid"
)

// wall draws a stack of rectangles that touch, each a piece of a built-up section.
func wall(t *rapid.T) []Piece {
	var pieces []Piece
	at := 0.0
	for i := 0; i < rapid.IntRange(1, 6).Draw(t, "pieces"); i++ {
		b, h := rapid.Float64Range(2, 90).Draw(t, "breadth"), rapid.Float64Range(2, 60).Draw(t, "height")
		pieces = append(pieces, Piece{Name: "p", Role: Web, Left: unit.MM(-b * rapid.Float64Range(0.2, 0.8).Draw(t, "to the left")), Foot: unit.MM(at), Breadth: unit.MM(b), Height: unit.MM(h)})
		at += h
	}
	return pieces
}

func same(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(a)+math.Abs(b)) }

// Cutting a piece in two changes nothing: area, centroid and second moments are sums.
func TestCuttingChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := wall(t)
		whole, err := New(Shape{Kind: BuiltUp, Pieces: pieces})
		if err != nil {
			t.Fatal(err)
		}
		k := rapid.IntRange(0, len(pieces)-1).Draw(t, "which")
		upper := pieces[k]
		part := upper.Height * unit.MM(rapid.Float64Range(0.1, 0.9).Draw(t, "where"))
		lower := upper
		lower.Height = part
		upper.Foot, upper.Height = upper.Foot+part, upper.Height-part
		cut, err := New(Shape{Kind: BuiltUp, Pieces: append(append(append([]Piece(nil), pieces[:k]...), lower, upper), pieces[k+1:]...)})
		if err != nil {
			t.Fatal(err)
		}
		p, q := whole.Properties(), cut.Properties()
		if !same(float64(p.Area), float64(q.Area)) || !same(float64(p.Neutral), float64(q.Neutral)) || !same(float64(p.I), float64(q.I)) ||
			!same(float64(p.Upright), float64(q.Upright)) || !same(float64(p.Product), float64(q.Product)) || !same(float64(p.Paint), float64(q.Paint)) {
			t.Fatalf("whole %+v\ncut %+v", p, q)
		}
	})
}

// A section and its mirror image side by side: twice the area and inertia, the same neutral axis, no product.
func TestMirroredAndDoubled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := wall(t)
		one, err := New(Shape{Kind: BuiltUp, Pieces: pieces})
		if err != nil {
			t.Fatal(err)
		}
		both := append([]Piece(nil), pieces...)
		far := 0.0
		for _, p := range pieces {
			far = math.Max(far, float64(p.Left+p.Breadth))
		}
		for _, p := range pieces {
			p.Left = unit.MM(2*far) - p.Left - p.Breadth
			both = append(both, p)
		}
		two, err := New(Shape{Kind: BuiltUp, Pieces: both})
		if err != nil {
			t.Fatal(err)
		}
		p, q := one.Properties(), two.Properties()
		if !same(2*float64(p.Area), float64(q.Area)) || !same(2*float64(p.I), float64(q.I)) || !same(float64(p.Neutral), float64(q.Neutral)) || !same(float64(q.Across), far) {
			t.Fatalf("one %+v\ntwo %+v", p, q)
		}
		if math.Abs(float64(q.Product)) > 1e-9*float64(q.Upright+q.I) {
			t.Fatalf("product of inertia %v of a section that is the same on both sides", q.Product)
		}
	})
}

// More plating never takes strength away, and the neutral axis never rises with its breadth.
func TestMorePlating(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bar, err := New(Shape{Kind: Tee, Height: unit.MM(rapid.Float64Range(30, 200).Draw(t, "h")), Web: 5, Flange: 40, FlangeThickness: 6})
		if err != nil {
			t.Fatal(err)
		}
		b := rapid.Float64Range(20, 500).Draw(t, "b")
		less, _ := bar.With(6, unit.MM(b))
		more, _ := bar.With(6, unit.MM(b*1.1))
		p, q := less.Properties(), more.Properties()
		if q.I < p.I || q.AtEdge < p.AtEdge || q.Neutral > p.Neutral+1e-9 {
			t.Fatalf("%v mm: %+v, more: %+v", b, p, q)
		}
	})
}

// Heat takes strength away and never adds any, whatever the section, and reaching everything it leaves the given part.
func TestHeatOnlyTakes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bar, err := New(Shape{Kind: BuiltUp, Pieces: wall(t), Joined: rapid.Bool().Draw(t, "joined")})
		if err != nil {
			t.Fatal(err)
		}
		on, err := bar.With(5, 150)
		if err != nil {
			t.Fatal(err)
		}
		left := rapid.Float64Range(0.3, 1).Draw(t, "left")
		reach := unit.MM(rapid.Float64Range(1, 60).Draw(t, "reach"))
		soft, err := on.Heated(Heat{Half: reach, Bar: unit.Ratio(left), Plate: unit.Ratio(left)})
		if err != nil {
			t.Fatal(err)
		}
		p, q := on.Properties(), soft.Properties()
		if float64(q.I) > float64(p.I)*(1+1e-9) || float64(q.I) < left*float64(p.I)*(1-1e-9) || float64(q.Area) > float64(p.Area)*(1+1e-9) {
			t.Fatalf("sound %+v\nsoft %+v", p, q)
		}
		metal := 0.0
		for _, part := range soft.Parts {
			metal += part.moments().area
		}
		if !same(metal, float64(p.Area)*100) {
			t.Fatalf("%v mm² after cutting, %v before", metal, float64(p.Area)*100)
		}
		all, err := on.Heated(Heat{Half: 1e4, Bar: unit.Ratio(left), Plate: unit.Ratio(left)})
		if err != nil {
			t.Fatal(err)
		}
		if r := all.Properties(); !same(float64(r.I), left*float64(p.I)) || !same(float64(r.Neutral), float64(p.Neutral)) {
			t.Fatalf("all softened: I %v, want %v", r.I, left*float64(p.I))
		}
	})
}
