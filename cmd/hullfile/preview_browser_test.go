package main

import (
	"context"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// TestOpenPageFollowsTheRecords leaves a page open in a browser while a record is changed, broken and mended.
func TestOpenPageFollowsTheRecords(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	w := startPreview(t)
	const record, mended = "hulls/HL74-013/hull.toml", "Invented for a browser"
	r.visit(w.address + "HL74-013/documents.html")
	line := w.firstLine(record, "title")
	w.rewrite(record, line, `title = "`+mended+`"`)
	r.until("the page holds the new title", `document.body.innerText.includes("`+mended+`")`)
	w.rewrite(record, "title = ", "titel = ")
	r.until("the page of the faults is shown", `location.pathname === "/preview-faults" && document.body.innerText.includes("titel")`)
	w.rewrite(record, "titel = ", "title = ")
	r.until("the reader is back on his page", `location.pathname === "/HL74-013/documents.html"`)
	requests, told := r.heard()
	for _, address := range requests {
		if u, err := url.Parse(address); err != nil || u.Scheme == "http" && !strings.HasPrefix(address, w.address) || u.Scheme == "https" {
			t.Errorf("a page asks elsewhere: %s", address)
		}
	}
	for _, text := range told {
		if strings.Contains(text, "Content Security Policy") || strings.HasPrefix(text, "exception") {
			t.Errorf("the browser complains: %s", text)
		}
	}
	w.end(record + ":")
}

// visit opens an address. It does not wait for the line of events, which never ends.
func (r *reader) visit(address string) {
	r.t.Helper()
	ctx, stop := context.WithTimeout(r.ctx, patience)
	defer stop()
	if err := chromedp.Do(ctx, chromedp.Navigate(address)); err != nil {
		r.t.Fatalf("%s does not open: %v", address, err)
	}
}

// until waits for something to be true of the page, over loads of it.
func (r *reader) until(what, expression string) {
	r.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(30 * time.Millisecond) {
		ctx, stop := context.WithTimeout(r.ctx, 20*time.Second)
		yes, err := chromedp.Run(ctx, chromedp.Evaluate[bool](expression))
		stop()
		if err == nil && yes {
			return
		}
	}
	r.t.Fatalf("it never came to be that %s", what)
}
