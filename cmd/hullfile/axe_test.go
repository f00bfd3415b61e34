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
	axe := axeCore(t)
	dir := demoFiles(t)
	pages := pagesWithEveryPart(t, pagesOf(t, dir), dir)
	inBrowsers(t, pages, func(t *testing.T, r *reader, page string) {
		for scheme, found := range violations(r, page, axe) {
			for _, v := range found {
				t.Errorf("%s, %s: %s", short(dir, page), scheme, v)
			}
		}
	})
}

// TestAxeCanFind proves that the check above can fail, and that a page is seen dark although it was opened in light.
func TestAxeCanFind(t *testing.T) {
	t.Parallel()
	axe := axeCore(t)
	r := openBrowser(t)
	page := t.TempDir() + "/faulty.html"
	if err := os.WriteFile(page, []byte(`<!doctype html><html><style>@media (prefers-color-scheme: dark) { .night { color: #ccc } }</style><body><img src="x.png"><p style="color:#ccc">faint</p><p class="night">faint at night</p><button>a</button><button>b</button>
<main><table><tbody>`+strings.Repeat(`<tr><td>a row like the others</td></tr>`, 5)+`<tr><td>and one that is not: <input></td></tr></table></main>`), 0o644); err != nil {
		t.Fatal(err)
	}
	found := violations(r, page, axe)
	light := strings.Join(found["light"], "\n")
	for _, rule := range []string{"image-alt", "html-has-lang", "color-contrast", "target-size", "label"} {
		if !strings.Contains(light, rule) {
			t.Errorf("axe does not tell of %s: %s", rule, light)
		}
	}
	if n := ask[int](r, `document.querySelectorAll("tr").length`); n != 4 {
		t.Errorf("%d rows are looked at, not three of the five that are alike and the other", n)
	}
	faint := func(v string) bool {
		return strings.HasPrefix(v, "color-contrast") && strings.Contains(v, "faint at night")
	}
	if slices.ContainsFunc(found["light"], faint) || !slices.ContainsFunc(found["dark"], faint) {
		t.Errorf("in light: %s\nin dark: %s", light, strings.Join(found["dark"], "\n"))
	}
}

// axeCore is the text of axe-core.
func axeCore(t *testing.T) string {
	t.Helper()
	name := os.Getenv("HULLFILE_AXE")
	if name == "" {
		needed(t, "axe-core (HULLFILE_AXE names no file)")
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// violations opens a page in light with everything unfolded and nothing repeated, and runs axe over it; then it turns it dark as it stands. Dark
// differs in its colours alone, and they alone are looked at again. It gives what was found by the name of the scheme.
func violations(r *reader, page, axe string) map[string][]string {
	r.t.Helper()
	r.scheme("light")
	r.open(page)
	r.do(chromedp.Evaluate[chromedp.Void](axe))
	r.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("details").forEach(d => d.open = true)`))
	ask[int](r, dropRepeated)
	found := map[string][]string{"light": axeRun(r, `rules: {"target-size": {enabled: true}}`)}
	r.scheme("dark")
	found["dark"] = axeRun(r, `runOnly: ["color-contrast"]`)
	return found
}

// dropRepeated takes away rows of tables and items of lists that have the elements and classes of three before them on the
// page, and gives how many: a list of thousands of values shows no more kinds of rows than a short one, and axe would look at
// it for half a minute.
const dropRepeated = `(() => {
  const shape = e => e.tagName + "." + (e.getAttribute("class") || "") + "(" + [...e.children].map(shape).join() + ")";
  const seen = new Map(), dropped = [];
  for (const e of document.querySelectorAll("tbody > tr, main li")) {
    const is = shape(e.closest("table, ul, ol").cloneNode(false)) + shape(e), n = seen.get(is) || 0;
    seen.set(is, n + 1);
    if (n >= 3) dropped.push(e);
  }
  dropped.forEach(e => e.remove());
  return dropped.length;
})()`

// axeRun runs the rules over the page as it is shown now.
func axeRun(r *reader, rules string) []string {
	r.t.Helper()
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
