package site

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync/atomic"

	"hullfile/engine/document"
	"hullfile/engine/record"
)

// Join says which parts of a yard's output are to become one.
type Join struct {
	Parts   []string // folders that renderings wrote
	Out     string   // folder to write to; it may be one of the parts
	Only    bool     // take hulls out of the output that are in none of the parts
	Version string   // of the program, as printed at the foot of a page
}

// JoinReport says what was joined.
type JoinReport struct {
	Register string // path of the register's page
	Hulls    int
	Copied   int      // those that did not lie in the output already
	Absent   []string // hulls of the yard, by what the parts remember, whose files are in none of them
	Beside   []string // hulls that lie in the output and are in none of the parts
	Gone     []string // those of them that were taken out
}

// piece is the technical file of a hull in one of the parts.
type piece struct {
	dir  string
	line line
	part string // of a file that lies in the output, where the same lies in a part
}

// Register joins parts of a yard's output into one and writes its register from what the technical files say of
// themselves; no records are needed. Every file is held against the list of hashes of its hull before it is taken. What
// comes out is what one rendering of all hulls would have written. What lies in the output already gives way to the parts,
// unless somebody sealed it.
// The error says which part is missing, not whole, or of another yard, or what could not be written.
func Register(ctx context.Context, j Join) (JoinReport, error) {
	found, err := j.find()
	if err != nil {
		return JoinReport{}, err
	}
	pieces := found.pieces
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
	if err := found.mayLie(place.out); err != nil {
		return JoinReport{}, err
	}
	stage.gone = slices.Clone(found.gone)
	report := JoinReport{Register: stage.final(coverName), Hulls: len(pieces), Absent: found.absent(), Beside: found.beside, Gone: found.gone}
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
			err := p.check(p.dir)
			if err == nil || p.part == "" || sealed(p.dir) {
				return err
			}
			p.dir, pieces[i].dir = p.part, p.part
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
	files := document.Plain(from.FS())
	err = fs.WalkDir(files, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		in, err := files.Open(name)
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
		v.Tree, v.Folders = tree, next.folders.add(p.line.Number, folders)
		v.Doors, _ = doors(at, folders)
		next.books[p.line.Number] = v
	}
	return next.write(s.fresh(stateName))
}
