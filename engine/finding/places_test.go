package finding

import (
	"slices"
	"testing"
)

func TestPlaces(t *testing.T) {
	a, b := Place{File: "hull.toml", Line: 3, Col: 1}, Place{File: "yard.toml", Line: 1}
	if got := Places(b, Place{}, a, b, Place{Line: 7}); !slices.Equal(got, []Place{b, a}) {
		t.Errorf("got %v, want what is known, each once, as it came", got)
	}
	if got := Places(Place{}); got != nil {
		t.Errorf("nothing is known, and it gives %v", got)
	}
}
