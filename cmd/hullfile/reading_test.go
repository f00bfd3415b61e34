package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// TestEveryPageOpensInABrowser opens each page from its folder: no complaint in the console, no request beyond the
// folder, no refusal by the page's own security policy.
func TestEveryPageOpensInABrowser(t *testing.T) {
	dir := demoFiles(t)
	inBrowsers(t, pagesOf(t, dir), func(t *testing.T, r *reader, page string) {
		r.heard()
		r.open(page)
		if ready := ask[string](r, "document.readyState"); ready != "complete" {
			t.Errorf("%s is %s", short(dir, page), ready)
		}
		if styled := ask[int](r, "document.styleSheets.length"); styled == 0 {
			t.Errorf("%s has no style sheet", short(dir, page))
		}
		requests, told := r.heard()
		if len(told) > 0 {
			t.Errorf("%s: %q", short(dir, page), told)
		}
		if len(requests) == 0 {
			t.Errorf("%s: no request was seen; the watch is broken", short(dir, page))
		}
		inside := fileURL(home(dir, page)) + "/"
		for _, u := range requests {
			if !strings.HasPrefix(u, inside) && !strings.HasPrefix(u, "data:image/") {
				t.Errorf("%s asks for %s, beyond its own folder", short(dir, page), u)
			}
		}
	})
}

// home is the folder that a page must not reach out of: that of its hull, or the whole for the register.
func home(dir, page string) string {
	hull, _, inHull := strings.Cut(short(dir, page), "/")
	if !inHull {
		return dir
	}
	return filepath.Join(dir, hull)
}

// TestWatchSeesWhatItMust proves that the browser tests can fail: a page with each fault, and each fault is seen.
func TestWatchSeesWhatItMust(t *testing.T) {
	r := openBrowser(t)
	page := filepath.Join(t.TempDir(), "faulty.html")
	text := `<!doctype html><html lang="en"><title>faulty</title><link rel="stylesheet" href="gone.css">
<script>console.error("told"); throw new Error("thrown")</script><p style="width:900px">wide<img src="http://127.0.0.1:9/x.png">`
	if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	r.open(page)
	requests, told := r.heard()
	all := strings.Join(append(requests, told...), "\n")
	for _, want := range []string{"http://127.0.0.1:9/x.png", "console error", "exception", "not loaded"} {
		if !strings.Contains(all, want) {
			t.Errorf("not seen: %s in\n%s", want, all)
		}
	}
	r.do(chromedp.EmulateViewport(320, 700))
	if sideways(r) == "" {
		t.Error("a page of 900 px is not seen to scroll sideways at 320 px")
	}
}

// TestPagesFitANarrowScreen holds WCAG 2.2, 1.4.10 Reflow: at 320 CSS px nothing scrolls sideways but tables and
// formulas in boxes of their own.
func TestPagesFitANarrowScreen(t *testing.T) {
	r := openBrowser(t)
	dir := demoFiles(t)
	for _, width := range []int64{320, 390, 820} {
		r.do(chromedp.EmulateViewport(width, 800))
		for _, page := range onePageOfEachKind(pagesOf(t, dir), dir) {
			r.open(page)
			if who := sideways(r); who != "" {
				t.Errorf("%s scrolls sideways at %d px: %s", short(dir, page), width, who)
			}
		}
	}
}

// sideways names what makes the page wider than the screen, empty where nothing does.
func sideways(r *reader) string {
	return ask[string](r, `(() => {
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= wide) return "";
  const boxed = e => { for (e = e.parentElement; e; e = e.parentElement) if (/auto|scroll|hidden|clip/.test(getComputedStyle(e).overflowX)) return true; };
  const over = [...document.body.querySelectorAll("*")].filter(e => e.getBoundingClientRect().right > wide + 1 && !boxed(e));
  const last = over[over.length - 1] || document.body;
  return document.documentElement.scrollWidth + " px, e.g. <" + last.tagName.toLowerCase() + " class=" + last.className + "> " + last.textContent.trim().slice(0, 60);
})()`)
}

// TestPagesReadWithoutScript: what a reader sees with script is there without it.
func TestPagesReadWithoutScript(t *testing.T) {
	r := openBrowser(t)
	dir := demoFiles(t)
	const words = `(document.querySelector("main") || document.body).innerText.replace(/\s+/g, " ").trim()`
	for _, page := range onePageOfEachKind(pagesOf(t, dir), dir) {
		r.open(page)
		with := ask[string](r, words)
		r.script(false)
		r.open(page)
		without := ask[string](r, words)
		r.script(true)
		if len(without) < 100 {
			t.Errorf("%s says almost nothing without script: %q", short(dir, page), without)
		}
		if lost := lostWords(with, without); len(lost) > 0 {
			t.Errorf("%s: without script these words are gone: %q", short(dir, page), lost)
		}
	}
}

func (r *reader) script(on bool) {
	r.t.Helper()
	_, err := chromedp.Call(r.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: !on})
	if err != nil {
		r.t.Fatal(err)
	}
}

// lostWords gives the words with a figure in them that are in the one text and not in the other. Labels of the search
// and of sorting are words that script may add; figures are not.
func lostWords(with, without string) []string {
	there := map[string]bool{}
	for _, w := range strings.Fields(without) {
		there[w] = true
	}
	var lost []string
	for _, w := range strings.Fields(with) {
		if strings.ContainsAny(w, "0123456789") && !there[w] {
			lost = append(lost, w)
		}
	}
	return lost
}

// TestKeyboardReachesEverything walks a page with the Tab key: the skip link comes first and works, every link, button
// and field is reached in turn, and each shows that it has the focus.
func TestKeyboardReachesEverything(t *testing.T) {
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
