package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// golden lists the pages whose words are kept in testdata/golden and reviewed like code when they change.
var golden = []string{
	"index.html", "LT56-031/index.html", "LT56-031/findings.html", "LT56-031/structure.html", "LT56-031/structure/B6-insert.html",
	"LT56-031/weight.html", "LT56-031/trials.html", "LT56-031/documents.html",
}

// TestPagesReadAsReviewed holds what a reader reads on the golden pages. HULLFILE_UPDATE=1 writes what is read now; look
// at the difference before keeping it.
func TestPagesReadAsReviewed(t *testing.T) {
	t.Parallel()
	dir := demoFiles(t)
	for _, page := range golden {
		text, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(page)))
		if err != nil {
			t.Fatal(err)
		}
		doc, err := html.Parse(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		got := readAloud(first(doc, "main"))
		if strings.HasSuffix(page, "index.html") {
			got = roots.ReplaceAllString(got, "(root)")
		}
		kept := filepath.Join(moduleRoot(t), "testdata", "golden", filepath.FromSlash(strings.TrimSuffix(page, ".html")+".txt"))
		if os.Getenv("HULLFILE_UPDATE") != "" {
			if err := put(kept, []byte(got)); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(kept)
		if err != nil {
			t.Fatal(err)
		}
		if at, was, is := firstDifference(string(want), got); at > 0 {
			t.Errorf("%s reads otherwise than %s, from line %d:\n  was %s\n  is  %s", page, kept, at, was, is)
		}
	}
}

// roots are the hashes of whole files, which change with any word of any page; what they are is tested elsewhere.
var roots = regexp.MustCompile(`\b[0-9a-f]{64}\b`)

// blocks are the elements that begin a line of their own when a page is read; cells are parted by a bar.
var (
	blocks = []string{"p", "h1", "h2", "h3", "h4", "li", "tr", "dt", "dd", "caption", "figcaption", "summary", "div", "table", "figure", "pre", "desc", "title"}
	cells  = []string{"td", "th"}
)

// readAloud gives the words of a part of a page, a line a block. Words inside drawings are left out but for their
// description; the positions of labels are not words.
func readAloud(n *html.Node) string {
	var text strings.Builder
	var walk func(n *html.Node, drawn bool)
	walk = func(n *html.Node, drawn bool) {
		if n.Type == html.TextNode && !drawn {
			text.WriteString(n.Data)
		}
		own := n.Type == html.ElementNode && slices.Contains(blocks, n.Data)
		if own {
			text.WriteString("\n")
		}
		if n.Type == html.ElementNode && slices.Contains(cells, n.Data) {
			text.WriteString(" | ")
		}
		inside := drawn && n.Data != "desc" || n.Data == "svg"
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c, inside)
		}
		if own {
			text.WriteString("\n")
		}
	}
	walk(n, false)
	var lines []string
	for line := range strings.Lines(text.String()) {
		if line = strings.Join(strings.Fields(line), " "); line != "" {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

// firstDifference gives the first line, counted from one, in which two texts differ; 0 where they do not.
func firstDifference(a, b string) (line int, was, is string) {
	one, two := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range max(len(one), len(two)) {
		was, is = "(nothing)", "(nothing)"
		if i < len(one) {
			was = one[i]
		}
		if i < len(two) {
			is = two[i]
		}
		if was != is {
			return i + 1, was, is
		}
	}
	return 0, "", ""
}
