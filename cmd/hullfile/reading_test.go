package main

import (
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
	t.Parallel()
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
	t.Parallel()
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

// TestPagesReadWithoutScript: what a reader sees with script is there without it.
func TestPagesReadWithoutScript(t *testing.T) {
	t.Parallel()
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
