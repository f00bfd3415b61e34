package site

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"hullfile/engine"
	"hullfile/engine/record"
)

// smallFleet is a yard of hulls of which nothing is known but their numbers.
func smallFleet(t testing.TB, n int) Job {
	job := emptyJob(t)
	job.Yard.Hulls = nil
	for i := range n {
		job.Yard.Hulls = append(job.Yard.Hulls, &record.Hull{Number: fmt.Sprintf("E-%03d", i+1)})
	}
	job.Hulls, job.Version = job.Yard.Hulls, "first"
	return job
}

// killed is what a test breaks a run off with: nothing is cleaned up, as after a kill.
type killed struct{}

// killAfter makes a run and kills it before the move with the given number. It reports whether the run got that far.
func killAfter(t *testing.T, job Job, moves int, whole bool) (reached bool) {
	t.Helper()
	p, err := openPlace(job)
	if err != nil {
		t.Fatal(err)
	}
	press, err := newPress(job)
	if err != nil {
		t.Fatal(err)
	}
	s, err := openStage(p)
	if err != nil {
		t.Fatal(err)
	}
	defer s.lock.file.Close() // as the system does; the file stays
	r, err := newRun(t.Context(), press, s)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(r.books(context.Background()), r.close(context.Background())); err != nil {
		t.Fatal(err)
	}
	count := func(do func(a, b string) error) func(a, b string) error {
		return func(a, b string) error {
			if moves--; moves < 0 {
				panic(killed{})
			}
			return do(a, b)
		}
	}
	s.move, s.trade = count(os.Rename), count(trade)
	if !whole {
		s.trade = func(a, b string) error { return errors.ErrUnsupported }
	}
	defer func() {
		if what := recover(); what != nil {
			if _, ours := what.(killed); !ours {
				panic(what)
			}
			reached = true
		}
	}()
	if err := s.swap(); err != nil {
		t.Fatal(err)
	}
	return false
}

// A run that is killed between any two moves leaves only whole files, and the next run mends the rest.
func TestKilledBetweenAnyTwoMoves(t *testing.T) {
	want := smallFleet(t, 2)
	want.Version = "second"
	fresh := tree(t, rendered(t, want))
	for _, whole := range []bool{true, false} {
		if whole && trade(t.TempDir(), t.TempDir()) != nil {
			continue
		}
		for moves := 0; ; moves++ {
			job := smallFleet(t, 2)
			job.Yard.Hulls = append(job.Yard.Hulls, &record.Hull{Number: "E-999"})
			job.Hulls = job.Yard.Hulls
			job.Neighbours = func(*record.Hull) []byte { return []byte{1} }
			rendered(t, job)
			job.Yard.Hulls = job.Yard.Hulls[:2]
			job.Hulls, job.Version = job.Yard.Hulls, "second"
			reached := killAfter(t, job, moves, whole)
			for _, h := range job.Hulls {
				dir := filepath.Join(job.Out, h.Number)
				if sums, err := os.ReadFile(filepath.Join(dir, sumsName)); err == nil && !verifies(dir, hashOf(sums)) || err != nil && whole {
					t.Errorf("killed before move %d: %s does not verify (%v)", moves, h.Number, err)
				}
			}
			same(t, fmt.Sprintf("the run after one killed before move %d", moves), fresh, tree(t, rendered(t, job)))
			if !reached {
				if moves < 6 {
					t.Errorf("a run makes only %d moves", moves)
				}
				break
			}
		}
	}
}

// A paper that vanishes, a folder whose rights are lost and a link put in the place of a folder end the run; the
// earlier output stays, and nothing is written where the link leads.
func TestDiskChangedUnderTheRun(t *testing.T) {
	victim := t.TempDir()
	rows := []struct {
		where  string
		change func(job Job) error
	}{
		{"a paper vanishes", func(job Job) error {
			return os.RemoveAll(filepath.Join(job.Root.Name(), "hulls", "HL74-012", "documents"))
		}},
		{"a link to elsewhere", func(job Job) error {
			found, err := filepath.Glob(filepath.Join(job.Out, stagePrefix+"*", "new", "HL74-012"))
			if err != nil || len(found) != 1 {
				return fmt.Errorf("stage %v %v", found, err)
			}
			return errors.Join(os.Rename(found[0], found[0]+"x"), os.Symlink(victim, found[0]))
		}},
		{"the stage vanishes", func(job Job) error {
			found, err := filepath.Glob(filepath.Join(job.Out, stagePrefix+"*", "new"))
			if err != nil || len(found) != 1 {
				return fmt.Errorf("stage %v %v", found, err)
			}
			return os.RemoveAll(found[0])
		}},
	}
	for _, r := range rows {
		job := demoJob(t)
		job.Hulls = job.Hulls[:1]
		before := tree(t, rendered(t, job))
		assess := job.Assess
		job.Version = "another"
		job.Assess = func(h *record.Hull) *engine.Dossier {
			d := assess(h)
			if err := r.change(job); err != nil {
				t.Error(err)
			}
			return d
		}
		if _, err := Render(context.Background(), job); err == nil {
			t.Errorf("%s: no error", r.where)
		}
		same(t, r.where, before, tree(t, job.Out))
		if left, err := os.ReadDir(victim); err != nil || len(left) > 0 {
			t.Errorf("%s: written elsewhere: %v %v", r.where, left, err)
		}
	}
}
