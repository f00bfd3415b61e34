package engine

import (
	"hullfile/engine/crosscheck"
	"hullfile/engine/finding"
	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/seam"
)

// seamed links the build record, counts how far the seams are covered, and judges what inspections and tests of tightness
// showed.
func (d *Dossier) seamed(y *record.Yard, ref *Reference) {
	d.Seams = seam.NewMap(seam.NewStock(y, ref.Building.Welds), d.Hull)
	d.Coverage = d.Seams.Cover()
	d.Inspections = inspection.Assess(d.Seams, ref.Building.Flaws, d.designPressure)
}

// questioned asks the build record what a surveyor would.
func (d *Dossier) questioned(y *record.Yard, ref *Reference) {
	d.Records.Findings = append(d.Records.Findings, crosscheck.Build(y, d.Seams, &d.Documents, crosscheck.Books{
		Inspections: &d.Inspections, Library: ref.Library, Ranges: ref.Building.Welds, Needed: d.needed,
	})...)
}

// designPressure gives the pressure that a panel was reckoned for, kN/m².
func (d *Dossier) designPressure(panel string) (kPa float64, known bool) {
	for i := range d.Structure.Panels {
		if p := &d.Structure.Panels[i]; p.Record.ID == panel && p.Pressure > 0 {
			return float64(p.Pressure), true
		}
	}
	return 0, false
}

// needed gives the thickness that the structure asks of a panel, mm. A panel that is short as it stands on record is told
// by the structure itself.
func (d *Dossier) needed(panel string) (mm float64, known bool) {
	for i := range d.Structure.Panels {
		if p := &d.Structure.Panels[i]; p.Record.ID == panel && p.Standing == finding.Met {
			return float64(p.Needed), true
		}
	}
	return 0, false
}
