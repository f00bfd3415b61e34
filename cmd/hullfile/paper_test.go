package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPagesPrintWithPageNumbers prints pages to PDF as the style sheet asks and reads the page numbers off the paper.
func TestPagesPrintWithPageNumbers(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	dir := demoFiles(t)
	for _, name := range []string{"index.html", "findings.html", "structure.html", "weight.html", "trials.html", "documents.html"} {
		page := filepath.Join(dir, "HL74-012", name)
		r.open(page)
		pdf, err := chromedp.Run(r.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFOutlineAndTagged()))
		if err != nil {
			t.Fatal(err)
		}
		sheets := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(pdf, -1))
		if sheets == 0 {
			t.Fatalf("%s prints no sheet", name)
		}
		for _, mark := range []string{"/Outlines", "/MarkInfo", "/Lang"} {
			if !bytes.Contains(pdf, []byte(mark)) {
				t.Errorf("%s: the PDF has no %s", name, mark)
			}
		}
		onPaper(t, name, pdf, sheets)
	}
}

// onPaper holds each sheet: A4 wide text with its own number and the number of sheets on it.
func onPaper(t *testing.T, name string, pdf []byte, sheets int) {
	t.Helper()
	papers := sheetsOf(t, pdf)
	if len(papers) != sheets {
		t.Errorf("%s: %d sheets, %d of them with text", name, sheets, len(papers))
	}
	for i, paper := range papers {
		number := regexp.MustCompile(fmt.Sprintf(`\b%d\s*(/|of)\s*%d\b`, i+1, len(papers)))
		if !number.MatchString(paper) {
			t.Errorf("%s: sheet %d of %d does not carry its number", name, i+1, len(papers))
		}
		if !strings.Contains(paper, "HL74-012") {
			t.Errorf("%s: sheet %d does not say which hull it belongs to", name, i+1)
		}
	}
}
