package stability

import (
	"slices"
	"strings"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// onTheDay is the boat as it was on the day of a test: the light craft without what was ashore, and the load that was on
// board.
type onTheDay struct {
	mass   float64
	moment hydrostatics.Vector
	lacks  []string // items without a mass or a position
}

func (j *judge) day(aboard, ashore record.Val[[]string]) onTheDay {
	var d onTheDay
	for i := range j.weight.Items {
		it := &j.weight.Items[i]
		id := it.Record.ID
		if it.Record.Load.V != slices.Contains(aboard.V, id) || !it.Record.Load.V && slices.Contains(ashore.V, id) {
			continue
		}
		if !it.HasMass || !it.HasX || !it.HasY || !it.HasZ {
			d.lacks = append(d.lacks, id)
			continue
		}
		d.add(float64(it.Mass), hydrostatics.Vector{X: float64(it.Record.X.V), Y: float64(it.Record.Y.V), Z: float64(it.Record.Z.V)})
	}
	return d
}

func (d *onTheDay) add(mass float64, at hydrostatics.Vector) {
	d.mass += mass
	d.moment.X += mass * at.X
	d.moment.Y += mass * at.Y
	d.moment.Z += mass * at.Z
}

func (d *onTheDay) centre() hydrostatics.Vector {
	if d.mass <= 0 {
		return hydrostatics.Vector{}
	}
	return hydrostatics.Vector{X: d.moment.X / d.mass, Y: d.moment.Y / d.mass, Z: d.moment.Z / d.mass}
}

// why says what keeps the items from being held against a test; empty where nothing does.
func (d *onTheDay) why() string {
	switch {
	case len(d.lacks) > 0:
		return "no mass or position is written for " + strings.Join(d.lacks, ", ")
	case d.mass <= 0:
		return "no items are on record to hold against it"
	}
	return ""
}

func kilo(v float64) string { return unit.Text(v, 0) + "\u00a0kg" }
