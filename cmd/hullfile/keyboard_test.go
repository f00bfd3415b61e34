package main

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestKeyboardReachesEverything walks a page of every kind, and pages that show between them every kind of control where it
// may stand, with the Tab key: the skip link comes first and works, every link, button and field is reached in turn, and
// each shows that it has the focus.
func TestKeyboardReachesEverything(t *testing.T) {
	t.Parallel()
	dir := demoFiles(t)
	pages := pagesWithEveryControl(t, pagesOf(t, dir), dir)
	if len(pages) < 40 {
		t.Fatalf("only %d pages to walk", len(pages))
	}
	inBrowsers(t, pages, func(t *testing.T, r *reader, page string) {
		name := short(dir, page)
		r.open(page)
		r.do(chromedp.KeyEvent("\t"))
		first := ask[string](r, `document.activeElement.getAttribute("href") || ""`)
		if !strings.HasPrefix(first, "#") {
			t.Errorf("%s: the first stop is %q, not a skip link", name, first)
			return
		}
		if hidden := ask[bool](r, `document.activeElement.getBoundingClientRect().top < 0`); hidden {
			t.Errorf("%s: the skip link stays out of sight", name)
		}
		r.do(chromedp.KeyEvent("\r"))
		if at := ask[string](r, `location.hash`); at != first {
			t.Errorf("%s: the skip link leads to %q, not to %q", name, at, first)
		}
		for _, fault := range r.walk(page) {
			t.Errorf("%s: %s", name, fault)
		}
	})
}

// walk opens a page, takes away rows like those before them, presses Tab until the first stop comes round again, and tells what
// it does not reach and where the focus cannot be seen.
func (r *reader) walk(page string) (faults []string) {
	r.t.Helper()
	r.open(page)
	ask[int](r, dropRepeated)
	ask[bool](r, `(() => {
  window.stops = [];
  window.around = false;
  document.addEventListener("focusin", event => {
    const e = event.target, s = getComputedStyle(e);
    if (stops.length && stops[0].e === e) around = true;
    if (!around) stops.push({e, seen: s.outlineStyle !== "none" || s.boxShadow !== "none"});
  });
  return true;
})()`)
	for range 60 {
		if r.holdTab(40); ask[bool](r, "around") {
			return decode[[]string](r.t, ask[string](r, `(() => {
  const reached = new Set(stops.map(s => s.e)), name = `+stopName+`;
  const all = [...document.querySelectorAll("a[href],button,input,select,textarea,summary,[tabindex='0']")];
  const missed = all.filter(e => e.checkVisibility() && !e.disabled && e.tabIndex >= 0 && !reached.has(e));
  return JSON.stringify([...missed.map(e => "Tab does not reach " + name(e)),
    ...stops.filter(s => !s.seen).map(s => name(s.e) + " does not show that it has the focus")]);
})()`))
		}
	}
	return []string{"Tab never comes to the end"}
}

// holdTab presses Tab so many times as a key does that is held down: it goes down again and again and does not come up between.
func (r *reader) holdTab(times int) {
	r.t.Helper()
	down := *kb.Encode('\t')[0]
	for range times {
		if _, err := chromedp.Call(r.ctx, input.DispatchKeyEvent, down); err != nil {
			r.t.Fatal(err)
		}
	}
}

// stopName is a script function that names an element in the tab order.
const stopName = `(e => e.tagName + " " + (e.getAttribute("href") || e.id || e.textContent.trim().slice(0, 40)))`

// pagesWithEveryControl gives, the shortest first, each page of which there was no page of its kind, or no such control in
// such a place, before it.
func pagesWithEveryControl(t *testing.T, pages []string, dir string) (some []string) {
	t.Helper()
	slices.SortStableFunc(pages, func(a, b string) int { return cmp.Compare(size(t, a), size(t, b)) })
	seen := map[string]bool{}
	for _, page := range pages {
		parts := slices.DeleteFunc(partsOf(t, page), func(part string) bool {
			_, what, _ := strings.Cut(part, ">")
			tag, _, _ := strings.Cut(what, ".")
			return !slices.Contains([]string{"a", "button", "input", "select", "textarea", "summary"}, tag)
		})
		if newPart(seen, append(parts, pageKind(short(dir, page)))) {
			some = append(some, page)
		}
	}
	return some
}

// pageKind names what is alike in all hulls: a page at the top of a hull by its name, one below by its folder.
func pageKind(page string) string {
	_, below, inHull := strings.Cut(page, "/")
	folder, name, nested := strings.Cut(below, "/")
	switch {
	case !inHull:
		return "register " + page
	case !nested:
		return below
	case folder == "structure": // many kinds in one folder
		name, _, _ = strings.Cut(name, "-")
		return folder + "/" + name
	}
	return folder
}

// TestKeyboardWalkSeesWhatItMust proves that the check above can fail.
func TestKeyboardWalkSeesWhatItMust(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	page := filepath.Join(t.TempDir(), "faulty.html")
	text := `<!doctype html><html lang="en"><title>faulty</title><style>.dim:focus { outline: none }</style><p><a href="#one">one</a>
<a href="#dim" class="dim">dim</a><div inert><a href="#shut">shut</a></div><a href="#last">last</a>`
	if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	all := strings.Join(r.walk(page), "\n")
	for _, want := range []string{"Tab does not reach A #shut", "A #dim does not show that it has the focus"} {
		if !strings.Contains(all, want) {
			t.Errorf("not seen: %s in\n%s", want, all)
		}
	}
	if strings.Contains(all, "#one") || strings.Contains(all, "#last") {
		t.Errorf("what is in order is told: %s", all)
	}
}
