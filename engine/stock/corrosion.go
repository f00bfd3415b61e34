package stock

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
)

// corrosion judges the two tests of plate in a marine temper. Other metal is not asked for them.
func (a *assessor) corrosion(l *record.Lot) []Value {
	lim := &a.limits.Corrosion
	if !marine(l, lim) {
		return nil
	}
	c := finding.Check{Rule: ruleCorrosion, Subject: "lot " + l.ID, Asks: "plate of a marine temper was tested for corrosion along its grains, lot by lot", Basis: lim.Basis, Source: lim.String()}
	values := []Value{massLoss(l, lim), exfoliation(l, lim)}
	c = tally(c, values, "test", "lot."+l.ID+".", l.At)
	if c.Standing == finding.NotShown {
		c.Settle = lim.Settle
		c.Missing = []string{"lot." + l.ID + ".mass_loss_mg_cm2", "lot." + l.ID + ".exfoliation"}
	}
	a.Checks = append(a.Checks, c)
	a.acid(l, lim)
	a.early(l, lim)
	return values
}

// marine reports plate with magnesium in a temper that is tested for corrosion.
func marine(l *record.Lot, lim *Corrosion) bool {
	alloy, temper, _ := strings.Cut(l.Alloy.V, "-")
	return l.Kind.V == "plate" && strings.HasPrefix(alloy, "5") && slices.Contains(lim.Tempers, temper)
}

// massLoss judges the nitric acid test: resistant, for a look at the structure, or rejected.
func massLoss(l *record.Lot, lim *Corrosion) Value {
	v := Value{Name: "mass loss in nitric acid", Unit: "mg/cm²", Limit: "at most " + strconv.FormatFloat(lim.Met, 'f', -1, 64), Source: lim.String(), Basis: lim.Basis, Standing: finding.NotShown, Place: l.G67.At}
	if !l.G67.Set {
		v.Why = "not on record"
		return v
	}
	x := float64(l.G67.V)
	v.judge(material.Limit{Most: lim.Met, HasMost: true}, x, l.G67.Text)
	between := v.Standing == finding.Short && x <= lim.Most
	switch {
	case between && l.Structure.V == "accepted":
		v.Standing, v.Why = finding.Met, "over the limit that needs no more; the structure was looked at and accepted"
	case between && !l.Structure.Set:
		v.Standing, v.Why = finding.NotShown, fmt.Sprintf("%s mg/cm² asks for a look at the structure, and none is on record", v.Printed)
	case between:
		v.Why = "the structure was looked at and rejected"
	}
	v.Why = strings.TrimPrefix(v.Why, "; ")
	return v
}

func exfoliation(l *record.Lot, lim *Corrosion) Value {
	v := Value{Name: "exfoliation rating", Limit: "one of " + strings.Join(lim.Exfoliation, ", "), Source: lim.String(), Basis: lim.Basis, Standing: finding.NotShown, Place: l.G66.At}
	if !l.G66.Set {
		v.Why = "not on record"
		return v
	}
	v.Printed, v.Judged, v.Standing, v.Fit = l.G66.V, true, finding.Met, material.Inside
	if !slices.Contains(lim.Exfoliation, l.G66.V) {
		v.Standing, v.Fit = finding.Short, material.Beyond
	}
	return v
}

// acid doubts a mass loss whose edition or acid is not written, and one that the newer acid alone may have raised over
// the limit.
func (a *assessor) acid(l *record.Lot, lim *Corrosion) {
	if !l.G67.Set {
		return
	}
	higher := fmt.Sprintf("%v to %v mg/cm²", lim.Acid.Higher[0], lim.Acid.Higher[1])
	switch {
	case !l.G67Edition.Set || !l.G67Acid.Set:
		a.find(finding.Doubt, ruleAcid, "lot "+l.ID, "the edition of the mass-loss test or its acid is not on record; the acid of newer editions gives losses "+higher+" higher for the same plate ("+lim.Acid.Work+")",
			"read edition and acid off the certificate or ask the works", l.G67.At)
	case l.G67Acid.V == lim.Acid.New && float64(l.G67.V) > lim.Met && float64(l.G67.V)-lim.Acid.Higher[1] <= lim.Met:
		a.find(finding.Doubt, ruleAcid, "lot "+l.ID, fmt.Sprintf("a mass loss of %s mg/cm² with the weaker acid may be one of %.0f to %.0f mg/cm² with the older one, for which the limit of %v was made (%s)",
			l.G67.Text, float64(l.G67.V)-lim.Acid.Higher[1], float64(l.G67.V)-lim.Acid.Higher[0], lim.Met, lim.Acid.Work),
			"hold the limit of the edition that the test was made by against it", l.G67.At, l.G67Acid.At)
	}
}

// early doubts plate of a marine temper from before such plate was tested.
func (a *assessor) early(l *record.Lot, lim *Corrosion) {
	if l.Certified.Set && l.Certified.V.Year < lim.FirstYear {
		a.find(finding.Doubt, ruleCorrosion, "lot "+l.ID, fmt.Sprintf("the certificate is of %d; plate of this temper made before %d was sold without such a test, and some of it became sensitive", l.Certified.V.Year, lim.FirstYear),
			"have a piece of the plate tested", l.Certified.At)
	}
}
