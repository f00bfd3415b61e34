package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
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
	spareLooking()
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

// chosen gives the hulls that were named, all where none is named, or those of a part, e.g. "2/3".
func (r *reading) chosen(named []string, part string) ([]*record.Hull, error) {
	if part == "" {
		return r.choose(named)
	}
	if len(named) > 0 {
		return nil, errors.New("name hulls or a part of them, not both")
	}
	i, n, ok := strings.Cut(part, "/")
	at, wrongI := strconv.Atoi(i)
	of, wrongN := strconv.Atoi(n)
	if !ok || wrongI != nil || wrongN != nil || at < 1 || at > of {
		return nil, fmt.Errorf("part %q is none; write e.g. --part 2/3 for the second of three", part)
	}
	return site.Share(r.yard.Hulls, at, of), nil
}

// choose finds the hulls that were named, and refuses a number that the yard does not have.
func (r *reading) choose(named []string) ([]*record.Hull, error) {
	if len(named) == 0 {
		return r.yard.Hulls, nil
	}
	byNumber, numbers := map[string]*record.Hull{}, []string{}
	for _, h := range r.yard.Hulls {
		byNumber[h.Number] = h
		numbers = append(numbers, h.Number)
	}
	var chosen []*record.Hull
	for _, n := range named {
		h, there := byNumber[n]
		if !there {
			return nil, noSuchHull(n, numbers)
		}
		if !slices.Contains(chosen, h) {
			chosen = append(chosen, h)
		}
	}
	return chosen, nil
}

func noSuchHull(number string, numbers []string) error {
	if near, ok := finding.Nearest(number, numbers); ok {
		return fmt.Errorf("the yard has no hull %q; did you mean %s?", number, near)
	}
	return fmt.Errorf("the yard has no hull %q; it has %s", number, strings.Join(numbers, ", "))
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
		if h.Sealed {
			s.paragraph("", h.Number+" is sealed and was not written anew; hullfile verify --rebuild tells whether its own records still give it. To write the next issue, move the sealed file away.")
			continue
		}
		if h.Kept {
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
		s.paragraph("", left+" is of a hull that the yard no longer has; it was left, because it is not as a run wrote it")
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
