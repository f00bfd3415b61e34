package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestKeyboardReachesEverything walks a page with the Tab key: the skip link comes first and works, every link, button
// and field is reached in turn, and each shows that it has the focus.
func TestKeyboardReachesEverything(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	dir := demoFiles(t)
	for _, name := range []string{
		"LT56-031/index.html", "LT56-031/findings.html", "LT56-031/structure.html", "LT56-031/survey.html",
		"HL74-012/weight.html", "HL74-012/owner/index.html", "HL74-012/owner/16-welds.html", "HL74-012/records/yard.toml.html",
	} {
		page := filepath.Join(dir, filepath.FromSlash(name))
		r.open(page)
		r.do(chromedp.KeyEvent("\t"))
		first := ask[string](r, `document.activeElement.getAttribute("href") || ""`)
		if !strings.HasPrefix(first, "#") {
			t.Fatalf("%s: the first stop is %q, not a skip link", name, first)
		}
		if hidden := ask[bool](r, `document.activeElement.getBoundingClientRect().top < 0`); hidden {
			t.Errorf("%s: the skip link stays out of sight", name)
		}
		r.do(chromedp.KeyEvent("\r"))
		if at := ask[string](r, `location.hash`); at != first {
			t.Errorf("%s: the skip link leads to %q, not to %q", name, at, first)
		}
		r.open(page)
		stops := walk(r)
		want := ask[[]string](r, `[...document.querySelectorAll("a[href],button,input,select,textarea,summary,[tabindex='0']")].filter(e => e.checkVisibility() && !e.disabled && e.tabIndex >= 0).map(`+stopName+`)`)
		if missing := lostStops(want, stops); len(missing) > 0 {
			t.Errorf("%s: Tab does not reach %q", name, missing)
		}
		for stop, seen := range stops {
			if !seen {
				t.Errorf("%s: %q does not show that it has the focus", name, stop)
			}
		}
	}
}

// stopName is a script function that names an element in the tab order.
const stopName = `(e => e.tagName + " " + (e.getAttribute("href") || e.id || e.textContent.trim().slice(0, 40)))`

// walk presses Tab until the first stop comes round again, and tells for each stop whether its focus can be seen.
func walk(r *reader) map[string]bool {
	r.t.Helper()
	stops := map[string]bool{}
	for range 2000 {
		r.do(chromedp.KeyEvent("\t"))
		at := decode[struct {
			Name string
			Seen bool
		}](r.t, ask[string](r, fmt.Sprintf(`(() => { const e = document.activeElement; const s = getComputedStyle(e);
  return JSON.stringify({Name: e === document.body ? "" : %s(e), Seen: s.outlineStyle !== "none" || s.boxShadow !== "none"}); })()`, stopName)))
		if at.Name == "" {
			return stops
		}
		stops[at.Name] = at.Seen
	}
	r.t.Fatal("Tab never comes to the end")
	return nil
}

func lostStops(want []string, got map[string]bool) []string {
	var lost []string
	for _, w := range want {
		if _, there := got[w]; !there {
			lost = append(lost, w)
		}
	}
	return lost
}
