package trace

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
)

// touched gathers what a mark touches in one hull, each record once.
type touched struct {
	*search
	h      *record.Hull
	own    []Node
	parts  map[string]bool
	joints map[string]string // key -> through what
	looks  map[string]bool
	papers map[string]bool // keys of documents of this hull that carry the mark
	others []Node
}

// hull follows the mark through one hull. own is the records of the hull that carry the mark themselves.
func (s *search) hull(h *record.Hull) (t Touch, own []Node) {
	w := &touched{search: s, h: h, parts: map[string]bool{}, joints: map[string]string{}, looks: map[string]bool{}, papers: map[string]bool{}}
	w.documents()
	w.cutList()
	w.weldMap()
	w.welded()
	w.inspected()
	w.decided()
	w.measured()
	return w.touch(), w.own
}

func (w *touched) other(kind, key, says string, at finding.Place) {
	w.others = append(w.others, Node{kind, key, says, at})
}

func (w *touched) joint(key, why string) {
	if _, known := w.joints[key]; !known && key != "" {
		w.joints[key] = why
	}
}

// documents finds papers that carry the mark, and certificates of the lots and fillers that do.
func (w *touched) documents() {
	for i := range w.h.Documents {
		d := &w.h.Documents[i]
		switch {
		case w.carries(d):
			w.own = append(w.own, Node{"document", d.ID, d.Title.V + ", hull " + w.h.Number, d.At})
			w.papers[d.ID] = true
		case !d.Number.Set || !w.shown[d.Number.V]:
			continue
		}
		w.other("document", d.ID, d.Title.V, d.At)
	}
}

// cutList finds parts that carry the mark, and those that were cut from a lot that does.
func (w *touched) cutList() {
	for i := range w.h.Parts {
		p := &w.h.Parts[i]
		own := w.any(p.ID)
		if own {
			w.own = append(w.own, Node{"part", p.ID, "hull " + w.h.Number + said(", ", p.Name.V), p.At})
		}
		if own || w.lots[p.Lot.V] || w.any(p.Lot.V) {
			w.parts[p.ID] = true
		}
	}
	for _, p := range w.h.Plated() {
		if p.Lot.Set && (w.lots[p.Lot.V] || w.any(p.Lot.V)) || w.any(p.ID) && w.only != "" {
			w.other(p.Kind, p.ID, p.Where, p.At)
		}
	}
}

func (w *touched) weldMap() {
	for i := range w.h.Joints {
		j := &w.h.Joints[i]
		if w.any(j.ID) {
			w.own = append(w.own, Node{"joint", j.ID, "hull " + w.h.Number + said(", ", j.Where.V), j.At})
			w.joint(j.ID, "itself")
		}
		for _, p := range []string{j.Part.V, j.Other.V} {
			if w.parts[p] {
				w.joint(j.ID, "part "+p)
			}
		}
	}
}

func (w *touched) welded() {
	for i := range w.h.Welds {
		v := &w.h.Welds[i]
		own := w.any(v.ID)
		if own {
			w.own = append(w.own, Node{"weld", v.ID, "hull " + w.h.Number + said(", joint ", v.Joint.V), v.At})
		}
		if own || w.procedures[v.Procedure.V] || w.stamps[v.Welder.V] || w.supplies[v.Filler.V] || w.supplies[v.Gas.V] || w.instruments[v.Machine.V] || w.papers[v.Photo.V] {
			w.joint(v.Joint.V, "weld "+v.ID)
			w.other("weld", v.ID, strings.Join(words("joint "+v.Joint.V, date("", v.Date), said("welder ", v.Welder.V), said("by ", v.Procedure.V)), ", "), v.At)
		}
	}
}

func (w *touched) inspected() {
	joints := map[string]string{}
	for i := range w.h.Welds {
		joints[w.h.Welds[i].ID] = w.h.Welds[i].Joint.V
	}
	for i := range w.h.Inspections {
		v := &w.h.Inspections[i]
		own := w.any(v.ID)
		if own {
			w.own = append(w.own, Node{"inspection", v.ID, "hull " + w.h.Number + said(", joint ", v.Joint.V), v.At})
		}
		if !own && !w.inspectors[v.By.V] && !w.instruments[v.Instrument.V] && !w.papers[v.Document.V] {
			continue
		}
		key := v.Joint.V
		if key == "" {
			key = joints[v.Weld.V]
		}
		w.joint(key, "inspection "+v.ID)
		w.looks[v.ID] = true
		w.other("inspection", v.ID, strings.Join(words(v.Method.V, said("joint ", key), date("", v.Date), v.Result.V), ", "), v.At)
	}
}

// decided finds nonconformities, repairs, points and tests of the joints and people that are touched.
func (w *touched) decided() {
	for i := range w.h.Nonconformities {
		n := &w.h.Nonconformities[i]
		if w.any(n.ID) {
			w.own = append(w.own, Node{"nonconformity", n.ID, "hull " + w.h.Number, n.At})
			w.joint(n.Joint.V, "nonconformity "+n.ID)
		} else if !w.has(n.Joint.V) && !w.lots[n.Lot.V] && !w.parts[n.Part.V] && !w.looks[n.Inspection.V] && !w.people[n.By.V] && !w.people[n.Approved.V] {
			continue
		}
		w.other("nonconformity", n.ID, n.About.V, n.At)
	}
	for i := range w.h.Repairs {
		r := &w.h.Repairs[i]
		if w.stamps[r.Welder.V] || w.procedures[r.Procedure.V] || w.supplies[r.Filler.V] {
			w.joint(r.Joint.V, "repair "+r.ID)
		} else if !w.has(r.Joint.V) && !w.any(r.ID) {
			continue
		}
		w.other("repair", r.ID, strings.Join(words(said("joint ", r.Joint.V), date("", r.Date)), ", "), r.At)
	}
	for i := range w.h.LeakTests {
		t := &w.h.LeakTests[i]
		if !w.any(t.ID) && !w.instruments[t.Instrument.V] && !w.people[t.By.V] && !w.papers[t.Document.V] && !slices.ContainsFunc(t.Joints.V, w.has) {
			continue
		}
		w.other("leak test", t.ID, strings.Join(words(t.Boundary.V, date("", t.Date), t.Result.V), ", "), t.At)
	}
	for i := range w.h.HoldPoints {
		p := &w.h.HoldPoints[i]
		if !w.any(p.ID) && !w.people[p.By.V] && !w.papers[p.Document.V] && !slices.ContainsFunc(p.Joints.V, w.has) {
			continue
		}
		w.other("hold point", p.ID, p.What.V, p.At)
	}
}

func (w *touched) has(joint string) bool { _, is := w.joints[joint]; return is }

// measured finds weighings, trials and issues by an instrument or person.
func (w *touched) measured() {
	for i := range w.h.Weighings {
		if v := &w.h.Weighings[i]; w.instruments[v.Instrument.V] || w.people[v.By.V] || w.papers[v.Document.V] {
			w.other("weighing", v.ID, date("", v.Date), v.At)
		}
	}
	for i := range w.h.Trials {
		if v := &w.h.Trials[i]; w.instruments[v.Instrument.V] || w.people[v.By.V] || w.papers[v.Document.V] {
			w.other("trial", v.ID, date("", v.Date), v.At)
		}
	}
	for _, v := range w.h.Plated() {
		if v.Document.Set && w.papers[v.Document.V] {
			w.other(v.Kind, v.ID, v.Where, v.At)
		}
	}
	if w.people[w.h.Issue.By.V] {
		w.other("issue", w.h.Number, date("of ", w.h.Issue.Date), w.h.Issue.By.At)
	}
}

// touch puts it together. Only the joints that are touched are linked with what stands behind them.
func (w *touched) touch() Touch {
	t := Touch{Hull: w.h.Number, Title: w.h.Title.V, State: w.h.Identity.State.V, Owner: w.h.Identity.Owner.V, Reach: w.h.Identity.Contact.V, Others: w.others}
	for i := range w.h.Parts {
		if p := &w.h.Parts[i]; w.parts[p.ID] {
			t.Parts = append(t.Parts, Node{"part", p.ID, strings.Join(words(p.Name.V, said("lot ", p.Lot.V), said("panel ", p.Panel.V)), ", "), p.At})
		}
	}
	if len(w.joints) == 0 {
		return t
	}
	chains := newChains(w.byKey, w.h, w.joints)
	for i := range w.h.Joints {
		j := &w.h.Joints[i]
		why, is := w.joints[j.ID]
		if !is {
			continue
		}
		t.Metres += float64(j.Length.V)
		t.Joints = append(t.Joints, Joint{Node: Node{"joint", j.ID, seam.Short(j), j.At}, Metres: float64(j.Length.V), Where: j.Where.V, Why: why, Chain: chains.of(j)})
	}
	return t
}
