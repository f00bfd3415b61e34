package main

import (
	"bytes"
	"fmt"
	"net/url"
	"os"
	"path"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// TestLinksResolveAndPagesAreSound reads every page of the demo without a browser: each link leads to a file and a mark
// that exist and stays inside the hull's folder, ids are unique, headings go down one step at a time, pictures and
// tables are named, and nothing needs the network or a looser security policy.
func TestLinksResolveAndPagesAreSound(t *testing.T) {
	t.Parallel()
	dir := demoFiles(t)
	files, err := treeOf(dir)
	if err != nil {
		t.Fatal(err)
	}
	marks := map[string]map[string]bool{}
	pages := map[string]*html.Node{}
	for _, p := range pagesOf(t, dir) {
		name := short(dir, p)
		text, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := html.Parse(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		pages[name] = doc
		marks[name] = ids(t, name, doc)
	}
	links := 0
	for name, doc := range pages {
		soundPage(t, name, doc)
		eachNode(doc, func(n *html.Node) {
			for _, key := range []string{"href", "src"} {
				to, has := attr(n, key)
				if !has {
					continue
				}
				links++
				if fault := follow(files, name, to, marks); fault != "" {
					t.Errorf("%s: %q: %s", name, to, fault)
				}
			}
		})
	}
	if links < 500 {
		t.Fatalf("only %d links seen", links)
	}
}

// follow says what is wrong with a link on a page, empty where nothing is. A file must be there under exactly the name in
// the link, also on a disk that knows no case, so it is looked for in the list of files.
func follow(files map[string]string, page, link string, marks map[string]map[string]bool) string {
	u, err := url.Parse(link)
	switch {
	case err != nil:
		return err.Error()
	case link == "data:,", strings.HasPrefix(link, "data:image/"), u.Scheme == "mailto", u.Scheme == "tel":
		return ""
	case u.Scheme != "" || u.Host != "":
		return "leads out of the file"
	case path.IsAbs(u.Path):
		return "is an absolute path"
	}
	target := page
	if u.Path != "" {
		target = path.Join(path.Dir(page), u.Path)
	}
	hull, _, inHull := strings.Cut(page, "/")
	if inHull && target != "index.html" && !strings.HasPrefix(target, hull+"/") {
		return "leads out of the hull's folder"
	}
	if _, there := files[target]; !there {
		return "leads to nothing"
	}
	if u.Fragment != "" && !marks[target][u.Fragment] {
		return "leads to a mark that is not there"
	}
	return ""
}

// ids gathers the marks of a page and refuses one that stands twice.
func ids(t *testing.T, name string, doc *html.Node) map[string]bool {
	t.Helper()
	seen := map[string]bool{}
	eachNode(doc, func(n *html.Node) {
		id, has := attr(n, "id")
		if has && (seen[id] || id == "" || strings.ContainsAny(id, " \t\n")) {
			t.Errorf("%s: the mark %q is empty, has a space or stands twice", name, id)
		}
		seen[id] = has || seen[id]
	})
	return seen
}

// soundPage holds what every page must have, and what none may.
func soundPage(t *testing.T, name string, doc *html.Node) {
	t.Helper()
	level, heads, titles, mains, policies := 0, 0, 0, 0, 0
	eachNode(doc, func(n *html.Node) {
		switch n.Data {
		case "html":
			wants(t, name, n, "lang")
		case "title":
			titles += len(strings.TrimSpace(textOf(n)))
		case "main":
			mains++
		case "meta":
			if v, _ := attr(n, "http-equiv"); v == "Content-Security-Policy" {
				policies++
				holdPolicy(t, name, n)
			}
		case "h1", "h2", "h3", "h4", "h5", "h6":
			now := int(n.Data[1] - '0')
			if now == 1 {
				heads++
			}
			if now > level+1 {
				t.Errorf("%s: heading %q jumps from %d to %d", name, strings.TrimSpace(textOf(n)), level, now)
			}
			level = now
		case "img":
			wants(t, name, n, "alt")
		case "svg":
			soundPicture(t, name, n)
		case "table":
			if first(n, "caption") == nil {
				t.Errorf("%s: a table without a caption: %.60q", name, textOf(n))
			}
		case "th":
			wants(t, name, n, "scope")
		case "style", "iframe", "object", "embed", "form", "base":
			t.Errorf("%s has a <%s>", name, n.Data)
		case "script":
			if _, has := attr(n, "src"); !has {
				t.Errorf("%s has script of its own", name)
			}
		}
		for _, a := range n.Attr {
			if a.Key == "style" || a.Key == "integrity" || strings.HasPrefix(a.Key, "on") {
				t.Errorf("%s: <%s> has %s, which the security policy or file:// refuses", name, n.Data, a.Key)
			}
		}
	})
	if heads != 1 || titles == 0 || mains != 1 || policies != 1 {
		t.Errorf("%s has %d main headings, %d main parts, %d security policies and a title of %d letters", name, heads, mains, policies, titles)
	}
}

func holdPolicy(t *testing.T, name string, n *html.Node) {
	t.Helper()
	policy, _ := attr(n, "content")
	for _, part := range []string{"default-src 'none'", "base-uri 'none'", "form-action 'none'"} {
		if !strings.Contains(policy, part) {
			t.Errorf("%s: the security policy lacks %s: %s", name, part, policy)
		}
	}
	for _, part := range []string{"unsafe", "http", "*"} {
		if strings.Contains(policy, part) {
			t.Errorf("%s: the security policy holds %q: %s", name, part, policy)
		}
	}
}

// soundPicture asks a drawing for its name, unless it is only an ornament.
func soundPicture(t *testing.T, name string, n *html.Node) {
	t.Helper()
	if hidden, _ := attr(n, "aria-hidden"); hidden == "true" {
		return
	}
	label, _ := attr(n, "aria-label")
	by, _ := attr(n, "aria-labelledby")
	role, _ := attr(n, "role") // a group is a drawing with links in it
	if role != "img" && role != "group" || label+by == "" || first(n, "title") == nil {
		t.Errorf("%s: a drawing without role, title or name", name)
	}
}

func wants(t *testing.T, name string, n *html.Node, key string) {
	t.Helper()
	if v, has := attr(n, key); !has || (v == "" && key != "alt") {
		t.Errorf("%s: <%s> without %s: %.60q", name, n.Data, key, textOf(n))
	}
}

func eachNode(n *html.Node, do func(*html.Node)) {
	if n.Type == html.ElementNode {
		do(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		eachNode(c, do)
	}
}

func first(n *html.Node, tag string) (found *html.Node) {
	eachNode(n, func(m *html.Node) {
		if found == nil && m.Data == tag {
			found = m
		}
	})
	return found
}

func attr(n *html.Node, key string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == key && a.Namespace == "" {
			return a.Val, true
		}
	}
	return "", false
}

func textOf(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	var text strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		text.WriteString(textOf(c))
	}
	return text.String()
}

// TestLinkCheckSeesWhatItMust proves that the check above can fail.
func TestLinkCheckSeesWhatItMust(t *testing.T) {
	files := map[string]string{"A/index.html": ""}
	marks := map[string]map[string]bool{"A/index.html": {"top": true}}
	for link, want := range map[string]string{
		"index.html#top":       "",
		"#top":                 "",
		"Index.html":           "leads to nothing",
		"#bottom":              "leads to a mark that is not there",
		"https://example.org/": "leads out of the file",
		"//example.org/x.js":   "leads out of the file",
		"/etc/passwd":          "is an absolute path",
		"../B/index.html":      "leads out of the hull's folder",
		"javascript:alert(1)":  "leads out of the file",
	} {
		if got := follow(files, "A/index.html", link, marks); got != want {
			t.Errorf("%s: %s", link, fmt.Sprintf("%q, want %q", got, want))
		}
	}
}
