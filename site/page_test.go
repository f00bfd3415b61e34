package site

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"hullfile/templates"
)

// bodies are the page structs by template.
var bodies = map[string]any{
	"cover": CoverPage{}, "findings": FindingsPage{}, "boat": BoatPage{}, "structure": StructurePage{}, "zone": ZonePage{}, "family": FamilyPage{}, "frames": FramesPage{}, "model": ModelPage{}, "local": LocalPage{}, "bracket": BracketPage{}, "whatif": WhatIfPage{}, "renewal": RenewalPage{}, "opinion": OpinionPage{}, "panel": PanelPage{}, "weight": WeightPage{}, "loading": LoadingPage{}, "afloat": AfloatPage{},
	"trials": TrialsPage{}, "track": TrackPage{}, "run": RunPage{}, "moves": MovesPage{}, "prediction": PredictionPage{}, "ride": RidePage{}, "limits": LimitsPage{}, "hours": HoursPage{}, "materials": MaterialsPage{}, "welding": WeldingPage{}, "seams": SeamsPage{}, "joint": JointsPage{}, "inspections": InspectionsPage{}, "repairs": RepairsPage{}, "holds": HoldsPage{}, "leaks": LeaksPage{}, "trace": TracePage{}, "requirements": RequirementsPage{}, "requirementlist": ListPage{}, "draft": DraftPage{}, "bench": BenchPage{}, "benchsheet": BenchSheet{}, "survey": SurveyPage{}, "owner": OwnerPage{}, "chapter": ChapterPage{}, "printed": PrintedPage{}, "glossary": GlossaryPage{}, "from": FromPage{}, "documents": DocumentsPage{}, "methods": MethodsPage{}, "sheet": SheetPage{}, "limitrows": LimitRowsPage{}, "proofs": ProofsPage{},
	"records": RecordsPage{}, "record": RecordPage{}, "proving": ProvingPage{}, "tables": TablesPage{}, "compare": ComparePage{}, "register": RegisterPage{}, "design": DesignPage{}, "ready": ReadyPage{},
}

// Every template takes its struct, empty and full, and says something in both cases.
func TestTemplatesTakeTheirStructs(t *testing.T) {
	pages, err := parsePages(templates.Files)
	if err != nil {
		t.Fatal(err)
	}
	if len(bodies) != len(pageKinds) {
		t.Errorf("%d structs for %d templates", len(bodies), len(pageKinds))
	}
	for _, kind := range pageKinds {
		if bodies[kind] == nil {
			t.Errorf("%s stands in pageKinds; name its struct in bodies, above", kind)
			continue
		}
		empty := reflect.New(reflect.TypeOf(bodies[kind])).Elem()
		full := reflect.New(reflect.TypeOf(bodies[kind])).Elem()
		fill(full, 0)
		var frame Frame
		fill(reflect.ValueOf(&frame).Elem(), 0)
		var small, large bytes.Buffer
		if err := pages.ExecuteTemplate(&small, "base "+kind, Page{Body: empty.Interface()}); err != nil {
			t.Errorf("%s, empty: %v", kind, err)
		}
		if err := pages.ExecuteTemplate(&large, "base "+kind, Page{frame, full.Interface()}); err != nil {
			t.Errorf("%s, full: %v", kind, err)
		}
		if !strings.Contains(small.String(), "</html>") || large.Len() <= small.Len() {
			t.Errorf("%s: %d bytes empty, %d full", kind, small.Len(), large.Len())
		}
	}
}

func TestPagesOfTheDemo(t *testing.T) {
	readOutput(t, rendered(t, demoJob(t))).check(t)
}

func TestPagesOfAnEmptyHull(t *testing.T) {
	readOutput(t, rendered(t, emptyJob(t))).check(t)
}

// Hostile text in every field must come out as text, in pages, results, search index and style sheet alike.
func TestHostileText(t *testing.T) {
	dir := rendered(t, hostileJob(t))
	out := readOutput(t, dir)
	out.check(t)
	seen := 0
	for _, page := range out.pages {
		seen += strings.Count(textOf(page), "<xss y=z>")
	}
	if seen < 200 {
		t.Errorf("the hostile text was seen %d times as text; fields are not reaching the pages", seen)
	}
	for _, name := range []string{"results.json", "assets/search.js"} {
		text, err := os.ReadFile(filepath.Join(dir, "H-1", name))
		if err != nil {
			t.Fatal(err)
		}
		if bytes.ContainsAny(text, "<>") || bytes.Contains(text, []byte("\u2028")) {
			t.Errorf("%s holds markup", name)
		}
		text = bytes.TrimSuffix(bytes.TrimPrefix(bytes.TrimSpace(text), []byte("window.HULLFILE_SEARCH=")), []byte(";"))
		if !json.Valid(text) {
			t.Errorf("%s is no JSON", name)
		}
	}
	style, err := os.ReadFile(filepath.Join(dir, "H-1", "assets/book.css"))
	if err != nil {
		t.Fatal(err)
	}
	head := regexp.MustCompile(`@page\{@top-left\{content:"[A-Za-z0-9 ,._\\-]*"\}@top-right\{content:"[A-Za-z0-9 ,._\\-]*"\}\}`)
	if !head.Match(style) || bytes.Contains(style, []byte("<xss")) {
		t.Error("the running head of the style sheet is not escaped")
	}
}
