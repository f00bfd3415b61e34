package site

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"

	"hullfile/engine/record"
)

// Join says which parts of a yard's output are to become one.
type Join struct {
	Parts   []string // folders that renderings wrote
	Out     string   // folder to write to; it may be one of the parts
	Version string   // of the program, as printed at the foot of a page
}

// JoinReport says what was joined.
type JoinReport struct {
	Register string // path of the register's page
	Hulls    int
	Copied   int // those that did not lie in the output already
}

// piece is the technical file of a hull in one of the parts.
type piece struct {
	dir  string
	line line
}

// Register joins parts of a yard's output into one and writes its register from what the technical files say of
// themselves; no records are needed. Every file is held against the list of hashes of its hull before it is taken. What
// comes out is what one rendering of all hulls would have written.
// The error says which part is missing, not whole, or of another yard, or what could not be written.
func Register(ctx context.Context, j Join) (JoinReport, error) {
	pieces, err := j.pieces()
	if err != nil {
		return JoinReport{}, err
	}
	yard, err := yardOf(pieces)
	if err != nil {
		return JoinReport{}, err
	}
	job := Job{Yard: yard, Out: j.Out, Version: j.Version}
	place, err := openPlace(job)
	if err != nil {
		return JoinReport{}, err
	}
	press, err := newPress(job)
	if err != nil {
		return JoinReport{}, err
	}
	stage, err := openStage(place)
	if err != nil {
		return JoinReport{}, err
	}
	defer stage.discard()
	report := JoinReport{Register: stage.final(coverName), Hulls: len(pieces)}
	if report.Copied, err = stage.gather(ctx, pieces); err != nil {
		return JoinReport{}, err
	}
	lines, known := make([]line, len(pieces)), map[string]bool{}
	for i, p := range pieces {
		lines[i], known[p.line.Number] = p.line, true
	}
	if err := press.register(ctx, stage, blockOf(&yard.Builder), lines, stage.left(known)); err != nil {
		return JoinReport{}, err
	}
	if err := stage.joinStates(pieces); err != nil {
		return JoinReport{}, err
	}
	if err := errors.Join(stage.settleRegister(), ctx.Err()); err != nil {
		return JoinReport{}, err
	}
	return report, stage.swap()
}

// pieces finds the technical files in the parts and those that lie in the output already, in order of number. Two that
// differ for one hull are refused, because nobody can say which is the right one.
func (j *Join) pieces() ([]piece, error) {
	by := map[string]piece{}
	dirs := j.Parts
	if ours(j.Out) {
		dirs = append([]string{j.Out}, dirs...)
	}
	for _, dir := range dirs {
		dir, err := filepath.Abs(dir)
		if err != nil {
			return nil, err
		}
		if !ours(dir) {
			return nil, fmt.Errorf("%s holds no output of a rendering (%s and %s are not in it)", dir, contentsName, sumsName)
		}
		entries, err := os.ReadDir(dir)
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			at := filepath.Join(dir, e.Name())
			if !e.IsDir() || !plainName(e.Name()) || !ours(at) {
				continue
			}
			n, ok := earlier(at, e.Name())
			if !ok {
				return nil, fmt.Errorf("%s: %s cannot be read; render this hull again", at, resultsName)
			}
			if other, twice := by[n.Number]; twice && other.line.Sums != n.Sums {
				return nil, fmt.Errorf("%s and %s are two different files of one hull", other.dir, at)
			} else if !twice {
				by[n.Number] = piece{at, n}
			}
		}
	}
	var out []piece
	for _, p := range by {
		out = append(out, p)
	}
	slices.SortFunc(out, func(a, b piece) int { return strings.Compare(a.line.Number, b.line.Number) })
	return out, nil
}

// yardOf gives what the register needs of the yard. Files of two builders are refused.
func yardOf(pieces []piece) (*record.Yard, error) {
	y := &record.Yard{}
	for i, p := range pieces {
		if i == 0 {
			y.Builder.Name.V, y.Builder.Invented.V = p.line.Builder, p.line.Invented
		}
		if p.line.Builder != y.Builder.Name.V {
			return nil, fmt.Errorf("%s is of %q and %s of %q; a register is of one yard", pieces[0].dir, y.Builder.Name.V, p.dir, p.line.Builder)
		}
		y.Hulls = append(y.Hulls, &record.Hull{Number: p.line.Number})
	}
	return y, nil
}

// gather copies the files that do not lie in the output yet into the stage.
func (s *stage) gather(ctx context.Context, pieces []piece) (copied int, err error) {
	var due atomic.Int32
	err = inParallel(ctx, len(pieces), func(ctx context.Context, i int) error {
		p := pieces[i]
		if p.dir == s.final(p.line.Number) {
			return p.check(p.dir)
		}
		due.Add(1)
		if err := copyBook(ctx, p, s.fresh(p.line.Number)); err != nil {
			return fmt.Errorf("copying %s: %w", p.dir, err)
		}
		return nil
	})
	return int(due.Load()), err
}

// copyBook copies a technical file and checks what was copied.
func copyBook(ctx context.Context, p piece, to string) error {
	from, err := os.OpenRoot(p.dir)
	if err != nil {
		return err
	}
	defer from.Close()
	f, err := newFolder(ctx, to)
	if err != nil {
		return err
	}
	defer f.close()
	err = fs.WalkDir(from.FS(), ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		in, err := from.Open(name)
		if err != nil {
			return err
		}
		defer in.Close()
		_, err = f.take(name, in)
		return err
	})
	if err != nil {
		return err
	}
	return p.check(to)
}

// check holds the files in a folder against the list of hashes of the piece.
func (p *piece) check(dir string) error {
	if !verifies(dir, p.line.Sums) {
		return fmt.Errorf("%s: a file is not what its %s says; render this hull again", p.dir, sumsName)
	}
	return nil
}

// joinStates writes what the parts remember of the hulls, so that a rendering into the joined output has nothing to write
// anew.
func (s *stage) joinStates(pieces []piece) error {
	next := newState()
	next.began = s.began
	parts := map[string]*state{}
	for _, p := range pieces {
		dir := filepath.Dir(p.dir)
		if parts[dir] == nil {
			parts[dir] = readState(dir)
		}
		v, known := parts[dir].books[p.line.Number]
		if !known || v.Line.Sums != p.line.Sums {
			continue
		}
		at := p.dir
		if at != s.final(p.line.Number) {
			at = s.fresh(p.line.Number)
		}
		tree, folders, err := footprint(at)
		if err != nil {
			return err
		}
		v.Tree, v.Folders = tree, next.folderList(folders)
		v.Doors, _ = doors(at, folders)
		next.books[p.line.Number] = v
	}
	return next.write(s.fresh(stateName))
}
