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
	all := append(make([]string, 0, 48), symbol) // in the order in which they are come upon, level by level
	for at := 0; at < len(all); at++ {
		shown, ok := w.Get(all[at])
		if !ok {
			continue
		}
		for _, used := range shown.Uses {
			if slices.Contains(all, used) {
				continue
			}
			all = append(all, used)
			if of, ok := w.Get(used); ok && of.Unit == sign && of.Formula != nil {
				if v, ok := w.Value(used); ok {
					return v, true
				}
			}
		}
	}
	return 0, false
}
