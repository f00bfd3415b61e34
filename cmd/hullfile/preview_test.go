package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"hullfile/site/preview"
)

// watched is a preview in a process of its own, with its folder for temporary files apart.
type watched struct {
	t       *testing.T
	yard    string
	tmp     string
	address string
	cmd     *exec.Cmd
	errs    *bytes.Buffer
	news    *bufio.Scanner
}

// patience is how long a test waits for what must come, on a machine that has much else to do: long, because only a failure
// takes that long.
const patience = 3 * time.Minute

var shownAddress = regexp.MustCompile(`http://127\.0\.0\.1:\d+/`)

func startPreview(t *testing.T) *watched {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("left out: signals are not sent to a process on Windows")
	}
	w := &watched{t: t, yard: demoRecords(t), tmp: t.TempDir(), errs: &bytes.Buffer{}}
	w.cmd = exec.Command("hullfile", "preview", w.yard)
	w.cmd.Env = append(os.Environ(), "TMPDIR="+w.tmp)
	w.cmd.Stderr = w.errs
	out, err := w.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := w.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { w.cmd.Process.Kill() })
	said, err := bufio.NewReader(out).ReadString('\n')
	if w.address = shownAddress.FindString(said); w.address == "" {
		t.Fatalf("no address is told: %q %v", said, err)
	}
	return w
}

// demoRecords writes the records of the demo yard.
func demoRecords(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	if err := writeDemoYard(dir); err != nil {
		t.Fatal(err)
	}
	return filepath.Join(dir, "yard")
}

func (w *watched) get(path string) string {
	w.t.Helper()
	answer, err := http.Get(w.address + path)
	if err != nil {
		w.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil || answer.StatusCode != http.StatusOK {
		w.t.Fatalf("%s: %d %v", path, answer.StatusCode, err)
	}
	return string(text)
}

// listen opens the line of events, as a page does.
func (w *watched) listen() {
	w.t.Helper()
	ctx, stop := context.WithTimeout(w.t.Context(), patience)
	w.t.Cleanup(stop)
	ask, err := http.NewRequestWithContext(ctx, http.MethodGet, w.address+"preview-events", nil)
	if err != nil {
		w.t.Fatal(err)
	}
	answer, err := http.DefaultClient.Do(ask)
	if err != nil {
		w.t.Fatal(err)
	}
	w.t.Cleanup(func() { answer.Body.Close() })
	w.news = bufio.NewScanner(answer.Body)
}

// hear gives the name of the next event but for "making", which only who came early hears: "sound" or "faults".
func (w *watched) hear() string {
	w.t.Helper()
	for w.news.Scan() {
		if name, ok := strings.CutPrefix(w.news.Text(), "event: "); ok && name != "making" {
			return name
		}
	}
	w.t.Fatalf("no event came: %v", w.news.Err())
	return ""
}

// firstLine gives the first line of a record that sets a key.
func (w *watched) firstLine(name, key string) string {
	w.t.Helper()
	text, err := os.ReadFile(filepath.Join(w.yard, filepath.FromSlash(name)))
	line := regexp.MustCompile(`(?m)^` + key + `\s*=.*$`).FindString(string(text))
	if err != nil || line == "" {
		w.t.Fatalf("%s has no %s to change: %v", name, key, err)
	}
	return line
}

func (w *watched) rewrite(name, old, new string) {
	w.t.Helper()
	name = filepath.Join(w.yard, filepath.FromSlash(name))
	text, err := os.ReadFile(name)
	if err != nil || !strings.Contains(string(text), old) {
		w.t.Fatalf("%s does not hold %q: %v", name, old, err)
	}
	if err := os.WriteFile(name+"~", []byte(strings.Replace(string(text), old, new, 1)), 0o644); err != nil {
		w.t.Fatal(err)
	}
	if err := os.Rename(name+"~", name); err != nil {
		w.t.Fatal(err)
	}
}

func TestPreviewFollowsTheRecords(t *testing.T) {
	t.Parallel()
	w := startPreview(t)
	w.listen()
	if got := w.hear(); got != "sound" {
		t.Errorf("at first the records are %q", got)
	}
	const record, title, mended = "hulls/HL74-013/hull.toml", "title", "Invented for a preview"
	if strings.Contains(w.get("HL74-013/documents.html"), mended) {
		t.Fatal("the page holds the new title before it is written")
	}
	line := w.firstLine(record, title)
	begun := time.Now()
	w.rewrite(record, line, title+` = "`+mended+`"`)
	if got := w.hear(); got != "sound" {
		t.Errorf("after a change the records are %q", got)
	}
	t.Logf("from saving to the event: %v", time.Since(begun))
	if page := w.get("HL74-013/documents.html"); !strings.Contains(page, mended) || !strings.Contains(page, "/preview.js") {
		t.Error("the page does not follow the record, or has no script")
	}
	w.rewrite(record, title+" ", "titel ")
	if got := w.hear(); got != "faults" {
		t.Errorf("with an unknown key the records are %q", got)
	}
	if page := w.get("preview-faults"); !strings.Contains(page, record+":") || !strings.Contains(page, "titel") {
		t.Errorf("the page of the faults does not tell where: %s", page)
	}
	if !strings.Contains(w.get("HL74-013/documents.html"), mended) {
		t.Error("the last good page is gone")
	}
	w.rewrite(record, "titel ", title+" ")
	if got := w.hear(); got != "sound" {
		t.Errorf("mended, the records are %q", got)
	}
	w.end(record + ":")
}

// end interrupts the preview, and holds what it leaves behind: nothing, but what it said.
func (w *watched) end(said string) {
	w.t.Helper()
	if err := w.cmd.Process.Signal(os.Interrupt); err != nil {
		w.t.Fatal(err)
	}
	if err := w.cmd.Wait(); err != nil {
		w.t.Errorf("the preview ends with %v", err)
	}
	if !strings.Contains(w.errs.String(), said) {
		w.t.Errorf("%q was not told at the terminal: %s", said, w.errs)
	}
	if left, err := os.ReadDir(w.tmp); err != nil || len(left) > 0 {
		w.t.Errorf("left behind: %v %v", left, err)
	}
}

func TestHullsOfWhatWasSaved(t *testing.T) {
	for _, row := range []struct {
		saved preview.Changes
		want  []string
	}{
		{preview.Changes{"hulls/A/hull.toml", "hulls/A/documents/x.txt", "hulls/B/runs.csv"}, []string{"A", "B"}},
		{preview.Changes{"hulls/A/hull.toml", "yard.toml"}, nil},
		{preview.Changes{"designs/A/design.toml"}, nil},
		{preview.Changes{"hulls/A"}, nil}, // a folder came or went
		{preview.Changes{"."}, nil},
	} {
		if got := hullsOf(row.saved); !slices.Equal(got, row.want) {
			t.Errorf("%v: %v, want %v", row.saved, got, row.want)
		}
	}
}

// BenchmarkSaving is what follows a save up to the reload, without the pause: what was saved is read, one hull reckoned and
// written. Beside it lie the other hulls of the demo, and a hundred more. The aim is 200 ms.
func BenchmarkSaving(b *testing.B) {
	for _, more := range []int{0, 100} {
		b.Run(fmt.Sprint(3+more), func(b *testing.B) { saving(b, demoAnd(b, more)) })
	}
}

func saving(b *testing.B, yard string) {
	p, err := openPreview(newDesk(io.Discard, io.Discard), yard, 0)
	if err != nil {
		b.Fatal(err)
	}
	defer p.close()
	if !p.make(b.Context(), nil) {
		b.Fatal("the demo yard cannot be shown")
	}
	time.Sleep(4 * time.Second) // until the times of files are trusted
	name := filepath.Join(yard, "hulls", "HL74-013", "hull.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		b.Fatal(err)
	}
	cover := filepath.Join(p.out.Name(), "HL74-013", sumsName)
	was := ""
	for n := 0; b.Loop(); n++ {
		if err := put(name, fmt.Appendf(text, "\n# saved %d\n", n)); err != nil {
			b.Fatal(err)
		}
		p.make(b.Context(), []string{"HL74-013"})
		b.StopTimer()
		now, err := os.ReadFile(cover)
		if err != nil || string(now) == was {
			b.Fatal("what was saved is not shown: ", err)
		}
		was = string(now)
		b.StartTimer()
	}
}

// demoAnd is the demo yard with hulls more of which little is on record.
func demoAnd(b *testing.B, more int) string {
	b.Helper()
	yard := demoRecords(b)
	for i := range more {
		if err := put(filepath.Join(yard, "hulls", fleetNumber(i+1), "hull.toml"), fmt.Appendf(nil, "title = \"boat %d\"\n\n[boat]\nlength_hull_m = %d.5\n", i, 4+i%5)); err != nil {
			b.Fatal(err)
		}
	}
	return yard
}
