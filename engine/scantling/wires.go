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
				out = out.with(c.Classification.V, "the record of welding, lot "+c.ID, h.Welds[i].Filler.At)
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
				out = out.with(class, "welding procedure "+number+", planned", p.Fillers.At)
			}
		}
	}
	return out
}

// with adds a classification once. "S Al 5183" and "ER5183" are both known to alloys and sheets as 5183.
func (w wires) with(class, from string, at finding.Place) wires {
	name := class
	if i := strings.LastIndexFunc(class, func(r rune) bool { return r < '0' || r > '9' }); i >= 0 {
		name = class[i+1:]
	}
	if name == "" {
		name = class
	}
	if slices.ContainsFunc(w, func(one wire) bool { return one.name == name }) {
		return w
	}
	return append(w, wire{name, from, at})
}

// quantity hands a wire to a sheet.
func (w wire) quantity() method.Quantity {
	if w.name == unknownWire {
		return method.Quantity{Word: unknownWire, IsWord: true, Source: "no filler wire is on record"}
	}
	return method.Quantity{Word: w.name, IsWord: true, Place: w.at, Source: w.from}
}
