package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/site"
	"hullfile/site/seal"
)

// rebuilt makes a technical file anew from the records and papers inside it and holds the result against it. The error
// says why that could not be tried; what differs is in the check.
func rebuilt(ctx context.Context, d *desk, from fs.FS, r *seal.Report) (finding.Check, error) {
	c := finding.Check{Rule: "rebuild", Subject: "rebuilding", Asks: "the records inside the file give the same file", Standing: finding.NotShown, Needed: r.Root}
	dir, err := os.MkdirTemp("", "hullfile-rebuild-")
	if err != nil {
		return c, err
	}
	defer os.RemoveAll(dir)
	made, number, err := rebuild(ctx, d, from, dir)
	var faults finding.Faults
	switch {
	case ctx.Err() != nil:
		return c, ctx.Err()
	case errors.As(err, &faults):
		c.Standing, c.Says = finding.Short, fmt.Sprintf("this program cannot read the records inside the file: %v", faults[0])
		return c, nil
	case err != nil:
		c.Says = err.Error()
		return c, nil
	}
	c.Has = made.Root
	if made.Root == r.Root && made.Sums == r.Sums {
		c.Standing, c.Says = finding.Met, "made anew from the records inside it, the file has the same root and the same list of hashes"
		return c, nil
	}
	again, err := os.OpenRoot(filepath.Join(dir, "files", number))
	if err != nil {
		return c, err
	}
	defer again.Close()
	differ, err := seal.Differ(from, again.FS())
	if err != nil {
		return c, err
	}
	c.Standing, c.Says = finding.Short, "made anew from the records inside it, the file comes out otherwise: "+differ
	if r.Version != version() {
		c.Standing, c.Settle = finding.NotShown, fmt.Sprintf("it was made by hullfile %s and this is %s; make it anew with that version", r.Version, version())
	}
	return c, nil
}

// rebuild unpacks the yard folder below dir and renders the one hull.
func rebuild(ctx context.Context, d *desk, from fs.FS, dir string) (made site.HullReport, number string, err error) {
	enclosed, err := site.ReadEnclosed(from)
	if err != nil {
		return made, "", err
	}
	yard, out := filepath.Join(dir, "yard"), filepath.Join(dir, "files")
	if err := unpack(enclosed, from, yard); err != nil {
		return made, "", err
	}
	reading, err := openYard(yard)
	if err != nil {
		return made, "", err
	}
	defer reading.close()
	hulls, err := reading.choose([]string{enclosed.Hull})
	if err != nil {
		return made, "", err
	}
	reading.yard.Elsewhere = enclosed.Plates
	if reading.yard, err = engine.Rejoin(reading.yard, enclosed.Near); err != nil {
		return made, "", err
	}
	if _, err := fs.Stat(from, "print.html"); err == nil {
		reading.print = true // the file was made with a print edition
	}
	report, err := reading.press(ctx, d, out, hulls)
	if err != nil {
		return made, "", err
	}
	return report.Hulls[0], enclosed.Hull, nil
}

func unpack(e site.Enclosed, from fs.FS, yard string) error {
	if err := os.Mkdir(yard, 0o755); err != nil {
		return err
	}
	root, err := os.OpenRoot(yard)
	if err != nil {
		return err
	}
	defer root.Close()
	return e.Unpack(from, root)
}
