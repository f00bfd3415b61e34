package engine

import (
	"strings"
	"sync"

	"hullfile/engine/method"
	"hullfile/engine/proof"
)

// proofs are the published values, run through the sheets that come with the program, and through those of the yard's own that a
// hull asks for.
type proofs struct {
	library *method.Library
	shipped func() *proof.Runs // run once; who asks early waits
	by      sync.Map           // names of own sheets, as one text -> func() *proof.Sheet
}

func newProofs(library *method.Library, run func(shipped *method.Library) *proof.Runs) *proofs {
	return &proofs{library: library, shipped: sync.OnceValue(func() *proof.Runs { return run(library.With(nil)) })}
}

// of gives the proofs of who asks for some of the yard's own sheets, by file name and in order; hulls that ask for the same
// share them.
func (p *proofs) of(own []string) *proof.Sheet {
	made, _ := p.by.LoadOrStore(strings.Join(own, "\x00"), sync.OnceValue(func() *proof.Sheet {
		sheet := p.shipped().Through(p.library.With(own))
		return &sheet
	}))
	return made.(func() *proof.Sheet)()
}

// Proofs are the published values, run through the library of this reference with all sheets of the yard's own, so that one that
// no longer gives them is seen to do so.
func (r *Reference) Proofs() *proof.Sheet { return r.proofs.of(r.Library.Own()) }
