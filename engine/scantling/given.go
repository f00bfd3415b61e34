package scantling

import (
	"strings"

	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// given hands the values of one panel, of the boat and of the panel's alloy to a method sheet, under the names that
// sheets use: "boat.loaded_mass_kg", "panel.short_side_mm", "alloy.welded.yield_n_mm2".
type given struct {
	boat  *record.Boat
	panel *record.Panel // nil for the craft as a whole
	alloy *material.Given
}

// Lookup finds the value that a sheet asks for; ok is false when nobody wrote it.
func (g *given) Lookup(from string) (method.Quantity, bool) {
	kind, key, _ := strings.Cut(from, ".")
	switch {
	case kind == "boat":
		return written(record.Lookup(g.boat, key))
	case kind == "alloy" && g.alloy != nil:
		return g.alloy.Lookup(from)
	case kind == "panel" && g.panel != nil:
		if q, ok := written(record.Lookup(g.panel, key)); ok {
			return q, true
		}
		return g.flat(key)
	}
	return method.Quantity{}, false
}

// flat stands in for a camber that is not written: the record asks to leave it out for flat plate, and flat plate is
// asked for the most.
func (g *given) flat(key string) (method.Quantity, bool) {
	if key != "camber_mm" {
		return method.Quantity{}, false
	}
	return method.Quantity{Unit: "mm", Source: "no camber is written: flat plate"}, true
}

func written(f record.Field, known bool) (method.Quantity, bool) {
	if !known || !f.Set {
		return method.Quantity{}, false
	}
	return method.Quantity{Number: f.Number, Word: f.Word, IsWord: f.IsWord, Unit: f.Unit, Place: f.At}, true
}

// alloys finds the values of an alloy once for each alloy and thickness of a hull.
type alloys struct {
	table  *material.Table
	source string // whose as-welded values the method takes
	found  map[asked]*material.Given
}

type asked struct {
	name      string
	thickness float64
}

// of gives the values of a panel's alloy, nil with a reason where there are none.
func (a *alloys) of(p *record.Panel) (*material.Given, string) {
	name, ok := p.Alloy.Get()
	if !ok {
		return nil, "no alloy is written"
	}
	key := asked{name, float64(p.Thickness.V)}
	if g, ok := a.found[key]; ok {
		return g, ""
	}
	metal, ok := a.table.Find(name)
	if !ok {
		return nil, "alloy " + name + " is not in the table of alloys"
	}
	g := metal.For(material.Asked{Source: a.source, Thickness: p.Thickness.V, Form: "plate"})
	a.found[key] = g
	return g, ""
}

// cite names work and edition of a sheet, with a clause where there is one.
func cite(s *method.Sheet, clause string) string {
	text := s.Work
	if s.Edition != "" {
		text += ":" + s.Edition
	}
	if clause != "" {
		text += ", " + clause
	}
	return text
}
