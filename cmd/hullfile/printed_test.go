package main

import (
	"bytes"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// TestPrintEditions prints the owner's book of one hull and one volume of the file of another, and holds the paper against
// the contents: the page that a line names is the one on which its section begins. That everything fits the paper and can be
// read on it is looked for in the book and in every volume.
func TestPrintEditions(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	dir := demoFiles(t)
	printed(t, r, filepath.Join(dir, "HL74-012", "owner", "print.html"), 25, 20)
	if testing.Short() {
		return // the volumes of a file take half a minute
	}
	out := t.TempDir()
	var said, errs strings.Builder
	yard := filepath.Join(filepath.Dir(dir), "yard")
	if status := run(t.Context(), []string{"render", yard, "-o", out, "--print", "LT56-031"}, &said, &errs); status != statusSound {
		t.Fatalf("render ended with %d: %s", status, errs.String())
	}
	volumes, err := filepath.Glob(filepath.Join(out, "LT56-031", "print-*.html"))
	if err != nil || len(volumes) < 5 {
		t.Fatalf("volumes: %v, %v", volumes, err)
	}
	for _, v := range volumes {
		fitsPaper(t, r, v)
	}
	printed(t, r, filepath.Join(out, "LT56-031", "print-4.html"), 40, 20)
}

// fitsPaper opens an edition and tells what would be cut off on paper or be too small there.
func fitsPaper(t *testing.T, r *reader, page string) {
	t.Helper()
	r.open(page)
	for _, fault := range paperFaults(r) {
		t.Errorf("%s: %s", filepath.Base(page), fault)
	}
}

// contentsLine is one line of the contents of a print edition.
var contentsLine = regexp.MustCompile(`<li(?: class="below")?><a href="#[^"]+"><span class="no">([^<]*)</span> <span class="t">([^<]*)</span> <span class="page">([^<]*)</span>`)

// printed holds one edition: so many sheets at least, and on them so many sections of the contents.
func printed(t *testing.T, r *reader, page string, least, sections int) {
	t.Helper()
	name := filepath.Base(filepath.Dir(page))
	fitsPaper(t, r, page)
	pdf, err := chromedp.Run(r.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFOutlineAndTagged()))
	if err != nil {
		t.Fatal(err)
	}
	for _, mark := range []string{"/Outlines", "/MarkInfo", "/StructTreeRoot", "/Lang"} {
		if !bytes.Contains(pdf, []byte(mark)) {
			t.Errorf("%s: the PDF has no %s", name, mark)
		}
	}
	sheets := sheetsOf(t, pdf)
	if len(sheets) < least {
		t.Fatalf("%s: only %d sheets", name, len(sheets))
	}
	for i, sheet := range sheets {
		if len(strings.Fields(sheet)) < 6 {
			t.Errorf("%s: sheet %d of %d is empty: %q", name, i+1, len(sheets), sheet)
		}
	}
	source, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	toc, _, _ := strings.Cut(string(source), `</ol>`)
	lines := contentsLine.FindAllStringSubmatch(toc, -1)
	if len(lines) < 20 {
		t.Fatalf("%s: %d lines in the contents", name, len(lines))
	}
	found := 0
	for _, l := range lines {
		n := beginsOn(t, name, sheets, html.UnescapeString(l[2]), l[3])
		if n != 1 {
			t.Errorf("%s: %d sheets carry the number %s", name, n, l[3])
		}
		found += n
	}
	if found < sections {
		t.Errorf("%s: only %d sections of the contents begin on the sheets printed", name, found)
	}
}

// beginsOn counts the sheets that carry a page number, and holds them against the section.
func beginsOn(t *testing.T, name string, sheets []string, title, number string) (found int) {
	t.Helper()
	mark := regexp.MustCompile(`(?m)(^|\s)` + regexp.QuoteMeta(number) + `\s+\d+ / \d+\s*$`)
	for _, sheet := range sheets {
		if !mark.MatchString(strings.TrimRight(sheet, "\n ")) {
			continue
		}
		found++
		if word, _, _ := strings.Cut(title, " "); !strings.Contains(sheet, word) {
			t.Errorf("%s: page %s does not begin %s", name, number, title)
		}
	}
	return found
}

// sheetsOf gives the text of a PDF sheet by sheet.
func sheetsOf(t *testing.T, pdf []byte) []string {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		needed(t, "pdftotext (poppler-utils)")
	}
	cmd := exec.Command(tool, "-layout", "-", "-")
	cmd.Stdin = bytes.NewReader(pdf)
	text, err := cmd.Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
}

// The room on A4 less the margins, in CSS pixels: 210 - 16 - 18 = 176 mm (print.css), and for bench sheets, which lie on
// their side, 297 - 2 × 10 = 277 mm (bench.css; own arithmetic).
const (
	sheetWidth = 665
	benchWidth = 1047
)

// paperFaults lays the open page out as on paper and tells what sticks out at the right, what runs over the cell beside it,
// and what is printed smaller than 7.5 pt, 10 CSS px, below which few read with ease (practice). Signs above and below the
// line, and shapes that stand beside a word, may be smaller.
func paperFaults(r *reader) []string {
	r.t.Helper()
	media := func(name string) {
		if _, err := chromedp.Call(r.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: name}); err != nil {
			r.t.Fatal(err)
		}
	}
	width := int64(sheetWidth)
	if ask[bool](r, `document.querySelector(".bench") !== null`) {
		width = benchWidth
	}
	media("print")
	r.do(chromedp.EmulateViewport(width, 960))
	defer func() {
		media("")
		r.do(chromedp.EmulateViewport(1280, 900))
	}()
	return decode[[]string](r.t, ask[string](r, `(() => {
  const told = new Map(), wide = document.documentElement.clientWidth;
  const tell = (fault, e) => told.set(fault + " in " + (e.closest("section.part")?.id || "the page") + ": " + (e.closest("table")?.className || "") + " " + e.tagName + "." + (e.className.baseVal ?? e.className), e.textContent.trim().slice(0, 60));
  document.querySelectorAll("table, svg, pre, p, math, dl").forEach(e => {
    const b = e.getBoundingClientRect();
    if (b.width > 0 && b.right > wide + 2) tell("wider than the paper", e);
  });
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), range = document.createRange();
  for (let n = walk.nextNode(); n; n = walk.nextNode()) {
    const e = n.parentElement;
    if (!n.data.trim() || e.closest("script, .aside, .shape, title, desc, sub, sup, msub, msup, msubsup, mfrac, mroot, munder") || !e.checkVisibility()) continue;
    range.selectNodeContents(n);
    const b = range.getBoundingClientRect(), cell = e.closest("td, th"), m = e.closest("svg") && e.getScreenCTM();
    if (b.width < 1) continue;
    if (cell && b.right > cell.getBoundingClientRect().right + 1) tell("over the next cell", cell);
    if (parseFloat(getComputedStyle(e).fontSize) * (m ? Math.hypot(m.b, m.d) : 1) < 9.9) tell("below 7.5 pt", e);
  }
  return JSON.stringify([...told].slice(0, 12).map(([k, v]) => k + ": " + v));
})()`))
}

// TestPaperCheckSeesWhatItMust proves that the check above can fail.
func TestPaperCheckSeesWhatItMust(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	page := filepath.Join(t.TempDir(), "faulty.html")
	text := `<!doctype html><html lang="en"><title>faulty</title><style>@media print { small { font-size: 7pt } }
td { max-width: 3em; padding: 0 }</style><p>plain <small>tiny</small><p style="width: 800px">long<table><tr><td>unbreakablelongword<td>next</table>`
	if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	r.open(page)
	all := strings.Join(paperFaults(r), "\n")
	for _, want := range []string{"below 7.5 pt in the page:  SMALL.: tiny", "wider than the paper in the page:  P.: long", "over the next cell in the page:  TD.: unbreakable"} {
		if !strings.Contains(all, want) {
			t.Errorf("not seen: %s in\n%s", want, all)
		}
	}
	if strings.Contains(all, "P.: plain") {
		t.Errorf("what is in order is told: %s", all)
	}
}
