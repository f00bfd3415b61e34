package site

import (
	"bytes"
	"io/fs"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// site is an output folder read for checking: the parsed pages and the anchors in them.
type output struct {
	dir     string
	files   map[string]bool
	pages   map[string]*html.Node
	anchors map[string]map[string]bool
}

func readOutput(t *testing.T, dir string) *output {
	t.Helper()
	o := &output{dir, map[string]bool{}, map[string]*html.Node{}, map[string]map[string]bool{}}
	err := filepath.WalkDir(dir, func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		rel, err := filepath.Rel(dir, p)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		o.files[rel] = true
		if !strings.HasSuffix(rel, ".html") {
			return nil
		}
		text, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		o.pages[rel], err = html.Parse(bytes.NewReader(text))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, page := range o.pages {
		o.anchors[name] = idsOf(t, name, page)
	}
	return o
}

func each(n *html.Node, do func(*html.Node)) {
	if n.Type == html.ElementNode {
		do(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		each(c, do)
	}
}

func attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func idsOf(t *testing.T, name string, page *html.Node) map[string]bool {
	ids := map[string]bool{}
	each(page, func(n *html.Node) {
		id := attr(n, "id")
		if id == "" {
			return
		}
		if ids[id] {
			t.Errorf("%s: id %q stands twice", name, id)
		}
		ids[id] = true
	})
	return ids
}

// check looks at every page for what must hold whatever the records say.
func (o *output) check(t *testing.T) {
	t.Helper()
	if len(o.pages) == 0 {
		t.Fatal("no page was written")
	}
	for name, page := range o.pages {
		o.checkLinks(t, name, page)
		checkShape(t, name, page)
		checkHarmless(t, name, page)
	}
}

// checkLinks follows every way to a file and an anchor of the output.
func (o *output) checkLinks(t *testing.T, name string, page *html.Node) {
	each(page, func(n *html.Node) {
		for _, key := range []string{"href", "src"} {
			to := attr(n, key)
			if to == "" || strings.HasPrefix(to, "https://") || to == "data:," {
				continue
			}
			u, err := url.Parse(to)
			if err != nil || u.Scheme != "" || u.Host != "" {
				t.Errorf("%s: %s=%q leads out of the folder", name, key, to)
				continue
			}
			target := name
			if u.Path != "" {
				target = path.Join(path.Dir(name), u.Path)
			}
			if !o.files[target] {
				t.Errorf("%s: %s=%q leads to no file", name, key, to)
			} else if u.Fragment != "" && o.pages[target] != nil && !o.anchors[target][u.Fragment] {
				t.Errorf("%s: %s=%q leads to no anchor", name, key, to)
			}
		}
	})
}

// checkShape holds the page to what a reader with or without eyes, script and mouse needs.
func checkShape(t *testing.T, name string, page *html.Node) {
	headings, last := 0, 0
	each(page, func(n *html.Node) {
		switch n.Data {
		case "html":
			if attr(n, "lang") != "en" {
				t.Errorf("%s: no language", name)
			}
		case "h1", "h2", "h3", "h4", "h5", "h6":
			level := int(n.Data[1] - '0')
			if level == 1 {
				headings++
			}
			if level > last+1 {
				t.Errorf("%s: heading %q of level %d after one of level %d", name, textOf(n), level, last)
			}
			last = level
		case "th":
			if s := attr(n, "scope"); s != "col" && s != "row" {
				t.Errorf("%s: head cell %q without scope", name, textOf(n))
			}
		case "table":
			if child(n, "caption") == nil && attr(n, "class") != "plain" {
				t.Errorf("%s: table without caption", name)
			}
		case "svg":
			if child(n, "title") == nil {
				t.Errorf("%s: drawing without title", name)
			}
		case "img":
			if attr(n, "alt") == "" {
				t.Errorf("%s: image without words", name)
			}
		case "a":
			if attr(n, "href") != "" && strings.TrimSpace(textOf(n)) == "" && n.Parent.Data != "svg" && !insideSVG(n) {
				t.Errorf("%s: link to %q without words", name, attr(n, "href"))
			}
		}
	})
	if headings != 1 {
		t.Errorf("%s: %d headings of level 1", name, headings)
	}
}

// checkHarmless finds what a record must never bring into a page.
func checkHarmless(t *testing.T, name string, page *html.Node) {
	each(page, func(n *html.Node) {
		switch n.Data {
		case "xss", "iframe", "object", "embed", "base", "style":
			t.Errorf("%s: element <%s>", name, n.Data)
		case "script":
			if src := attr(n, "src"); !strings.HasSuffix(src, "assets/book.js") || n.FirstChild != nil {
				t.Errorf("%s: script %q with %q", name, src, textOf(n))
			}
		}
		for _, a := range n.Attr {
			low := strings.ToLower(a.Key)
			if strings.HasPrefix(low, "on") || low == "style" || low == "y" && a.Val == "z" || low == "integrity" {
				t.Errorf("%s: attribute %s=%q on <%s>", name, a.Key, a.Val, n.Data)
			}
		}
	})
}

func insideSVG(n *html.Node) bool {
	for ; n != nil; n = n.Parent {
		if n.Data == "svg" {
			return true
		}
	}
	return false
}

func child(n *html.Node, name string) *html.Node {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		if c.Type == html.ElementNode && c.Data == name {
			return c
		}
	}
	return nil
}

func textOf(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	var b strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		b.WriteString(textOf(c))
	}
	return b.String()
}
