package site

import (
	"regexp"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

var (
	dataDay   = regexp.MustCompile(`\b\d{4}-\d{2}-\d{2}\b`)
	spokenDay = regexp.MustCompile(`^\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December) \d{4}$`)
)

// TestDaysInWords: one way to write a day. Sentences, headings and facts say 14 March 2026; a column of days says
// 2026-03-14, as records do, so that it can be sorted and read down.
func TestDaysInWords(t *testing.T) {
	spoken, cells := 0, 0
	for name, page := range readOutput(t, rendered(t, demoJob(t))).pages {
		if strings.Contains(name, "/records") {
			continue
		}
		eachPiece(page, func(text string) {
			if spokenDay.MatchString(strings.TrimSpace(text)) {
				spoken++
			}
			if d := dataDay.FindString(text); d != "" {
				t.Errorf("%s: outside a table stands %s: %q", name, d, text)
			}
		})
		each(page, func(n *html.Node) {
			if n.Data != "table" {
				return
			}
			days, wrong := columnsOfDays(n)
			cells += days
			if wrong != "" {
				t.Errorf("%s: a column of days says %s", name, wrong)
			}
		})
	}
	if spoken < 20 || cells < 20 {
		t.Errorf("%d days in words and %d in cells were looked at", spoken, cells)
	}
}

// columnsOfDays counts the days in columns of a table that hold nothing else, and gives one that is written in words.
func columnsOfDays(table *html.Node) (days int, wrong string) {
	columns, other := map[int][]string{}, map[int]bool{}
	each(table, func(row *html.Node) {
		at := 0
		for c := row.FirstChild; row.Data == "tr" && c != nil; c = c.NextSibling {
			if c.Data != "td" && !(c.Data == "th" && attr(c, "scope") == "row") {
				continue
			}
			switch text := strings.TrimSpace(textOf(c)); {
			case spokenDay.MatchString(text), dataDay.FindString(text) == text && text != "":
				columns[at] = append(columns[at], text)
			case text != "" && !strings.HasPrefix(text, "–"):
				other[at] = true
			}
			at++
		}
	})
	for at, texts := range columns {
		if other[at] || len(texts) < 2 {
			continue
		}
		for _, text := range texts {
			if days++; spokenDay.MatchString(text) {
				wrong = text
			}
		}
	}
	return days, wrong
}

// TestColumnsOfDays holds the looking itself to a column that is wrong and one of facts that is not a column of days.
func TestColumnsOfDays(t *testing.T) {
	for _, r := range []struct {
		where, rows string
		days        int
		wrong       bool
	}{
		{"as data", "<tr><th scope=row>W1</th><td>2026-03-14</td></tr><tr><th scope=row>W2</th><td>2026-03-15</td></tr>", 2, false},
		{"in words", "<tr><th scope=row>W1</th><td>2026-03-14</td></tr><tr><th scope=row>W2</th><td>15 March 2026</td></tr>", 2, true},
		{"facts", "<tr><th scope=row>length</th><td>7.40 m</td></tr><tr><th scope=row>launched</th><td>15 March 2026</td></tr>", 0, false},
	} {
		doc, err := html.Parse(strings.NewReader("<table>" + r.rows + "</table>"))
		if err != nil {
			t.Fatal(err)
		}
		if days, wrong := columnsOfDays(doc); days != r.days || (wrong != "") != r.wrong {
			t.Errorf("%s: %d days, wrong %q", r.where, days, wrong)
		}
	}
}

// eachPiece gives every piece of text outside tables that a reader sees. What is quoted from a record, an example or a
// file is left out.
func eachPiece(n *html.Node, do func(text string)) {
	switch {
	case n.Type == html.TextNode:
		do(n.Data)
	case n.Data == "code", n.Data == "pre", n.Data == "script", n.Data == "style", n.Data == "td", n.Data == "th":
		return
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		eachPiece(c, do)
	}
}
