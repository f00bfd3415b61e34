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
	return a.by(a.Welded, "as-welded", ask)
}

// ParentBy gives the parent strength that the asked source gives; no other source stands in for it.
func (a *Alloy) ParentBy(ask Asked) (row *Strength, why string) { return a.by(a.Parent, "parent", ask) }

func (a *Alloy) by(rows []Strength, kind string, ask Asked) (row *Strength, why string) {
	var open []*Strength
	known := false
	for i := range rows {
		s := &rows[i]
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
		return nil, fmt.Sprintf("%q gives no %s strength of %s; it is given by %s", ask.Source, kind, a.Name, sources(rows))
	case len(open) == 0:
		return nil, fmt.Sprintf("%q gives no %s strength of %s at %s", ask.Source, kind, a.Name, thick(ask.Thickness))
	case len(open) > 1 && open[0].Filler != open[1].Filler:
		return nil, fmt.Sprintf("%q gives the %s strength of %s by filler wire, and none is named", ask.Source, kind, a.Name)
	}
	return open[0], ""
}

// Value gives one figure of one source: the name is "parent" or "welded", a point, and tensile, tensile_most, yield,
// elongation or factor_f1. The sign is its unit. Why says why there is none.
func (a *Alloy) Value(name string, ask Asked) (v float64, sign, why string) {
	kind, figure, _ := strings.Cut(name, ".")
	var row *Strength
	switch kind {
	case "parent":
		row, why = a.ParentBy(ask)
	case "welded":
		row, why = a.WeldedBy(ask)
	default:
		why = fmt.Sprintf("%q is neither a parent nor a welded value", name)
	}
	if row == nil {
		return 0, "", why
	}
	v, sign = row.figure(figure)
	if v == 0 {
		return 0, "", fmt.Sprintf("%q gives no %s of %s", ask.Source, figure, a.Name)
	}
	return v, sign, ""
}

func (s *Strength) figure(name string) (v float64, sign string) {
	switch name {
	case "tensile":
		return float64(s.Tensile), mpa
	case "tensile_most":
		return float64(s.TensileMost), mpa
	case "yield":
		return float64(s.Yield), mpa
	case "elongation":
		return float64(s.Elongation), "%"
	case "factor_f1":
		return s.FactorF1, ""
	}
	return 0, ""
}

// fits reports whether the row is for the form that is asked for. Where the alloy is not made in that form, every row fits.
func (a *Alloy) fits(s *Strength, ask Asked) bool {
	return s.Form == "" || ask.Form == "" || s.Form == ask.Form || !slices.Contains(a.Forms, ask.Form)
}

// sources lists the sources of rows, for messages.
func sources(rows []Strength) string {
	var names []string
	for i := range rows {
		if n := rows[i].Source.Name; !slices.Contains(names, n) {
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
