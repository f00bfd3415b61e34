package site

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"hullfile/engine"
	"hullfile/engine/record"
)

var editRounds = flag.Int("edits", 20, "rounds of the test that edits a yard at random")

// A yard is edited at random, by hand and in the output; reading it in pieces and writing it over the last output gives
// what reading it whole and writing it to an empty folder gives, byte for byte.
func TestIncrementalEqualsFresh(t *testing.T) {
	e := newEditor(t)
	kept := 0
	rounds := *editRounds
	if testing.Short() {
		rounds = min(rounds, 4)
	}
	for round := range rounds {
		var did []string
		for range 1 + e.rand.IntN(2) {
			did = append(did, e.edit())
		}
		e.clear()
		report, err := Render(context.Background(), e.job(e.out))
		if err != nil {
			t.Fatalf("round %d, after %v: %v", round, did, err)
		}
		for _, h := range report.Hulls {
			if h.Kept {
				kept++
			}
		}
		fresh := filepath.Join(t.TempDir(), "fresh")
		if _, err := Render(context.Background(), jobIn(t, e.yard, fresh)); err != nil {
			t.Fatal(err)
		}
		same(t, fmt.Sprintf("round %d, after %v", round, did), tree(t, fresh), tree(t, e.out))
		if t.Failed() {
			return
		}
		os.RemoveAll(fresh)
		if (round+1)%25 == 0 {
			t.Logf("%d rounds of %d, %d books kept", round+1, rounds, kept)
		}
	}
	if kept == 0 {
		t.Error("no book was kept in any round; nothing was incremental")
	}
}

// editor changes a yard and its output.
type editor struct {
	t    *testing.T
	rand *rand.Rand
	yard string
	out  string
}

// newEditor lays out the demo without what takes long to reckon and is like everything else to this test: the lines
// and the logs of instruments.
func newEditor(t *testing.T) *editor {
	job := demoJob(t)
	for _, name := range []string{"lines.csv", "logs"} {
		found, err := filepath.Glob(filepath.Join(job.Root.Name(), "*", "*", name))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range found {
			away := filepath.Join(t.TempDir(), "away")
			if err := os.Rename(f, away); err != nil {
				t.Fatal(err)
			}
			if !readable(t, job.Root.Name()) {
				t.Logf("%s is needed", f)
				if err := os.Rename(away, f); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	return &editor{t: t, rand: rand.New(rand.NewPCG(1, 2)), yard: job.Root.Name(), out: job.Out}
}

// job reads the yard in pieces, as a run of the command does.
func (e *editor) job(out string) Job {
	e.t.Helper()
	return piecesIn(e.t, e.yard, out)
}

// edit makes one change and says which. A change that would leave records with faults is taken back.
func (e *editor) edit() string {
	edits := []func() string{e.value, e.value, e.line, e.comment, e.paper, e.copyHull, e.removeHull, e.damage, e.addFile, e.dropState, e.garble, e.touch, e.nothing}
	return edits[e.rand.IntN(len(edits))]()
}

// records lists the files of records below the yard.
func (e *editor) records(ends ...string) []string {
	var out []string
	err := filepath.WalkDir(e.yard, func(p string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && slices.Contains(ends, filepath.Ext(p)) {
			out = append(out, p)
		}
		return err
	})
	if err != nil {
		e.t.Fatal(err)
	}
	return out
}

func (e *editor) pick(from []string) string { return from[e.rand.IntN(len(from))] }

// change writes a file, and writes what was there back if the yard can no longer be read.
func (e *editor) change(name string, text []byte) string {
	was, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	e.put(name, text)
	if !readable(e.t, e.yard) {
		e.put(name, was)
		return "a change that was taken back of " + name
	}
	return "a change of " + name
}

func (e *editor) put(name string, text []byte) {
	if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o755), os.WriteFile(name, text, 0o644)); err != nil {
		e.t.Fatal(err)
	}
}

// value changes one digit of a record.
func (e *editor) value() string {
	name := e.pick(e.records(".toml", ".csv"))
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	var digits []int
	for i, c := range text {
		if c >= '1' && c <= '8' {
			digits = append(digits, i)
		}
	}
	if len(digits) == 0 {
		return "nothing"
	}
	text[digits[e.rand.IntN(len(digits))]]++
	return e.change(name, text)
}

// line takes one line away.
func (e *editor) line() string {
	name := e.pick(e.records(".toml", ".csv"))
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	lines := strings.SplitAfter(string(text), "\n")
	i := e.rand.IntN(len(lines))
	return e.change(name, []byte(strings.Join(slices.Delete(lines, i, i+1), "")))
}

// comment moves every line of a record down by one.
func (e *editor) comment() string {
	name := e.pick(e.records(".toml"))
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	return e.change(name, append([]byte("# moved\n"), text...))
}

// paper changes, adds or removes a document, sometimes without a change of its size.
func (e *editor) paper() string {
	papers := e.records(".txt", ".csv", ".pdf", ".jpg")
	papers = slices.DeleteFunc(papers, func(p string) bool {
		return !slices.Contains(paperFolders, filepath.Base(filepath.Dir(p))) // documents.csv is a record
	})
	switch n := e.rand.IntN(4); {
	case n == 0:
		name := filepath.Join(filepath.Dir(e.pick(e.records(".toml"))), "documents", "stray.txt")
		e.put(name, []byte("stray"))
		if !readable(e.t, e.yard) {
			os.Remove(name)
			os.Remove(filepath.Dir(name)) // stays where something else is in it
		}
		return "a stray " + name
	case len(papers) == 0:
		return "nothing"
	case n == 1:
		name := e.pick(papers)
		os.Remove(name)
		return "removal of " + name
	default:
		name := e.pick(papers)
		text, err := os.ReadFile(name)
		if err != nil || len(text) == 0 {
			return "nothing"
		}
		text[e.rand.IntN(len(text))] ^= 1
		e.put(name, text)
		return "a bit of " + name
	}
}

// copyHull builds another hull of the same records.
func (e *editor) copyHull() string {
	hulls, err := os.ReadDir(filepath.Join(e.yard, "hulls"))
	if err != nil || len(hulls) > 5 {
		return "nothing"
	}
	from := hulls[e.rand.IntN(len(hulls))].Name()
	number := fmt.Sprintf("HL74-%03d", 100+e.rand.IntN(3))
	to := filepath.Join(e.yard, "hulls", number)
	if _, err := os.Stat(to); err == nil {
		return "nothing"
	}
	if err := os.CopyFS(to, os.DirFS(filepath.Join(e.yard, "hulls", from))); err != nil {
		e.t.Fatal(err)
	}
	for _, name := range e.records(".toml") {
		if strings.HasPrefix(name, to) {
			text, _ := os.ReadFile(name)
			e.put(name, []byte(strings.ReplaceAll(string(text), from, number)))
		}
	}
	if !readable(e.t, e.yard) {
		os.RemoveAll(to)
		return "a copy that was taken back"
	}
	return "a copy of " + from + " as " + number
}

func (e *editor) removeHull() string {
	hulls, err := os.ReadDir(filepath.Join(e.yard, "hulls"))
	if err != nil || len(hulls) < 3 {
		return "nothing"
	}
	name := hulls[e.rand.IntN(len(hulls))].Name()
	os.RemoveAll(filepath.Join(e.yard, "hulls", name))
	return "removal of " + name
}

// clear takes away the files of hulls that the yard no longer has, where they are not as they were written or the state
// does not know them: they would stay, and be told, and here only hide the comparison.
func (e *editor) clear() {
	known := readState(e.out).books
	made, err := filepath.Glob(filepath.Join(e.out, "*", sumsName))
	if err != nil {
		e.t.Fatal(err)
	}
	for _, list := range made {
		dir := filepath.Dir(list)
		name := filepath.Base(dir)
		if _, err := os.Stat(filepath.Join(e.yard, "hulls", name)); err == nil {
			continue
		}
		if now, _, err := footprint(dir); err != nil || now != known[name].Tree {
			os.RemoveAll(dir)
		}
	}
}

// pages lists the files of the output.
func (e *editor) pages() []string {
	var out []string
	for name := range tree(e.t, e.out) {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

// damage changes one file of the output as somebody with an editor would.
func (e *editor) damage() string {
	all := e.pages()
	if len(all) == 0 {
		return "nothing"
	}
	name := e.pick(all)
	if base := filepath.Base(name); base == sumsName || base == contentsName {
		return "nothing" // without its lists a folder is not ours, and is refused
	}
	full := filepath.Join(e.out, filepath.FromSlash(name))
	if e.rand.IntN(2) == 0 {
		os.Remove(full)
		return "removal of page " + name
	}
	text, err := os.ReadFile(full)
	if err != nil {
		e.t.Fatal(err)
	}
	e.put(full, append(text, 'x'))
	return "damage to page " + name
}

func (e *editor) addFile() string {
	dirs, err := filepath.Glob(filepath.Join(e.out, "*", contentsName))
	if err != nil || len(dirs) == 0 {
		return "nothing"
	}
	name := filepath.Join(filepath.Dir(e.pick(dirs)), "note.txt")
	e.put(name, []byte("note"))
	return "an added " + name
}

func (e *editor) dropState() string {
	name := filepath.Join(e.out, stateName)
	e.dropStrangers()
	if e.rand.IntN(2) == 0 {
		os.Remove(name)
		return "removal of the state"
	}
	if text, err := os.ReadFile(name); err == nil {
		e.put(name, text[:e.rand.IntN(len(text))])
	}
	return "half a state"
}

// garble changes a byte of what the output remembers, or takes a file of it away.
func (e *editor) garble() string {
	all, err := filepath.Glob(filepath.Join(e.out, keptName, "*"))
	if err != nil {
		e.t.Fatal(err)
	}
	if len(all) == 0 {
		return "nothing"
	}
	name := e.pick(append(all, filepath.Join(e.out, stateName)))
	text, err := os.ReadFile(name)
	if err != nil || len(text) == 0 {
		return "nothing"
	}
	e.dropStrangers()
	if e.rand.IntN(3) == 0 {
		os.Remove(name)
		return "removal of " + name
	}
	text[e.rand.IntN(len(text))] ^= 1 << e.rand.IntN(8)
	e.put(name, text)
	return "a bit of " + name
}

// dropStrangers takes away the books of hulls that have gone. Without its state a run cannot know that they are its own, and
// leaves them; here they would only hide the comparison.
func (e *editor) dropStrangers() {
	lists, err := filepath.Glob(filepath.Join(e.out, "*", contentsName))
	if err != nil {
		e.t.Fatal(err)
	}
	for _, list := range lists {
		book := filepath.Dir(list)
		if _, err := os.Stat(filepath.Join(e.yard, "hulls", filepath.Base(book))); err != nil {
			os.RemoveAll(book)
		}
	}
}

// touch changes times without changing contents.
func (e *editor) touch() string {
	for _, name := range e.records(".toml", ".csv", ".txt", ".pdf") {
		os.Chtimes(name, time.Time{}, time.Unix(int64(e.rand.IntN(1e9)), 0))
	}
	if all := e.pages(); len(all) > 0 {
		os.Chtimes(filepath.Join(e.out, filepath.FromSlash(e.pick(all))), time.Time{}, time.Unix(int64(e.rand.IntN(1e9)), 0))
	}
	return "new times"
}

func (e *editor) nothing() string { return "nothing" }

// What did not change keeps its bytes and times, and is not reckoned; what changed is.
func TestUnchangedIsNeitherReckonedNorWritten(t *testing.T) {
	e := newEditor(t)
	count := func(want ...string) {
		t.Helper()
		job := e.job(e.out)
		var mu sync.Mutex
		var reckoned []string
		ready := job.Pieces.Ready
		job.Pieces.Ready = func(y *record.Yard) (Reckoner, error) {
			by, err := ready(y)
			assess := by.Assess
			by.Assess = func(y *record.Yard, h *record.Hull) *engine.Dossier {
				mu.Lock()
				defer mu.Unlock()
				reckoned = append(reckoned, h.Number)
				return assess(y, h)
			}
			return by, err
		}
		before := timesOf(t, e.out)
		report, err := Render(context.Background(), job)
		if err != nil {
			t.Fatal(err)
		}
		slices.Sort(reckoned)
		if !slices.Equal(reckoned, want) {
			t.Errorf("reckoned %v, want %v", reckoned, want)
		}
		for _, h := range report.Hulls {
			if h.Kept == slices.Contains(want, h.Number) || h.Pages == 0 || h.Root == "" || h.Bytes == 0 {
				t.Errorf("report %+v, want written only %v", h, want)
			}
		}
		for name, at := range timesOf(t, e.out) {
			hull, _, _ := strings.Cut(name, "/")
			if was, known := before[name]; known && !slices.Contains(want, hull) && len(want) == 0 && at != was {
				t.Errorf("%s was written again", name)
			}
		}
	}
	count("HL74-012", "HL74-013", "LT56-031")
	count()
	e.put(filepath.Join(e.yard, "hulls", "HL74-013", "documents", "new.txt"), []byte("new"))
	count("HL74-013")
	hull := filepath.Join(e.yard, "hulls", "LT56-031", "hull.toml")
	text, err := os.ReadFile(hull)
	if err != nil {
		t.Fatal(err)
	}
	e.put(hull, append(text, "\n# end\n"...))
	count("LT56-031")
	e.put(filepath.Join(e.out, "HL74-012", coverName), []byte("altered"))
	count("HL74-012")
	if err := os.CopyFS(e.out+"2", os.DirFS(e.out)); err != nil {
		t.Fatal(err)
	}
	e.out += "2"
	count()
	os.Remove(filepath.Join(e.out, stateName))
	count("HL74-012", "HL74-013", "LT56-031")
}

// timesOf gives the time of every file below a folder but the state.
func timesOf(t *testing.T, dir string) map[string]time.Time {
	t.Helper()
	out := map[string]time.Time{}
	for name := range tree(t, dir) {
		info, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		out[name] = info.ModTime()
	}
	return out
}
