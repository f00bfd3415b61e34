package scantling

import (
	"slices"

	"hullfile/engine/method"
)

// footing is what lies under the step that governs: the pressure and the stress that went into it, and whether it is a
// minimum, which knows no pressure. They are told by their units, so that a sheet of the yard's own needs no further words.
type footing struct {
	pressure float64 // kN/m²
	stress   float64 // N/mm²
	loaded   bool    // a pressure lies under it
	stressed bool
}

const (
	pressureUnit = "kN/m²"
	stressUnit   = "N/mm²"
)

func underStep(w *method.Working, symbol string) footing {
	var u footing
	u.pressure, u.loaded = first(w, symbol, pressureUnit)
	u.stress, u.stressed = first(w, symbol, stressUnit)
	return u
}

// first finds the result with a unit that lies nearest under a step: among what the step used, then among what that used.
// Inputs do not count: the strength of a metal is not yet the stress that a sheet allows.
func first(w *method.Working, symbol, sign string) (float64, bool) {
	level := []string{symbol}
	var seen []string
	for len(level) > 0 {
		var below []string
		for _, s := range level {
			shown, ok := w.Get(s)
			if !ok {
				continue
			}
			for _, used := range shown.Uses {
				if slices.Contains(seen, used) {
					continue
				}
				seen = append(seen, used)
				if of, ok := w.Get(used); ok && of.Unit == sign && of.Formula != nil {
					if v, ok := w.Value(used); ok {
						return v, true
					}
				}
				below = append(below, used)
			}
		}
		level = below
	}
	return 0, false
}
