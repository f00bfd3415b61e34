package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// mostClicks is how far an answer may lie from the cover.
const mostClicks = 2

// route is a question that a reader comes with, and the way to its answer: from the cover of a hull, click by click,
// each named by the words of its link; the first such link of the page is taken, in the page or in the contents.
// Words are what the reader sees at the end without opening or searching anything.
type route struct {
	reader   string
	question string
	hull     string
	clicks   []string
	words    []string
}

// TestReadersFindTheirAnswers goes each way in a browser, as a reader with a folder and nothing else would.
func TestReadersFindTheirAnswers(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	dir := demoFiles(t)
	asked := map[string]int{}
	for _, q := range routes() {
		asked[q.reader]++
		t.Run(q.reader+": "+q.question, func(t *testing.T) {
			r.t = t
			if len(q.clicks) > mostClicks {
				t.Errorf("%d clicks; an answer lies at most %d from the cover", len(q.clicks), mostClicks)
			}
			r.open(filepath.Join(dir, q.hull, "index.html"))
			for _, words := range q.clicks {
				if !r.click(words) {
					t.Fatalf("no link %q that a reader sees on %s", words, r.at())
				}
			}
			if len(q.words) == 0 {
				t.Error("nothing is expected at the end")
			}
			seen := r.sees()
			for _, want := range q.words {
				if !strings.Contains(seen, want) {
					t.Errorf("%s does not show %q", r.at(), want)
				}
			}
		})
	}
	r.t = t
	for _, reader := range []string{"builder", "surveyor", "owner"} {
		if asked[reader] < 10 {
			t.Errorf("%d questions of the %s, 10 are wanted", asked[reader], reader)
		}
	}
}

// TestRoutesCanFail proves that a link that is not there, or not seen, is not clicked, and that folded words are not seen.
func TestRoutesCanFail(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	page := filepath.Join(t.TempDir(), "folded.html")
	text := `<!doctype html><html lang="en"><title>folded</title><main><a href="#here" hidden>hidden way</a>
<details><summary>more</summary><p id="here">answer</p></details></main>`
	if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	r.open(page)
	for _, words := range []string{"no such way", "hidden way"} {
		if r.click(words) {
			t.Errorf("%q was clicked", words)
		}
	}
	if seen := r.sees(); strings.Contains(seen, "answer") || !strings.Contains(seen, "more") {
		t.Errorf("seen: %q", seen)
	}
}

// click clicks the first link with these words that is to be seen, and waits for the page that it leads to.
func (r *reader) click(words string) bool {
	r.t.Helper()
	target := ask[string](r, `(() => {
  const words = `+strconv.Quote(words)+`;
  const link = [...document.querySelectorAll("main a, .rail a")].find(a => a instanceof HTMLElement && a.innerText.replace(/\s+/g, " ").trim().replace(/^[\d.]+ /, "") === words && a.checkVisibility());
  if (!link) return "";
  link.setAttribute("data-next", "");
  return link.href;
})()`)
	if target == "" {
		return false
	}
	r.do(chromedp.Click("[data-next]"))
	deadline := time.Now().Add(patience)
	for time.Now().Before(deadline) {
		// While one page goes and the next comes there may be none to ask.
		state, err := chromedp.Run(r.ctx, chromedp.Evaluate[string](`document.readyState + " " + location.href`))
		if err == nil && state == "complete "+target {
			return true
		}
		time.Sleep(5 * time.Millisecond)
	}
	r.t.Fatalf("%q leads to %s, which does not open", words, target)
	return false
}

// sees gives the words of the page that are to be seen without opening anything.
func (r *reader) sees() string {
	r.t.Helper()
	return ask[string](r, `document.querySelector("main").innerText.replace(/\s+/g, " ")`)
}

func (r *reader) at() string { return filepath.Base(ask[string](r, "location.pathname")) }
