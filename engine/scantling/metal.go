package scantling

import (
	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// metal is the values of an alloy at one thickness, beside the wire in its seams that leaves it the weakest.
type metal struct {
	*material.Given
	wire wire
}

// alloys finds the values of an alloy once for each alloy, thickness and form of a hull.
type alloys struct {
	table  *material.Table
	source string // whose as-welded values the method takes
	wires  wires
	found  map[asked]*metal
}

type asked struct {
	name      string
	thickness float64
	form      string
}

// anew is the same alloys for somebody who asks beside others.
func (a *alloys) anew() *alloys {
	return &alloys{table: a.table, source: a.source, wires: a.wires, found: map[asked]*metal{}}
}

// of gives the values of an alloy, nil with a reason where there are none.
func (a *alloys) of(alloy record.Val[string], thickness unit.MM, form string) (*metal, string) {
	name, ok := alloy.Get()
	if !ok {
		return nil, "no alloy is written"
	}
	key := asked{name, float64(thickness), form}
	if m, ok := a.found[key]; ok {
		return m, ""
	}
	kind, ok := a.table.Find(name)
	if !ok {
		return nil, "alloy " + name + " is not in the table of alloys"
	}
	m := a.weakest(kind, key)
	a.found[key] = m
	return m, ""
}

// weakest asks with each wire of the seams and takes the one with the lowest strength beside the weld: any seam may lie in
// the stressed section. A wire for which the source gives nothing is weaker than any.
func (a *alloys) weakest(kind *material.Alloy, key asked) *metal {
	ask := material.Asked{Source: a.source, Thickness: unit.MM(key.thickness), Form: key.form}
	if len(a.wires) == 0 {
		return &metal{kind.For(ask), wire{name: unknownWire}}
	}
	var out *metal
	for _, w := range a.wires {
		ask.Filler = w.name
		if m := (&metal{kind.For(ask), w}); out == nil || m.strength() < out.strength() {
			out = m
		}
	}
	return out
}

// strength orders wires: proof strength beside the weld, or the factor of a source that gives only that; nought where the
// source gives neither.
func (m *metal) strength() float64 {
	for _, name := range []string{"alloy.welded.yield_n_mm2", "alloy.welded.factor_f1"} {
		if q, ok := m.Lookup(name); ok {
			return q.Number
		}
	}
	return 0
}

// yield is the proof strength beside the weld; a source that gives a factor alone means 240 N/mm² times it.
func (m *metal) yield() float64 {
	if m == nil {
		return 0
	}
	if q, ok := m.Lookup("alloy.welded.yield_n_mm2"); ok {
		return q.Number
	}
	if q, ok := m.Lookup("alloy.welded.factor_f1"); ok {
		return 240 * q.Number
	}
	return 0
}

// young is the modulus of elasticity in N/mm².
func (m *metal) young() float64 {
	if m == nil {
		return 0
	}
	q, _ := m.Lookup("alloy.elastic_kn_mm2")
	return 1000 * q.Number
}
