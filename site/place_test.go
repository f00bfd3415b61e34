package site

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What a run remembers may be spoilt in any way: what stands in its place as something else is named, and once it is removed
// the next run is as any other.
func TestSomethingElseInThePlaceOfWhatIsRemembered(t *testing.T) {
	job := demoJob(t)
	rendered(t, job)
	state, kept := filepath.Join(job.Out, stateName), filepath.Join(job.Out, keptName)
	for _, spoil := range []struct {
		name string
		how  func() error
	}{
		{state, func() error { return os.MkdirAll(filepath.Join(state, "x"), 0o755) }},
		{kept, func() error { return os.WriteFile(kept, nil, 0o644) }},
	} {
		if err := os.RemoveAll(spoil.name); err != nil {
			t.Fatal(err)
		}
		if err := spoil.how(); err != nil {
			t.Fatal(err)
		}
		want := spoil.name + " is in the way: a run remembers there what it wrote, and no run made it as it is; remove it"
		if _, err := Render(context.Background(), job); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %s", err, want)
		}
		if err := os.RemoveAll(spoil.name); err != nil {
			t.Fatal(err)
		}
		rendered(t, job)
	}
}

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
