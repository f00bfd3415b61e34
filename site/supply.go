package site

import (
	"crypto/sha256"

	"hullfile/engine"
	"hullfile/engine/record"
)

// supply is where a run has its hulls from: a yard that is in memory as a whole, or a folder that is read hull by hull.
type supply interface {
	all() []string                       // numbers of all hulls of the yard, in order
	chosen() []string                    // those to write
	key(number string) (key, error)      // of a book; empty where nothing is known of what it is made of
	open(number string) (*opened, error) // a hull whose book is to be made
	absent(number string) line           // what the register says of a hull without a file
	block() Block                        // title block of the yard
	own() []ownFile                      // files of the yard that hulls ask for by name
	note(next *state)                    // what the next run wants to know
}

// opened is a hull whose book is being made, with what it is made of. It is let go of when the book is closed.
type opened struct {
	hull    *record.Hull
	yard    *record.Yard
	reckon  func() *engine.Dossier
	dossier *engine.Dossier    // nil until it is reckoned
	files   []record.File      // the record files that made it
	near    []engine.Neighbour // what it takes from other hulls
	changed bool               // its records are not those any more that its key was made of
}

// whole is a yard in memory.
type whole struct {
	job   *Job
	shelf *shelf
	asked []ownFile
	keys  *keyring
	by    map[string]*record.Hull
}

func newWhole(job *Job, papers *papers) (*whole, error) {
	w := &whole{job: job, shelf: newShelf(job.Yard), asked: ownOf(job.Yard.Files), by: map[string]*record.Hull{}}
	for _, h := range job.Yard.Hulls {
		w.by[h.Number] = h
	}
	if job.Neighbours == nil {
		return w, nil
	}
	common, err := commonSum(job, w.shelf)
	w.keys = &keyring{papers: papers, common: common}
	return w, err
}

func (w *whole) all() []string    { return numbersOf(w.job.Yard.Hulls) }
func (w *whole) chosen() []string { return numbersOf(w.job.Hulls) }
func (w *whole) block() Block     { return blockOf(&w.job.Yard.Builder) }
func (w *whole) own() []ownFile   { return w.asked }
func (w *whole) note(*state)      {}

func numbersOf(hulls []*record.Hull) []string {
	all := make([]string, len(hulls))
	for i, h := range hulls {
		all[i] = h.Number
	}
	return all
}

func (w *whole) key(number string) (key, error) {
	if w.keys == nil {
		return "", nil
	}
	h := w.by[number]
	taken := w.job.Neighbours(h)
	if taken == nil {
		return "", nil
	}
	_, own, err := w.keys.own(h, w.shelf.file, w.shelf.doubts[number], &paperTrail{})
	return w.keys.of(number, own, w.shelf.sumOf(w.shelf.drawing.Of(h)), sha256.Sum256(taken)), err
}

func (w *whole) open(number string) (*opened, error) { return w.job.open(w.by[number], w.shelf), nil }

// open takes up a hull of a yard that is in memory as a whole.
func (job *Job) open(h *record.Hull, shelf *shelf) *opened {
	o := &opened{hull: h, yard: job.Yard, reckon: func() *engine.Dossier { return job.Assess(h) }, files: shelf.of(h)}
	if job.Near != nil {
		o.near = job.Near(h)
	}
	return o
}

func (w *whole) absent(number string) line {
	h := w.by[number]
	return line{Number: number, Title: h.Title.V, Design: h.Design.V, State: h.Identity.State.V}
}
