package site

import (
	"fmt"
	"strings"
	"testing"
)

// longRows is a page as templates write them, with a section, a list that is numbered and a table whose rows have anchors.
func longRows(rows int) []byte {
	var b strings.Builder
	b.WriteString("<html><head><title>Rows</title></head><body><main id=\"main\" tabindex=\"-1\">\n<h1>Rows</h1>\n<p><a href=\"#r0\">first</a> <a href=\"#last\">last</a></p>\n")
	b.WriteString(`<section class="group" id="g" aria-labelledby="h"><h2 id="h">Group</h2><div class="scroll"><table id="t"><caption>All</caption><thead><tr><th scope="col">A</th></tr></thead><tbody>` + "\n")
	for i := range rows {
		if i%10 == 0 {
			fmt.Fprintf(&b, "<tr class=\"asking\"><td>asks %d</td></tr>\n", i/10)
		}
		fmt.Fprintf(&b, "<tr id=\"r%d\"><td><svg><g id=\"s%d\"/></svg><a href=\"#r0\">up</a><br>%d</td></tr>\n", i, i, i)
	}
	b.WriteString("</tbody></table></div></section>\n<ol class=\"record\">\n")
	for i := range rows {
		fmt.Fprintf(&b, "<li id=\"L%d\"><code>line %d</code></li>\n", i+1, i+1)
	}
	b.WriteString("</ol>\n<p id=\"last\">End.</p>\n<nav class=\"turn\"></nav></main></body></html>")
	return []byte(b.String())
}

// TestPartsHoldThePage: parts together hold each row once, each is whole in itself, every anchor can be reached in the first
// part, links within the page find what lies elsewhere, and joined they are the page again but for what a cut repeats.
func TestPartsHoldThePage(t *testing.T) {
	const rows = 100
	parts := inParts("a/rows.html", longRows(rows), 3000)
	if len(parts) < 4 {
		t.Fatalf("%d parts", len(parts))
	}
	for i, part := range parts {
		var open []string
		eachTag(part, func(_, tag, _ []byte) {
			switch name := tagName(tag); {
			case name == "" || voids[name] || name[0] == '!' || strings.HasSuffix(string(tag), "/>"):
			case name[0] == '/' && (len(open) == 0 || open[len(open)-1] != name[1:]):
				t.Errorf("part %d: %s ends among %v", i+1, name, open)
			case name[0] == '/':
				open = open[:len(open)-1]
			default:
				open = append(open, name)
			}
		})
		if len(open) > 0 || len(unmarked(part)) > 5000 {
			t.Errorf("part %d: %v stay open, %d bytes", i+1, open, len(unmarked(part)))
		}
		for _, id := range []string{"main", "r0", "r99", "L1", "L100", "g", "last"} {
			if n := strings.Count(string(part), ` id="`+id+`"`); n > 1 || i == 0 && n != 1 {
				t.Errorf("part %d: %d times %s", i+1, n, id)
			}
		}
	}
	first, second := string(parts[0]), string(parts[1])
	last := fmt.Sprintf(`<a href="rows+%d.html#last">last</a>`, len(parts))
	if !strings.Contains(first, last) || !strings.Contains(first, `<a href="#r0">first</a>`) {
		t.Errorf("no link %s in %.900s", last, first)
	}
	if !strings.Contains(second, `<section class="group"><div class="scroll"><table><caption>All</caption><thead><tr><th scope="col">A</th></tr></thead><tbody><tr class="asking"><td>asks `) {
		t.Errorf("a cut table begins so: %.900s", second)
	}
	if strings.Contains(first, `id="s99"`) || !strings.Contains(second, `<a href="rows.html#r0">up</a>`) {
		t.Error("anchors of drawings are named, or a link to the first part is wrong")
	}
	whole := string(parts[0]) + string(parts[1])
	for _, part := range parts[2:] {
		whole += string(part)
	}
	for i := range rows {
		if strings.Count(whole, fmt.Sprintf("<br>%d</td>", i)) != 1 || strings.Count(whole, fmt.Sprintf("<code>line %d</code>", i+1)) != 1 {
			t.Fatalf("row %d does not stand once", i)
		}
	}
	lists := strings.Count(whole, `<ol class="record" start="`)
	if lists == 0 {
		t.Error("a numbered list does not go on where it was cut")
	}
	if strings.Contains(string(unmarked(parts[0])), "nav class=\"split") {
		t.Error("what stands beside a part stays in an edition")
	}
}

// TestShortPagesStayWhole: a page of usual length is one file.
func TestShortPagesStayWhole(t *testing.T) {
	f, err := newFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer f.close()
	long := longRows(longPage / 100)
	for name, page := range map[string][]byte{"short.html": longRows(50), "long.html": long} {
		if err := f.writePage(name, page); err != nil {
			t.Fatal(err)
		}
	}
	if f.parts["short.html"] != 0 || f.parts["long.html"] < 2 {
		t.Fatalf("parts: %v", f.parts)
	}
	back, err := f.readPage("long.html")
	if err != nil || strings.Count(string(back), "<li id=") != longPage/100 || !strings.HasSuffix(string(back), "</html>") {
		t.Errorf("%d of %d bytes come back, %v", len(back), len(long), err)
	}
}
