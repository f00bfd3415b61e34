package site

import (
	"hullfile/engine/finding"
)

// Where the pages of metal, procedures and people lie, relative to the folder of the hull.
const (
	materialsPath = "materials.html"
	weldingPath   = "welding.html"
)

// metalContents lays these pages out. A hull of whose building nothing is on record has none of them.
func (b *book) metalContents() {
	d := b.dossier
	if d.Stock.Recorded {
		b.top("Materials", materialsPath, "materials", page((*leaf).materialsPage))
	}
	if len(d.Welding.Procedures)+len(d.Welding.Welders)+len(d.Welding.Seams)+len(d.Welding.Stages) > 0 {
		b.top("Procedures and people", weldingPath, "welding", page((*leaf).weldingPage))
	}
}

// metalSubjects are the subjects that these pages show.
func (b *book) metalSubjects(add func(subject, path, anchor string)) {
	d := b.dossier
	if d.Stock.Recorded {
		for _, l := range d.Stock.Lots {
			add("lot "+l.Record.ID, materialsPath, b.anchors.take("lot-"+l.Record.ID))
		}
		for _, p := range d.Stock.Parts {
			add("part "+p.Record.ID, materialsPath, b.anchors.take("part-"+p.Record.ID))
		}
		for _, s := range d.Stock.Supplies {
			add("consumable "+s.Record.ID, materialsPath, b.anchors.take("consumable-"+s.Record.ID))
		}
	}
	for _, p := range d.Welding.Procedures {
		add("procedure "+p.Record.ID, weldingPath, b.anchors.take("procedure-"+p.Record.ID))
	}
	for _, w := range d.Welding.Welders {
		add("welder "+w.Record.ID, weldingPath, b.anchors.take("welder-"+w.Record.ID))
		for _, r := range w.Ranges {
			add("qualification "+r.Record.ID, weldingPath, b.anchors.take("qualification-"+r.Record.ID))
		}
	}
	for _, i := range d.Welding.Inspectors {
		add("inspector "+i.ID, weldingPath, b.anchors.take("inspector-"+i.ID))
	}
}

// metalDisciplines says which of these pages works a rule out.
func (b *book) metalDisciplines(of func(path string, checks []finding.Check, findings []finding.Finding)) {
	d := b.dossier
	if d.Stock.Recorded {
		of(materialsPath, d.Stock.Checks, d.Stock.Findings)
	}
	of(weldingPath, d.Welding.Checks, d.Welding.Findings)
}
