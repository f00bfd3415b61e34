package weld

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// TestRange is what one procedure test qualifies.
type TestRange struct {
	Test      *record.ProcedureTest
	Scheme    *Scheme // nil where no table is at hand
	Why       string  // why there is no range, or what narrows it
	Welds     []string
	Thickness Span
	HasThick  bool
	Throat    Span
	HasThroat bool
	Layers    []string // nil: both
	Positions []string // nil: all
	Groups    []string
	Sides     []string // nil: not parted
	Fillers   []string
	Basis     finding.Basis
}

// OfTest derives what a test qualifies. The standard and the edition are those that its record names; another edition
// never stands in.
func (r *Ranges) OfTest(t *record.ProcedureTest) TestRange {
	out := TestRange{Test: t}
	out.Scheme = r.scheme(t.Standard.V, t.Edition.V)
	s := out.Scheme
	if s == nil {
		out.Why = "no table of ranges is at hand for " + strings.TrimSpace(t.Standard.V+" "+t.Edition.V)
		if !t.Edition.Set {
			out.Why += "; the edition is not written"
		}
		return out
	}
	out.Basis = s.Basis
	out.Welds = []string{t.Weld.V}
	if t.Weld.V == "butt" && s.ButtFillet {
		out.Welds = append(out.Welds, "fillet")
	}
	layers := t.Layers.V
	if !t.Layers.Set {
		layers, out.Why = "single run", "whether it was welded in one run is not written; one run, which qualifies less, is taken"
	}
	out.Thickness, out.HasThick = spanOf(s.Thickness, float64(t.Thickness.V), t.Weld.V, layers)
	if t.Throat.Set {
		out.Throat, out.HasThroat = spanOf(s.Throat, float64(t.Throat.V), t.Weld.V, layers)
	}
	if s.SingleOnly {
		out.Layers = []string{layers}
	}
	if s.Positions != "any" {
		out.Positions = []string{t.Position.V}
	}
	out.others(t)
	return out
}

func (out *TestRange) others(t *record.ProcedureTest) {
	s := out.Scheme
	for _, g := range []string{t.Group.V, t.OtherGroup.V} {
		if g == "" {
			continue
		}
		covers, known := s.Groups[g]
		if !known {
			covers = []string{g}
		}
		for _, c := range covers {
			out.Groups = with(out.Groups, c)
		}
	}
	out.Sides = s.Sides[t.Sides.V]
	out.Fillers = with(nil, t.Filler.V)
	for _, alike := range s.Fillers {
		if slices.Contains(alike, t.Filler.V) {
			out.Fillers = alike
		}
	}
}

func with(all []string, one string) []string {
	if one == "" || slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

// scheme finds the table of one edition.
func (r *Ranges) scheme(standard, edition string) *Scheme {
	for i := range r.Procedures {
		s := &r.Procedures[i]
		if s.Standard == plain(standard) && (s.Edition == edition || slices.Contains(s.Also, edition) || s.Edition == "") {
			return s
		}
	}
	return nil
}

// plain takes the prefixes of adopting bodies off a standard: EN ISO 9606-2 is ISO 9606-2.
func plain(standard string) string {
	for _, before := range []string{"BS EN ISO ", "DIN EN ISO ", "EN ISO "} {
		if rest, ok := strings.CutPrefix(standard, before); ok {
			return "ISO " + rest
		}
	}
	for _, before := range []string{"BS EN ", "DIN EN "} {
		if rest, ok := strings.CutPrefix(standard, before); ok {
			return "EN " + rest
		}
	}
	return standard
}
