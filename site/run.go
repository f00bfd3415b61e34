package site

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"hullfile/engine/crew"
)

// run is one rendering: what the output remembers, what is kept of it and what is written.
type run struct {
	press  *press
	stage  *stage
	was    *state
	now    *state
	papers *papers
	supply supply
	hulls  []string        // those to write, in the order of the job
	made   []outcome       // the same
	all    map[string]bool // numbers of the yard
	gone   []string        // hulls that the yard no longer has and whose files go
	round  round

	lists sync.Mutex // of folders in now
}

// outcome is the outcome for one hull.
type outcome struct {
	volume
	kept   bool
	sealed bool // it would come out otherwise, and was left because somebody sealed it
}

func newRun(ctx context.Context, p *press, s *stage) (*run, error) {
	r := &run{press: p, stage: s, was: readState(s.place.out), now: newState(), all: map[string]bool{}}
	r.papers = newPapers(p.job.Root, r.was.began)
	var err error
	if len(r.was.books) == 0 {
		p.soon()
	}
	if p.job.Pieces != nil {
		r.supply, err = newPieces(ctx, p, s, r.was, r.papers)
	} else {
		r.supply, err = newWhole(&p.job, r.papers)
	}
	if err != nil {
		return nil, err
	}
	for _, number := range r.supply.all() {
		r.all[number] = true
	}
	r.hulls = r.supply.chosen()
	r.made = make([]outcome, len(r.hulls))
	r.round = newRound(r.hulls, r.was, p.job.EveryFile)
	return r, folderNames(r.supply.all())
}

// books looks first which books may stay and then writes the others.
func (r *run) books(ctx context.Context) error {
	hulls := r.hulls
	err := inParallel(ctx, len(hulls), func(_ context.Context, i int) (err error) {
		r.made[i], err = r.keep(hulls[i])
		return err
	})
	if err != nil {
		return err
	}
	var due []int
	var names []string
	for i := range r.made {
		if !r.made[i].kept {
			due, names = append(due, i), append(names, hulls[i])
		}
	}
	if err := notInTheWay(r.stage.place.out, names); err != nil {
		return err
	}
	r.press.hands = max(1, runtime.GOMAXPROCS(0)/max(1, len(due)))
	var begun atomic.Int32
	return inParallel(ctx, len(due), func(ctx context.Context, j int) error {
		h := hulls[due[j]]
		if tell := r.press.job.Tell; tell != nil {
			tell(Progress{Hull: h, At: int(begun.Add(1)), Of: len(due), Kept: len(hulls) - len(due)})
		}
		if err := soundly(func() error { return r.write(ctx, h, &r.made[due[j]]) }); err != nil {
			return fmt.Errorf("hull %s: %w", h, err)
		}
		return nil
	})
}

// keep makes the key of a hull and looks whether the book that lies there has the same and is as it was left. Where only
// times differ, as in an output that was copied, the hashes decide.
func (r *run) keep(number string) (outcome, error) {
	key, err := r.supply.key(number)
	if err != nil {
		return outcome{}, err
	}
	dir := r.stage.final(number)
	was, known := r.was.books[number]
	if known && key != "" && was.Key == key && was.Own == ownMark(r.supply.own(), was.Asked) {
		if v, as := r.asLeft(number, dir, was); as {
			return outcome{volume: v, kept: true}, nil
		}
	}
	if sealed(dir) {
		return r.leave(was, number, dir)
	}
	r.press.soon()
	return outcome{volume: volume{Key: key}}, nil
}

// asLeft looks whether a book is as an earlier run left it. The times of its folders and of its lists are looked at in every
// run, those of every file when its turn comes.
func (r *run) asLeft(number, dir string, was volume) (volume, bool) {
	folders := r.was.folders.of(number, was.Folders)
	if !r.round.has(number) {
		if now, ok := doors(dir, folders); ok && now == was.Doors {
			was.Folders = r.remember(number, folders)
			return was, true
		}
	}
	tree, folders, err := footprint(dir)
	if err != nil || tree != was.Tree && !verifies(dir, was.Line.Sums) {
		return was, false
	}
	was.Tree, was.Folders = tree, r.remember(number, folders)
	was.Doors, _ = doors(dir, folders)
	return was, true
}

// remember gives the place of a list of folders in the state that is being made.
func (r *run) remember(number string, folders []string) int {
	r.lists.Lock()
	defer r.lists.Unlock()
	return r.now.folders.add(number, folders)
}

// leave keeps a sealed file as it lies there, although it would come out otherwise: what somebody signed is not written
// over. What is remembered of it stays, so that records that are set right again find it unchanged.
func (r *run) leave(was volume, number, dir string) (outcome, error) {
	line, ok := earlier(dir, number)
	if !ok {
		return outcome{}, fmt.Errorf("%s is sealed and cannot be read any more; move it away, and render again", dir)
	}
	was.Folders = r.remember(number, r.was.folders.of(number, was.Folders))
	was.Line = line
	return outcome{volume: was, kept: true, sealed: true}, nil
}

// write makes the book of a hull in the stage.
func (r *run) write(ctx context.Context, number string, into *outcome) error {
	o, err := r.supply.open(number)
	if err != nil {
		return r.gonePerhaps(err)
	}
	made, err := r.press.book(ctx, o, r.stage)
	if err != nil {
		return err
	}
	if err := r.stillThere(o); err != nil {
		return err
	}
	if o.changed {
		into.Key = ""
	}
	into.Line, into.Asked = made, o.dossier.Asked
	into.Own = ownMark(r.supply.own(), into.Asked)
	tree, folders, err := footprint(r.stage.fresh(number))
	if err != nil {
		return err
	}
	into.Tree, into.Folders = tree, r.remember(number, folders)
	into.Doors, _ = doors(r.stage.fresh(number), folders)
	return nil
}

// stillThere sees that the records of a book that was made are still where they were read. Where the yard went away
// in the middle, as with a stick that is pulled out, papers were missing from the book for no fault of theirs.
func (r *run) stillThere(o *opened) error {
	root := r.press.job.Root
	if root == nil {
		return nil
	}
	for _, f := range o.files {
		if _, err := root.Lstat(f.Path); err != nil {
			return wentAway(err)
		}
	}
	return nil
}

// gonePerhaps says of a hull that can no longer be read whether that is because its records went away.
func (r *run) gonePerhaps(err error) error {
	if root := r.press.job.Root; root != nil {
		if _, gone := root.Lstat("."); gone != nil {
			return wentAway(gone)
		}
	}
	return err
}

func wentAway(err error) error {
	return fmt.Errorf("the earlier output stays as it was, because a record went away in the meantime: %w", err)
}

// close looks for hulls that are gone, and writes the register and the state.
func (r *run) close(ctx context.Context) error {
	r.findGone()
	if err := r.register(ctx); err != nil {
		return err
	}
	if r.press.job.Neighbours == nil && r.press.job.Pieces == nil {
		return nil
	}
	r.note()
	return r.now.write(r.stage.fresh(stateName))
}

// lines gives a line for every hull of the yard. Hulls that were not part of the job stand as the file that lies there says.
func (r *run) lines() []line {
	by := make(map[string]*line, len(r.made))
	for i := range r.made {
		by[r.hulls[i]] = &r.made[i].Line
	}
	numbers := r.supply.all()
	all := make([]line, 0, len(numbers))
	for _, number := range numbers {
		if n := by[number]; n != nil {
			all = append(all, *n)
			continue
		}
		n, ok := r.lineThere(number)
		if !ok {
			n = r.supply.absent(number)
		}
		all = append(all, n)
	}
	return all
}

// lineThere gives the line of a hull that has nothing to do with this run.
func (r *run) lineThere(number string) (line, bool) {
	dir := r.stage.final(number)
	if was, known := r.was.books[number]; known {
		if now, ok := doors(dir, r.was.folders.of(number, was.Folders)); ok && now == was.Doors {
			return was.Line, true
		}
	}
	return earlier(dir, number)
}

// note makes what the next run finds: the books of this run, and those of hulls that it had nothing to do with.
func (r *run) note() {
	next := r.now
	next.began = r.stage.began
	r.supply.note(next)
	next.next = r.round.next
	for i := range r.made {
		next.books[r.hulls[i]] = r.made[i].volume
	}
	for number, v := range r.was.books {
		if _, made := next.books[number]; made || !r.all[number] {
			continue
		}
		v.Folders = r.remember(number, r.was.folders.of(number, v.Folders))
		next.books[number] = v
	}
}

// findGone finds the hulls that an earlier run wrote and the yard no longer has. Their folders go, unless somebody
// changed something in them.
func (r *run) findGone() {
	for number, was := range r.was.books {
		if r.all[number] || !plainName(number) {
			continue
		}
		dir := r.stage.final(number)
		if tree, _, err := footprint(dir); err == nil && !sealed(dir) && (tree == was.Tree || verifies(dir, was.Line.Sums)) {
			r.gone = append(r.gone, number)
		}
	}
	slices.Sort(r.gone)
	r.stage.gone = slices.Clone(r.gone)
}

// report says what was written, for the caller.
func (r *run) report() Report {
	out := Report{Register: r.stage.final(coverName), Gone: r.gone, Left: r.stage.left(r.all)}
	for i := range r.made {
		m := &r.made[i]
		n := &m.Line
		out.Hulls = append(out.Hulls, HullReport{
			Number: n.Number, Kept: m.kept, Sealed: m.sealed, Unknown: m.sealed && m.Key == "", Page: filepath.Join(r.stage.final(n.Number), coverName), Standing: n.Standing, Counts: n.Counts,
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
				if err := soundly(func() error { return do(ctx, i) }); err != nil {
					stop(err)
				}
			}
		})
	}
	workers.Wait()
	return context.Cause(ctx)
}

// soundly does a piece of work and gives a panic as an error, so that a fault of the program in one hull leaves the earlier
// output whole and a preview open.
func soundly(work func() error) (err error) {
	if fault := crew.Caught(func() { err = work() }); fault != nil {
		return fault
	}
	return err
}
