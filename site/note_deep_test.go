package site

import (
	"strings"
	"testing"
	"time"
)

// Quotes within quotes end at the deepest, and what stands beyond it stays as text. Own bound.
func TestQuotesWithinQuotes(t *testing.T) {
	for _, r := range []struct {
		in     string
		quotes int
		says   string
	}{
		{"> > a", 2, "a"},
		{strings.Repeat(">", deepestMarks) + " a", deepestMarks, "a"},
		{strings.Repeat("> ", deepestMarks+3) + "a", deepestMarks, "&gt; &gt; &gt; a"},
		{"a > b" + strings.Repeat(" > c", 60), 0, "a &gt; b"},
	} {
		html, err := prose(r.in, 3, nil)
		if err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(string(html), "<blockquote>"); n != r.quotes || !strings.Contains(string(html), r.says) {
			t.Errorf("%.60q: %d quotes, want %d, in %s", r.in, n, r.quotes, html)
		}
	}
}

// Marks of lists count as those of quotes do; a rule across the page is none. Own bound.
func TestListsWithinLists(t *testing.T) {
	for _, r := range []struct {
		in    string
		lists int
		says  string
	}{
		{"- 1. * a", 3, "a"},
		{strings.Repeat("> - ", deepestMarks) + "a", deepestMarks / 2, "&gt; - &gt;"},
		{"a\n\n" + strings.Repeat("- ", 60) + "\n\nb", 0, "<hr>"},
		{"1990. a", 1, "a"}, {"-a", 0, "-a"}, {"1234567890. a", 0, "1234567890. a"},
	} {
		html, err := prose(r.in, 3, nil)
		if err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(string(html), "<li>"); n != r.lists || !strings.Contains(string(html), r.says) {
			t.Errorf("%.60q: %d lists, want %d, in %.300s", r.in, n, r.lists, html)
		}
	}
}

// What lies within the walls reads as it does without them.
func TestOrdinaryNotesStayAsTheyAre(t *testing.T) {
	long := strings.Repeat("**a** _b_ `c` [d](https://e.example) \\* f\n", mostSigns/20)
	table := "| a | b |\n|---|---|\n" + strings.Repeat("| 1 | 2 |\n", mostCells/5)
	for _, in := range []string{long, table, "a\n\n* b\n* c\n\n> d\n", ""} {
		if shallow(in) != in {
			t.Errorf("%.80q was changed", in)
		}
	}
	if n := strings.Count(shallow(strings.Repeat(`\*`, 2*mostSigns)+strings.Repeat("*", mostSigns+5)), `\*`); n != 2*mostSigns+5 {
		t.Errorf("%d signs are written as themselves, want those that were and five more", n)
	}
}

// Texts that keep a reader of Markdown busy by their square: each is read in a time that grows with its length alone. The
// bound is many times what is needed, and a fraction of what each took.
func TestSlowMarkdown(t *testing.T) {
	if testing.Short() {
		t.Skip("left out with -short: it takes time")
	}
	const long = 400_000
	for _, in := range []string{
		strings.Repeat("> - ", long/4), strings.Repeat("- >", long/3), strings.Repeat("1. * ", long/5),
		strings.Repeat("* _", long/3), strings.Repeat("_* ", long/3), strings.Repeat("* ~~", long/4), strings.Repeat("]("+"[", long/3),
		strings.Repeat("[", long/2) + strings.Repeat("]", long/2), strings.Repeat("`a", long/2), strings.Repeat("[](", long/3),
		strings.Repeat("|a", 10_000) + "\n" + strings.Repeat("|-", 10_000) + "\n" + strings.Repeat(strings.Repeat("|b", 100)+"\n", 1800),
		"|a|b\n|-|-\n" + strings.Repeat("|\n", long/2),
	} {
		begun := time.Now()
		html, err := prose(in, 3, nil)
		if took := time.Since(begun); err != nil || took > 10*time.Second || len(html) > 20*long {
			t.Errorf("%.20q takes %v, gives %d bytes, %v", in, took, len(html), err)
		}
	}
}
