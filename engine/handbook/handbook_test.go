package handbook

import (
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/content"
	"hullfile/engine/finding"
)

func one(text string) (Chapter, finding.Faults) {
	return read(Source{Name: "04-x.md", Path: "owner/04-x.md", Text: []byte(text)})
}

func TestAChapterIsParted(t *testing.T) {
	c, faults := one("# Load\n\nNot more than {plate.load} and {plate.persons}.\n\n{table plate}\n\nA \\{brace\\}.\n```\n{not a name}\n```\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if c.Title != "Load" || c.Name != "04-x" || len(c.Parts) != 3 {
		t.Fatalf("%+v", c)
	}
	if got := c.Parts[0]; !strings.Contains(got.Markdown, "more than \ue000 and \ue001.") || len(got.Names) != 2 || got.Names[1] != "plate.persons" {
		t.Errorf("%+v", got)
	}
	if c.Parts[1].Block != "table plate" || !strings.Contains(c.Parts[2].Markdown, "A {brace}.") || !strings.Contains(c.Parts[2].Markdown, "{not a name}") {
		t.Errorf("%+v", c.Parts[1:])
	}
}

// Every fault of a text is told at once, each at its place.
func TestFaultsOfAChapter(t *testing.T) {
	rows := []struct{ text, place, says, hint string }{
		{"no title\n", "owner/04-x.md:1:1", "begins with its title", "# Loading"},
		{"# {hull.name}\n", "owner/04-x.md:1:1", "begins with its title", ""},
		{"# T\n\nä {plate.persns}\n", "owner/04-x.md:3:3", "{plate.persns} is no value", "{plate.persons}"},
		{"# T\nsee {table plate} here\n", "owner/04-x.md:2:5", "cannot stand in a sentence", "line of its own"},
		{"# T\nopen { only\n", "owner/04-x.md:2:6", "not closed", `\{`},
		{"# T\nclosed } only\n", "owner/04-x.md:2:8", "not opened", `\}`},
		{"# T\na \ue001 b\n", "owner/04-x.md:2:3", "private range", ""},
		{"# T\n{tabel plate}\n", "owner/04-x.md:2:1", "is no value", "{table plate}"},
		{"# T\nä \u202e b\n", "owner/04-x.md:2:3", "U+202E", "take it out"},
		{"# T \u2028 b\n", "owner/04-x.md:1:5", "U+2028", "take it out"},
		{"# T\n\ta\x1b[31m\x07\n", "owner/04-x.md:2:3", "U+001B", "take it out"},
		{"\xff\xfe", "owner/04-x.md:1", "not UTF-8", "UTF-8"},
	}
	for _, row := range rows {
		_, faults := one(row.text)
		if len(faults) != 1 || faults[0].Place.String() != row.place || !strings.Contains(faults[0].Says, row.says) || !strings.Contains(faults[0].Hint, row.hint) {
			t.Errorf("%q: %v (hint %q), want %s: %s", row.text, faults, faults.Error(), row.place, row.says)
		}
	}
	if _, faults := one("# T\n{a} and {b}\n{c}\n"); len(faults) != 3 {
		t.Errorf("%d faults told at once, want 3: %v", len(faults), faults)
	}
	if _, faults := one("# T\n" + strings.Repeat("}", 3*mostFaults)); len(faults) != mostFaults+1 || !strings.Contains(faults[mostFaults].Says, "not told") {
		t.Errorf("%d faults told of a text full of them, the last %v", len(faults), faults[len(faults)-1])
	}
}

func TestTheYardsChapterTakesThePlace(t *testing.T) {
	b := &Book{Chapters: []Chapter{{Name: "01-a", Title: "Ours"}, {Name: "03-c", Title: "Ours too"}}}
	got, faults := b.With([]Source{{Name: "03-c.md", Path: "owner/03-c.md", Text: []byte("# Theirs\n")}, {Name: "02-b.md", Path: "owner/02-b.md", Text: []byte("# New\n")}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	var titles []string
	for _, c := range got.Chapters {
		titles = append(titles, c.Title)
	}
	if s := strings.Join(titles, ","); s != "Ours,New,Theirs" || got.Chapters[2].Path != "owner/03-c.md" || got.Chapters[0].Path != "" {
		t.Errorf("%s %+v", s, got.Chapters)
	}
	if b.Chapters[1].Title != "Ours too" {
		t.Error("the shipped book was changed")
	}
}

func TestShippedFaultsAreFaults(t *testing.T) {
	if _, err := Load(fstest.MapFS{"owner/01-a.md": {Data: []byte("# A\n{nothing}\n")}}); err == nil {
		t.Error("a shipped chapter with an unknown name was read")
	}
}

// The shipped chapters have no fault, and use every name of the set: one that nobody uses would never be looked at.
func TestShippedChapters(t *testing.T) {
	b, err := Load(content.Files)
	if err != nil {
		t.Fatal(err)
	}
	if len(b.Chapters) < 18 {
		t.Errorf("%d chapters", len(b.Chapters))
	}
	used := map[string]bool{}
	for i := range b.Chapters {
		for _, name := range b.Chapters[i].Names() {
			used[name] = true
		}
	}
	for _, n := range Names() {
		if !used[n.Key] {
			t.Errorf("{%s} is used in no shipped chapter", n.Key)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"# T\n{hull.name}", "# T\n\\{x\\}\n```\n{", "#", "# T\r\n{table plate}\r\n", "# T\n}{"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		c, faults := read(Source{Name: "x.md", Path: "x.md", Text: text})
		for _, p := range c.Parts {
			n := 0
			for _, r := range p.Markdown {
				if r >= First && r <= '\uf8ff' {
					n++
				}
			}
			if len(faults) == 0 && n != len(p.Names) {
				t.Errorf("%d places for %d names in %q", n, len(p.Names), text)
			}
		}
	})
}

// Words around a value that is not known are left out, with the mark of a list that stands alone; the rest of a line stays.
func TestWordsThatMayBeLeftOut(t *testing.T) {
	b, faults := (&Book{}).With([]Source{{Name: "01-a.md", Path: "owner/01-a.md", Text: []byte("# A\n\n[[- Heel: {afloat.crowd}.]]\n- [[Name: {hull.name}. ]]Stays.\n[[a [[b]] {hull.title}\n")}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p := &b.Chapters[0].Parts[0]
	only := func(name string) func(string) bool { return func(n string) bool { return n == name } }
	name, title, heel := string(First+1), string(First+2), string(First)
	for _, row := range []struct{ known, want string }{
		{"hull.name", "\n- Name: " + name + ". Stays.\na [[b " + title + "\n\n"},
		{"afloat.crowd", "\n- Heel: " + heel + ".\n- Stays.\na [[b " + title + "\n\n"},
	} {
		if got := p.Known(only(row.known)); got != row.want {
			t.Errorf("only %s known: %q, want %q", row.known, got, row.want)
		}
	}
	_, faults = (&Book{}).With([]Source{{Name: "01-a.md", Path: "owner/01-a.md", Text: []byte("# A\n\nwords [[open {hull.name}\n")}})
	if len(faults) != 1 || faults[0].Place.Line != 3 || faults[0].Place.Col != 7 {
		t.Errorf("a span that is not closed: %v", faults)
	}
}
