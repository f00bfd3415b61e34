package engine

import (
	"io/fs"

	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/stock"
	"hullfile/engine/weld"
)

// Building is the limits by which the record of building is judged. It is read once and never changed.
type Building struct {
	Lots  *stock.Limits
	Welds *weld.Ranges
	Flaws *inspection.Limits
}

func loadBuilding(content fs.FS) (Building, error) {
	lots, err := stock.LoadLimits(content)
	if err != nil {
		return Building{}, err
	}
	welds, err := weld.LoadRanges(content)
	if err != nil {
		return Building{}, err
	}
	flaws, err := inspection.LoadLimits(content)
	return Building{Lots: lots, Welds: welds, Flaws: flaws}, err
}

// built judges what is on record of the building of the hull.
func (d *Dossier) built(y *record.Yard, ref *Reference) {
	d.Stock = stock.Assess(y, d.Hull, ref.Alloys, ref.Building.Lots)
	d.Welding = weld.Assess(y, d.Hull, ref.Library, ref.Alloys, ref.Building.Welds)
}
