package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/site"
)

// render writes the technical files of the hulls named, of all where none is named.
func (r *reading) render(ctx context.Context, d *desk, out string, named []string) (site.Report, error) {
	hulls, err := r.choose(named)
	if err != nil {
		return site.Report{}, err
	}
	return r.press(ctx, d, out, hulls)
}

// press writes the technical files of some hulls of the yard.
func (r *reading) press(ctx context.Context, d *desk, out string, hulls []*record.Hull) (site.Report, error) {
	defer d.progress.done()
	neighbours := engine.NewNeighbours(r.yard)
	return site.Render(ctx, site.Job{
		Yard: r.yard, Hulls: hulls, Root: r.root, Out: out, Version: version(), Program: build(),
		Assess:   r.dossier,
		Handbook: r.ref.Handbook, Words: r.ref.Words, Print: r.print,
		Neighbours: neighbours.Digest, Near: neighbours.Near,
		Tell: func(p site.Progress) { d.progress.show(progressLine(p)) },
	})
}

// progressLine says how far a run has come, e.g. "hull F007 (3 of 40; 960 unchanged)".
func progressLine(p site.Progress) string {
	text := fmt.Sprintf("hull %s (%d of %d", p.Hull, p.At, p.Of)
	if p.Kept > 0 {
		text += fmt.Sprintf("; %d unchanged", p.Kept)
	}
	return text + ")"
}

// choose finds the hulls that were named, all where none is.
func (r *reading) choose(named []string) ([]*record.Hull, error) {
	byNumber, numbers := map[string]*record.Hull{}, []string{}
	for _, h := range r.yard.Hulls {
		byNumber[h.Number] = h
		numbers = append(numbers, h.Number)
	}
	all, err := chosen(numbers, named)
	hulls := make([]*record.Hull, len(all))
	for i, n := range all {
		hulls[i] = byNumber[n]
	}
	return hulls, err
}

// shown is a path as a person at this terminal would write it: from here where it lies below, else in full.
func shown(path string) string {
	here, err := os.Getwd()
	if err != nil {
		return path
	}
	near, err := filepath.Rel(here, path)
	if err != nil || !filepath.IsLocal(near) {
		return path
	}
	return near
}

// rendered tells what a run did.
func (s *screen) rendered(made site.Report) {
	kept := 0
	for _, h := range made.Hulls {
		switch {
		case h.Unknown:
			s.paragraph("", h.Number+" is sealed and was left as it lies. This folder does not remember the records that it was made of, as when its hull had left the yard or the file .hullfile-state was removed; hullfile verify --rebuild tells whether its own records still give it. To write it anew, move the sealed file away.")
			continue
		case h.Sealed:
			s.paragraph("", h.Number+" is sealed and was not written anew; hullfile verify --rebuild tells whether its own records still give it. To write the next issue, move the sealed file away.")
			continue
		case h.Kept:
			kept++
			continue
		}
		s.written(h)
	}
	if kept > 0 {
		s.line("%s unchanged", count(kept, "hull is", "hulls are"))
	}
	s.line("the register: %s", shown(made.Register))
	for _, gone := range made.Gone {
		s.paragraph("", "the file of hull "+gone+" was removed: the yard no longer has that hull")
	}
	for _, left := range made.Left {
		s.paragraph("", left+" is of a hull that the yard no longer has; it was left, because it is sealed or not as a run wrote it")
	}
}

// written tells what was made of one hull.
func (s *screen) written(h site.HullReport) {
	var counts []string
	for _, kind := range finding.Kinds() {
		if n := h.Counts[kind]; n > 0 {
			counts = append(counts, plural(kind, n))
		}
	}
	told := ""
	if len(counts) > 0 {
		told = "; " + strings.Join(counts, ", ")
	}
	s.verdict(h.Number+": ", h.Standing, told)
	s.line("  %s", shown(h.Page))
	s.line("  %s, %s, %.1f MB", count(h.Pages, "page", "pages"), count(h.Files, "file", "files"), float64(h.Bytes)/1e6)
	s.line("  SHA256SUMS: %s", h.Root)
}
