package engine

import (
	"os"

	"hullfile/engine/capacity"
	"hullfile/engine/crew"
	"hullfile/engine/crosscheck"
	"hullfile/engine/document"
	"hullfile/engine/identity"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/weight"
)

// Assess reckons one hull of a yard: the structure, the weights, the trials, the papers, and what the records say of each
// other. root is the yard folder in which documents are looked for; without it none is shown. The hull, the yard and the
// reference are only read, so hulls may be assessed side by side. Trades that need nothing of each other are, too: each
// writes fields of its own, so the dossier does not hang on which is done first.
func Assess(y *record.Yard, h *record.Hull, ref *Reference, root *os.Root) *Dossier {
	ref, asked := ref.asking(y, h)
	go crew.Caught(func() { ref.proofs.shipped() }) // wanted at the end, where a fault in them is met again
	d := &Dossier{Builder: &y.Builder, Hull: h}
	d.Weight = weight.Assess(h, ref.Alloys, lines.Zones(h)...)
	d.Lines = lines.Assess(h, d.Weight.Loaded)
	sideBySide(func() { d.structure(y, ref) }, func() {
		d.afloat(h, ref.Library)
		d.Capacity = capacity.Assess(h, &y.Builder, ref.Library, &d.Weight, d.limitsAfloat())
		d.Identity = identity.Assess(y, h)
		d.onTheWater(root)
		d.built(y, ref)
		d.Documents = document.Assess(root, h)
		d.predicted(y, ref)
		d.Seams = seam.NewMap(seam.NewStock(y, ref.Building.Welds), h)
		d.Records = crosscheck.Assess(y, h, &d.Documents)
	})
	sideBySide(func() { d.underway(y, ref, root) }, func() {
		d.seamed(ref)
		d.questioned(y, ref)
	})
	d.Proofs, d.Asked = *asked.proofs(), asked.files()
	d.collect(y)
	d.required(ref)
	d.surveyed()
	return d
}

// sideBySide does all at once and ends when all are done.
func sideBySide(all ...func()) {
	var each crew.Crew
	for _, one := range all {
		each.Go(one)
	}
	each.Wait()
}
