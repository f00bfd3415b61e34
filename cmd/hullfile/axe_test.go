package main

import (
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestAxeFindsNothing runs axe-core over the pages, in light and in dark. HULLFILE_AXE names the file axe.min.js.
func TestAxeFindsNothing(t *testing.T) {
	name := os.Getenv("HULLFILE_AXE")
	if name == "" {
		needed(t, "axe-core (HULLFILE_AXE names no file)")
	}
	axe, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	r := openBrowser(t)
	dir := demoFiles(t)
	for _, scheme := range []string{"light", "dark"} {
		r.scheme(scheme)
		for _, page := range onePageOfEachKind(pagesOf(t, dir), dir) {
			r.open(page)
			for _, v := range violations(r, string(axe)) {
				t.Errorf("%s, %s: %s", short(dir, page), scheme, v)
			}
		}
	}
}

// TestAxeCanFind proves that the check above can fail.
func TestAxeCanFind(t *testing.T) {
	name := os.Getenv("HULLFILE_AXE")
	if name == "" {
		needed(t, "axe-core (HULLFILE_AXE names no file)")
	}
	axe, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	r := openBrowser(t)
	page := t.TempDir() + "/faulty.html"
	if err := os.WriteFile(page, []byte(`<!doctype html><html><body><img src="x.png"><p style="color:#ccc">faint</p>`), 0o644); err != nil {
		t.Fatal(err)
	}
	r.open(page)
	all := strings.Join(violations(r, string(axe)), "\n")
	for _, rule := range []string{"image-alt", "html-has-lang", "color-contrast"} {
		if !strings.Contains(all, rule) {
			t.Errorf("axe does not tell of %s: %s", rule, all)
		}
	}
}

// violations runs axe over the open page with everything unfolded.
func violations(r *reader, axe string) []string {
	r.t.Helper()
	r.do(chromedp.Evaluate[chromedp.Void](axe))
	r.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("details").forEach(d => d.open = true)`))
	return decode[[]string](r.t, ask[string](r, `axe.run(document, {resultTypes: ["violations"]}).then(found =>
  JSON.stringify(found.violations.map(v => v.id + ": " + v.help + ": " + v.nodes.slice(0, 3).map(n => n.html.slice(0, 120)).join(" | "))))`))
}
