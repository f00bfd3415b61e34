package site

import (
	"strings"
	"testing"
)

// Quotes within quotes end at the deepest, and what stands beyond it stays as text. Own bound.
func TestQuotesWithinQuotes(t *testing.T) {
	for _, r := range []struct {
		in     string
		quotes int
		says   string
	}{
		{"> > a", 2, "a"},
		{strings.Repeat(">", deepestQuote) + " a", deepestQuote, "a"},
		{strings.Repeat("> ", deepestQuote+3) + "a", deepestQuote, "&gt; &gt; &gt; a"},
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
