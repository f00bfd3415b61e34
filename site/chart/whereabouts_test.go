package chart

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// A small picture shows a mark where there is something to point at, escapes its words, and is empty otherwise.
func TestSpots(t *testing.T) {
	k := NewSkin(sampleLines(t))
	if !strings.Contains(k.Markup, `id="hull-skin"`) || strings.Count(k.Markup, "<svg") != 1 {
		t.Fatalf("%.200s", k.Markup)
	}
	one := k.Spot(Pin{Seams: []Seam{{Key: "C1", X: 0.5, Girth: -0.9, ToX: 3, ToGirth: -1}}}, `a <b> "c"`)
	if !strings.Contains(one, "<title>a &lt;b&gt; &#34;c&#34;</title>") || !strings.Contains(one, "g-heavy") || !strings.Contains(one, `<use href="#hull-skin"/>`) {
		t.Errorf("%s", one)
	}
	if n := strings.Count(k.Spot(Pin{Fields: []Field{{Zone: "bottom", X: 2, Long: 0.5}}}, "x"), "g-item"); n != 2 {
		t.Errorf("own arithmetic: a field of the bottom is shaded on %d sides, want 2", n)
	}
	for _, empty := range []string{k.Spot(Pin{}, "x"), NewSkin(lines.Result{}).Spot(Pin{Whole: true}, "x"), NewSkin(lines.Result{}).Markup} {
		if empty != "" {
			t.Errorf("%s", empty)
		}
	}
}

// One disc a person, up to a limit; nothing without lines or places.
func TestPeopleAreCounted(t *testing.T) {
	at := finding.Place{}
	area := record.CrewArea{Name: record.Written("<bench>", at), X: record.Written(unit.M(2), at), Y: record.Written(unit.M(0.9), at), Persons: record.Written(4, at)}
	f := People(sampleLines(t), []record.CrewArea{area}, nil)
	if n := strings.Count(f.SVG, `class="g-person"`); n != 8 || f.Empty {
		t.Errorf("own arithmetic: %d discs in two drawings of four people", n)
	}
	if strings.Contains(f.SVG, "<bench>") {
		t.Error("a name came through as markup")
	}
	if !People(lines.Result{}, []record.CrewArea{area}, nil).Empty || !People(sampleLines(t), nil, nil).Empty {
		t.Error("something is drawn of nothing")
	}
}

func BenchmarkSpot(b *testing.B) {
	k := NewSkin(sampleLines(b))
	for b.Loop() {
		k.Spot(Pin{Fields: []Field{{Zone: "side", X: 2, Long: 0.5}}}, "x")
	}
}
