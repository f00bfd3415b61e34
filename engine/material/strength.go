package material

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/unit"
)

// Asked says for what a strength is wanted.
type Asked struct {
	Source    string  // name of the source for as-welded values; parent values are taken in the order of use
	Thickness unit.MM // of the plate; zero if it does not matter
	Form      string  // plate, extrusion; an alloy that is not made in this form is taken as it is made
	Filler    string  // filler wire, where a source parts its values by it
}

// ParentFor gives the strength of the parent metal: the first source in order of use that gives a proof strength for
// this form and thickness. Why says what is missing where there is none.
func (a *Alloy) ParentFor(ask Asked) (row *Strength, why string) {
	for i := range a.Parent {
		s := &a.Parent[i]
		if s.Yield > 0 && a.fits(s, ask) && s.Holds(ask.Thickness) {
			return s, ""
		}
	}
	return nil, fmt.Sprintf("no source gives a parent strength of %s at %s", a.Name, thick(ask.Thickness))
}

// WeldedBy gives the as-welded strength that the asked source gives; no other source stands in for it.
// Why says what is missing where there is none.
func (a *Alloy) WeldedBy(ask Asked) (row *Strength, why string) {
	var open []*Strength
	known := false
	for i := range a.Welded {
		s := &a.Welded[i]
		if s.Source.Name != ask.Source || !a.fits(s, ask) {
			continue
		}
		known = true
		if s.Holds(ask.Thickness) && (s.Filler == "" || ask.Filler == "" || s.Filler == ask.Filler) {
			open = append(open, s)
		}
	}
	switch {
	case !known:
		return nil, fmt.Sprintf("%q gives no as-welded strength of %s; it is given by %s", ask.Source, a.Name, a.weldedSources())
	case len(open) == 0:
		return nil, fmt.Sprintf("%q gives no as-welded strength of %s at %s", ask.Source, a.Name, thick(ask.Thickness))
	case len(open) > 1 && open[0].Filler != open[1].Filler:
		return nil, fmt.Sprintf("%q gives the as-welded strength of %s by filler wire, and none is named", ask.Source, a.Name)
	}
	return open[0], ""
}

// fits reports whether the row is for the form that is asked for. Where the alloy is not made in that form, every row fits.
func (a *Alloy) fits(s *Strength, ask Asked) bool {
	return s.Form == "" || ask.Form == "" || s.Form == ask.Form || !slices.Contains(a.Forms, ask.Form)
}

// weldedSources lists the sources of as-welded values, for messages.
func (a *Alloy) weldedSources() string {
	var names []string
	for i := range a.Welded {
		if n := a.Welded[i].Source.Name; !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	if len(names) == 0 {
		return "no source"
	}
	return strings.Join(names, ", ")
}

func thick(t unit.MM) string {
	if t == 0 {
		return "any thickness"
	}
	return unit.Text(t, 1) + " mm"
}
