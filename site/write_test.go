package site

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"hullfile/engine"
	"hullfile/engine/record"
)

// tree gives every file below a folder with its contents.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(p string, e fs.DirEntry, err error) error {
		if e != nil && e.Name() == keptName {
			return fs.SkipDir
		}
		if err != nil || e.IsDir() || e.Name() == stateName {
			return err // the state holds times
		}
		text, err := os.ReadFile(p)
		rel, relErr := filepath.Rel(dir, p)
		out[filepath.ToSlash(rel)] = string(text)
		return errors.Join(err, relErr)
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	return out
}

func same(t *testing.T, what string, a, b map[string]string) {
	t.Helper()
	if len(a) == 0 || len(a) != len(b) {
		t.Errorf("%s: %d files against %d", what, len(a), len(b))
	}
	for name, text := range a {
		if b[name] != text {
			t.Errorf("%s: %s differs", what, name)
		}
	}
}

func TestSameRecordsGiveTheSameBytes(t *testing.T) {
	job := demoJob(t)
	first := tree(t, rendered(t, job))
	local := time.Local
	defer func() { time.Local = local }()
	time.Local = time.FixedZone("elsewhere", 13*3600)
	t.Setenv("TZ", "Pacific/Kiritimati")
	t.Setenv("LC_ALL", "de_DE.UTF-8")
	job.Out = filepath.Join(t.TempDir(), "again")
	same(t, "second run", first, tree(t, rendered(t, job)))
}

// The lists hold every file with its true hash, and the cover prints the hash of the contents list.
func TestHashes(t *testing.T) {
	dir := filepath.Join(rendered(t, demoJob(t)), "LT56-031")
	files := tree(t, dir)
	sums, contents := listed(t, files[sumsName]), listed(t, files[contentsName])
	for name, text := range files {
		h := sha256.Sum256([]byte(text))
		hash := hex.EncodeToString(h[:])
		if name != sumsName && sums[name] != hash {
			t.Errorf("%s: %s does not list its hash", sumsName, name)
		}
		if outside := name == sumsName || name == contentsName || name == coverName; !outside && contents[name] != hash {
			t.Errorf("%s: %s does not list its hash", contentsName, name)
		}
	}
	if len(sums) != len(files)-1 || len(contents) != len(files)-3 {
		t.Errorf("%d files, %d in %s, %d in %s", len(files), len(sums), sumsName, len(contents), contentsName)
	}
	if !strings.Contains(files[coverName], hashOf([]byte(files[contentsName]))) {
		t.Error("the cover does not print the hash of the contents list")
	}
}

func listed(t *testing.T, text string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for line := range strings.Lines(text) {
		hash, name, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		if !ok || len(hash) != 64 {
			t.Fatalf("line %q is not of the form that sha256sum reads", line)
		}
		out[name] = hash
	}
	return out
}

func TestInterruptionLeavesTheEarlierOutput(t *testing.T) {
	job := demoJob(t)
	before := tree(t, rendered(t, job))
	ctx, cancel := context.WithCancel(context.Background())
	assess := job.Assess
	job.Assess = func(h *record.Hull) *engine.Dossier {
		cancel() // more than once does nothing
		return assess(h)
	}
	job.Version = "another"
	if _, err := Render(ctx, job); !errors.Is(err, context.Canceled) {
		t.Fatalf("error %v, want an interruption", err)
	}
	same(t, "after an interruption", before, tree(t, job.Out))
}

// A move that fails half-way through the exchange takes back those before it.
// A fault of the program in one hull is told with the hull and the place, and leaves the earlier output whole.
func TestAFaultOfTheProgramLeavesTheEarlierOutput(t *testing.T) {
	job := demoJob(t)
	rendered(t, job)
	before := tree(t, job.Out)
	assess := job.Assess
	job.Neighbours, job.Assess = nil, func(h *record.Hull) *engine.Dossier {
		if h.Number == "LT56-031" {
			var none *record.Hull
			return assess(none)
		}
		return assess(h)
	}
	_, err := Render(context.Background(), job)
	if err == nil || !strings.Contains(err.Error(), "hull LT56-031: a fault of the program, not of your records") || !strings.Contains(err.Error(), "goroutine") {
		t.Errorf("error %v", err)
	}
	same(t, "output", before, tree(t, job.Out))
}

func TestFailedExchangeIsTakenBack(t *testing.T) {
	job := demoJob(t)
	before := tree(t, rendered(t, job))
	p, err := openPlace(job)
	if err != nil {
		t.Fatal(err)
	}
	s, err := openStage(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"HL74-012", "HL74-013"} {
		if err := os.MkdirAll(s.fresh(name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	broken := errors.New("the disk broke")
	s.gone = []string{"LT56-031"}
	for _, breaks := range []string{s.fresh("HL74-013"), s.final("LT56-031")} {
		s.move = func(from, to string) error {
			if from == breaks {
				return broken
			}
			return os.Rename(from, to)
		}
		for _, s.trade = range []func(a, b string) error{trade, func(string, string) error { return errors.ErrUnsupported }} {
			if breaks == s.fresh("HL74-013") {
				s.trade = func(string, string) error { return errors.ErrUnsupported }
			}
			if err := s.swap(); !errors.Is(err, broken) {
				t.Fatalf("error %v, want the broken move", err)
			}
			for _, name := range []string{"HL74-012", "HL74-013"} {
				if left, err := os.ReadDir(s.fresh(name)); err != nil || len(left) > 0 {
					t.Errorf("%s of the stage holds %v %v, want nothing", name, left, err)
				}
			}
		}
	}
	s.discard()
	same(t, "after a failed exchange", before, tree(t, job.Out))
}

// A run that was killed during the exchange has set a hull aside; the next run puts it back.
func TestKilledExchangeIsPutBack(t *testing.T) {
	job := demoJob(t)
	before := tree(t, rendered(t, job))
	aside := filepath.Join(job.Out, stagePrefix+"1", "old")
	if err := os.MkdirAll(aside, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(filepath.Join(job.Out, "HL74-012"), filepath.Join(aside, "HL74-012")); err != nil {
		t.Fatal(err)
	}
	if err := sweep(job.Out, os.RemoveAll); err != nil {
		t.Fatal(err)
	}
	same(t, "after a killed exchange", before, tree(t, job.Out))
}

// What an interrupted run left and cannot be removed stays in nobody's way, and nothing of it is put back later.
func TestWhatCannotBeClearedStays(t *testing.T) {
	out := t.TempDir()
	for _, name := range []string{"H1/now", ".part-1/old/H1/before", ".part-1/old/H2/before", ".part-1/new/H1/half"} {
		if err := errors.Join(os.MkdirAll(filepath.Join(out, filepath.Dir(name)), 0o755), os.WriteFile(filepath.Join(out, name), nil, 0o644)); err != nil {
			t.Fatal(err)
		}
	}
	held := func(string) error { return errors.New("another program looks into it") }
	if err := sweep(out, held); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]bool{"H1/now": true, "H1/before": false, "H2/before": true} {
		if _, err := os.Stat(filepath.Join(out, name)); (err == nil) != want {
			t.Errorf("%s: %v, want it there: %v", name, err, want)
		}
	}
	if err := errors.Join(os.RemoveAll(filepath.Join(out, "H1")), sweep(out, held), sweep(out, os.RemoveAll)); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(out, "H1")); err == nil {
		t.Error("a hull that is gone was put back from what was left")
	}
	if left, err := filepath.Glob(filepath.Join(out, stagePrefix+"*")); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

func TestRefusals(t *testing.T) {
	job := demoJob(t)
	yard := job.Root.Name()
	full := t.TempDir()
	if err := os.WriteFile(filepath.Join(full, "letter.txt"), []byte("keep me"), 0o644); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), "link")
	nowhere := filepath.Join(filepath.Dir(link), "nowhere")
	if err := errors.Join(os.Symlink(filepath.Join(yard, "hulls"), link), os.Symlink(nowhere+".not", nowhere)); err != nil {
		t.Fatal(err)
	}
	rows := []struct{ out, want string }{
		{"", "no output folder"},
		{yard, "holds the yard's own records"},
		{filepath.Dir(yard), "holds the yard's own records"},
		{filepath.Join(yard, "hulls"), "among the yard's own records"},
		{filepath.Join(yard, "hulls", "HL74-012", "documents"), "among the yard's own records"},
		{filepath.Join(yard, "designs", "new"), "among the yard's own records"},
		{filepath.Join(link, "new"), "among the yard's own records"},
		{full, "is not empty"},
		{filepath.Join(full, "letter.txt"), "is a file"},
		{filepath.Join(full, "letter.txt", "below"), "is a file, or a part of its path is"},
		{nowhere, "a link that leads nowhere"},
		{filepath.Join(yard, "logs"), "among the yard's own records"},
	}
	before := tree(t, yard)
	for _, r := range rows {
		job.Out = r.out
		if _, err := Render(context.Background(), job); err == nil || !strings.Contains(err.Error(), r.want) {
			t.Errorf("output %q: error %v, want %q in it", r.out, err, r.want)
		}
	}
	same(t, "yard", before, tree(t, yard))
	if len(tree(t, full)) != 1 {
		t.Error("something was written to a folder with other contents")
	}
}

// A disk that is full and a folder that may not be written to are said in words.
func TestFaultsOfTheDisk(t *testing.T) {
	rows := []struct {
		err  error
		want string
	}{
		{&fs.PathError{Op: "write", Path: "out/x", Err: syscall.ENOSPC}, "the disk is full: write out/x"},
		{&fs.PathError{Op: "open", Path: "out/x", Err: syscall.EACCES}, "may not be written to; choose another with -o: open out/x"},
		{&fs.PathError{Op: "mkdir", Path: "out", Err: syscall.EROFS}, "may not be written to; choose another with -o: mkdir out"},
	}
	for _, r := range rows {
		if got := plainly(r.err); !errors.Is(got, r.err) || !strings.Contains(got.Error(), r.want) {
			t.Errorf("%v is said as %q, want %q in it", r.err, got, r.want)
		}
	}
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("no device that is always full on this machine")
	}
	defer full.Close()
	if _, err := full.Write([]byte("x")); !strings.Contains(plainly(err).Error(), "the disk is full") {
		t.Errorf("a full disk is said as %q", plainly(err))
	}
}

// A second run on one output is refused as long as the first holds it, whoever made the file of the lock.
func TestSecondRunIsRefused(t *testing.T) {
	job := demoJob(t)
	if err := os.MkdirAll(job.Out, 0o755); err != nil {
		t.Fatal(err)
	}
	left := filepath.Join(job.Out, lockName)
	if err := os.WriteFile(left, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	s, err := openStage(place{out: job.Out})
	if err != nil {
		t.Fatalf("a lock that nobody holds is in the way: %v", err)
	}
	if _, err := Render(context.Background(), job); err == nil || !strings.Contains(err.Error(), "another run is writing to") {
		t.Errorf("error %v, want a refusal", err)
	}
	if _, err := os.Stat(s.dir); err != nil {
		t.Errorf("the run that was refused cleared the stage of the first: %v", err)
	}
	s.discard()
	rendered(t, job)
	if _, err := os.Lstat(left); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the lock is left lying: %v", err)
	}
	if err := os.Symlink("elsewhere", left); err != nil {
		t.Skip("no links on this system")
	}
	if _, err := Render(context.Background(), job); err == nil || !strings.Contains(err.Error(), "in the way") {
		t.Errorf("error %v, want a refusal of the link", err)
	}
}

func TestHullNumbersAsFolders(t *testing.T) {
	rows := []struct {
		numbers []string
		want    string
	}{
		{[]string{"A-1", "a-1"}, "would share one folder"},
		{[]string{"../x"}, "cannot be the name of a folder"},
		{[]string{"assets"}, "keeps the name assets for itself"},
		{[]string{"Register"}, "keeps the name register for itself"},
		{[]string{"con"}, "cannot be the name of a folder"},
		{[]string{"A/1"}, "cannot be the name of a folder"},
		{[]string{"Æ 1", "B_2.3"}, ""},
	}
	for _, r := range rows {
		err := folderNames(r.numbers)
		if (r.want == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), r.want) {
			t.Errorf("hulls %q: error %v, want %q in it", r.numbers, err, r.want)
		}
	}
}

// Writing one hull leaves the others as they are, and the register still lists them with what their files say.
func TestOneHullOfSeveral(t *testing.T) {
	job := demoJob(t)
	before := tree(t, rendered(t, job))
	job.Hulls, job.Version = job.Hulls[2:], "another"
	report, err := Render(context.Background(), job)
	if err != nil {
		t.Fatal(err)
	}
	after := tree(t, job.Out)
	changed := false
	for name, text := range before {
		if strings.HasPrefix(name, "HL74-") && after[name] != text {
			t.Errorf("%s was changed", name)
		}
		changed = changed || strings.HasPrefix(name, "LT56-031/") && after[name] != text
	}
	if !changed || len(report.Hulls) != 1 || report.Hulls[0].Number != "LT56-031" {
		t.Errorf("the hull was not written: %+v", report.Hulls)
	}
	for _, number := range []string{"HL74-012", "HL74-013", "LT56-031"} {
		if !strings.Contains(after[coverName], hashOf([]byte(after[number+"/"+sumsName]))) {
			t.Errorf("the register does not print the seal of %s", number)
		}
	}
	readOutput(t, job.Out).check(t)
}

// The file of a hull that the yard no longer has is removed if a run wrote it, and stays if somebody changed it or no
// state says who wrote it.
func TestHullsThatAreGone(t *testing.T) {
	job := demoJob(t)
	rendered(t, job)
	all := job.Yard.Hulls
	job.Yard.Hulls, job.Hulls = all[:2], all[:2]
	report, err := Render(context.Background(), job)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Lstat(filepath.Join(job.Out, "LT56-031")); !errors.Is(err, fs.ErrNotExist) || len(report.Gone) != 1 || report.Gone[0] != "LT56-031" || len(report.Left) != 0 {
		t.Errorf("gone %v, left %v, %v; want LT56-031 gone", report.Gone, report.Left, err)
	}
	if err := os.WriteFile(filepath.Join(job.Out, "HL74-012", "note.txt"), []byte("keep me"), 0o644); err != nil {
		t.Fatal(err)
	}
	job.Yard.Hulls, job.Hulls = all[1:2], all[1:2]
	report, err = Render(context.Background(), job)
	if err != nil {
		t.Fatal(err)
	}
	if len(report.Gone) != 0 || len(report.Left) != 1 || report.Left[0] != "HL74-012" {
		t.Errorf("left behind %v, want HL74-012", report.Left)
	}
	if _, err := os.Stat(filepath.Join(job.Out, "HL74-012", coverName)); err != nil {
		t.Errorf("the file of a hull that the yard no longer has was not kept: %v", err)
	}
}

func TestFolderRefusesNames(t *testing.T) {
	f, err := newFolder(context.Background(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"../x", "/x", "a/../b", "a\\b", "a\nb", ""} {
		if err := f.write(name, nil); err == nil {
			t.Errorf("%q was taken", name)
		}
	}
	if err := f.write("a/B", nil); err != nil {
		t.Fatal(err)
	}
	if err := f.write("A/b", nil); err == nil {
		t.Error("a name that differs only in case was taken")
	}
	if len(f.sums) != 1 {
		t.Errorf("%d files on the list, want 1", len(f.sums))
	}
	if !bytes.Contains(list(f.sums), []byte("  a/B\n")) {
		t.Errorf("list %q", list(f.sums))
	}
}
