package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPagesFitANarrowScreen holds WCAG 2.2, 1.4.10 Reflow: at 320 CSS px nothing scrolls sideways but tables and
// formulas in boxes of their own; and 1.4.4 Resize Text: at twice the size, which is half the width, everything is there. As
// each page is open already, it is held against a sheet of paper as well.
func TestPagesFitANarrowScreen(t *testing.T) {
	t.Parallel()
	dir := demoFiles(t)
	inBrowsers(t, onePageOfEachKind(pagesOf(t, dir), dir), func(t *testing.T, r *reader, page string) {
		r.do(chromedp.EmulateViewport(1280, 900))
		r.open(page)
		plain := r.offers()
		r.do(chromedp.EmulateViewport(640, 450, chromedp.EmulateScale(2)))
		for _, loss := range plain.lostIn(r.offers()) {
			t.Errorf("%s at twice the size: %s", short(dir, page), loss)
		}
		if who := sideways(r); who != "" {
			t.Errorf("%s scrolls sideways at twice the size: %s", short(dir, page), who)
		}
		for _, width := range []int64{320, 390, 820} {
			r.do(chromedp.EmulateViewport(width, 800))
			if who := sideways(r); who != "" {
				t.Errorf("%s scrolls sideways at %d px: %s", short(dir, page), width, who)
			}
		}
		for _, fault := range paperFaults(r) {
			t.Errorf("%s on paper: %s", short(dir, page), fault)
		}
	})
}

// offered is what a page shows at one size: its words, what can be clicked, and boxes that cut off what is in them.
type offered struct {
	Words, Controls, Cut []string
}

// offers takes down what the open page shows. Words in a picture are left out, of which there is one for a wide and one for a
// narrow screen; that it has one is a control or not, and its name is a word.
func (r *reader) offers() offered {
	r.t.Helper()
	return decode[offered](r.t, ask[string](r, `(() => {
  const seen = e => e.checkVisibility({visibilityProperty: true, opacityProperty: true});
  const words = new Set(), walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let n = walk.nextNode(); n; n = walk.nextNode()) {
    const e = n.parentElement;
    if (n.data.trim() && !e.closest("svg, script") && seen(e)) n.data.trim().split(/\s+/).forEach(w => words.add(w));
  }
  const controls = [...document.querySelectorAll("a[href],button,input,select,textarea,summary")].filter(e => !e.closest("svg") && seen(e)).map(`+stopName+`);
  const cut = [...document.body.querySelectorAll("*")].filter(e => {
    if (e.closest("svg") || !seen(e) || e.clientWidth <= 1 || e.clientHeight <= 1) return false;
    const s = getComputedStyle(e), hides = o => o === "hidden" || o === "clip";
    return hides(s.overflowX) && e.scrollWidth > e.clientWidth + 1 || hides(s.overflowY) && e.scrollHeight > e.clientHeight + 1;
  }).map(e => e.tagName.toLowerCase() + "." + e.className + ": " + e.textContent.trim().slice(0, 40));
  return JSON.stringify({Words: [...words], Controls: controls, Cut: cut});
})()`))
}

// lostIn says what a page no longer shows at another size.
func (o offered) lostIn(other offered) (lost []string) {
	for _, w := range o.Words {
		if !slices.Contains(other.Words, w) {
			lost = append(lost, "the word "+w+" is gone")
		}
	}
	for _, c := range o.Controls {
		if !slices.Contains(other.Controls, c) {
			lost = append(lost, "there is no more "+c)
		}
	}
	for _, c := range other.Cut {
		lost = append(lost, "cut off: "+c)
	}
	return lost
}

// TestZoomCheckSeesWhatItMust proves that the check above can fail.
func TestZoomCheckSeesWhatItMust(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	page := filepath.Join(t.TempDir(), "faulty.html")
	text := `<!doctype html><html lang="en"><title>faulty</title><style>@media (max-width: 700px) { .gone { display: none } }
.box { overflow: hidden; height: 2em; max-width: 400px }</style><p>stays <span class="gone">vanishes</span> <a class="gone" href="#there">way</a>
<p class="box">` + strings.Repeat("much text ", 60)
	if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	r.do(chromedp.EmulateViewport(1280, 900))
	r.open(page)
	plain := r.offers()
	r.do(chromedp.EmulateViewport(640, 450, chromedp.EmulateScale(2)))
	all := strings.Join(plain.lostIn(r.offers()), "\n")
	for _, want := range []string{"the word vanishes is gone", "there is no more A #there", "cut off: p.box"} {
		if !strings.Contains(all, want) {
			t.Errorf("not seen: %s in\n%s", want, all)
		}
	}
	if strings.Contains(all, "stays") {
		t.Errorf("what stays is told as lost: %s", all)
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
