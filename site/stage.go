package site

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"hullfile/engine/record"
)

// stagePrefix begins the name of the folder in which output is made, beside the output that it will replace.
const stagePrefix = ".part-"

// stage is the folder in which output is made: new/ holds what is being written, old/ what it takes the place of, only
// while the two are being exchanged.
type stage struct {
	place place
	dir   string
	move  func(from, to string) error // os.Rename; a test makes it fail half-way
}

// openStage makes the stage inside the output folder, so that moving into place is a rename on one file system.
func openStage(p place) (*stage, error) {
	if err := os.MkdirAll(p.out, 0o755); err != nil {
		return nil, fmt.Errorf("output folder: %w", plainly(err))
	}
	if err := sweep(p.out); err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp(p.out, stagePrefix)
	if err != nil {
		return nil, fmt.Errorf("output folder: %w", plainly(err))
	}
	return &stage{place: p, dir: dir, move: os.Rename}, nil
}

func (s *stage) fresh(name string) string  { return filepath.Join(s.dir, "new", name) }
func (s *stage) former(name string) string { return filepath.Join(s.dir, "old", name) }
func (s *stage) final(name string) string  { return filepath.Join(s.place.out, name) }

// sweep clears what an earlier run left when it was killed. If that was during the exchange, what had been set aside
// is put back first.
func sweep(out string) error {
	entries, err := os.ReadDir(out)
	if err != nil {
		return fmt.Errorf("output folder: %w", err)
	}
	for _, e := range entries {
		if !e.IsDir() || !strings.HasPrefix(e.Name(), stagePrefix) {
			continue
		}
		left := filepath.Join(out, e.Name())
		if err := putBack(filepath.Join(left, "old"), out); err != nil {
			return err
		}
		if err := os.RemoveAll(left); err != nil {
			return fmt.Errorf("clearing an interrupted run: %w", plainly(err))
		}
	}
	return nil
}

// putBack moves everything in the folder to out, unless something has taken its place.
func putBack(from, out string) error {
	entries, err := os.ReadDir(from)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("clearing an interrupted run: %w", err)
	}
	for _, e := range entries {
		if _, err := os.Lstat(filepath.Join(out, e.Name())); err == nil {
			continue
		}
		if err := os.Rename(filepath.Join(from, e.Name()), filepath.Join(out, e.Name())); err != nil {
			return fmt.Errorf("clearing an interrupted run: %w", plainly(err))
		}
	}
	return nil
}

// swap exchanges the new output for the old. If a move fails, those already made are taken back.
func (s *stage) swap() error {
	entries, err := os.ReadDir(s.fresh(""))
	if err != nil {
		return err
	}
	if err := os.MkdirAll(s.former(""), 0o755); err != nil {
		return plainly(err)
	}
	for i, e := range entries {
		if err := s.exchange(e.Name()); err != nil {
			err = fmt.Errorf("the earlier output stays as it was: %s: %w", e.Name(), plainly(err))
			return errors.Join(err, s.takeBack(entries[:i]))
		}
	}
	return nil
}

// exchange moves one entry of the output aside, if there is one, and the new one into its place.
func (s *stage) exchange(name string) error {
	aside := s.move(s.final(name), s.former(name))
	if aside != nil && !errors.Is(aside, fs.ErrNotExist) {
		return aside
	}
	if err := s.move(s.fresh(name), s.final(name)); err != nil {
		if aside == nil {
			return errors.Join(err, os.Rename(s.former(name), s.final(name)))
		}
		return err
	}
	return nil
}

// takeBack undoes exchanges, the last first.
func (s *stage) takeBack(done []os.DirEntry) error {
	var failed []error
	for i := len(done) - 1; i >= 0; i-- {
		name := done[i].Name()
		failed = append(failed, os.Rename(s.final(name), s.fresh(name)))
		if err := os.Rename(s.former(name), s.final(name)); !errors.Is(err, fs.ErrNotExist) {
			failed = append(failed, err)
		}
	}
	return errors.Join(failed...)
}

// discard removes the stage, and the output folder itself if this run made it and nothing went in.
func (s *stage) discard() {
	os.RemoveAll(s.dir)
	if s.place.fresh {
		os.Remove(s.place.out) // refuses by itself where there is something in it
	}
}

// left lists the folders of hulls that the yard no longer has, in order of name.
func (s *stage) left(hulls []*record.Hull) []string {
	known := map[string]bool{}
	for _, h := range hulls {
		known[h.Number] = true
	}
	entries, err := os.ReadDir(s.place.out)
	if err != nil {
		return nil
	}
	var out []string
	for _, e := range entries {
		if e.IsDir() && !known[e.Name()] && ours(s.final(e.Name())) {
			out = append(out, e.Name())
		}
	}
	return out
}
