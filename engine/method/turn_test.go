package method

import (
	"os"
	"reflect"
	"testing"
)

// A turn gives what the shipped sheet gives otherwise, but for the sentences: with everything written, with values outside
// their ranges, and with values missing.
func TestTurnIsAgainWithoutSentences(t *testing.T) {
	text, err := os.ReadFile("../../content/methods/iso-12215-5-2008.toml")
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := Load("iso-12215-5-2008.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	var craft, panel *Scope
	for _, s := range sheet.Scopes {
		switch s.Name {
		case "craft":
			craft = s
		case "panel":
			panel = s
		}
	}
	give := func(s *Scope, number float64, skip int) GivenMap {
		g := GivenMap{}
		for i, in := range s.Inputs {
			switch {
			case i == skip:
			case in.Words != nil:
				g[in.From] = Quantity{Word: in.Words[0], IsWord: true}
			default:
				g[in.From] = Quantity{Number: number, Unit: in.Unit}
			}
		}
		return g
	}
	rows := 0
	for _, number := range []float64{0.5, 7, 60, 0} {
		above, err := sheet.Evaluate("craft", give(craft, number, -1), nil)
		if err != nil {
			t.Fatal(err)
		}
		turned, err := sheet.Evaluate("panel", nil, above)
		if err != nil {
			t.Fatal(err)
		}
		for skip := range len(panel.Inputs) {
			given := give(panel, number, skip)
			want, err := sheet.Evaluate("panel", given, above)
			if err != nil {
				t.Fatal(err)
			}
			if err := turned.Turn(given); err != nil {
				t.Fatal(err)
			}
			for i := range want.Steps {
				rows++
				w, g := want.Steps[i], turned.Steps[i]
				sameDoubts := reflect.DeepEqual(w.Causes(), g.Causes()) && reflect.DeepEqual(w.Lacks(), g.Lacks())
				w.doubt, g.doubt, w.of, g.of = nil, nil, nil, nil
				if !sameDoubts || !reflect.DeepEqual(w, g) {
					t.Fatalf("%v, without %s: %+v, want %+v", number, panel.Inputs[skip].From, g, w)
				}
			}
		}
	}
	if rows < 1000 {
		t.Errorf("only %d results were held against each other", rows)
	}
}
