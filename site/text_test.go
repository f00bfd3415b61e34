package site

import (
	"html"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestFigures(t *testing.T) {
	rows := []struct {
		where string
		got   string
		want  string
	}{
		{"own arithmetic: a plate as written", written(6, "mm"), "6.0"},
		{"own arithmetic: an inch plate as written", written(4.76, "mm"), "4.76"},
		{"own arithmetic: sides of a panel", written(210, "mm"), "210"},
		{"own arithmetic: a length", written(5.6, "m"), "5.60"},
		{"own arithmetic: a depth of water", written(70, "m"), "70"},
		{"own arithmetic: a speed", written(34, "kn"), "34.0"},
		{"own arithmetic: a mass", written(2750, "kg"), "2\u00a0750"},
		{"own arithmetic: below nought", written(-0.55, "m"), "−0.55"},
		{"own arithmetic: mass of a small item", mass(9.14), "9.1"},
		{"own arithmetic: mass of a boat", mass(2753.4), "2\u00a0753"},
		{"own arithmetic: carry over to whole kilograms", mass(99.97), "100"},
		{"own arithmetic: a margin is never rounded up", times(0.9999), "0.99"},
		{"own arithmetic: a margin that is whole", times(1.5), "1.50"},
		{"own arithmetic: a difference", signed(11.4, 0), "+11"},
		{"own arithmetic: a difference below nought", signed(-11.4, 0), "−11"},
		{"own arithmetic: no difference has no sign", signed(0.2, 0), "0"},
		{"own arithmetic: size of a small file", fileSize(999), "999 B"},
		{"own arithmetic: size of a large file", fileSize(2_345_678), "2.3 MB"},
	}
	for _, r := range rows {
		if r.got != r.want {
			t.Errorf("%s: %q, want %q", r.where, r.got, r.want)
		}
	}
}

func TestSlugs(t *testing.T) {
	s := slugs{}
	rows := []struct{ key, want string }{
		{"B3", "B3"}, {"b3", "b3-2"}, {"B3", "B3-3"}, {"frame 9/10", "frame-9-10"}, {"../../etc", "etc"}, {"con", "x-con"}, {"COM1.x", "x-COM1.x"},
		{"ø", "x-"}, {"", "x--2"}, {".htaccess", "htaccess"},
	}
	for _, r := range rows {
		if got := s.take(r.key); got != r.want {
			t.Errorf("key %q becomes %q, want %q", r.key, got, r.want)
		}
	}
}

func TestProse(t *testing.T) {
	way := func(subject string) string {
		if subject == "panel B3" {
			return "structure/B3.html"
		}
		return ""
	}
	rows := []struct{ name, markdown, want string }{
		{"headings begin at the level asked for and skip none", "# A\n\n#### B\n", "<h3>A</h3>\n<h4>B</h4>\n"},
		{"a subject becomes a way", "[see](<panel B3>)", `<p><a href="structure/B3.html">see</a></p>` + "\n"},
		{"a web address stays", "[a](https://example.invalid/x)", `<p><a href="https://example.invalid/x">a</a></p>` + "\n"},
		{"a script address leaves its words", "[a](JaVaScRiPt:alert(1))", "<p>a</p>\n"},
		{"a file address leaves its words", "[a](file:///etc/passwd) [b](../../x)", "<p>a b</p>\n"},
		{"a page address as data leaves its words", "[a](data:text/html,x)", "<p>a</p>\n"},
		{"an image leaves its words", "![deck](https://example.invalid/a.png)", "<p>deck</p>\n"},
		{"markup is left out", "a <b onclick=x>b</b>", "<p>a <!-- raw HTML omitted -->b<!-- raw HTML omitted --></p>\n"},
	}
	for _, r := range rows {
		got, err := prose(r.markdown, 3, way)
		if err != nil || string(got) != r.want {
			t.Errorf("%s: %q, %v, want %q", r.name, got, err, r.want)
		}
	}
}

// Whatever stands in a record file comes out as text: read back, it is what went in, but for characters that are shown
// as the replacement character.
func FuzzRecordLines(f *testing.F) {
	f.Add([]byte("[panel.B3]\r\nthickness_mm = 6.0 # <b>\n"))
	f.Add([]byte("</code></li><script>&#60;\u202e\x00\xff'\"`"))
	f.Fuzz(func(t *testing.T, text []byte) {
		out := string(new(press).recordLines(text, func(out []byte, _ int) []byte { return out }))
		body := strings.NewReplacer("</code></li>\n", "").Replace(out)
		if n := strings.Count(body, "<"); n != strings.Count(body, `<li id="L`)+strings.Count(body, "<code>") {
			t.Fatalf("markup came through: %q", out)
		}
		if !utf8.ValidString(out) || strings.ContainsAny(out, "\x00\u202e\u2028") {
			t.Fatalf("a character that a page may not hold: %q", out)
		}
		if n := strings.Count(out, "<li "); n != lineCount([]byte(strings.TrimPrefix(string(text), "\ufeff"))) {
			t.Fatalf("%d lines for %q", n, text)
		}
		if plain := html.UnescapeString(string(escaped(nil, []byte("a&lt;b")))); plain != "a&lt;b" {
			t.Fatalf("an escape that was written is not shown as written: %q", plain)
		}
	})
}

// A text in the style sheet stays inside its quotes.
func FuzzStyleString(f *testing.F) {
	f.Add(`"}body{display:none}`)
	f.Add("\\22 \n*/")
	f.Fuzz(func(t *testing.T, text string) {
		out := cssString(text)
		inner := strings.TrimSuffix(strings.TrimPrefix(out, `"`), `"`)
		if len(out) < 2 || strings.ContainsAny(inner, "\"'\n\r\f;{}<>()*/") {
			t.Fatalf("%q becomes %q", text, out)
		}
	})
}
