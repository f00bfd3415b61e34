package requirement

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// ownList is a list of a yard's own with one item that needs a word, and the words that it defines.
func ownList(name, needed string, defines ...string) record.List {
	l := record.List{Name: name, Path: "requirements/" + name + ".toml", Yards: true}
	l.Title = record.Written("List "+name, finding.Place{})
	l.Items = []record.Requirement{{Entry: record.Entry{ID: "1"}, Needed: record.Written([]string{needed}, finding.Place{})}}
	for _, w := range defines {
		l.Evidence = append(l.Evidence, record.Evidence{Entry: record.Entry{ID: w}, How: record.Written("test", finding.Place{}), Keys: record.Written([]string{"plate.seen_from"}, finding.Place{})})
	}
	return l
}

// A hull asks for the lists that it or the yard names, there or not, and for those whose words it needs; of the others it sees
// nothing, and where one stands in the place of a shipped list, it sees that.
func TestListsForWhichAHullAsks(t *testing.T) {
	read, err := Read(files(item(`needed = ["strength"]`)))
	if err != nil {
		t.Fatal(err)
	}
	shipped, err := read.With(nil)
	if err != nil {
		t.Fatal(err)
	}
	plan, words, deeper := ownList("plan", "launched"), ownList("words", "floated", "launched"), ownList("deeper", "strength", "floated")
	c, err := read.With([]record.List{plan, words, deeper, ownList("list", "strength"), ownList("other", "tugged", "tugged")})
	if err != nil {
		t.Fatal(err)
	}
	names := func(all ...string) record.Val[[]string] { return record.Written(all, finding.Place{}) }
	for _, r := range []struct {
		what       string
		yard, hull record.Val[[]string]
		accepted   string
		shows      string
		want       string
		words      int // beside the shipped ones
	}{
		{what: "nothing"},
		{what: "a list that the yard names", yard: names("list"), want: "list"},
		{what: "one that the hull names in its place", yard: names("list"), hull: names("other"), want: "list other", words: 1},
		{what: "one that is not there", hull: names("gone"), want: "gone"},
		{what: "one whose words stand in another, and theirs in a third", hull: names("plan"), want: "deeper plan words", words: 2},
		{what: "one of which an item was accepted", accepted: "words", want: "deeper words", words: 2},
		{what: "a paper that shows a word of one", shows: "tugged", want: "other", words: 1},
	} {
		h, b := hull(), &record.Builder{Lists: r.yard}
		h.Conformity.Lists = r.hull
		if r.accepted != "" {
			h.Accepted = append(h.Accepted, record.Accepted{List: record.Written(r.accepted, finding.Place{})})
		}
		if r.shows != "" {
			h.Documents = append(h.Documents, record.Document{Shows: names(r.shows)})
		}
		asked := c.Asks(h, b)
		if got := strings.Join(asked, " "); got != r.want {
			t.Errorf("%s: asks for %s, want %s", r.what, got, r.want)
		}
		only := c.Only(asked, shipped)
		if l, ok := only.Find("list"); !ok || l.Yards != strings.HasPrefix(r.want, "list") {
			t.Errorf("%s: the shipped list is there %v, and in its place the yard's own %v", r.what, ok, ok && l.Yards)
		}
		if more := len(only.Words()) - len(shipped.Words()); more != r.words {
			t.Errorf("%s: %d words beside the shipped ones, want %d", r.what, more, r.words)
		}
	}
}
