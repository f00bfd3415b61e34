package site

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestTrail looks at the ways back in the file of a finished hull.
func TestTrail(t *testing.T) {
	dir := rendered(t, demoJob(t))
	t.Run("RecordLinesNameTheirPages", func(t *testing.T) { recordLinesNameTheirPages(t, dir) })
	t.Run("OriginsLeadToTheirWorking", func(t *testing.T) { originsLeadToTheirWorking(t, filepath.Join(dir, "HL74-012")) })
	t.Run("SearchIndex", func(t *testing.T) { searchIndex(t, filepath.Join(dir, "HL74-012")) })
}

// Every line of a record that a page cites names that page beside it, and every page that it names exists.
func recordLinesNameTheirPages(t *testing.T, dir string) {
	record := filepath.Join(dir, "HL74-012", "records", "hulls", "HL74-012", "hull.toml.html")
	text, err := os.ReadFile(record)
	if err != nil {
		t.Fatal(err)
	}
	page, err := os.ReadFile(filepath.Join(dir, "HL74-012", "loading.html"))
	if err != nil {
		t.Fatal(err)
	}
	cited := regexp.MustCompile(`records/hulls/HL74-012/hull\.toml\.html#L(\d+)"`).FindAllStringSubmatch(string(page), -1)
	if len(cited) < 5 {
		t.Fatalf("the page cites %d lines", len(cited))
	}
	for _, m := range cited {
		row := regexp.MustCompile(`(?m)^<li id="L` + m[1] + `">.*$`).FindString(string(text))
		if !strings.Contains(row, `href="../../../loading.html"`) && !strings.Contains(row, "more</span>") {
			t.Errorf("line %s does not name the page that cites it: %s", m[1], row)
		}
	}
	for _, m := range regexp.MustCompile(`<span class="used">.*?</span></li>`).FindAllString(string(text), -1) {
		for _, h := range regexp.MustCompile(`href="([^"]+)"`).FindAllStringSubmatch(m, -1) {
			if _, err := os.Stat(filepath.Join(filepath.Dir(record), h[1])); err != nil {
				t.Errorf("a line leads to nothing: %s", h[1])
			}
		}
	}
}

// A worked value leads to a step that is there.
func originsLeadToTheirWorking(t *testing.T, dir string) {
	text, err := os.ReadFile(filepath.Join(dir, fromPath))
	if err != nil {
		t.Fatal(err)
	}
	ways := regexp.MustCompile(`<th scope="row"><a href="([^"#]+)#([^"]+)"`).FindAllStringSubmatch(string(text), -1)
	if len(ways) < 50 {
		t.Fatalf("%d worked values", len(ways))
	}
	pages := map[string]string{}
	for _, w := range ways {
		if pages[w[1]] == "" {
			page, err := os.ReadFile(filepath.Join(dir, w[1]))
			if err != nil {
				t.Fatal(err)
			}
			pages[w[1]] = string(page)
		}
		if !strings.Contains(pages[w[1]], `id="`+w[2]+`"`) {
			t.Errorf("%s has no %s", w[1], w[2])
		}
	}
}

// The index knows seams, lots, people, words, worked values, chapters and records, and stays small.
func searchIndex(t *testing.T, dir string) {
	text, err := os.ReadFile(filepath.Join(dir, "assets", "search.js"))
	if err != nil {
		t.Fatal(err)
	}
	body := strings.TrimSuffix(strings.TrimSpace(strings.TrimPrefix(string(text), "window.HULLFILE_SEARCH=")), ";")
	var all []entry
	if err := json.Unmarshal([]byte(body), &all); err != nil {
		t.Fatal(err)
	}
	kinds := map[string]int{}
	for _, e := range all {
		kinds[e.Kind]++
		file, anchor, _ := strings.Cut(e.Way, "#")
		page, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(file)))
		if err != nil {
			t.Errorf("%s leads to nothing: %s", e.Title, e.Way)
			continue
		}
		if anchor != "" && !strings.Contains(string(page), `id="`+anchor+`"`) {
			t.Errorf("%s: %s has no %s", e.Title, file, anchor)
		}
	}
	for _, kind := range []string{"", "joint", "lot", "person", "word", "value", "owner's book", "record", "to look at", "document", "consumable", "look"} {
		if kinds[kind] == 0 {
			t.Errorf("no entry of the kind %q", kind)
		}
	}
	if len(text) > 400_000 {
		t.Errorf("the index has %d bytes", len(text))
	}
}
