package engine

import (
	"slices"

	"hullfile/engine/crosscheck"
	"hullfile/engine/finding"
	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/weldmap"
)

// seamed holds the build record against the grid, counts how far the seams are covered, and judges what inspections and tests
// of tightness showed.
func (d *Dossier) seamed(ref *Reference) {
	d.WeldMap = weldmap.Assess(d.Hull, &d.Grid)
	d.Coverage = d.Seams.Cover()
	d.Inspections = inspection.Assess(d.Seams, ref.Building.Flaws, d.designPressure)
}

// questioned asks the build record what a surveyor would.
func (d *Dossier) questioned(y *record.Yard, ref *Reference) {
	d.Records.Findings = append(d.Records.Findings, crosscheck.Build(y, d.Seams, &d.Documents, crosscheck.Books{
		Inspections: &d.Inspections, Library: ref.Library, Ranges: ref.Building.Welds, Needed: d.needed,
	})...)
}

// designPressure gives the pressure that a panel was reckoned for, kN/m²; of a plate the least of those of its panels.
func (d *Dossier) designPressure(panel string) (kPa float64, known bool) {
	cut := d.Grid.Cut(panel)
	for i := range d.Structure.Panels {
		p := &d.Structure.Panels[i]
		if (p.Record.ID == panel || slices.Contains(cut, p.Record.ID)) && p.Pressure > 0 && (!known || float64(p.Pressure) < kPa) {
			kPa, known = float64(p.Pressure), true
		}
	}
	return kPa, known
}

// needed gives the thickness that the structure asks of a panel, mm. A panel that is short as it stands on record is told
// by the structure itself. A plate needs what that of its panels needs which asks for the most.
func (d *Dossier) needed(panel string) (mm float64, known bool) {
	cut := d.Grid.Cut(panel)
	for i := range d.Structure.Panels {
		p := &d.Structure.Panels[i]
		if (p.Record.ID == panel || slices.Contains(cut, p.Record.ID)) && p.Standing == finding.Met {
			mm, known = max(mm, float64(p.Needed)), true
		}
	}
	return mm, known
}
