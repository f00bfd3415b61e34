package site

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// Where the pages of the boat under way lie, relative to the folder of the hull.
const (
	predictionPath = "prediction.html"
	ridePath       = "ride.html"
	limitsPath     = "limits.html"
	hoursPath      = "hours.html"
)

// underwayContents lays these pages out after the trials.
func (b *book) underwayContents() {
	b.top("Prediction", predictionPath, "prediction", page((*leaf).predictionPage))
	b.top("Ride", ridePath, "ride", page((*leaf).ridePage))
	b.top("Limits", limitsPath, "limits", page((*leaf).limitsPage))
	b.top("Running hours", hoursPath, "hours", page((*leaf).hoursPage))
}

// underwaySubjects are the subjects that these pages show.
func (b *book) underwaySubjects(add func(subject, path, anchor string)) {
	h := b.hull
	for _, r := range h.Rides {
		add("ride "+r.ID, ridePath, b.anchors.take("ride-"+r.ID))
	}
	for _, r := range h.Hours {
		add("hours "+r.ID, hoursPath, b.anchors.take("hours-"+r.ID))
	}
	for _, r := range h.Looks {
		add("look "+r.ID, hoursPath, b.anchors.take("look-"+r.ID))
	}
	for _, r := range h.Warranties {
		add("warranty "+r.ID, hoursPath, "warranty")
	}
	for _, r := range h.Spots {
		add("spot "+r.ID, hoursPath, "fatigue")
	}
	add("fatigue", hoursPath, "fatigue")
	add("comfort", limitsPath, "")
	add("service", hoursPath, "service")
}

// underwayDisciplines says which of these pages works a rule out.
func (b *book) underwayDisciplines(of func(path string, checks []finding.Check, findings []finding.Finding)) {
	u := b.dossier
	of(predictionPath, nil, u.Prediction.Findings)
	of(ridePath, u.Ride.Checks, u.Ride.Findings)
	of(limitsPath, nil, u.Limits.Findings)
	of(hoursPath, u.Hours.Checks, u.Hours.Findings)
	of(hoursPath, nil, u.Details.Findings)
}

// underwaySheets are the method sheets that these pages use.
func (b *book) underwaySheets() []*method.Sheet {
	u := b.dossier
	out := append([]*method.Sheet(nil), u.Prediction.Sheets...)
	if u.Limits.Model != nil && u.Limits.Model.Sheet != nil {
		out = append(out, u.Limits.Model.Sheet)
	}
	return out
}

// SheetWorking is the working of one scope of a method sheet under a title of its own, folded.
type SheetWorking struct {
	Title   string
	Sheet   Link
	Work    string
	Working Working
}

// sheetWorking gives the working of one scope; ok is false where there is none.
func (l *leaf) sheetWorking(title, prefix string, w *method.Working) (part SheetWorking, ok bool, err error) {
	if w == nil || w.Sheet == nil {
		return SheetWorking{}, false, nil
	}
	working, err := l.working(w, prefix, "")
	working.Of = title
	work := w.Sheet.Work
	if w.Sheet.Edition != "" && !strings.Contains(work, w.Sheet.Edition) {
		work += ", " + w.Sheet.Edition
	}
	return SheetWorking{title, l.sheetLink(w.Sheet), work, working}, true, err
}

// assumed gives the assumptions about one subject, for the page that rests on them.
func (l *leaf) assumed(all []finding.Assumption) []AssumptionRow {
	var out []AssumptionRow
	for _, a := range all {
		out = append(out, AssumptionRow{l.subject(a.Subject), closed(capital(a.Says)), closed(capital(a.Settle)), basis(a.Basis)})
	}
	return out
}
