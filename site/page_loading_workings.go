package site

import (
	"hullfile/engine/capacity"
	"hullfile/engine/method"
)

// LoadingWorking is the working of one scope of a sheet.
type LoadingWorking struct {
	Law     string // key of the label that it belongs to, empty for none
	Title   string
	Sheet   Link
	Work    string
	Why     string
	Working Working
}

// RuleApart is a rule that asks nothing of this boat: one sentence, and what it would say folded away below it.
type RuleApart struct {
	Title    string
	Why      string
	Labels   []LabelPart
	Workings []LoadingWorking
}

// loadingWorkings gives the workings of all sheets that were applied.
func (l *leaf) loadingWorkings(r *capacity.Result) ([]LoadingWorking, error) {
	const us = capacity.LabelUnited
	var out []LoadingWorking
	for _, one := range []struct {
		law, title, prefix, why string
		working                 *method.Working
	}{
		{"", "What the stated masses leave", "mass-", "", r.Figures},
		{us, "Weight and persons by the rule of the United States", "us-", r.American.Why, r.Loading},
		{us, "Horsepower by the rule of the United States", "power-", r.American.Why, r.Power},
		{us, "Foam by the Coast Guard's handbook", "foam-", r.American.Why, r.Flotation},
		{"", "Load and flotation of an undecked boat, France", "fr-", "", r.France},
	} {
		if one.working == nil {
			continue
		}
		working, err := l.working(one.working, one.prefix, "")
		if err != nil {
			return nil, err
		}
		working.Of = one.title
		out = append(out, LoadingWorking{one.law, one.title, l.sheetLink(one.working.Sheet), one.working.Sheet.Work, one.why, working})
	}
	return out, nil
}

// setApart takes what belongs to a law out of the lists of the page, to be folded away. A label that the record puts on
// the boat stays where it is.
func (p *LoadingPage) setApart(title, why, law string) {
	rule := RuleApart{Title: title, Why: why}
	var labels []LabelPart
	for _, label := range p.Labels {
		if label.Law == law && !label.OnBoat {
			rule.Labels = append(rule.Labels, label)
			continue
		}
		labels = append(labels, label)
	}
	var workings []LoadingWorking
	for _, w := range p.Workings {
		if w.Law == law {
			w.Why = "" // said above it
			rule.Workings = append(rule.Workings, w)
			continue
		}
		workings = append(workings, w)
	}
	p.Labels, p.Workings = labels, workings
	p.Apart = append(p.Apart, rule)
}
