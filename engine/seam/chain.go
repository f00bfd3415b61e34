package seam

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Lack is one link that is missing from the chain behind a seam.
type Lack struct {
	Link string // "material", "welding" or "inspection"
	Says string
	At   finding.Place
}

// KeepsWaterOut reports whether water stands on one side of the seam.
func (j *Joint) KeepsWaterOut() bool {
	if j.Record.Shell.Set {
		return j.Record.Shell.V
	}
	c := j.Record.Category.V
	return c == "shell" || c == "watertight"
}

// OfShell reports whether the seam is one of the shell: of that category, or in the slamming zone and keeping water out.
func (j *Joint) OfShell() bool {
	c := j.Record.Category.V
	return c == "shell" || c == "slamming zone" && j.Record.Shell.V
}

// Lacks lists what is missing between a seam and its certificates, its qualified welder and its inspection. An empty list
// is a whole chain.
func (m *Map) Lacks(j *Joint) []Lack { return j.lacks }

func (m *Map) lacking(j *Joint) []Lack {
	var all []Lack
	all = append(all, m.lacksMaterial(j)...)
	all = append(all, m.lacksWelding(j)...)
	return append(all, m.lacksLook(j)...)
}

func (m *Map) lacksMaterial(j *Joint) []Lack {
	var all []Lack
	for i, named := range []record.Val[string]{j.Record.Part, j.Record.Other} {
		switch p := j.Parts[i]; {
		case !named.Set:
			all = append(all, Lack{"material", "a part is not named", j.Record.At})
		case p == nil:
			all = append(all, Lack{"material", "part " + named.V + " is not on the cut list", named.At})
		default:
			all = append(all, m.lacksLot(p)...)
		}
	}
	return all
}

func (m *Map) lacksLot(p *record.Part) []Lack {
	lot := m.Lots[p.Lot.V]
	switch {
	case !p.Lot.Set:
		return []Lack{{"material", "part " + p.ID + " names no lot", p.At}}
	case lot == nil:
		return []Lack{{"material", "lot " + p.Lot.V + " of part " + p.ID + " is not in the stock records", p.Lot.At}}
	case lot.Certificate.V == "":
		return []Lack{{"material", "lot " + lot.ID + " of part " + p.ID + " names no certificate", lot.At}}
	case m.Papers[lot.Certificate.V] == nil:
		return []Lack{{"material", "certificate " + lot.Certificate.V + " of lot " + lot.ID + " is not among the documents", lot.Certificate.At}}
	}
	return nil
}

func (m *Map) lacksWelding(j *Joint) []Lack {
	if len(j.Welds) == 0 {
		return []Lack{{"welding", "no weld is recorded", j.Record.At}}
	}
	var all []Lack
	if short := j.Metres() - j.Welded(); short > 0.01 {
		all = append(all, Lack{"welding", "weld records cover only a part of its length", j.Welds[0].At})
	}
	for _, w := range j.Welds {
		all = append(all, m.lacksWeld(w)...)
	}
	return all
}

func (m *Map) lacksWeld(w *record.Weld) []Lack {
	var all []Lack
	lack := func(says string) { all = append(all, Lack{"welding", "weld " + w.ID + " " + says, w.At}) }
	if !w.Date.Set {
		lack("has no day")
	}
	if m.Procedure(w.Procedure, w.Revision) == nil {
		lack("names no procedure that is on record")
	}
	if who := m.Welder(w.Welder, w.Date); who == nil {
		lack("names no welder that is in the register")
	} else if w.Date.Set {
		if held, why := m.Held(who, w.Date.V); len(held) == 0 {
			lack("was made on a day on which its welder held no certificate: " + strings.Join(why, "; "))
		}
	}
	if q, why := m.Uncovered(m.ByKey[w.Joint.V], w); q != nil {
		lack("is outside certificate " + q.ID + " of its welder: " + strings.Join(why, "; "))
	}
	if m.Consumables[w.Filler.V] == nil && !m.without(w) {
		lack("names no lot of filler that is on record")
	}
	return all
}

// without reports whether the procedure of a weld needs no filler.
func (m *Map) without(w *record.Weld) bool {
	p := m.Procedure(w.Procedure, w.Revision)
	return p != nil && (p.Process.V == "142" || p.Process.V == "43")
}

func (m *Map) lacksLook(j *Joint) []Lack {
	switch last := j.LastLook(); {
	case last == nil:
		return []Lack{{"inspection", "no inspection after welding is recorded", j.Record.At}}
	case !last.Result.Set:
		return []Lack{{"inspection", "inspection " + last.ID + " has no result", last.At}}
	case last.Result.V == "rejected":
		return []Lack{{"inspection", "inspection " + last.ID + " rejected it and none after that accepted it", last.At}}
	case len(j.Welds) > 0 && last.Date.Set && j.Welds[len(j.Welds)-1].Date.Set && last.Date.V.Before(j.Welds[len(j.Welds)-1].Date.V):
		return []Lack{{"inspection", "the last inspection, " + last.ID + ", was before the last weld", last.At}}
	}
	return nil
}

// LastLook gives the last inspection after welding, nil where there is none.
func (j *Joint) LastLook() *record.Inspection {
	for i := len(j.Looks) - 1; i >= 0; i-- {
		if j.Looks[i].Stage.V != "in process" {
			return j.Looks[i]
		}
	}
	return nil
}

// Standing gives that of a seam: short where it was rejected or something about it is open, met where its chain is whole.
func (m *Map) Standing(j *Joint) finding.Standing {
	if last := j.LastLook(); last != nil && last.Result.V == "rejected" {
		return finding.Short
	}
	for _, n := range j.Nonconformities {
		if !n.Closed.Set {
			return finding.Short
		}
	}
	if len(m.Lacks(j)) == 0 {
		return finding.Met
	}
	return finding.NotShown
}
