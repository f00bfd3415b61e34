package trace

import (
	"strings"

	"hullfile/engine/record"
)

// chains links the joints that are touched in one hull with what stands behind them.
type chains struct {
	parts map[string]*record.Part
	lots  map[string]*record.Lot
	welds map[string][]*record.Weld
	looks map[string][]*record.Inspection
}

func newChains(lots map[string]*record.Lot, h *record.Hull, joints map[string]string) *chains {
	c := &chains{parts: map[string]*record.Part{}, lots: lots, welds: map[string][]*record.Weld{}, looks: map[string][]*record.Inspection{}}
	for i := range h.Parts {
		c.parts[h.Parts[i].ID] = &h.Parts[i]
	}
	of := map[string]string{}
	for i := range h.Welds {
		w := &h.Welds[i]
		if _, asked := joints[w.Joint.V]; asked {
			of[w.ID] = w.Joint.V
			c.welds[w.Joint.V] = append(c.welds[w.Joint.V], w)
		}
	}
	for i := range h.Inspections {
		look := &h.Inspections[i]
		key := look.Joint.V
		if key == "" {
			key = of[look.Weld.V]
		}
		if _, asked := joints[key]; asked {
			c.looks[key] = append(c.looks[key], look)
		}
	}
	return c
}

// of lists what stands behind one joint: its parts with their lots, its welds with procedure, welder and filler, its
// inspections.
func (c *chains) of(j *record.Joint) []Node {
	var all []Node
	for _, key := range []string{j.Part.V, j.Other.V} {
		p := c.parts[key]
		if p == nil {
			continue
		}
		all = append(all, Node{"part", p.ID, p.Name.V, p.At})
		if l := c.lots[p.Lot.V]; l != nil {
			all = append(all, Node{"lot", l.ID, LotSays(l), l.At})
		}
	}
	for _, w := range c.welds[j.ID] {
		all = append(all, Node{"weld", w.ID, strings.Join(words(date("", w.Date), said("by ", w.Procedure.V), said("revision ", w.Revision.V), said("welder ", w.Welder.V), said("filler ", w.Filler.V)), ", "), w.At})
	}
	for _, look := range c.looks[j.ID] {
		all = append(all, Node{"inspection", look.ID, strings.Join(words(look.Method.V, date("", look.Date), said("by ", look.By.V), look.Result.V), ", "), look.At})
	}
	return all
}
