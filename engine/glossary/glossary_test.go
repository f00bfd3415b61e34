package glossary

import (
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/content"
)

func TestTheLongestFormIsTaken(t *testing.T) {
	table, err := newTable([]Term{{Word: "beam", Means: "breadth"}, {Word: "beam between chines", Also: []string{"chine beam"}, Means: "of the bottom"}, {Word: "chine", Means: "edge"}})
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]string{
		"The Beam between  chines, 2 m": "beam between chines",
		"a chine-beam":                  "",
		"chine beam; beam.":             "beam,beam between chines",
		"machine":                       "",
		"":                              "",
	} {
		var got []string
		for _, term := range table.Within(text) {
			got = append(got, term.Word)
		}
		if strings.Join(got, ",") != want {
			t.Errorf("own arithmetic: in %q found %v, want %s", text, got, want)
		}
	}
}

func TestTermsThatCannotStand(t *testing.T) {
	for why, text := range map[string]string{
		"two meanings": "[[term]]\nword=\"a\"\nmeans=\"x\"\n[[term]]\nword=\"b\"\nalso=[\"A\"]\nmeans=\"y\"\n",
		"no meaning":   "[[term]]\nword=\"a\"\n",
		"unknown key":  "[[term]]\nword=\"a\"\nmeans=\"x\"\nmean=\"y\"\n",
		"not TOML":     "[[term\n",
	} {
		if _, err := Load(fstest.MapFS{file: {Data: []byte(text)}}); err == nil {
			t.Errorf("%s: read without an error", why)
		}
	}
}

func TestShippedTerms(t *testing.T) {
	table, err := Load(content.Files)
	if err != nil {
		t.Fatal(err)
	}
	owner := 0
	for _, term := range table.Terms {
		if term.Owner {
			owner++
		}
		if !strings.HasSuffix(term.Means, ".") {
			t.Errorf("%s: the meaning does not end with a full stop", term.Word)
		}
	}
	if len(table.Terms) < 50 || owner < 20 {
		t.Errorf("%d terms, %d for the owner", len(table.Terms), owner)
	}
}

func BenchmarkWithin(b *testing.B) {
	table, err := Load(content.Files)
	if err != nil {
		b.Fatal(err)
	}
	text := strings.Repeat("The righting lever of the loaded and ready boat at rest, with the freeboard at the transom. ", 200)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		table.Within(text)
	}
}
