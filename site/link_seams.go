package site

import (
	"hullfile/engine/finding"
	"hullfile/engine/seam"
)

// Where the pages of seams and inspections lie, relative to the folder of the hull.
const (
	seamsPath       = "seams.html"
	inspectionsPath = "inspections.html"
	repairsPath     = "inspections/repairs.html"
	holdsPath       = "inspections/hold-points.html"
	leaksPath       = "inspections/leak-tests.html"
	tracePath       = "trace.html"
	benchPath       = "bench.html"
)

// mostJointPages is up to how many joints each has a page of its own; of more, so many stand on a page together.
const mostJointPages = 250

// seamContents lays these pages out. A hull without a build record has only the bench sheets, and the seams that its grid proposes.
func (b *book) seamContents() {
	d := b.dossier
	if d.Seams == nil || !seam.Has(d.Hull) {
		if d.Seams != nil && len(d.WeldMap.Rows) > 0 {
			b.top("Seams", seamsPath, "seams", page((*leaf).seamsPage)) // what the grid proposes
		}
		return
	}
	b.jointPages(b.top("Seams", seamsPath, "seams", page((*leaf).seamsPage)))
	looks := b.top("Inspections", inspectionsPath, "inspections", page((*leaf).inspectionsPage))
	below(looks, "Repairs", repairsPath, "repairs", page((*leaf).repairsPage))
	below(looks, "Hold points", holdsPath, "holds", page((*leaf).holdsPage))
	below(looks, "Leak tests", leaksPath, "leaks", page((*leaf).leaksPage))
	b.top("Trace", tracePath, "trace", page((*leaf).tracePage))
}

func (b *book) jointPages(above *section) {
	all := b.dossier.Seams.Joints
	if len(all) <= mostJointPages {
		for _, j := range all {
			path := "seams/" + b.jointSlugs.take(j.Record.ID) + ".html"
			b.jointPage[j.Record.ID] = path
			below(above, "Joint "+j.Record.ID, path, "joint", page(func(l *leaf) (JointsPage, error) { return l.jointsPage([]*seam.Joint{j}) }))
		}
		return
	}
	for from := 0; from < len(all); from += mostJointPages {
		group := all[from:min(from+mostJointPages, len(all))]
		first, last := group[0].Record.ID, group[len(group)-1].Record.ID
		path := "seams/" + b.jointSlugs.take(first+" to "+last) + ".html"
		for _, j := range group {
			b.jointPage[j.Record.ID] = path
		}
		below(above, "Joints "+first+" to "+last, path, "joint", page(func(l *leaf) (JointsPage, error) { return l.jointsPage(group) }))
	}
}

// seamSubjects are the subjects that these pages show.
func (b *book) seamSubjects(add func(subject, path, anchor string)) {
	h := b.dossier.Hull
	if len(b.jointPage) == 0 && b.sectionOf(seamsPath) == b.cover {
		return
	}
	for _, word := range []string{"joints", "welds", "parts"} {
		add(word, seamsPath, "")
	}
	for i := range h.Joints {
		id := h.Joints[i].ID
		add("joint "+id, b.jointPage[id], b.anchors.take("joint-"+id))
	}
	for i := range h.Welds {
		w := &h.Welds[i]
		if path := b.jointPage[w.Joint.V]; path != "" {
			add("weld "+w.ID, path, b.anchors.take("weld-"+w.ID))
			continue
		}
		add("weld "+w.ID, seamsPath, "")
	}
	for _, word := range []string{"inspections", "extent"} {
		add(word, inspectionsPath, "")
	}
	for i := range h.Inspections {
		add("inspection "+h.Inspections[i].ID, inspectionsPath, b.anchors.take("inspection-"+h.Inspections[i].ID))
	}
	for i := range h.Imperfections {
		add("imperfection "+h.Imperfections[i].ID, inspectionsPath, b.anchors.take("imperfection-"+h.Imperfections[i].ID))
	}
	for i := range h.Nonconformities {
		add("nonconformity "+h.Nonconformities[i].ID, repairsPath, b.anchors.take("nonconformity-"+h.Nonconformities[i].ID))
	}
	for i := range h.Repairs {
		add("repair "+h.Repairs[i].ID, repairsPath, b.anchors.take("repair-"+h.Repairs[i].ID))
	}
	add("hold points", holdsPath, "")
	for i := range h.HoldPoints {
		add("hold point "+h.HoldPoints[i].ID, holdsPath, b.anchors.take("hold-"+h.HoldPoints[i].ID))
	}
	for i := range h.LeakTests {
		add("leak test "+h.LeakTests[i].ID, leaksPath, b.anchors.take("leak-"+h.LeakTests[i].ID))
	}
}

// seamDisciplines says which of these pages works a rule out.
func (b *book) seamDisciplines(of func(path string, checks []finding.Check, findings []finding.Finding)) {
	of(inspectionsPath, b.dossier.Inspections.Checks, b.dossier.Inspections.Findings)
}
