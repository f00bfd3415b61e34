package crosscheck

import "hullfile/engine/record"

// photoNotThere finds photographs and reports that a weld, an inspection or an imperfection names and whose file is not
// there or is not the one on record.
func photoNotThere(b *build) []told {
	if b.papers == nil {
		return nil
	}
	there := map[string]bool{}
	for i := range b.papers.Documents {
		d := &b.papers.Documents[i]
		there[d.Record.ID] = d.Present && d.Matches && d.Bytes > 0
	}
	var all []told
	ask := func(subject string, named record.Val[string]) {
		if named.Set && !there[named.V] {
			all = append(all, tell(subject, "put the file into the documents folder", at(named.At), "%s names document %s, whose file is not there or not the one on record", subject, named.V))
		}
	}
	h := b.Hull
	for i := range h.Welds {
		ask("weld "+h.Welds[i].ID, h.Welds[i].Photo)
	}
	for i := range h.Inspections {
		ask("inspection "+h.Inspections[i].ID, h.Inspections[i].Document)
	}
	for i := range h.Imperfections {
		ask("imperfection "+h.Imperfections[i].ID, h.Imperfections[i].Photo)
	}
	for i := range h.Nonconformities {
		ask("nonconformity "+h.Nonconformities[i].ID, h.Nonconformities[i].Document)
	}
	for i := range h.LeakTests {
		ask("leak test "+h.LeakTests[i].ID, h.LeakTests[i].Document)
	}
	for i := range h.HoldPoints {
		ask("hold point "+h.HoldPoints[i].ID, h.HoldPoints[i].Document)
	}
	return all
}
