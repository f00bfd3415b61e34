package scantling

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// wire is one classification of filler that lies in the seams of a hull, or is planned for them.
type wire struct {
	name string // 5183
	from string // where that is known from, in words
	plan bool   // by a procedure
	at   finding.Place
}

// wires are all of them, each once, in the order of the records.
type wires []wire

// unknownWire is the word that sheets know for a filler that nobody has named.
const unknownWire = "none"

// wiresOf finds the filler of a hull's seams: that of the lots in its record of welding; where nothing is welded yet, what
// the procedures of its joints allow. Both may be empty.
func wiresOf(y *record.Yard, h *record.Hull) wires {
	if y == nil {
		return nil
	}
	if out := weldedWith(y, h); len(out) > 0 {
		return out
	}
	return plannedWith(y, h)
}

func weldedWith(y *record.Yard, h *record.Hull) wires {
	var out wires
	for i := range h.Welds {
		lot, named := h.Welds[i].Filler.Get()
		if !named {
			continue
		}
		for j := range y.Stock.Consumables {
			if c := &y.Stock.Consumables[j]; c.ID == lot && c.Kind.V == "filler" && c.Classification.Set {
				out = out.with(wire{c.Classification.V, "the record of welding, lot " + c.ID, false, h.Welds[i].Filler.At})
			}
		}
	}
	return out
}

func plannedWith(y *record.Yard, h *record.Hull) wires {
	var out wires
	for i := range h.Joints {
		number, named := h.Joints[i].Procedure.Get()
		if !named {
			continue
		}
		for j := range y.Welding.Procedures {
			p := &y.Welding.Procedures[j]
			if p.ID != number && p.Number.V != number {
				continue
			}
			for _, class := range p.Fillers.V {
				out = out.with(wire{class, "welding procedure " + number, true, p.Fillers.At})
			}
		}
	}
	return out
}

// with adds a classification once. "S Al 5183" and "ER5183" are both known to alloys and sheets as 5183.
func (w wires) with(one wire) wires {
	if i := strings.LastIndexFunc(one.name, func(r rune) bool { return r < '0' || r > '9' }); i >= 0 && i+1 < len(one.name) {
		one.name = one.name[i+1:]
	}
	if slices.ContainsFunc(w, func(other wire) bool { return other.name == one.name }) {
		return w
	}
	return append(w, one)
}

// public lists the wires for readers.
func (w wires) public() []Wire {
	var out []Wire
	for _, one := range w {
		out = append(out, Wire{Name: one.name, From: one.from, Planned: one.plan, Place: one.at})
	}
	return out
}

// assumed says what is taken for granted about the wire, where a sheet in use parts its strengths by it.
func (j *judge) assumed() []finding.Assumption {
	if !slices.ContainsFunc(j.rules, func(r *rule) bool { return r.sheet != nil && asks(r.sheet, "alloy.filler") }) {
		return nil
	}
	switch {
	case len(j.wires) == 0:
		return nil // what rests on it is not shown
	case len(j.wires) > 1:
		return []finding.Assumption{{Subject: "boat", Basis: finding.Practice, Settle: "name the wire of each seam, or weld with one",
			Says: "seams hold several filler wires; the one that leaves the metal beside it the weakest is taken everywhere, because any seam may lie in the stressed section"}}
	case j.wires[0].plan:
		return []finding.Assumption{{Subject: "boat", Basis: finding.Practice, Settle: "put the welds on record with the lots of wire that they take",
			Says: "nothing is welded yet by the record; strengths beside welds are those with wire " + j.wires[0].name + ", as planned by " + j.wires[0].from}}
	}
	return nil
}

// asks reports whether any scope of a sheet asks for a value.
func asks(s *method.Sheet, from string) bool {
	for _, sc := range s.Scopes {
		if slices.ContainsFunc(sc.Inputs, func(in *method.Input) bool { return in.From == from }) {
			return true
		}
	}
	return false
}

// quantity hands a wire to a sheet.
func (w wire) quantity() method.Quantity {
	if w.name == unknownWire {
		return method.Quantity{Word: unknownWire, IsWord: true, Source: "no filler wire is on record"}
	}
	return method.Quantity{Word: w.name, IsWord: true, Place: w.at, Source: w.from}
}
