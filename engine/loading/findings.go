package loading

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/unit"
)

// tanksPlaced looks for tanks that do not lie in the hull, and for slack ones without a surface.
func (a *assessor) tanksPlaced() {
	for i := range a.hull.Tanks {
		t := &a.hull.Tanks[i]
		if t.Fixed.V && len(a.lines.Stations) > 0 && !a.inside(float64(t.X.V), float64(t.Y.V), float64(t.Z.V)) {
			a.say(finding.Contradiction, "tank-outside", "tank "+t.ID, fmt.Sprintf("the centre of tank %s, x %s, y %s, z %s m, does not lie in the hull", t.ID,
				unit.Text(t.X.V, 2), unit.Text(t.Y.V, 2), unit.Text(t.Z.V, 2)), "measure the centre of the tank again", t.At)
		}
		if t.Contents.V != "bait" && t.Contents.V != "ballast" && (!t.Length.Set || !t.Breadth.Set) {
			a.say(finding.Doubt, "free-surface", "tank "+t.ID, "the free surface of tank "+t.ID+" is not written and not reckoned",
				"write surface_length_m and surface_breadth_m", t.At)
		}
	}
}

// inside reports whether a point lies between keel and sheer, and within the beam at the sheer or chine.
func (a *assessor) inside(x, y, z float64) bool {
	n := len(a.lines.Stations)
	if x < a.lines.Stations[0].X || x > a.lines.Stations[n-1].X {
		return false
	}
	s := a.lines.Section(x)
	low, high, half := s.At[0].Z, s.At[0].Z, 0.0
	for _, p := range s.At {
		low, high, half = min(low, p.Z), max(high, p.Z), max(half, p.Y)
	}
	return z >= low && z <= high+a.lines.Camber && y <= half && y >= -half
}

// countedOnce doubts fuel and water that may be in the sum twice.
func (a *assessor) countedOnce() {
	for i := range a.hull.Tanks {
		t := &a.hull.Tanks[i]
		if t.Weight.Set {
			continue
		}
		for k := range a.weight.Items {
			it := a.weight.Items[k].Record
			if it.Load.V && it.Group.V == "fuel and water" && a.tankOf(it.ID) == nil {
				a.say(finding.Doubt, "tank-weight", "tank "+t.ID, "tank "+t.ID+" names no load item, and the load item "+it.ID+" is named by no tank; both are counted",
					"write weight in the tank, or take the item out", t.At, it.At)
				break
			}
		}
	}
	for i := range a.weight.Items {
		it := a.weight.Items[i].Record
		t := a.tankOf(it.ID)
		if t != nil && !it.Load.V {
			a.say(finding.Contradiction, "tank-weight", "tank "+t.ID, it.ID+" is part of the light craft and cannot stand for the contents of tank "+t.ID,
				"name the load item of the contents", t.Weight.At, it.At)
		}
	}
}

// openings looks for what cannot be when the boat is loaded and upright: openings under water that do not close, and
// cockpits that are said to drain with their sole under water.
func (a *assessor) openings() {
	c, ok := a.out.Find("loaded ready")
	if !ok || !c.Floats {
		return
	}
	at := c.Afloat.Rest.Attitude
	for _, o := range a.lines.Openings {
		if h := at.Height(o.At[0]); !o.Shut && h <= 0 {
			a.say(finding.Contradiction, "opening-under-water", "opening "+o.ID, fmt.Sprintf("%s does not close and lies %s m under the water, loaded and upright",
				o.Name, unit.Text(-h, 3)), "measure its height again, or write how it closes", o.Place)
		}
	}
	for _, r := range a.lines.Recesses {
		low := min(at.Height(hydrostatics.Vector{X: r.Aft, Z: r.Sole}), at.Height(hydrostatics.Vector{X: r.Fore, Z: r.Sole}))
		if r.Drains && low <= 0 {
			a.say(finding.Contradiction, "recess-drains", "recess "+r.ID, fmt.Sprintf("%s is said to drain quickly, but its sole lies %s m under the water, loaded and upright",
				r.ID, unit.Text(-low, 3)), "measure the sole again, or write quick_draining = false", r.Place)
		}
	}
	if room := a.room(); room > 0 && c.Persons > room {
		a.say(finding.Contradiction, "crew-room", "boat", fmt.Sprintf("%d persons, but the places of the record have room for %d", c.Persons, room),
			"write all places where people can be, or fewer persons", a.hull.Boat.Persons.At, a.hull.CrewAreas[0].At)
	}
}

func (a *assessor) room() int {
	n := 0
	for i := range a.hull.CrewAreas {
		n += a.hull.CrewAreas[i].Persons.V
	}
	return n
}
