package preview

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
)

// patience is how long a test waits for what must come: long, because only a failure takes that long. pause is how long the
// watch waits for more, and so the most that may lie between two files that a busy machine saves together.
const (
	patience = time.Minute
	pause    = 300 * time.Millisecond
)

func next(t *testing.T, from <-chan Changes) Changes {
	t.Helper()
	select {
	case c, open := <-from:
		if !open {
			t.Fatal("the watch ended")
		}
		return c
	case <-time.After(patience):
		t.Fatal("nothing was noticed")
	}
	return nil
}

func save(t *testing.T, parts ...string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(parts...), []byte(time.Now().String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestSavingIsNoticed(t *testing.T) {
	dir := t.TempDir()
	hull := filepath.Join(dir, "hulls", "H1")
	if err := os.MkdirAll(hull, 0o755); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	saved, err := Watch(ctx, dir, pause)
	if err != nil {
		t.Fatal(err)
	}
	save(t, hull, "hull.toml")
	save(t, dir, "yard.toml")
	if got := next(t, saved); !slices.Equal(got, Changes{"hulls/H1/hull.toml", "yard.toml"}) {
		t.Errorf("two files saved together give %v", got)
	}
	save(t, hull, ".hull.toml.swp") // an editor that puts a new file in the place of the old
	save(t, hull, "hull.toml~")
	if err := os.Rename(filepath.Join(hull, "hull.toml~"), filepath.Join(hull, "hull.toml")); err != nil {
		t.Fatal(err)
	}
	if got := next(t, saved); !slices.Equal(got, Changes{"hulls/H1/hull.toml"}) {
		t.Errorf("a file that was replaced gives %v", got)
	}
	if err := os.MkdirAll(filepath.Join(dir, "hulls", "H2", "documents"), 0o755); err != nil {
		t.Fatal(err)
	}
	if got := next(t, saved); !slices.Contains(got, "hulls/H2") {
		t.Errorf("a new folder gives %v", got)
	}
	save(t, dir, "hulls", "H2", "documents", "sheet.txt")
	if got := next(t, saved); !slices.Contains(got, "hulls/H2/documents/sheet.txt") {
		t.Errorf("a file in a new folder gives %v", got)
	}
	stop()
	for range saved { //nolint:revive // until it closes; the test runs out of time if it does not
	}
}

// A yard folder that goes away and comes back, or in whose place another is put, is watched again.
func TestAFolderThatComesBackIsWatched(t *testing.T) {
	above := t.TempDir()
	dir, hull := filepath.Join(above, "yard"), filepath.Join(above, "yard", "hulls", "H1")
	rows := []struct {
		where string
		away  func() error
	}{
		{"removed", func() error { return os.RemoveAll(dir) }},
		{"moved away", func() error { return os.Rename(dir, dir+".old") }},
	}
	for _, r := range rows {
		if err := os.MkdirAll(hull, 0o755); err != nil {
			t.Fatal(err)
		}
		ctx, stop := context.WithCancel(t.Context())
		saved, err := Watch(ctx, dir, pause)
		if err != nil {
			t.Fatal(err)
		}
		if err := r.away(); err != nil {
			t.Fatal(err)
		}
		until(t, saved, ".")
		if err := os.MkdirAll(hull, 0o755); err != nil {
			t.Fatal(err)
		}
		until(t, saved, ".")
		save(t, hull, "hull.toml")
		until(t, saved, "hulls/H1/hull.toml")
		stop()
		os.RemoveAll(dir)
	}
}

// until waits until a change is told, whatever else is told before.
func until(t *testing.T, saved <-chan Changes, name string) {
	t.Helper()
	for !slices.Contains(next(t, saved), name) {
	}
}

func TestFolderThatIsNotThereCannotBeWatched(t *testing.T) {
	if _, err := Watch(t.Context(), filepath.Join(t.TempDir(), "nowhere"), time.Millisecond); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("watching nothing gives %v", err)
	}
}

// TestPagesHearOfAChange asks over a real address of this machine.
func TestPagesHearOfAChange(t *testing.T) {
	s := opened(t)
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(ctx, l) }()
	answer, err := http.Get("http://" + l.Addr().String() + eventsPath)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	lines := bufio.NewScanner(answer.Body)
	heard := func() string {
		var event string
		for lines.Scan() && lines.Text() != "" {
			event += lines.Text() + " "
		}
		return event
	}
	first := heard()
	if !strings.HasPrefix(first, "event: making data: ") {
		t.Errorf("at first: %q", first)
	}
	s.Show(Outcome{Faults: finding.Faults{{Says: "wrong"}}})
	if got := heard(); !strings.HasPrefix(got, "event: faults data: ") {
		t.Errorf("with a fault: %q", got)
	}
	s.Show(Outcome{Pages: "a"})
	second := heard()
	s.Show(Outcome{Pages: "a"}) // no news
	s.Show(Outcome{Pages: "b"})
	third := heard()
	if !strings.HasPrefix(second, "event: sound") || second == first || third == second || !strings.Contains(third, "-3") {
		t.Errorf("mended: %q, then %q", second, third)
	}
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Errorf("the server ended with %v", err)
		}
	case <-time.After(patience):
		t.Error("the server does not end while a page listens")
	}
}

func TestOnlySoManyPagesWait(t *testing.T) {
	s := opened(t)
	for range mostWaiting {
		if !s.state.enter() {
			t.Fatal("there is no place for a page")
		}
	}
	if got, _ := answer(s, "GET", eventsPath); got.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("one too many gives %d", got.StatusCode)
	}
	s.state.leave()
	if got, _ := answer(s, "HEAD", eventsPath); got.StatusCode != http.StatusOK {
		t.Errorf("a place that was left gives %d", got.StatusCode)
	}
}

func TestPortThatIsTakenIsTold(t *testing.T) {
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if !strings.HasPrefix(l.Addr().String(), "127.0.0.1:") {
		t.Errorf("the address is %s", l.Addr())
	}
	var port int
	fmt.Sscanf(l.Addr().String(), "127.0.0.1:%d", &port)
	if other, err := Listen(port); err == nil {
		other.Close()
		t.Error("a port is taken twice")
	}
}
