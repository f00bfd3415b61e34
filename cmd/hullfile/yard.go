package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/site"
)

// reading is a yard folder read without faults, with all that it is reckoned by.
type reading struct {
	root *os.Root
	yard *record.Yard
	ref  *engine.Reference

	print bool // whether the print edition of each file is written too

	keep bool     // whether a dossier that was reckoned is kept for the next who asks; not with a long fleet
	kept sync.Map // *record.Hull -> *engine.Dossier
}

// folderOf is the yard folder that was named, or this one.
func folderOf(args []string) string {
	if len(args) == 0 {
		return "."
	}
	return args[0]
}

// openYard reads the yard folder. The error is finding.Faults where the records cannot be read as they stand.
// Close the reading when done.
func openYard(folder string) (*reading, error) { return openYardBy(folder, &shelf{}) }

// openYardBy does the same with what an earlier reading left on the shelf.
func openYardBy(folder string, s *shelf) (*reading, error) {
	root, err := openFolder(folder)
	if err != nil {
		return nil, err
	}
	r := &reading{root: root}
	if err := r.read(s); err != nil {
		root.Close()
		return nil, err
	}
	return r, nil
}

func (r *reading) read(s *shelf) error {
	known, err := s.begun().Known()
	if err != nil {
		return err
	}
	yard, err := record.Read(r.root, known)
	if err != nil {
		return err
	}
	r.yard = yard.Settled()
	r.ref, err = s.of(r.yard)
	return err
}

// shelf keeps what comes with the program between readings, and the reference, which changes only with the yard's own method
// sheets.
type shelf struct {
	shipped *engine.Shipped
	sheets  []method.Source
	ref     *engine.Reference

	templates site.Templates // empty where only one rendering is made
}

// begun is what comes with the program; reading it is begun by the first who asks.
func (s *shelf) begun() *engine.Shipped {
	if s.shipped == nil {
		largePages()
		s.shipped = engine.ReadShipped(content.Files)
	}
	return s.shipped
}

func (s *shelf) reference(own []method.Source) (*engine.Reference, error) {
	same := func(a, b method.Source) bool {
		return a.Name == b.Name && a.Path == b.Path && bytes.Equal(a.Text, b.Text)
	}
	if s.ref != nil && slices.EqualFunc(s.sheets, own, same) {
		return s.ref, nil
	}
	ref, err := s.begun().Reference(own)
	if err != nil {
		return nil, err
	}
	if s.ref != nil {
		s.templates = s.templates.Anew()
	}
	s.sheets, s.ref = own, ref
	return ref, nil
}

// of gives what the hulls of a yard are reckoned by: what comes with the program, with the yard's own laid over it.
func (s *shelf) of(y *record.Yard) (*engine.Reference, error) {
	var own []method.Source
	for _, sheet := range y.Sheets {
		own = append(own, method.Source{Name: sheet.Name, Path: sheet.Path, Text: sheet.Text})
	}
	ref, err := s.reference(own)
	if err != nil {
		return nil, err
	}
	if ref, err = ref.With(y.Lists); err != nil {
		return nil, err
	}
	if ref, err = ref.WithLimits(content.Files, y.Limits); err != nil {
		return nil, err
	}
	return ref.WithChapters(y)
}

// dossiers reckons hulls, in their order.
func (r *reading) dossiers(hulls []*record.Hull) []*engine.Dossier {
	var all []*engine.Dossier
	for _, h := range hulls {
		all = append(all, r.dossier(h))
	}
	return all
}

// dossier reckons one hull. It may be asked from many goroutines.
func (r *reading) dossier(h *record.Hull) *engine.Dossier {
	if made, ok := r.kept.Load(h); ok {
		return made.(*engine.Dossier)
	}
	made := engine.Assess(r.yard, h, r.ref, r.root)
	if r.keep {
		r.kept.Store(h, made)
	}
	return made
}

// yardFindings are those of the yard's own records, which belong to no hull.
func (r *reading) yardFindings() []finding.Finding {
	var own []finding.Finding
	for _, doubt := range r.yard.Doubts {
		if doubt.Hull == "" {
			own = append(own, doubt.Finding)
		}
	}
	return own
}

func (r *reading) close() { r.root.Close() }

// openFolder opens the yard folder as a root that no path of the records can leave.
func openFolder(folder string) (*os.Root, error) {
	info, err := os.Stat(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("there is no yard folder %q", folder)
	case err != nil:
		return nil, fmt.Errorf("the yard folder %q cannot be read: %w", folder, err)
	case !info.IsDir():
		return nil, fmt.Errorf("%q is a file; name the folder that it lies in", folder)
	}
	if yard, is := yardAround(folder); is {
		return nil, fmt.Errorf("%q is a part of the yard folder %q, whose people, designs and stock belong to it; name that folder", folder, yard)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, fmt.Errorf("the yard folder %q cannot be read: %w", folder, err)
	}
	return root, nil
}

// yardAround gives the yard folder of which a folder is a part: one hull or design of it, or the folder of all.
func yardAround(folder string) (yard string, is bool) {
	whole, err := filepath.Abs(folder)
	if err != nil {
		return "", false
	}
	kept := func(dir string) bool { return filepath.Base(dir) == "hulls" || filepath.Base(dir) == "designs" }
	yard = filepath.Join(folder, "..")
	if !kept(whole) {
		yard = filepath.Join(yard, "..")
		if !kept(filepath.Dir(whole)) {
			return "", false
		}
	}
	_, err = os.Stat(filepath.Join(yard, "yard.toml"))
	return yard, err == nil
}
