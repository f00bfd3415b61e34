// Package site makes technical files out of dossiers: one folder of pages a hull, whole in itself, and above them the
// register of the yard. It reckons nothing; it only says where a number stands and how it came about.
//
//	Dossier -> page structs of ready strings -> templates -> files -> contents list -> SHA256SUMS
//
// job.go is the way in, book.go the order of the pages, link.go the one place that knows which page shows what,
// figure.go the one place where a number becomes text, output.go and stage.go the only ones that touch the disk.
package site

import (
	"context"
	"fmt"
	"os"
	"runtime"
	"sync"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Job is what is to be written, and from what.
type Job struct {
	Yard    *record.Yard
	Assess  func(*record.Hull) *engine.Dossier // called once a hull, from several goroutines
	Hulls   []*record.Hull                     // the hulls to write; the register lists all of the yard
	Root    *os.Root                           // the yard folder, from which documents are copied
	Out     string                             // folder to write to
	Version string                             // of the program, as printed at the foot of a page
}

// Report says what was written.
type Report struct {
	Register string       // path of the register's page
	Hulls    []HullReport // in the order of the job
	Left     []string     // folders of earlier hulls that the yard no longer has; they were left as they are
}

// HullReport says what was written for one hull.
type HullReport struct {
	Number   string
	Page     string // path of the cover
	Standing finding.Standing
	Counts   map[finding.Kind]int
	Pages    int
	Files    int
	Bytes    int64
	Root     string // hash of the contents list, as printed on the cover
	Sums     string // hash of SHA256SUMS, as printed in the register
}

// Render writes the technical files of the job's hulls and the yard's register. Everything is written beside the
// earlier output first and moved into place at the end: after an error or an interruption the earlier output is whole.
// Errors name the folder or file that could not be written, or the hull whose file could not be made.
func Render(ctx context.Context, job Job) (Report, error) {
	place, err := openPlace(job)
	if err != nil {
		return Report{}, err
	}
	press, err := newPress(job)
	if err != nil {
		return Report{}, err
	}
	stage, err := openStage(place)
	if err != nil {
		return Report{}, err
	}
	defer stage.discard()
	lines, err := printHulls(ctx, press, stage)
	if err != nil {
		return Report{}, err
	}
	if err := press.register(ctx, stage, lines); err != nil {
		return Report{}, err
	}
	if err := ctx.Err(); err != nil {
		return Report{}, fmt.Errorf("nothing was changed in %s: %w", job.Out, err)
	}
	if err := stage.swap(); err != nil {
		return Report{}, err
	}
	return report(press, stage, lines), nil
}

// printHulls makes the books, as many at a time as there are processors. A hull is assessed, printed and let go before
// the next one is taken up, so that the memory needed does not grow with the fleet. The first failure stops the rest.
func printHulls(ctx context.Context, p *press, stage *stage) ([]line, error) {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	lines := make([]line, len(p.job.Hulls))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(p.job.Hulls)) {
		workers.Go(func() {
			for i := range next {
				h := p.job.Hulls[i]
				made, err := p.book(ctx, h, stage)
				if err != nil {
					stop(fmt.Errorf("hull %s: %w", h.Number, err))
					continue
				}
				lines[i] = made
			}
		})
	}
	for i := range p.job.Hulls {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	workers.Wait()
	if ctx.Err() != nil {
		return nil, context.Cause(ctx)
	}
	return lines, nil
}
