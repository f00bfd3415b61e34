package lines

import (
	"math"

	"hullfile/engine/hydrostatics"
)

const formStep = 0.05 // metre of draught from row to row of the hydrostatic table

// Form gives the hydrostatic table on an even keel, from the lowest point of the hull to the lowest point of the sheer.
// Errors are those of hydrostatics.NewBody.
func (h *Hull) Form(density float64) ([]hydrostatics.Form, error) {
	body, err := h.Body(false)
	if err != nil {
		return nil, err
	}
	low, high := math.Inf(1), math.Inf(1)
	for _, s := range h.Stations {
		low = math.Min(low, math.Min(s.At[Keel].Z, s.At[Chine].Z))
		high = math.Min(high, s.At[Sheer].Z)
	}
	rows := body.Form(hydrostatics.Levels(low+formStep/2, high, formStep), density, h.isSkin)
	for i := range rows {
		aft, fore := h.waterline(hydrostatics.Attitude{Level: rows[i].Level})
		rows[i].Over(fore - aft)
	}
	return rows, nil
}
