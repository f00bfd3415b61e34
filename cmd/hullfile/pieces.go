package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/site"
)

// rendering is a yard folder whose files are written hull by hull: it is never in memory as a whole.
type rendering struct {
	root  *os.Root
	print bool   // write the print edition of each file too
	every bool   // look at every file of the earlier output
	part  string // only the hulls of a part, e.g. "2/3"
	named []string
	shelf *shelf
}

// write reads what changed since the output was written and writes what comes out otherwise.
func (r *rendering) write(ctx context.Context, d *desk, out string) (site.Report, error) {
	defer d.progress.done()
	return site.Render(ctx, site.Job{
		Root: r.root, Out: out, Version: version(), Program: build(), Print: r.print, EveryFile: r.every, Templates: r.shelf.templates,
		Pieces: &site.Pieces{Known: func() (record.Known, error) { return r.shelf.begun().Known() }, Choose: r.choose, Ready: r.ready},
		Tell:   func(p site.Progress) { d.progress.show(progressLine(p)) },
	})
}

// ready makes ready what the hulls of the yard are reckoned by.
func (r *rendering) ready(y *record.Yard) (site.Reckoner, error) {
	ref, err := r.shelf.of(y)
	if err != nil {
		return site.Reckoner{}, err
	}
	assess := func(y *record.Yard, h *record.Hull) *engine.Dossier { return engine.Assess(y, h, ref, r.root) }
	return site.Reckoner{Assess: assess, Handbook: ref.Handbook, Words: ref.Words}, nil
}

// choose gives the hulls that were named, all where none is named, or those of a part.
func (r *rendering) choose(numbers []string) ([]string, error) {
	if r.part != "" {
		return partOf(numbers, r.named, r.part)
	}
	return chosen(numbers, r.named)
}

// partOf gives the hulls of part I/N.
func partOf(numbers, named []string, part string) ([]string, error) {
	if len(named) > 0 {
		return nil, errors.New("name hulls or a part of them, not both")
	}
	i, n, ok := strings.Cut(part, "/")
	at, wrongI := strconv.Atoi(i)
	of, wrongN := strconv.Atoi(n)
	if !ok || wrongI != nil || wrongN != nil || at < 1 || at > of {
		return nil, fmt.Errorf("part %q is none; write e.g. --part 2/3 for the second of three", part)
	}
	return site.Share(numbers, at, of), nil
}

// chosen finds the hulls that were named, and refuses a number that the yard does not have.
func chosen(numbers, named []string) ([]string, error) {
	if len(named) == 0 {
		return numbers, nil
	}
	var all []string
	for _, n := range named {
		if !slices.Contains(numbers, n) {
			return nil, noSuchHull(n, numbers)
		}
		if !slices.Contains(all, n) {
			all = append(all, n)
		}
	}
	return all, nil
}

func noSuchHull(number string, numbers []string) error {
	if near, ok := finding.Nearest(number, numbers); ok {
		return fmt.Errorf("the yard has no hull %q; did you mean %s?", number, near)
	}
	return fmt.Errorf("the yard has no hull %q; it has %s", number, strings.Join(numbers, ", "))
}
