package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"

	"hullfile/engine"
	"hullfile/engine/compare"
	"hullfile/engine/record"
	"hullfile/site"
)

// readSide reads the machine copies out of a technical file. A file of an older version may have no table of values; its
// records are then not compared, which shows as all of them being new.
func readSide(path string) (*compare.Side, error) {
	from, closing, err := openFile(path)
	if err != nil {
		return nil, err
	}
	defer closing()
	results, err := fs.ReadFile(from, site.ResultsPath)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%q is no technical file of a hull: %s is not in it", path, site.ResultsPath)
	}
	if err != nil {
		return nil, fmt.Errorf("%q cannot be read: %w", path, err)
	}
	values, err := fs.ReadFile(from, site.ValuesPath)
	if err != nil {
		return nil, fmt.Errorf("%q has no %s: it was made by an older version, or is not whole", path, site.ValuesPath)
	}
	side, err := compare.ReadSide(results, values)
	if err != nil {
		return nil, fmt.Errorf("%q: %w", path, err)
	}
	return side, nil
}

// yardSide reckons a hull of a yard, or a design as if a hull were built exactly by it.
func yardSide(yard, name string) (*compare.Side, error) {
	r, err := openYard(yard)
	if err != nil {
		return nil, err
	}
	defer r.close()
	if slices.ContainsFunc(r.yard.Hulls, func(h *record.Hull) bool { return h.Number == name }) {
		return r.side(name)
	}
	if slices.ContainsFunc(r.yard.Designs, func(d record.DesignName) bool { return d.Name == name }) {
		return r.designSide(name)
	}
	_, err = r.choose([]string{name})
	return nil, err
}

func (r *reading) side(number string) (*compare.Side, error) {
	hulls, err := r.choose([]string{number})
	if err != nil {
		return nil, err
	}
	results, values, err := site.Copies(site.Job{Yard: r.yard, Root: r.root, Version: version(), Assess: func(h *record.Hull) *engine.Dossier {
		return engine.Assess(r.yard, h, r.ref, r.root)
	}}, hulls[0])
	if err != nil {
		return nil, err
	}
	return compare.ReadSide(results, values)
}

// designSide makes a yard for the length of a comparison, with the records and papers of the yard and one hull that is
// laid over the design and adds nothing. It stands under the name of the design.
func (r *reading) designSide(design string) (*compare.Side, error) {
	dir, err := os.MkdirTemp("", "hullfile-design-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	for _, below := range []string{"designs", "stock", "procedures", "methods", "limits", "requirements"} {
		from, err := fs.Sub(r.root.FS(), below)
		if err != nil {
			return nil, err
		}
		if err := os.CopyFS(filepath.Join(dir, below), from); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
	}
	for _, f := range r.yard.Files {
		if path.Dir(f.Path) != "." {
			continue
		}
		if err := os.WriteFile(filepath.Join(dir, f.Path), f.Text, 0o644); err != nil {
			return nil, err
		}
	}
	hull := filepath.Join(dir, "hulls", design)
	if err := os.MkdirAll(hull, 0o755); err != nil {
		return nil, err
	}
	if err := os.WriteFile(filepath.Join(hull, "hull.toml"), fmt.Appendf(nil, "design = %q\n[identity]\nstate = \"design\"\n", design), 0o644); err != nil {
		return nil, err
	}
	alone, err := openYard(dir)
	if err != nil {
		return nil, fmt.Errorf("design %s does not stand by itself: %w", design, err)
	}
	defer alone.close()
	return alone.side(design)
}
