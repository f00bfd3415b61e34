package crosscheck

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// sizes finds principal data of which the lesser is the greater.
func sizes(h *record.Hull) []finding.Finding {
	b := &h.Boat
	var all []finding.Finding
	all = append(all, atMost("boat.length_hull_m", b.LengthHull, "boat.length_overall_m", b.LengthOverall, 2, "m")...)
	all = append(all, atMost("boat.length_waterline_m", b.LengthWL, "boat.length_hull_m", b.LengthHull, 2, "m")...)
	all = append(all, atMost("boat.beam_chine_m", b.BeamChine, "boat.beam_hull_m", b.BeamHull, 2, "m")...)
	all = append(all, atMost("boat.light_mass_kg", b.LightMass, "boat.loaded_mass_kg", b.LoadedMass, 0, "kg")...)
	return append(all, atMost("boat.fuel_usable_l", b.FuelUsable, "boat.fuel_tank_l", b.FuelTank, 0, "l")...)
}

// atMost finds a value that is above the one that holds it.
func atMost[T ~float64](lessKey string, less record.Val[T], moreKey string, more record.Val[T], decimals int, sign string) []finding.Finding {
	if !less.Set || !more.Set || less.V <= more.V {
		return nil
	}
	return []finding.Finding{contradiction("principal-data", "boat", "measure again and correct one of the two", []finding.Place{less.At, more.At},
		"%s is %s %s, above %s of %s %s", lessKey, unit.Text(less.V, decimals), sign, moreKey, unit.Text(more.V, decimals), sign)}
}

// trialMass finds a trial that was run lighter than the light craft.
func trialMass(h *record.Hull) []finding.Finding {
	var all []finding.Finding
	for _, t := range h.Trials {
		if !t.Mass.Set || !h.Boat.LightMass.Set || t.Mass.V >= h.Boat.LightMass.V {
			continue
		}
		all = append(all, contradiction("trial-mass", "trial "+t.ID, "reckon or weigh the boat as it was on that day", []finding.Place{t.Mass.At, h.Boat.LightMass.At},
			"the trial was run at %s kg, but the light craft alone is stated as %s kg", unit.Text(t.Mass.V, 0), unit.Text(h.Boat.LightMass.V, 0)))
	}
	return all
}
