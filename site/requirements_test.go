package site

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"hullfile/engine"
	"hullfile/engine/finding"
)

// pageText gives the words of one page of a rendered yard.
func pageText(t *testing.T, dir, name string) (words, markup string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := html.Parse(strings.NewReader(string(text)))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(textOf(doc)), " "), string(text)
}

// TestDraftsDeclareOnlyWhatIsShown: a declaration says that the boat meets the law only where every item of the lists that it
// speaks of is met, and is a draft until the signed paper is on record with its hash.
func TestDraftsDeclareOnlyWhatIsShown(t *testing.T) {
	dir := rendered(t, demoJob(t))
	const declares, nothing, draft = "The maker declares that this boat meets", "Nothing can be declared yet", "Draft, not signed."
	rows := []struct {
		hull, page      string
		declares, draft bool
	}{
		{"HL74-012", "declaration-eu-draft", true, false},
		{"HL74-012", "declaration-uk-draft", true, false},
		{"HL74-013", "declaration-eu-draft", false, true},
		{"HL74-013", "declaration-uk-draft", false, true},
		{"LT56-031", "declaration-eu-draft", false, true},
		{"LT56-031", "declaration-uk-draft", false, true},
	}
	for _, r := range rows {
		words, _ := pageText(t, dir, r.hull+"/requirements/"+r.page+".html")
		if strings.Contains(words, declares) != r.declares || strings.Contains(words, nothing) == r.declares || strings.Contains(words, draft) != r.draft {
			t.Errorf("%s, %s: declares %v, draft %v", r.hull, r.page, strings.Contains(words, declares), strings.Contains(words, draft))
		}
	}
	words, _ := pageText(t, dir, "HL74-012/requirements/test-statement-draft.html")
	for _, want := range []string{draft, "an inclining test whose centre agrees", "tests of tightness", "Joss Tarrow"} {
		if !strings.Contains(words, want) {
			t.Errorf("the statement of tests does not say %q", want)
		}
	}
	words, _ = pageText(t, dir, "LT56-031/requirements/builders-statement-draft.html")
	if !strings.Contains(words, "nothing yet") || strings.Contains(words, "nothing is known to the yard") {
		t.Error("the builder states something over open items")
	}
	saysNowhere(t, dir, "complies")
}

// saysNowhere holds that no page of requirements says a word. That it would be found is shown on a word that is there.
func saysNowhere(t *testing.T, dir, word string) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*", "requirements", "*.html"))
	if err != nil || len(names) < 30 {
		t.Fatalf("%d pages of requirements (%v)", len(names), err)
	}
	known := 0
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), word+" ") && !strings.Contains(string(text), "does not mean that the boat "+word) {
			t.Errorf("%s says %q", name, word)
		}
		known += strings.Count(string(text), "conformity")
	}
	if known == 0 {
		t.Error("a word that stands on the pages was not found")
	}
}

// TestMatrixShowsEveryItem: each item has its row with its standing, each evidence its way, and what is open comes in the
// order of what it blocks.
func TestMatrixShowsEveryItem(t *testing.T) {
	job := demoJob(t)
	dir := rendered(t, job)
	for _, h := range job.Hulls {
		d := job.Assess(h)
		if len(d.Requirements.Lists) != 8 {
			t.Fatalf("%s answers %d lists", h.Number, len(d.Requirements.Lists))
		}
		for i := range d.Requirements.Lists {
			of := &d.Requirements.Lists[i]
			words, markup := pageText(t, dir, h.Number+"/requirements/"+of.Record.Name+".html")
			for j := range of.Items {
				it := &of.Items[j]
				if !strings.Contains(markup, `id="`+itemAnchor(it.Record.ID)+`"`) || !strings.Contains(words, it.Record.Heading.V) {
					t.Errorf("%s, %s: no row for %s", h.Number, of.Record.Name, it.Title())
				}
				if !it.Applies && !strings.Contains(words, "because "+it.Record.Else.V) {
					t.Errorf("%s: %s does not say why it does not apply", h.Number, it.Title())
				}
			}
		}
		inOrder(t, dir, d)
	}
	if _, markup := pageText(t, dir, "HL74-012/documents.html"); !strings.Contains(markup, `href="requirements/eu-2013-53.html#item-3.5"`) {
		t.Error("the sheet of systems does not lead to what it answers")
	}
}

func inOrder(t *testing.T, dir string, d *engine.Dossier) {
	t.Helper()
	_, markup := pageText(t, dir, d.Hull.Number+"/requirements.html")
	last := 0
	for _, it := range d.Requirements.Open {
		link := `href="requirements/` + it.List.Name + `.html#` + itemAnchor(it.Record.ID) + `"`
		at := strings.LastIndex(markup, link)
		if at < last {
			t.Errorf("%s: %s is not in its place", d.Hull.Number, it.Title())
		}
		last = at
	}
	met := !slices.ContainsFunc(d.Requirements.Checks, func(c finding.Check) bool { return c.Standing != finding.Met })
	if met != (len(d.Requirements.Open) == 0) {
		t.Errorf("%s: %d open", d.Hull.Number, len(d.Requirements.Open))
	}
}

// TestNoListNoPage: a yard that names no list has no page of requirements and no word about it.
func TestNoListNoPage(t *testing.T) {
	dir := rendered(t, yardJob(t, os.DirFS("testdata/yard")))
	if _, err := os.Stat(filepath.Join(dir, "K-1", "requirements.html")); err == nil {
		t.Error("a page of requirements without a list")
	}
	if words, _ := pageText(t, dir, "K-1/index.html"); strings.Contains(words, "Requirements") {
		t.Error("the cover speaks of requirements")
	}
}
