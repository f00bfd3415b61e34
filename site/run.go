package site

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"hullfile/engine/record"
)

// run is one rendering: what the output remembers, what is kept of it and what is written.
type run struct {
	press  *press
	stage  *stage
	was    *state
	papers *papers
	keys   *keyring
	made   []outcome // in the order of the job
	gone   []string  // hulls that the yard no longer has and whose files go
}

// outcome is the outcome for one hull.
type outcome struct {
	volume
	kept   bool
	sealed bool // it would come out otherwise, and was left because somebody sealed it
}

func newRun(p *press, s *stage) (*run, error) {
	r := &run{press: p, stage: s, was: readState(s.place.out), made: make([]outcome, len(p.job.Hulls))}
	r.papers = newPapers(p.job.Root, r.was)
	var err error
	r.keys, err = newKeyring(p.job, p.shelf, r.papers)
	return r, err
}

// books looks first which books may stay and then writes the others.
func (r *run) books(ctx context.Context) error {
	hulls := r.press.job.Hulls
	err := inParallel(ctx, len(hulls), func(_ context.Context, i int) (err error) {
		r.made[i], err = r.keep(hulls[i])
		return err
	})
	if err != nil {
		return err
	}
	var due []int
	for i, m := range r.made {
		if !m.kept {
			due = append(due, i)
		}
	}
	r.press.hands = max(1, runtime.GOMAXPROCS(0)/max(1, len(due)))
	var begun atomic.Int32
	return inParallel(ctx, len(due), func(ctx context.Context, j int) error {
		h := hulls[due[j]]
		if tell := r.press.job.Tell; tell != nil {
			tell(Progress{Hull: h.Number, At: int(begun.Add(1)), Of: len(due), Kept: len(hulls) - len(due)})
		}
		if err := r.write(ctx, h, &r.made[due[j]]); err != nil {
			return fmt.Errorf("hull %s: %w", h.Number, err)
		}
		return nil
	})
}

// keep makes the key of a hull and looks whether the book that lies there has the same and is as it was left. Where only
// times differ, as in an output that was copied, the hashes decide.
func (r *run) keep(h *record.Hull) (outcome, error) {
	key, err := r.keys.of(h)
	if err != nil {
		return outcome{}, err
	}
	dir := r.stage.final(h.Number)
	was, known := r.was.books[h.Number]
	if known && key != "" && was.Key == key {
		tree, err := footprint(dir)
		if err == nil && (tree == was.Tree || verifies(dir, was.Line.Sums)) {
			return outcome{volume: volume{key, tree, was.Line}, kept: true}, nil
		}
	}
	if sealed(dir) {
		return r.leave(was, h, dir)
	}
	return outcome{volume: volume{Key: key}}, nil
}

// leave keeps a sealed file as it lies there, although it would come out otherwise: what somebody signed is not written
// over. What is remembered of it stays, so that records that are set right again find it unchanged.
func (r *run) leave(was volume, h *record.Hull, dir string) (outcome, error) {
	line, ok := earlier(dir, h.Number)
	if !ok {
		return outcome{}, fmt.Errorf("%s is sealed and cannot be read any more; move it away, and render again", dir)
	}
	was.Line = line
	return outcome{volume: was, kept: true, sealed: true}, nil
}

// stillThere sees that the records of every book that was made are still where they were read. Where the yard went away
// in the middle, as with a stick that is pulled out, papers were missing from the books for no fault of theirs.
func (r *run) stillThere() error {
	root := r.press.job.Root
	if root == nil {
		return nil
	}
	seen := map[string]bool{}
	for i, m := range r.made {
		if m.kept {
			continue
		}
		for _, f := range r.press.shelf.of(r.press.job.Hulls[i]) {
			if seen[f.Path] {
				continue
			}
			seen[f.Path] = true
			if _, err := root.Lstat(f.Path); err != nil {
				return fmt.Errorf("the earlier output stays as it was, because a record went away in the meantime: %w", err)
			}
		}
	}
	return nil
}

// write makes the book of a hull in the stage.
func (r *run) write(ctx context.Context, h *record.Hull, into *outcome) error {
	made, err := r.press.book(ctx, h, r.stage)
	if err != nil {
		return err
	}
	into.Line = made
	into.Tree, err = footprint(r.stage.fresh(h.Number))
	return err
}

// close looks for hulls that are gone, and writes the register and the state.
func (r *run) close(ctx context.Context) error {
	if err := r.stillThere(); err != nil {
		return err
	}
	r.findGone()
	lines := make([]line, len(r.made))
	books := make([]volume, len(r.made))
	for i, m := range r.made {
		lines[i], books[i] = m.Line, m.volume
	}
	p, s := r.press, r.stage
	if err := p.register(ctx, s, blockOf(&p.job.Yard.Builder), p.linesOf(s, lines), s.left(p.job.Yard.Hulls)); err != nil {
		return err
	}
	if err := s.settleRegister(); err != nil {
		return err
	}
	if r.press.job.Neighbours == nil {
		return nil
	}
	text, err := r.was.after(r.press.job, r.stage.began, r.papers, books).text()
	if err != nil {
		return err
	}
	return writeAlone(r.stage.fresh(stateName), text)
}

// findGone finds the hulls that an earlier run wrote and the yard no longer has. Their folders go, unless somebody
// changed something in them.
func (r *run) findGone() {
	has := map[string]bool{}
	for _, h := range r.press.job.Yard.Hulls {
		has[h.Number] = true
	}
	for number, was := range r.was.books {
		if has[number] || !plainName(number) {
			continue
		}
		dir := r.stage.final(number)
		if tree, err := footprint(dir); err == nil && !sealed(dir) && (tree == was.Tree || verifies(dir, was.Line.Sums)) {
			r.gone = append(r.gone, number)
		}
	}
	slices.Sort(r.gone)
	r.stage.gone = slices.Clone(r.gone)
}

// report says what was written, for the caller.
func (r *run) report() Report {
	out := Report{Register: r.stage.final(coverName), Gone: r.gone, Left: r.stage.left(r.press.job.Yard.Hulls)}
	for _, m := range r.made {
		n := m.Line
		out.Hulls = append(out.Hulls, HullReport{
			Number: n.Number, Kept: m.kept, Sealed: m.sealed, Page: filepath.Join(r.stage.final(n.Number), coverName), Standing: n.Standing, Counts: n.Counts,
			Pages: n.Pages, Files: n.Files, Bytes: n.Bytes, Root: n.Root, Sums: n.Sums,
		})
	}
	return out
}

// inParallel does a piece of work for every number below n, as many at a time as there are processors. What one needs is let
// go before the next is taken up, so that the memory needed does not grow with the fleet. The first failure stops the rest.
func inParallel(ctx context.Context, n int, do func(ctx context.Context, i int) error) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	var next atomic.Int32
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		workers.Go(func() {
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				if err := do(ctx, i); err != nil {
					stop(err)
				}
			}
		})
	}
	workers.Wait()
	return context.Cause(ctx)
}
