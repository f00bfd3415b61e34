package capacity

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/weight"
)

// The sheets that this package evaluates, by file name without .toml.
const (
	sheetPlate   = "builders-plate"
	sheetUnited  = "us-33-cfr-183"
	sheetFrance  = "fr-order-1987-227"
	scopeCraft   = "craft"
	scopePower   = "power"
	scopeFoam    = "flotation"
	subjectPlate = "plate"
)

// Assess finds load, persons and plates of a hull. others are limits that other trades have found, stability and
// flotation above all; they are weighed together with those of this package.
func Assess(h *record.Hull, b *record.Builder, lib *method.Library, w *weight.Result, others []Limit) Result {
	r := Result{Load: -1, Persons: -1}
	a := &assessor{Result: &r, hull: h, builder: b, lib: lib, weight: w}
	r.Stated = stated(&h.Plate)
	r.Fixed = a.fixed()
	r.Light = a.light()
	r.Foam = foam(h)
	a.carried()
	a.evaluate()
	r.American = a.american()
	r.Limits = append(a.own(), others...)
	r.govern()
	a.assume()
	a.labels()
	a.judge()
	return r
}

type assessor struct {
	*Result
	hull    *record.Hull
	builder *record.Builder
	lib     *method.Library
	weight  *weight.Result
}

// evaluate reckons every sheet that is at hand.
func (a *assessor) evaluate() {
	a.Figures = a.working(sheetPlate, scopeCraft, nil)
	a.Loading = a.working(sheetUnited, scopeCraft, nil)
	a.Power = a.working(sheetUnited, scopePower, a.Loading)
	a.Flotation = a.working(sheetUnited, scopeFoam, a.Loading)
	if a.hull.Lines.Sides.V == "open" {
		a.France = a.working(sheetFrance, scopeCraft, nil)
	}
}

// working evaluates one scope; nil where the sheet is not at hand, or where a sheet of the yard's own that took its place
// has no such scope or takes a value in another unit.
func (a *assessor) working(name, scope string, above *method.Working) *method.Working {
	sheet, found := a.lib.Sheet(name)
	if !found {
		return nil
	}
	w, err := sheet.Evaluate(scope, given{a}, above)
	if err != nil {
		a.Findings = append(a.Findings, finding.Finding{
			Kind: finding.Gap, Rule: "capacity-method", Subject: subjectPlate, Says: "a method sheet could not be used: " + err.Error(),
			Settle: "give the sheet the scopes and units of the shipped one",
		})
		return nil
	}
	if !slices.Contains(a.Sheets, sheet) {
		a.Sheets = append(a.Sheets, sheet)
	}
	return w
}

// govern finds the binding limits that leave least.
func (r *Result) govern() {
	for i, l := range r.Limits {
		if l.Info {
			continue
		}
		if l.HasLoad && (r.Load < 0 || l.Load < r.Limits[r.Load].Load) {
			r.Load = i
		}
		if l.HasPersons && (r.Persons < 0 || l.Persons < r.Limits[r.Persons].Persons) {
			r.Persons = i
		}
	}
}

// stated reports whether anything of what a plate says is on record.
func stated(p *record.Plate) bool {
	return p.MaxLoad.Set || p.WithEngine.Set || p.Persons.Set || p.Category.Set || p.Power.Set
}

// done reports whether the boat is finished, so that it must have its plate. A hull that does not say counts as finished.
func done(h *record.Hull) bool {
	return h.Identity.State.V != "design" && h.Identity.State.V != "in build"
}
