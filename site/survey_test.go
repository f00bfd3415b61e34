package site

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The sheet of the finished hull shows what was found, that of the hull in build has blanks, and the table to type it
// back has every item.
func TestSurveySheet(t *testing.T) {
	job := demoJob(t)
	dir := rendered(t, job)
	onRecord := 0
	for _, h := range job.Yard.Hulls {
		if h.Number == "HL74-012" {
			onRecord = len(h.Survey)
		}
	}
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	done, open := read("HL74-012/survey.html"), read("HL74-013/survey.html")
	if n := strings.Count(done, `<p class="read">`); n != onRecord || n < 5 {
		t.Errorf("%d readings are shown, %d are on record", n, onRecord)
	}
	if strings.Contains(open, `<p class="read">`) || !strings.Contains(open, "☐ as expected") {
		t.Error("the sheet of the hull in build is not blank")
	}
	if !strings.Contains(open, "None has been looked at yet.") {
		t.Error("the answer does not say that nothing was looked at")
	}
	blank := read("HL74-013/survey.csv")
	rows := strings.Split(strings.TrimSpace(blank), "\n")
	if rows[0] != strings.Join(surveyColumns, ",") || len(rows)-1 != strings.Count(open, `<article class="look"`) {
		t.Errorf("%d rows for %d items", len(rows)-1, strings.Count(open, `<article class="look"`))
	}
	for _, row := range rows[1:] {
		key, _, _ := strings.Cut(row, ",")
		if !strings.Contains(open, "<code>"+key+"</code>") {
			t.Errorf("item %q is in the table and not on the sheet", key)
		}
	}
}
