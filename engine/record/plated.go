package record

import "hullfile/engine/unit"

// Plated is a piece of plate on record: a panel listed by hand, or a plate of the skin from which panels are derived.
type Plated struct {
	Entry
	Kind      string // "panel" or "plating"
	Where     string
	Zone      Val[string]
	Thickness Val[unit.MM]
	Alloy     Val[string]
	Lot       Val[string]
	Document  Val[string]
}

// Plated lists the panels of a hull, and then its plates.
func (h *HullFile) Plated() []Plated {
	out := make([]Plated, 0, len(h.Panels)+len(h.Platings))
	for i := range h.Panels {
		p := &h.Panels[i]
		out = append(out, Plated{Entry: p.Entry, Kind: "panel", Where: p.Where.V, Zone: p.Zone, Thickness: p.Thickness, Alloy: p.Alloy, Lot: p.Lot, Document: p.Document})
	}
	for i := range h.Platings {
		p := &h.Platings[i]
		out = append(out, Plated{Entry: p.Entry, Kind: "plating", Where: p.Zone.V + " plate", Zone: p.Zone, Thickness: p.Thickness, Alloy: p.Alloy, Lot: p.Lot, Document: p.Document})
	}
	return out
}
