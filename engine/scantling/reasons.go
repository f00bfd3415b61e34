package scantling

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/method"
)

// reasons says why a panel is not shown, and which record keys would show it. Of a panel that is short by one
// thickness it says which others could not be reckoned.
func (p *judged) reasons(w *method.Working, metal *material.Given, noMetal string) {
	if p.Standing == finding.Met {
		return
	}
	var whys []string
	if !p.Record.Thickness.Set {
		p.lacks(p.key("thickness_mm"))
		whys = append(whys, "no thickness is written")
	}
	for _, symbol := range w.Scope.Gives["needed"] {
		shown, ok := w.Get(symbol)
		if !ok || (shown.State != method.Missing && shown.State != method.Broken) {
			continue
		}
		if len(shown.Lacks) == 0 {
			whys = once(whys, shown.Name+": "+shown.Why)
		}
		for _, from := range shown.Lacks {
			key, says := p.lacking(from, w, metal, noMetal)
			p.lacks(key)
			whys = once(whys, says)
		}
	}
	if len(whys) == 0 && p.Standing == finding.NotShown {
		whys = []string{"the sheet asks for no thickness of such a panel"}
	}
	p.Why = strings.Join(whys, "; ")
}

// lacking turns the name of a missing value into the record key that would settle it, and says what is missing. A
// strength is missing because of the alloy, and then the alloy's own reason says more.
func (p *judged) lacking(from string, w *method.Working, metal *material.Given, noMetal string) (key, says string) {
	kind, rest, _ := strings.Cut(from, ".")
	says = inputName(w, from) + " is not written"
	switch {
	case kind == "panel":
		return p.key(rest), says
	case kind != "alloy":
		return from, says
	case metal == nil:
		return p.key("alloy"), noMetal
	}
	if why := metal.Why(from); why != "" {
		says = why
	}
	return p.key("alloy"), says
}

// inputName is what the sheet calls a record value.
func inputName(w *method.Working, from string) string {
	for ; w != nil; w = w.Above {
		for _, in := range w.Scope.Inputs {
			if in.From == from {
				return in.Name
			}
		}
	}
	return from
}

func once(all []string, one string) []string {
	if slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

func (p *judged) key(name string) string { return "panel." + p.Record.ID + "." + name }

func (p *judged) lacks(key string) {
	p.missing = once(p.missing, key)
}
