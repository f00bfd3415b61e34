package main

import (
	"context"
	"encoding/json"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// The browser tests open the demo's technical files as a reader does: from a folder, over file://, with no network.
// They are left out, with a word, where there is no Chromium; HULLFILE_BROWSER=required makes that a failure.

// browserNames are the names under which a Chromium is looked for. The first is the same engine without windows and menus,
// which opens a page with three quarters of the work.
var browserNames = []string{"chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"}

// needed ends a test for want of a tool: a failure where the run says that it must be there, else left out with a word.
func needed(t *testing.T, what string) {
	t.Helper()
	if os.Getenv("HULLFILE_BROWSER") == "required" {
		t.Fatalf("%s is not there, and HULLFILE_BROWSER=required asks for it", what)
	}
	t.Skipf("left out: %s is not there", what)
}

// reader is one tab of a headless browser that remembers what went wrong in it.
type reader struct {
	t   *testing.T
	ctx context.Context

	mu       sync.Mutex
	requests []string
	told     []string // console messages, exceptions and failed loads
}

// openBrowser starts a browser for one test and closes it at the end.
func openBrowser(t *testing.T) *reader {
	t.Helper()
	path := ""
	for _, name := range browserNames {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		needed(t, "Chromium")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.WindowSize(1280, 900))
	ctx, closeBrowser := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(closeBrowser)
	ctx, closeTab := chromedp.NewContext(ctx)
	t.Cleanup(closeTab)
	r := &reader{t: t, ctx: ctx}
	if err := chromedp.Do(ctx); err != nil {
		t.Fatalf("starting %s: %v", path, err)
	}
	if err := chromedp.Listen(ctx, r.hear); err != nil {
		t.Fatal(err)
	}
	return r
}

// inBrowsers looks at pages in two browsers side by side, because a page is laid out by one processor only.
func inBrowsers(t *testing.T, pages []string, look func(t *testing.T, r *reader, page string)) {
	t.Helper()
	const browsers = 2
	for nth := range browsers {
		t.Run("browser "+strconv.Itoa(nth+1), func(t *testing.T) {
			t.Parallel()
			r := openBrowser(t)
			for i := nth; i < len(pages); i += browsers {
				look(t, r, pages[i])
			}
		})
	}
}

// hear takes down what the tab asks for and complains of.
func (r *reader) hear(event any) {
	r.mu.Lock()
	defer r.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		r.requests = append(r.requests, e.Request.URL)
	case *network.EventLoadingFailed:
		r.told = append(r.told, "not loaded: "+e.ErrorText)
	case *log.EventEntryAdded:
		r.told = append(r.told, string(e.Entry.Level)+": "+e.Entry.Text+" "+e.Entry.URL)
	case *runtime.EventExceptionThrown:
		r.told = append(r.told, "exception: "+e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		r.told = append(r.told, "console "+string(e.Type))
	}
}

// heard gives and forgets what was taken down.
func (r *reader) heard() (requests, told []string) {
	r.mu.Lock()
	defer r.mu.Unlock()
	requests, told = r.requests, r.told
	r.requests, r.told = nil, nil
	return requests, told
}

// open goes to a page and waits until it has loaded.
func (r *reader) open(page string) {
	r.t.Helper()
	ctx, stop := context.WithTimeout(r.ctx, patience)
	defer stop()
	if err := chromedp.Do(ctx, chromedp.Navigate(fileURL(page))); err != nil {
		r.t.Fatalf("%s does not open: %v", page, err)
	}
}

// ask evaluates an expression in the page. A promise is waited for.
func ask[T any](r *reader, expression string) T {
	r.t.Helper()
	ctx, stop := context.WithTimeout(r.ctx, patience)
	defer stop()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		r.t.Fatalf("%.200s: %v", expression, err)
	}
	return v
}

func (r *reader) do(steps ...chromedp.Action[chromedp.Void]) {
	r.t.Helper()
	if err := chromedp.Do(r.ctx, steps...); err != nil {
		r.t.Fatal(err)
	}
}

// scheme makes the page see a reader who prefers "light" or "dark".
func (r *reader) scheme(name string) {
	r.t.Helper()
	_, err := chromedp.Call(r.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: name}},
	})
	if err != nil {
		r.t.Fatal(err)
	}
}

// fileURL is the address under which a browser opens a file from a folder.
func fileURL(path string) string {
	return (&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}).String()
}

// pagesOf lists all pages below a folder.
func pagesOf(t *testing.T, dir string) []string {
	t.Helper()
	tree, err := treeOf(dir)
	if err != nil {
		t.Fatal(err)
	}
	var pages []string
	for name := range tree {
		// Documents of the yard are shown as they are and are not pages of ours.
		if strings.HasSuffix(name, ".html") && !strings.Contains(name, "/documents/") {
			pages = append(pages, filepath.Join(dir, filepath.FromSlash(name)))
		}
	}
	slices.Sort(pages)
	if len(pages) < 20 {
		t.Fatalf("only %d pages in %s", len(pages), dir)
	}
	return pages
}

// onePageOfEachKind gives all pages at the top of each hull, and one of each folder below it.
func onePageOfEachKind(pages []string, dir string) []string {
	var some []string
	seen := map[string]bool{}
	for _, p := range pages {
		rel, err := filepath.Rel(dir, p)
		if err != nil {
			continue
		}
		parts := strings.Split(filepath.ToSlash(rel), "/")
		if len(parts) > 2 {
			kind := strings.Join(parts[:len(parts)-1], "/")
			if parts[1] == "structure" { // many kinds in one folder, the same in every hull
				kind, _, _ = strings.Cut("structure/"+parts[2], "-")
			}
			if seen[kind] && parts[len(parts)-1] != "print.html" && parts[len(parts)-1] != "index.html" {
				continue
			}
			seen[kind] = true
		}
		some = append(some, p)
	}
	return some
}

// short names a page for a message.
func short(dir, page string) string {
	rel, err := filepath.Rel(dir, page)
	if err != nil {
		return page
	}
	return filepath.ToSlash(rel)
}

// decode reads JSON that a page gave.
func decode[T any](t *testing.T, text string) T {
	t.Helper()
	var v T
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%v in %.200q", err, text)
	}
	return v
}
