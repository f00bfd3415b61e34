package site

import (
	"slices"
	"strings"
	"testing"
)

// loadingOf gives the page of load and plates of a hull of the demo.
func loadingOf(t *testing.T, job Job, number string) LoadingPage {
	t.Helper()
	p, err := newPress(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range job.Hulls {
		if h.Number != number {
			continue
		}
		o := job.open(h, newShelf(job.Yard))
		o.dossier = o.reckon()
		b := newBook(p, o, nil)
		page, err := b.leaf(b.sectionOf(loadingPath)).loadingPage()
		if err != nil {
			t.Fatal(err)
		}
		return page
	}
	t.Fatalf("no hull %s", number)
	return LoadingPage{}
}

// A rule for boats under 20 feet says of a longer one that it does not apply, once, with its working folded away.
func TestRuleThatDoesNotReachTheBoat(t *testing.T) {
	job := demoJob(t)
	long, short := loadingOf(t, job, "HL74-012"), loadingOf(t, job, "LT56-031")
	american := func(w LoadingWorking) bool { return strings.HasPrefix(w.Work, "33 CFR 183") }
	if len(long.Apart) != 1 || slices.ContainsFunc(long.Workings, american) {
		t.Fatalf("7.4 m: apart %d, workings %d", len(long.Apart), len(long.Workings))
	}
	rule := long.Apart[0]
	if !strings.Contains(rule.Why, "does not apply to this length, 24.3 ft") {
		t.Errorf("why: %q", rule.Why)
	}
	if len(rule.Labels) != 1 || len(rule.Workings) == 0 || !american(rule.Workings[0]) {
		t.Errorf("folded away: %d labels, %d workings", len(rule.Labels), len(rule.Workings))
	}
	for _, row := range long.Limits {
		if strings.Contains(row.Name, "United States") && !strings.Contains(row.Why, "does not apply to this length") {
			t.Errorf("row of the rule: %q", row.Why)
		}
	}
	if len(short.Apart) != 0 || !slices.ContainsFunc(short.Workings, american) {
		t.Errorf("5.6 m: apart %d, workings %d", len(short.Apart), len(short.Workings))
	}
}

// A label that the record puts on the boat is not folded away with the rule.
func TestLabelOnTheBoatStays(t *testing.T) {
	page := LoadingPage{Labels: []LabelPart{{Law: "us", OnBoat: true}, {Law: "au"}}, Workings: []LoadingWorking{{Law: "us"}, {}}}
	page.setApart("title", "why", "us")
	if len(page.Labels) != 2 || len(page.Workings) != 1 || len(page.Apart) != 1 || len(page.Apart[0].Labels) != 0 || len(page.Apart[0].Workings) != 1 {
		t.Errorf("%+v", page)
	}
}
