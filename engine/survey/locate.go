package survey

import "strings"

// locate says where the subject of an item is, in words and on the hull, where the records say so.
func (in *Input) locate(i *Item) {
	kind, id, _ := strings.Cut(i.Subject, " ")
	switch kind {
	case "panel":
		if p := in.panel(id); p != nil {
			i.Where = p.Record.Zone.V
			if p.Record.Where.V != "" {
				i.Where += ": " + p.Record.Where.V
			}
			i.Spot.Panels = []string{id}
			return
		}
	case "part":
		if p := in.part(id); p != nil {
			i.Where = joinWords(partWords(p), p.Where.V)
			if p.Panel.V != "" {
				i.Spot.Panels = []string{p.Panel.V}
				return
			}
		}
	case "imperfection":
		in.ofImperfection(i, id)
		return
	case "joint":
		if in.Seams != nil && in.Seams.ByKey[id] != nil {
			i.Where = in.Seams.ByKey[id].Record.Where.V
			i.Spot.Joints = []string{id}
			return
		}
	}
	i.Spot.None = true
}

// ofImperfection leads to the joint at whose inspection it was found.
func (in *Input) ofImperfection(i *Item, id string) {
	i.Spot.None = true
	for n := range in.Hull.Imperfections {
		f := &in.Hull.Imperfections[n]
		if f.ID != id || in.Seams == nil || in.Seams.Inspections[f.Inspection.V] == nil {
			continue
		}
		if j := in.Seams.JointOf(in.Seams.Inspections[f.Inspection.V]); j != nil {
			i.Where, i.Spot = joinWords("joint "+j.Record.ID, j.Record.Where.V), Spot{Joints: []string{j.Record.ID}}
		}
	}
}
