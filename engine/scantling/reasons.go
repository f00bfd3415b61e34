package scantling

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// lacks gathers why something is not shown, and which record keys would show it.
type lacks struct {
	kind    string // panel, member, bracket or fitting, as record keys begin
	id      string
	derived bool   // laid out from the grid
	alloy   string // record key of its alloy
	section string // record key of its section
	of      *metal
	noMetal string
	whys    []string
	missing []string
}

// look reads the answers of a working that are not there.
func (l *lacks) look(w *method.Working, symbols []string) {
	for _, symbol := range symbols {
		shown, ok := w.Get(symbol)
		if !ok || (shown.State != method.Missing && shown.State != method.Broken) {
			continue
		}
		if len(shown.Lacks()) == 0 {
			l.why(shown.Name + ": " + shown.Why())
		}
		for _, from := range shown.Lacks() {
			key, says := l.lacking(from, w)
			l.miss(key)
			l.why(says)
		}
	}
}

// lacking turns the name of a missing value into the record key that would settle it, and says what is missing. A
// strength is missing because of the alloy, and then the alloy's own reason says more.
func (l *lacks) lacking(from string, w *method.Working) (key, says string) {
	kind, rest, _ := strings.Cut(from, ".")
	says = inputName(w, from) + " is not written"
	switch {
	case kind == l.kind:
		return l.key(rest), says
	case kind == "section":
		return l.section, says
	case kind != "alloy":
		return from, says
	case l.of == nil:
		return l.alloy, l.noMetal
	}
	if why := l.of.Why(from); why != "" {
		says = why
	}
	return l.alloy, says
}

// key is the record key of a value. What is laid out from the grid has no record of its own: its places come from the
// waterline and its plate from the plating.
func (l *lacks) key(name string) string {
	if !l.derived {
		return l.kind + "." + l.id + "." + name
	}
	switch name {
	case "x_m", "z_m", "hull_top_m", "head_m":
		return "boat.draught_m"
	case "attached_mm", "thickness_mm":
		return "plating"
	}
	return "station"
}
func (l *lacks) why(says string) { l.whys = once(l.whys, says) }
func (l *lacks) miss(key string) { l.missing = once(l.missing, key) }

// reasons says why a panel is not shown, and which record keys would show it. Of a panel that is short by one
// thickness it says which others could not be reckoned.
func (p *judged) reasons(w *method.Working, of *metal, noMetal string) {
	if p.Standing == finding.Met {
		return
	}
	l := lacks{kind: "panel", id: p.Record.ID, derived: p.Derived, alloy: p.key("alloy"), of: of, noMetal: noMetal}
	if p.Derived {
		l.alloy = "plating"
	}
	if !p.Record.Thickness.Set {
		l.miss(l.key("thickness_mm"))
		l.why("no thickness is written")
	}
	l.look(w, w.Scope.Gives["needed"])
	if len(l.whys) == 0 && p.Standing == finding.NotShown {
		l.why("the sheet asks for no thickness of such a panel")
	}
	p.Why, p.missing = strings.Join(l.whys, "; "), l.missing
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
