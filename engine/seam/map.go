package seam

import (
	"cmp"
	"slices"

	"hullfile/engine/record"
)

// Map is the build record of one hull, linked. Records that name nothing on the map stand in the lists of strays.
type Map struct {
	*Stock
	Hull            *record.Hull
	Parts           map[string]*record.Part
	Joints          []*Joint // in the order of the record
	ByKey           map[string]*Joint
	Welds           map[string]*record.Weld
	Inspections     map[string]*record.Inspection
	Imperfections   map[string][]*record.Imperfection // by inspection
	Nonconformities map[string]*record.Nonconformity
	Repairs         map[string]*record.Repair
	LeakTests       map[string]*record.LeakTest
	Papers          map[string]*record.Document // by the number printed on them
	JointsOf        map[string][]*Joint         // by part
	StrayWelds      []*record.Weld
	StrayLooks      []*record.Inspection
}

// Joint is one seam of the weld map with all that is on record of it.
type Joint struct {
	Record          *record.Joint
	Parts           [2]*record.Part // nil where none is named, or the one named is not on the cut list
	Welds           []*record.Weld  // in the order of their days
	Looks           []*record.Inspection
	Nonconformities []*record.Nonconformity
	Repairs         []*record.Repair
	LeakTests       []*record.LeakTest
	Holds           []*record.HoldPoint
	lacks           []Lack
}

// Has reports whether a hull has any build record. One that has none is told of once, not seam by seam.
func Has(h *record.Hull) bool {
	return len(h.Parts)+len(h.Joints)+len(h.Welds)+len(h.Inspections)+len(h.Imperfections)+len(h.Nonconformities)+
		len(h.Repairs)+len(h.HoldPoints)+len(h.LeakTests) > 0
}

// NewMap links the build record of a hull with the stock of its yard.
func NewMap(s *Stock, h *record.Hull) *Map {
	m := &Map{
		Stock: s, Hull: h, ByKey: make(map[string]*Joint, len(h.Joints)), Imperfections: map[string][]*record.Imperfection{},
		Parts:           byKey(h.Parts, func(p *record.Part) string { return p.ID }),
		Welds:           byKey(h.Welds, func(w *record.Weld) string { return w.ID }),
		Inspections:     byKey(h.Inspections, func(i *record.Inspection) string { return i.ID }),
		Nonconformities: byKey(h.Nonconformities, func(n *record.Nonconformity) string { return n.ID }),
		Repairs:         byKey(h.Repairs, func(r *record.Repair) string { return r.ID }),
		LeakTests:       byKey(h.LeakTests, func(t *record.LeakTest) string { return t.ID }),
		Papers:          map[string]*record.Document{}, JointsOf: map[string][]*Joint{},
	}
	for i := range h.Documents {
		if n := h.Documents[i].Number; n.Set {
			m.Papers[n.V] = &h.Documents[i]
		}
	}
	m.joints()
	m.welds()
	m.looks()
	m.decisions()
	for _, j := range m.Joints {
		j.lacks = m.lacking(j) // asked a dozen times
	}
	return m
}

func (m *Map) joints() {
	for i := range m.Hull.Joints {
		r := &m.Hull.Joints[i]
		j := &Joint{Record: r, Parts: [2]*record.Part{m.Parts[r.Part.V], m.Parts[r.Other.V]}}
		m.Joints, m.ByKey[r.ID] = append(m.Joints, j), j
		for k, p := range j.Parts {
			if p != nil && (k == 0 || p != j.Parts[0]) {
				m.JointsOf[p.ID] = append(m.JointsOf[p.ID], j)
			}
		}
	}
}

func (m *Map) welds() {
	for i := range m.Hull.Welds {
		w := &m.Hull.Welds[i]
		if j := m.ByKey[w.Joint.V]; j != nil {
			j.Welds = append(j.Welds, w)
		} else {
			m.StrayWelds = append(m.StrayWelds, w)
		}
	}
	for _, j := range m.Joints {
		slices.SortStableFunc(j.Welds, func(a, b *record.Weld) int { return order(a.Date, b.Date) })
	}
}

func (m *Map) looks() {
	for i := range m.Hull.Inspections {
		look := &m.Hull.Inspections[i]
		if j := m.JointOf(look); j != nil {
			j.Looks = append(j.Looks, look)
		} else {
			m.StrayLooks = append(m.StrayLooks, look)
		}
	}
	for _, j := range m.Joints {
		slices.SortStableFunc(j.Looks, func(a, b *record.Inspection) int { return order(a.Date, b.Date) })
	}
	for i := range m.Hull.Imperfections {
		f := &m.Hull.Imperfections[i]
		m.Imperfections[f.Inspection.V] = append(m.Imperfections[f.Inspection.V], f)
	}
}

// JointOf gives the joint that an inspection looked at, by name or through the weld; nil where neither is on the map.
func (m *Map) JointOf(look *record.Inspection) *Joint {
	if j := m.ByKey[look.Joint.V]; j != nil {
		return j
	}
	if w := m.Welds[look.Weld.V]; w != nil && !look.Joint.Set {
		return m.ByKey[w.Joint.V]
	}
	return nil
}

func (m *Map) decisions() {
	for i := range m.Hull.Nonconformities {
		n := &m.Hull.Nonconformities[i]
		if j := m.JointOfNonconformity(n); j != nil {
			j.Nonconformities = append(j.Nonconformities, n)
		}
	}
	for i := range m.Hull.Repairs {
		r := &m.Hull.Repairs[i]
		if j := m.JointOfRepair(r); j != nil {
			j.Repairs = append(j.Repairs, r)
		}
	}
	for i := range m.Hull.LeakTests {
		t := &m.Hull.LeakTests[i]
		for _, key := range t.Joints.V {
			if j := m.ByKey[key]; j != nil {
				j.LeakTests = append(j.LeakTests, t)
			}
		}
	}
	for i := range m.Hull.HoldPoints {
		p := &m.Hull.HoldPoints[i]
		for _, key := range p.Joints.V {
			if j := m.ByKey[key]; j != nil {
				j.Holds = append(j.Holds, p)
			}
		}
	}
}

// JointOfNonconformity gives the joint it is about, by name or through the inspection or imperfection it names.
func (m *Map) JointOfNonconformity(n *record.Nonconformity) *Joint {
	if j := m.ByKey[n.Joint.V]; j != nil {
		return j
	}
	if look := m.LookOf(n); look != nil {
		return m.JointOf(look)
	}
	return nil
}

// LookOf gives the inspection that a nonconformity came out of.
func (m *Map) LookOf(n *record.Nonconformity) *record.Inspection {
	if look := m.Inspections[n.Inspection.V]; look != nil {
		return look
	}
	for i := range m.Hull.Imperfections {
		if f := &m.Hull.Imperfections[i]; n.Imperfection.Set && f.ID == n.Imperfection.V {
			return m.Inspections[f.Inspection.V]
		}
	}
	return nil
}

// JointOfRepair gives the joint that was repaired, by name or through the nonconformity.
func (m *Map) JointOfRepair(r *record.Repair) *Joint {
	if j := m.ByKey[r.Joint.V]; j != nil {
		return j
	}
	if n := m.Nonconformities[r.Nonconformity.V]; n != nil {
		return m.JointOfNonconformity(n)
	}
	return nil
}

// order puts days in order; what has no day comes last.
func order(a, b record.Val[record.Date]) int {
	if a.Set != b.Set {
		if a.Set {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(a.V.Year, b.V.Year), cmp.Compare(a.V.Month, b.V.Month), cmp.Compare(a.V.Day, b.V.Day))
}

// WeldedBy names the stamps of a joint, and the day of its last weld.
func (j *Joint) WeldedBy() (stamps, last string) {
	seen := map[string]bool{}
	for _, w := range j.Welds {
		if s := w.Welder.V; s != "" && !seen[s] {
			seen[s] = true
			stamps += ", " + s
		}
		if w.Date.Set {
			last = w.Date.V.ISO()
		}
	}
	if stamps != "" {
		stamps = stamps[2:]
	}
	return stamps, last
}
