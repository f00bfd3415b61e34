package material_test

import (
	"testing"

	"hullfile/engine/material"
)

// TestCompositionLimits: ASTM B221M-12a table 1 for 5083 and 5086; 0.50 to 1.0 % manganese and 4.3 to 5.2 % magnesium of
// filler 5183 as suppliers print it. Rows just inside and just outside are our own.
func TestCompositionLimits(t *testing.T) {
	rows := []struct {
		alloy, element string
		value          float64
		text           string
		want           material.Fit
	}{
		{"5083-H116", "Mg", 4.9, "4.9", material.Inside},
		{"5083-H116", "Mg", 4.90, "4.90", material.Inside},
		{"5083-H116", "Mg", 4.94, "4.94", material.Rounded},
		{"5083-H116", "Mg", 4.96, "4.96", material.Beyond},
		{"5083-H116", "Mg", 4.0, "4.0", material.Inside},
		{"5083-H116", "Mg", 3.96, "3.96", material.Rounded},
		{"5083-H116", "Mg", 3.94, "3.94", material.Beyond},
		{"5083-H116", "Mg", 45.1, "45.1", material.Beyond},
		{"5083-H116", "Mg", 5, "5", material.Coarse},
		{"5083-H116", "Fe", 0.40, "0.40", material.Inside},
		{"5083-H116", "Fe", 0.41, "0.41", material.Beyond},
		{"5083-H116", "Fe", 0.404, "0.404", material.Rounded},
		{"5083-H116", "Fe", 0.4, "0.4", material.Inside},
		{"5083-H116", "Zn", 0.25, "0.25", material.Inside},
		{"5083-H116", "Zn", 0.26, "0.26", material.Beyond},
		{"5083-H116", "Cr", 0.04, "0.04", material.Beyond},
		{"5083-H116", "Cr", 0.05, "0.05", material.Inside},
		{"5086-O", "Mg", 3.5, "3.5", material.Inside},
		{"5086-O", "Fe", 0.50, "0.50", material.Inside},
		{"6082-T6", "Si", 0.7, "0.7", material.Inside},
		{"6082-T6", "Si", 0.64, "0.64", material.Beyond},
		{"5754-H111", "Mn+Cr", 0.61, "0.61", material.Rounded},
		{"5754-H111", "Mn+Cr", 0.66, "0.66", material.Beyond},
		{"S Al 5183", "Mg", 4.3, "4.3", material.Inside},
		{"S Al 5183", "Mn", 0.49, "0.49", material.Beyond},
		{"S Al 5183", "Be", 0.0003, "0.0003", material.Inside},
		{"S Al 5183", "Be", 0.0008, "0.0008", material.Beyond},
		{"S Al 4043", "Si", 6.0, "6.0", material.Inside},
		{"S Al 4043", "Mg", 0.06, "0.06", material.Beyond},
	}
	table := shipped(t)
	for _, r := range rows {
		c, ok := table.Composition(r.alloy)
		if !ok {
			t.Errorf("%s has no composition", r.alloy)
			continue
		}
		limit, ok := c.Of(r.element)
		if !ok {
			t.Errorf("%s has no limit for %s", r.alloy, r.element)
			continue
		}
		if got := limit.Judge(r.value, r.text); got != r.want {
			t.Errorf("%s, %s %s against %s: %s, want %s", r.alloy, r.element, r.text, limit, got, r.want)
		}
	}
	if _, ok := table.Composition("7075-T6"); ok {
		t.Error("an alloy that no source gives has a composition")
	}
}

// TestEveryPlateAlloyHasAComposition: what a lot can name can be judged.
func TestEveryPlateAlloyHasAComposition(t *testing.T) {
	table := shipped(t)
	for _, name := range table.Names() {
		if _, ok := table.Composition(name); !ok && name != "6060-T5" {
			t.Errorf("%s has no composition", name)
		}
	}
}

func TestParseLimit(t *testing.T) {
	for _, text := range []string{"", "a", "1-", "4.9-4.0"} {
		if l, err := material.ParseLimit(text); err == nil {
			t.Errorf("%q was read as %v", text, l)
		}
	}
	if l, _ := material.ParseLimit("0.05-0.25"); l.String() != "0.05 to 0.25" {
		t.Errorf("printed as %q", l)
	}
}
