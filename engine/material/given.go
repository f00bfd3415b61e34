package material

import (
	"strings"

	"hullfile/engine/method"
)

// Given hands the values of the alloy to a method sheet under the names "alloy.density_kg_m3",
// "alloy.elastic_kn_mm2", "alloy.poisson", "alloy.parent.tensile_n_mm2", "alloy.parent.yield_n_mm2",
// "alloy.parent.factor_f1" and the same three of "alloy.welded". Why finds out what is missing.
type Given struct {
	at       map[string]method.Quantity
	noParent string
	noWelded string
}

// For makes the Given of this alloy for one use of it.
func (a *Alloy) For(ask Asked) *Given {
	g := &Given{at: map[string]method.Quantity{}}
	g.put("alloy.density_kg_m3", float64(a.Density), "kg/m³", a.DensityFrom)
	g.put("alloy.elastic_kn_mm2", float64(a.Elastic), "kN/mm²", a.ElasticFrom)
	g.put("alloy.poisson", a.Poisson, "", a.ElasticFrom)
	parent, why := a.ParentFor(ask)
	g.noParent = why
	g.strength("alloy.parent.", parent)
	if by, _ := a.ParentBy(ask); by != nil {
		g.put("alloy.parent.factor_f1", by.FactorF1, "", by.Citation)
	}
	welded, why := a.WeldedBy(ask)
	g.noWelded = why
	g.strength("alloy.welded.", welded)
	return g
}

// Lookup finds a value under its name.
func (g *Given) Lookup(from string) (method.Quantity, bool) {
	q, ok := g.at[from]
	return q, ok
}

// Why says why there is no value under a name, empty where there is one or the name is not of an alloy.
func (g *Given) Why(from string) string {
	if _, ok := g.at[from]; ok {
		return ""
	}
	switch {
	case strings.HasPrefix(from, "alloy.parent."):
		return g.noParent
	case strings.HasPrefix(from, "alloy.welded."):
		return g.noWelded
	}
	return ""
}

func (g *Given) strength(prefix string, s *Strength) {
	if s == nil {
		return
	}
	g.put(prefix+"tensile_n_mm2", float64(s.Tensile), mpa, s.Citation)
	g.put(prefix+"yield_n_mm2", float64(s.Yield), mpa, s.Citation)
	g.put(prefix+"factor_f1", s.FactorF1, "", s.Citation)
}

// put keeps a value; a value of zero is one that the source does not give.
func (g *Given) put(name string, v float64, sign string, from Citation) {
	if v == 0 {
		return
	}
	g.at[name] = method.Quantity{Number: v, Unit: sign, Basis: from.Basis, Source: from.String()}
}

const mpa = "N/mm²"

var _ method.Given = (*Given)(nil)
