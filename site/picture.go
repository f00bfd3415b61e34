package site

import (
	"html/template"

	"hullfile/engine/capacity"
	"hullfile/engine/scantling"
	"hullfile/engine/trial"
	"hullfile/engine/weight"
	"hullfile/site/chart"
)

// This file is the only one that calls the renderer of pictures.

// drawing takes a figure of the renderer over. What the drawing says in words stands below it; where there was nothing
// to draw there is no picture.
func drawing(title string, f chart.Figure) Drawing {
	if f.Empty {
		return Drawing{}
	}
	d := Drawing{SVG: template.HTML(f.SVG), Title: title, Note: f.Note} //nolint:gosec // our own renderer, which escapes
	if len(f.Table) > 1 {
		d.Head, d.Rows = f.Table[0], f.Table[1:]
	}
	return d
}

func (l *leaf) marginsPicture() Drawing {
	way := func(p scantling.Panel) string { return l.subject("panel " + p.Record.ID).Href }
	return drawing("Needed and fitted thickness of each panel", chart.Margins(l.dossier.Structure.Panels, way)).says(l.marginsSay())
}

func (l *leaf) panelPicture(p *scantling.Panel) Drawing {
	return drawing("The panel and where it lies", chart.Panel(*p, &l.hull.Boat)).says(panelSays(p))
}

func (l *leaf) groupsPicture() Drawing {
	return drawing("Mass of each group by how it is known", chart.WeightGroups(l.dossier.Weight)).says(l.groupsSay())
}

func (l *leaf) centresPicture() Drawing {
	return drawing("Where the masses lie along the boat", chart.Centres(l.dossier.Weight, &l.hull.Boat)).says(l.centresSay())
}

func (l *leaf) movingPicture() Drawing {
	return drawing("What moves the sums most", chart.Sensitivity(l.dossier.Weight)).says(l.movingSays())
}

func (l *leaf) weighingPicture(w *weight.Weighing) Drawing {
	return drawing("Points, readings and the centre that follows from them", chart.Weighing(*w)).says(weighingSays(w))
}

func (l *leaf) labelPicture(label *capacity.Label) Drawing {
	return drawing(label.Title, chart.Label(*label))
}

func (l *leaf) trialPictures(t *trial.Trial) (speed, mile, trim Drawing) {
	return drawing("Speed and fuel flow over engine speed", chart.SpeedFuel(*t)).says(fastestSays(t)),
		drawing("Fuel for a mile and range over speed", chart.MileRange(*t)).says(leastSays(t)),
		drawing("Running trim over speed", chart.Trim(*t)).says(trimSays(t))
}

func (l *leaf) bodyPicture() Drawing {
	return drawing("Body plan", chart.BodyPlan(l.dossier.Lines)).says(l.sectionsSay())
}

func (l *leaf) viewsPicture() Drawing {
	var frames []float64
	if h := l.dossier.Lines.Hull; h != nil {
		for _, f := range h.Frames {
			frames = append(frames, f.X)
		}
	}
	return drawing("Profile and plan", chart.Arrangement(l.dossier.Lines, frames)).says(l.draughtSays())
}

func (l *leaf) isoPicture() Drawing {
	return drawing("The hull in isometric view", chart.Isometric(l.dossier.Lines)).says(l.hullSays())
}

func (l *leaf) formPictures() (masses, centres Drawing) {
	return drawing("Displacement and surfaces over draught", chart.FormMass(l.dossier.Lines)).says(l.massesSay()),
		drawing("Centres and metacentre over draught", chart.FormCentres(l.dossier.Lines)).says(l.heightsSay())
}

// skinPicture is the outline of the unrolled hull that the small pictures of a page use.
func skinPicture(k chart.Skin) template.HTML { return template.HTML(k.Markup) } //nolint:gosec // our own renderer, which escapes

// spotPicture is a small picture of a place on that outline.
func spotPicture(k chart.Skin, at chart.Pin, words string) template.HTML {
	return template.HTML(k.Spot(at, words)) //nolint:gosec // our own renderer, which escapes
}
