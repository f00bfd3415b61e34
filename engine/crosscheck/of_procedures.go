package crosscheck

import (
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/weld"
)

// unknownProcedure finds welds by a procedure, or a revision of one, that nobody kept.
func unknownProcedure(b *build) []told {
	var none, unknown gathered
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		switch {
		case !w.Procedure.Set:
			none.add(w.ID, w.At)
		case len(b.Procedures[w.Procedure.V]) == 0 || w.Revision.Set && b.Procedure(w.Procedure, w.Revision) == nil:
			unknown.add(w.ID+" ("+strings.TrimSpace(w.Procedure.V+" "+w.Revision.V)+")", w.Procedure.At)
		}
	}
	return append(none.tell("welds", "ask the welders", "no procedure is named for %d of the welds: %s"),
		unknown.tell("welds", "put the procedure, with that revision, into the folder procedures", "a procedure, or a revision of one, that is not on record is named for %d of the welds: %s")...)
}

// wrongRevision finds welds by a revision that was not in use on their day.
func wrongRevision(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		settle := "correct the day or the revision; if it was so, let whoever answers for the welding compare the two revisions"
		switch {
		case !w.Date.Set:
		case p.From.Set && w.Date.V.Before(p.From.V):
			all = append(all, tell("weld "+w.ID, settle, at(w.Date.At, p.From.At), "weld %s was made on %s by %s, which holds only from %s", w.ID, w.Date.V, named(p), p.From.V))
		case p.Until.Set && p.Until.V.Before(w.Date.V):
			all = append(all, tell("weld "+w.ID, settle, at(w.Date.At, p.Until.At), "weld %s was made on %s by %s, which held only until %s", w.ID, w.Date.V, named(p), p.Until.V))
		}
	})
	return append(all, whichRevision(b)...)
}

// whichRevision finds welds that do not say by which of several revisions they were made.
func whichRevision(b *build) []told {
	var open gathered
	for i := range b.Hull.Welds {
		if w := &b.Hull.Welds[i]; w.Procedure.Set && !w.Revision.Set && len(b.Procedures[w.Procedure.V]) > 1 {
			open.add(w.ID, w.Procedure.At)
		}
	}
	return open.tell("welds", "write the revision", "by which revision of the procedure it was made is not said for %d of the welds: %s")
}

// named gives a procedure with its revision in words.
func named(p *record.Procedure) string {
	if p.Revision.Set {
		return "procedure " + weld.Number(p) + " revision " + p.Revision.V
	}
	return "procedure " + weld.Number(p)
}
