package weight

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// densitiesAgree is the part by which the density of the alloy and one written beside it may differ (practice: the
// alloys of a boat lie within 3 % of each other, and a value for one of them is rounded at 0.5 %).
const densitiesAgree = 0.01

// density is the mass of a cubic metre with where it came from.
type density struct {
	value  unit.KGPerM3
	text   string // "2 660 kg/m³"
	source string
	basis  finding.Basis
}

// densityOf gives the density of an item: that of its alloy, else the one that is written. ok is false where neither is.
func densityOf(rec *record.Weight, alloys *material.Table) (d density, ok bool) {
	if alloy, found := alloyOf(rec, alloys); found {
		return density{
			value:  alloy.Density,
			text:   unit.Text(alloy.Density, 0) + " kg/m³ (" + alloy.Name + ")",
			source: alloy.DensityFrom.String(),
			basis:  alloy.DensityFrom.Basis,
		}, true
	}
	if v, written := rec.Density.Get(); written {
		return density{value: v, text: unit.Text(v, 0) + " kg/m³", source: OnRecord, basis: finding.Yard}, true
	}
	return density{}, false
}

// alloyOf finds the alloy that an item names.
func alloyOf(rec *record.Weight, alloys *material.Table) (*material.Alloy, bool) {
	if alloys == nil || !rec.Alloy.Set {
		return nil, false
	}
	return alloys.Find(rec.Alloy.V)
}

// densitiesDiffer reports that an item has both an alloy and a density, and they cannot both be right.
func densitiesDiffer(rec *record.Weight, alloys *material.Table) (ofAlloy unit.KGPerM3, differ bool) {
	alloy, found := alloyOf(rec, alloys)
	if !found || !rec.Density.Set {
		return 0, false
	}
	apart := math.Abs(float64(rec.Density.V - alloy.Density))
	return alloy.Density, apart > densitiesAgree*float64(alloy.Density)
}
