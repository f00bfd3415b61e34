package tracklog

import (
	"slices"
	"testing"

	"hullfile/engine/record"
)

// TestEveryKindOfLogIsRead holds the words that a record may write for a log against the formats that there are: one
// without a reader would be taken for a file that says nothing.
func TestEveryKindOfLogIsRead(t *testing.T) {
	kinds := kindsOfLogs(t)
	var endings []string
	for _, kind := range kinds {
		f, ok := formatOf(kind)
		if !ok {
			t.Errorf("a record may call a log %q, and format.go has no reader for it", kind)
		}
		if slices.Contains(endings, f.ending) {
			t.Errorf("%s: another kind has the ending %s too", kind, f.ending)
		}
		endings = append(endings, f.ending)
	}
	if _, _, err := samplesOf(t, logOf("clay tablet"), "x"); err == nil {
		t.Error("a log of no known kind is read")
	}
}

func kindsOfLogs(t *testing.T) []string {
	t.Helper()
	for _, d := range record.Reference() {
		if d.Key != "trial.log" {
			continue
		}
		for _, f := range d.Fields {
			if f.Key == "kind" && len(f.Words) >= 3 {
				return f.Words
			}
		}
	}
	t.Fatal("the records know no kinds of logs")
	return nil
}
