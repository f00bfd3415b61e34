package weight

import "hullfile/engine/unit"

// sum adds up the items that are asked for. Items without a mass are named and not in the sum; a centre is shown only
// when every item of the sum has that position and the sum is above nought.
func sum(items []Item, asked func(*Item) bool) Total {
	var t Total
	var moments [3]float64
	t.HasX, t.HasY, t.HasZ = true, true, true
	for i := range items {
		if it := &items[i]; asked(it) {
			t.add(it, &moments)
		}
	}
	mass := float64(t.Mass)
	if mass <= 0 {
		t.HasX, t.HasY, t.HasZ = false, false, false
		return t
	}
	t.X = centre(moments[0], mass, t.HasX)
	t.Y = centre(moments[1], mass, t.HasY)
	t.Z = centre(moments[2], mass, t.HasZ)
	return t
}

// add puts one item into the sum.
func (t *Total) add(it *Item, moments *[3]float64) {
	t.Items++
	if !it.HasMass {
		t.NoMass = append(t.NoMass, it.Record.ID)
		t.Without = append(t.Without, it.Record.ID)
		return
	}
	t.Mass += it.Mass
	t.Margin += it.Margin
	t.HasX, t.HasY, t.HasZ = t.HasX && it.HasX, t.HasY && it.HasY, t.HasZ && it.HasZ
	if !it.HasX || !it.HasY || !it.HasZ {
		t.Without = append(t.Without, it.Record.ID)
	}
	mass := float64(it.Mass)
	moments[0] += float64(mass * float64(it.Record.X.V))
	moments[1] += float64(mass * float64(it.Record.Y.V))
	moments[2] += float64(mass * float64(it.Record.Z.V))
}

func centre(moment, mass float64, known bool) unit.M {
	if !known {
		return 0
	}
	return unit.M(moment / mass)
}

// Which items a sum takes.
func light(it *Item) bool { return !it.Record.Load.V }
func load(it *Item) bool  { return it.Record.Load.V }
func all(*Item) bool      { return true }
