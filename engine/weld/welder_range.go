package weld

import (
	"math"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// WelderRange is what one certificate of a welder qualifies, and for how long.
type WelderRange struct {
	Record    *record.Qualification
	Scheme    *WelderScheme // nil where no table is at hand
	Why       string        // why there is no range
	Processes []string
	Products  []string
	Welds     []string
	Secondary bool // fillets only where they are not the main work
	Thickness Span
	Diameter  Span // of pipe
	Groups    []string
	Butt      []string // positions of butt welds; empty where the certificate is not for them
	Fillet    []string // positions of fillets
	Sides     []string
	Basis     finding.Basis
	Life      Life
}

// OfWelder derives what a certificate qualifies. The standard and the edition are those that its record names.
func (r *Ranges) OfWelder(q *record.Qualification) WelderRange {
	out := WelderRange{Record: q}
	out.Scheme = r.welderScheme(q.Standard.V, q.Edition.V)
	s := out.Scheme
	if s == nil {
		out.Why = r.noScheme(q)
		return out
	}
	out.Basis, out.Processes, out.Products = s.Basis, []string{q.Process.V}, []string{"P"}
	out.Thickness, _ = spanOf(s.Thickness, float64(q.Thickness.V), q.Weld.V, q.Layers.V)
	out.Groups = s.Groups[q.Group.V]
	out.Sides = s.Sides[q.Sides.V]
	out.pipe(q)
	out.positions(q)
	out.Life = s.life(q)
	return out
}

// pipe derives products and diameters.
func (w *WelderRange) pipe(q *record.Qualification) {
	s := w.Scheme
	if q.Product.V == "T" {
		w.Products = []string{"T"}
		w.Diameter, _ = spanOf(s.Diameter, float64(q.Diameter.V), q.Weld.V, q.Layers.V)
		if float64(q.Diameter.V) > s.PipeOver {
			w.Products = []string{"P", "T"}
		}
		return
	}
	least, ok := s.PlateToPipe[q.Position.V]
	if !ok {
		least = s.PlateToPipe["other"]
	}
	w.Diameter = Span{least, math.Inf(1)}
}

// positions derives welds and positions.
func (w *WelderRange) positions(q *record.Qualification) {
	s := w.Scheme
	if q.Weld.V == "fillet" {
		w.Welds, w.Fillet = []string{"fillet"}, s.Positions["fillet_test"][q.Position.V]
		return
	}
	w.Welds, w.Butt = []string{"butt", "fillet"}, s.Positions["butt"][q.Position.V]
	w.Fillet, w.Secondary = s.Positions["fillet"][q.Position.V], s.ButtFillets == "secondary"
}

func (r *Ranges) welderScheme(standard, edition string) *WelderScheme {
	for i := range r.Welders {
		s := &r.Welders[i]
		if s.Standard == plain(standard) && (s.Edition == edition || slices.Contains(s.Also, edition)) {
			return s
		}
	}
	return nil
}

// noScheme says why nothing can be derived from a certificate.
func (r *Ranges) noScheme(q *record.Qualification) string {
	if f := r.foreign(q.Standard.V); f != nil {
		return q.Standard.V + " does not qualify for aluminium: " + f.Why
	}
	why := "no table of ranges is at hand for " + strings.TrimSpace(q.Standard.V+" "+q.Edition.V)
	if !q.Edition.Set {
		why += "; the edition is not written"
	}
	return why
}

func (r *Ranges) foreign(standard string) *Foreign {
	for i := range r.Foreign {
		if r.Foreign[i].Standard == plain(standard) {
			return &r.Foreign[i]
		}
	}
	return nil
}
