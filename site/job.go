package site

import (
	"context"
	"fmt"
	"os"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/glossary"
	"hullfile/engine/handbook"
	"hullfile/engine/record"
)

// Job is what is to be written, and from what.
type Job struct {
	Yard     *record.Yard
	Assess   func(*record.Hull) *engine.Dossier // called once a hull, from several goroutines
	Hulls    []*record.Hull                     // the hulls to write; the register lists all of the yard
	Root     *os.Root                           // the yard folder, from which documents are copied
	Out      string                             // folder to write to
	Version  string                             // of the program, as printed at the foot of a page
	Handbook *handbook.Book                     // chapters of the owner's book
	Words    *glossary.Table                    // words that the pages explain
	Print    bool                               // write the print edition of the whole file too
	Program  string                             // tells two builds of one version apart; it is not printed

	Templates Templates // made once by who renders again and again; may be empty

	// Neighbours gives a digest of what the dossier of a hull takes from the records of other hulls. Without it nothing
	// is known of what a book was made of, and every one is written anew.
	Neighbours func(*record.Hull) []byte

	// Near gives what the dossier of a hull takes from other hulls, for rebuild.json. Without it a file can be made again
	// only where it takes nothing.
	Near func(*record.Hull) []engine.Neighbour

	// Pieces is given in the place of Yard, Hulls, Assess, Handbook, Words, Neighbours and Near where the yard is not in
	// memory as a whole.
	Pieces *Pieces

	EveryFile bool           // look at every file of an earlier output, not at folders and lists alone
	Tell      func(Progress) // called from several goroutines as books are taken up; may be nil
}

// Progress says how far a run has come.
type Progress struct {
	Hull   string // the hull that is taken up
	At, Of int    // its place among those to be written, from one
	Kept   int    // hulls whose file is as it would be written
}

// Report says what was written.
type Report struct {
	Register string       // path of the register's page
	Hulls    []HullReport // in the order of the job
	Gone     []string     // hulls that the yard no longer has; their files were removed
	Left     []string     // folders of earlier hulls that the yard no longer has and that are not as a run left them; they stay
}

// HullReport says what was written for one hull.
type HullReport struct {
	Number   string
	Kept     bool   // it is as it would be written, and was left as it is
	Sealed   bool   // it would come out otherwise, and was left because somebody sealed it
	Unknown  bool   // it is sealed, and nothing is remembered of what it was made of, so that it may come out alike
	Page     string // path of the cover
	Standing finding.Standing
	Counts   map[finding.Kind]int
	Pages    int
	Files    int
	Bytes    int64
	Root     string // hash of the contents list, as printed on the cover
	Sums     string // hash of SHA256SUMS, as printed in the register
}

// Render writes the technical files of the job's hulls and the yard's register. A file that would come out as it lies
// there is neither reckoned nor written. Everything else is written beside the earlier output first and moved into place at the end: after an error or an interruption the earlier output is whole.
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
	run, err := newRun(ctx, press, stage)
	if err != nil {
		return Report{}, err
	}
	if err := run.books(ctx); err != nil {
		return Report{}, err
	}
	if err := run.close(ctx); err != nil {
		return Report{}, err
	}
	if err := ctx.Err(); err != nil {
		return Report{}, fmt.Errorf("nothing was changed in %s: %w", job.Out, err)
	}
	if err := stage.swap(); err != nil {
		return Report{}, err
	}
	return run.report(), nil
}
