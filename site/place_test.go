package site

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A link in the place of what a run remembers is refused, and nothing is written where it leads.
func TestLinkInThePlaceOfWhatIsRemembered(t *testing.T) {
	job := demoJob(t)
	rendered(t, job)
	for _, name := range []string{stateName, keptName} {
		at, elsewhere := filepath.Join(job.Out, name), t.TempDir()
		if err := os.RemoveAll(at); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(elsewhere, at); err != nil {
			t.Skip("no links on this system")
		}
		if _, err := Render(context.Background(), job); err == nil || !strings.Contains(err.Error(), "in the way") {
			t.Errorf("%s is a link: error %v, want a refusal", name, err)
		}
		if there, err := os.ReadDir(elsewhere); err != nil || len(there) > 0 {
			t.Errorf("%s is a link: where it leads lies %v, %v", name, there, err)
		}
		if err := os.Remove(at); err != nil {
			t.Fatal(err)
		}
	}
	rendered(t, job)
}
