package main

import (
	"cmp"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"golang.org/x/net/html"
)

// TestAxeFindsNothing runs axe-core over pages that show between them every part that pages are made of, in light and in
// dark. HULLFILE_AXE names the file axe.min.js.
func TestAxeFindsNothing(t *testing.T) {
	t.Parallel()
	name := os.Getenv("HULLFILE_AXE")
	if name == "" {
		needed(t, "axe-core (HULLFILE_AXE names no file)")
	}
	axe, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	dir := demoFiles(t)
	pages := pagesWithEveryPart(t, pagesOf(t, dir), dir)
	inBrowsers(t, pages, func(t *testing.T, r *reader, page string) {
		for _, scheme := range []string{"light", "dark"} {
			r.scheme(scheme)
			r.open(page)
			for _, v := range violations(r, string(axe), scheme == "dark") {
				t.Errorf("%s, %s: %s", short(dir, page), scheme, v)
			}
		}
	})
}

// TestAxeCanFind proves that the check above can fail.
func TestAxeCanFind(t *testing.T) {
	t.Parallel()
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
	if err := os.WriteFile(page, []byte(`<!doctype html><html><body><img src="x.png"><p style="color:#ccc">faint</p><button>a</button><button>b</button>`), 0o644); err != nil {
		t.Fatal(err)
	}
	r.open(page)
	all := strings.Join(violations(r, string(axe), false), "\n")
	for _, rule := range []string{"image-alt", "html-has-lang", "color-contrast", "target-size"} {
		if !strings.Contains(all, rule) {
			t.Errorf("axe does not tell of %s: %s", rule, all)
		}
	}
}

// violations runs axe over the open page with everything unfolded; of a page that differs in its colours alone, over those.
func violations(r *reader, axe string, colours bool) []string {
	r.t.Helper()
	rules := `rules: {"target-size": {enabled: true}}`
	if colours {
		rules = `runOnly: ["color-contrast"]`
	}
	r.do(chromedp.Evaluate[chromedp.Void](axe))
	r.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("details").forEach(d => d.open = true)`))
	return decode[[]string](r.t, ask[string](r, `axe.run(document, {resultTypes: ["violations"], `+rules+`}).then(found =>
  JSON.stringify(found.violations.map(v => v.id + ": " + v.help + ": " + v.nodes.slice(0, 3).map(n => n.html.slice(0, 120)).join(" | "))))`))
}

// pagesWithEveryPart gives all pages at the top of the finished launch, and of the others, the shortest first, each that
// shows an element within another that no page before it showed: so every kind of page is there, whatever its folder.
func pagesWithEveryPart(t *testing.T, pages []string, dir string) []string {
	t.Helper()
	const whole = "HL74-012/"
	var some []string
	seen := map[string]bool{}
	take := func(page string, always bool) {
		if parts := partsOf(t, page); newPart(seen, parts) || always {
			some = append(some, page)
		}
	}
	for _, page := range pages {
		if rest, of := strings.CutPrefix(short(dir, page), whole); of && !strings.Contains(rest, "/") {
			take(page, true)
		}
	}
	slices.SortStableFunc(pages, func(a, b string) int { return cmp.Compare(size(t, a), size(t, b)) })
	for _, page := range pages {
		take(page, false)
	}
	return some
}

func size(t *testing.T, page string) int64 {
	t.Helper()
	of, err := os.Stat(page)
	if err != nil {
		t.Fatal(err)
	}
	return of.Size()
}

// newPart adds parts to those seen, and reports whether one of them is new.
func newPart(seen map[string]bool, parts []string) bool {
	before := len(seen)
	for _, p := range parts {
		seen[p] = true
	}
	return len(seen) > before
}

// partsOf lists what a page is made of: "td>a.rec" for each link to a record in a cell. What lies inside a picture or a
// formula is no part, but for links.
func partsOf(t *testing.T, page string) []string {
	t.Helper()
	f, err := os.Open(page)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	root, err := html.Parse(f)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && (n.Parent.Namespace == "" || n.Parent.Data == "a") {
			seen[partName(n.Parent)+">"+partName(n)] = true
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

func partName(n *html.Node) string {
	for _, a := range n.Attr {
		if a.Key == "class" && !strings.HasPrefix(a.Val, "part ") { // sections of a print edition have a class each
			return n.Data + "." + a.Val
		}
	}
	return n.Data
}
