package site

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"
)

// stagePrefix begins the name of the folder in which output is made, beside the output that it will replace.
const stagePrefix = ".part-"

// stage is the folder in which output is made: new/ holds what is being written, old/ what is set aside, where the
// system cannot let two names change places in one step.
type stage struct {
	place place
	dir   string
	lock  *lock
	began int64                       // by the disk's clock, nanoseconds since 1970
	gone  []string                    // entries of the output that nothing takes the place of
	move  func(from, to string) error // os.Rename; a test makes it fail half-way
	trade func(a, b string) error     // a test does without it
}

// openStage takes the lock of the output folder and makes the stage inside it, so that moving into place is a rename on
// one file system.
func openStage(p place) (*stage, error) {
	if err := os.MkdirAll(p.out, 0o755); err != nil {
		return nil, fmt.Errorf("output folder: %w", plainly(err))
	}
	lock, err := takeLock(p.out)
	if err != nil {
		return nil, err
	}
	s := &stage{place: p, lock: lock, move: os.Rename, trade: trade}
	if err := sweep(p.out, os.RemoveAll); err != nil {
		s.discard()
		return nil, err
	}
	if s.dir, err = os.MkdirTemp(p.out, stagePrefix); err != nil {
		s.discard()
		return nil, fmt.Errorf("output folder: %w", plainly(err))
	}
	info, err := os.Stat(s.dir)
	if err != nil {
		s.discard()
		return nil, fmt.Errorf("output folder: %w", plainly(err))
	}
	s.began = info.ModTime().UnixNano()
	return s, nil
}

func (s *stage) fresh(name string) string  { return filepath.Join(s.dir, "new", name) }
func (s *stage) former(name string) string { return filepath.Join(s.dir, "old", name) }
func (s *stage) final(name string) string  { return filepath.Join(s.place.out, name) }

// room makes the folder of what is fresh, for a run that writes nothing but what it remembers.
func (s *stage) room() error { return plainly(os.MkdirAll(s.fresh(""), 0o755)) }

// keeping is the folder of what is remembered of single hulls, until it is put beside the state.
func (s *stage) keeping() string { return filepath.Join(s.dir, "kept") }

// sweep clears what an earlier run left when it was killed. If that was during the exchange, what had been set aside
// is put back first. What cannot be removed, because another program looks into it, is in nobody's way and stays until the
// next run: nothing of it is put back any more.
func sweep(out string, remove func(string) error) error {
	entries, err := os.ReadDir(out)
	if err != nil {
		return fmt.Errorf("output folder: %w", err)
	}
	for _, e := range entries {
		if !e.IsDir() || !strings.HasPrefix(e.Name(), stagePrefix) {
			continue
		}
		left := filepath.Join(out, e.Name())
		old := filepath.Join(left, "old")
		if err := putBack(old, out); err != nil {
			return err
		}
		if remove(left) == nil {
			continue
		}
		if err := os.Rename(old, filepath.Join(left, "done")); err != nil && !errors.Is(err, fs.ErrNotExist) {
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
	var undo []func() error
	step := func(name string, do func(string) (func() error, error)) error {
		back, err := do(name)
		if err != nil {
			err = fmt.Errorf("the earlier output stays as it was: %s: %w", name, plainly(err))
			return errors.Join(err, takeBack(undo))
		}
		undo = append(undo, back)
		return nil
	}
	for _, e := range entries {
		if e.Name() == stateName {
			continue
		}
		if err := step(e.Name(), s.exchange); err != nil {
			return err
		}
	}
	for _, name := range s.gone {
		if err := step(name, s.setAside); err != nil {
			return err
		}
	}
	if err := s.move(s.former(""), filepath.Join(s.dir, "done")); err != nil {
		return errors.Join(plainly(err), takeBack(undo))
	}
	return s.remember()
}

// remember puts the state into its place when all else is in its own: until then the output remembers what was there
// before. Nothing is put back any more. What is kept of single hulls goes first: what the state does not name is not believed.
func (s *stage) remember() error {
	if _, err := os.Lstat(s.fresh(stateName)); err != nil {
		return nil // there is nothing to remember
	}
	if err := errors.Join(s.putKept(), os.Rename(s.fresh(stateName), s.final(stateName))); err != nil {
		return fmt.Errorf("the files are written, but will be written anew next time: %w", plainly(err))
	}
	return nil
}

// putKept moves what is remembered of single hulls beside the state.
func (s *stage) putKept() error {
	entries, err := os.ReadDir(s.keeping())
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil {
		err = os.MkdirAll(s.final(keptName), 0o755)
	}
	for _, e := range entries {
		err = errors.Join(err, os.Rename(filepath.Join(s.keeping(), e.Name()), filepath.Join(s.final(keptName), e.Name())))
	}
	for _, number := range s.gone {
		os.Remove(filepath.Join(s.final(keptName), number)) // of no use any more, and no harm
	}
	return err
}

// exchange puts one new entry into its place. What was there is then in the stage, and goes with it.
func (s *stage) exchange(name string) (back func() error, err error) {
	fresh, final := s.fresh(name), s.final(name)
	if s.trade(fresh, final) == nil {
		return func() error { return s.trade(fresh, final) }, nil
	}
	restore, err := s.setAside(name)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	there := err == nil
	if err := s.move(fresh, final); err != nil {
		if there {
			err = errors.Join(err, restore())
		}
		return nil, err
	}
	return func() error {
		err := os.Rename(final, fresh)
		if there {
			err = errors.Join(err, restore())
		}
		return err
	}, nil
}

// setAside moves one entry of the output into the stage.
func (s *stage) setAside(name string) (back func() error, err error) {
	if err := s.move(s.final(name), s.former(name)); err != nil {
		return nil, err
	}
	return func() error { return os.Rename(s.former(name), s.final(name)) }, nil
}

// takeBack undoes exchanges, the last first.
func takeBack(undo []func() error) error {
	var failed []error
	for i := len(undo) - 1; i >= 0; i-- {
		failed = append(failed, undo[i]())
	}
	return errors.Join(failed...)
}

// discard removes the stage, and the output folder itself if this run made it and nothing went in.
func (s *stage) discard() {
	if s.dir != "" {
		os.RemoveAll(s.dir)
	}
	s.lock.release()
	if s.place.fresh {
		os.Remove(s.place.out) // refuses by itself where there is something in it
	}
}

// left lists the folders of hulls that the yard no longer has and that stay, in order of name.
func (s *stage) left(hulls map[string]bool) []string {
	known := maps.Clone(hulls)
	for _, number := range s.gone {
		known[number] = true
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
