package site

import (
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"
)

// safeElements are what a note may be made of; safeStarts are how a link of it may begin.
var (
	safeElements = "html head body p h3 h4 h5 h6 em strong del code pre blockquote ul ol li a hr br table thead tbody tr th td dl dt dd"
	safeStarts   = []string{"http://", "https://", "mailto:", "tel:", "structure/B3.html"}
)

// FuzzProse: whatever stands in a note, the page gets harmless elements, harmless attributes and harmless links.
func FuzzProse(f *testing.F) {
	for _, text := range []string{
		"# A\n\n> b\n\n1. c\n\n|a|b|\n|-|-|\n|1|2|\n", "[a](javascript:alert(1)) <script>x</script> ![b](x)", "<https://a.invalid> <javascript:x>",
		"[a]: javascript:x\n\n[a]", "term\n: words\n", "~~a~~ `b` **c**\n```js onload=x\n</code><script>\n```", "[a](<panel B3> \"t\" onmouseover=x)", "&lt;script&gt;&#106;avascript:",
		"[a](https://x.invalid/\"onclick=\"alert(1))", "a\x00b\u202e", "<div onclick='x'>\n\nb\n</div>", "[a](HTTPS:javascript:x)",
	} {
		f.Add(text)
	}
	way := func(subject string) string {
		if subject == "panel B3" {
			return "structure/B3.html"
		}
		return ""
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := prose(text, 3, way)
		if err != nil {
			t.Fatal(err)
		}
		tree, err := html.Parse(strings.NewReader(string(got)))
		if err != nil {
			t.Fatal(err)
		}
		for n := range tree.Descendants() {
			if n.Type == html.ElementNode {
				harmless(t, n)
			}
		}
	})
}

func harmless(t *testing.T, n *html.Node) {
	t.Helper()
	if !strings.Contains(" "+safeElements+" ", " "+n.Data+" ") {
		t.Errorf("a note makes the element %s", n.Data)
	}
	for _, a := range n.Attr {
		switch {
		case a.Key == "href":
			low := strings.ToLower(a.Val)
			safe := false
			for _, start := range safeStarts {
				safe = safe || strings.HasPrefix(low, strings.ToLower(start))
			}
			if !safe {
				t.Errorf("a note leads to %q", a.Val)
			}
		case a.Key == "title" || a.Key == "start" || a.Key == "class" || a.Key == "scope" && a.Val == "col":
		default:
			t.Errorf("a note sets %s of %s", a.Key, n.Data)
		}
	}
}

// TestNotesMadeToBeSlow: notes that make some readers of Markdown take time with the square of their length, each as long
// as a line of a record may be (own bound).
func TestNotesMadeToBeSlow(t *testing.T) {
	if testing.Short() {
		t.Skip("it measures time, which the race detector stretches")
	}
	const long = 100_000
	for _, part := range []string{">", "> ", "- ", "* a\n  ", "1. ", "[", "![", "[a](", "[a](<", "**a ", "_a", "~~a", "`", "``a`", "<a", "<!--", "<?", "|", "a|\n", "\\", "&", "&#1", "a\n: ", "[a]: b\n", "# ", "~~~", "\t"} {
		begun := time.Now()
		if _, err := prose(strings.Repeat(part, long/len(part)), 3, nil); err != nil {
			t.Errorf("%q: %v", part, err)
		}
		if took := time.Since(begun); took > 4*time.Second {
			t.Errorf("%q again and again takes %v", part, took)
		}
	}
}

// TestNamesForEverySystem: names out of records become names that Windows, macOS and Linux can all hold, and that stay
// apart where case does not count. What Windows keeps for devices: Naming Files, Paths, and Namespaces (recalled).
func TestNamesForEverySystem(t *testing.T) {
	s, seen := slugs{}, map[string]string{}
	keys := []string{
		"CON", "con", "Con.txt", "PRN", "AUX", "NUL", "nul.tar.gz", "COM1", "com9.x", "LPT0", "COM¹", "a", "A", "a.", "a ", " a", "..", ".", "", "...", "a/b", `a\b`, "a:b",
		"a?b", "a*b", `a"b`, "a<b", "a>b", "a|b", "a\x00b", "a\nb", "a\u202eb", "é", "e\u0301", "日本", strings.Repeat("x", 300), strings.Repeat("日", 300), "-rf", "~", "$(x)", "%20", "index.html",
	}
	for _, key := range keys {
		name := s.take(key)
		low := strings.ToLower(name)
		if other, taken := seen[low]; taken {
			t.Errorf("%q and %q both become %s", key, other, name)
		}
		seen[low] = key
		if name == "" || len(name) > 70 || reserved(name) || strings.Trim(name, ".") != name || strings.HasPrefix(name, "-") {
			t.Errorf("%q becomes %q", key, name)
		}
		for _, r := range name {
			if !plainRune(r) {
				t.Errorf("%q becomes %q, which holds %q", key, name, r)
			}
		}
	}
	for _, hull := range []string{"CON", "nul.1", "com5", "a.", " a", "a/b", `a\b`, "a:b", "..", "a\u0301", "\u202ea", "assets", "SHA256SUMS", strings.Repeat("x", 81)} {
		if plainName(hull) {
			t.Errorf("a hull may be called %q", hull)
		}
	}
	for _, hull := range []string{"HL74-012", "Hull 7", "Å-12", "1"} {
		if !plainName(hull) {
			t.Errorf("no hull may be called %q", hull)
		}
	}
}

// longestPath leaves room for the folder into which a file is copied where a path has 260 characters at the most.
const longestPath = 180

// TestPathsAreShort: a technical file can be copied with the programs of an office.
func TestPathsAreShort(t *testing.T) {
	out := readOutput(t, rendered(t, hostileJob(t)))
	if len(out.files) < 20 {
		t.Fatalf("only %d files seen", len(out.files))
	}
	for name := range out.files {
		if n := len([]rune(name)); n > longestPath {
			t.Errorf("a path has %d characters: %s", n, name)
		}
		for part := range strings.SplitSeq(name, "/") {
			if reserved(part) || strings.TrimRight(part, ". ") != part {
				t.Errorf("a part of a path cannot be on every system: %s", name)
			}
		}
	}
}
