package results

import (
	"hullfile/engine"
	"hullfile/engine/planing"
)

// underwayResults is what the boat does at speed and over its hours, for machines.
func underwayResults(d *engine.Dossier) object {
	return object{{"prediction", predictionResults(&d.Prediction)}, {"rides", rideResults(d)}, {"limits", limitResults(d)}, {"hours", hoursResult(d)}, {"details", detailResults(d)}}
}

func predictionResults(r *planing.Result) []object {
	out := []object{}
	for i := range r.Cases {
		c := &r.Cases[i]
		points := []object{}
		for k := range c.Points {
			p := &c.Points[k]
			o := object{{"speed_kn", full(p.Knots)}, {"trim_deg", full(p.Run.Trim)}, {"wetted_ratio", full(p.Run.Wetted)}, {"drag_n", full(p.Drag)}, {"bare_hull_n", full(p.Run.Drag)},
				{"power_least_kw", full(p.Least)}, {"power_most_kw", full(p.Most)}, {"inside", p.Inside()}}
			if p.HasCritical {
				o.add("porpoising_deg", full(p.Critical))
			}
			points = append(points, o)
		}
		o := object{{"mass_kg", full(c.Mass)}, {"lcg_m", full(c.LCG)}, {"full_form", c.Full}, {"points", points}}
		if c.Trial != nil {
			o.add("trial", c.Trial.ID)
		}
		out = append(out, o)
	}
	return out
}

func rideResults(d *engine.Dossier) []object {
	out := []object{}
	for i := range d.Ride.Rides {
		r := &d.Ride.Rides[i]
		o := object{{"key", r.Record.ID}, {"impacts", len(r.Peaks.Sizes)}, {"rms_g", full(r.Peaks.RMS)}, {"filter_hz", full(r.Peaks.Rule.Filter)}, {"why", r.Why}}
		if r.Tenth.Has {
			o.add("highest_tenth_g", full(r.Tenth.G))
			o.add("scatter", full(r.Error))
		}
		out = append(out, o)
	}
	return out
}

func limitResults(d *engine.Dossier) []object {
	out := []object{}
	for _, l := range d.Limits.Levels {
		points := []object{}
		for _, p := range l.Curve {
			points = append(points, object{{"speed_kn", full(p.Knots)}, {"wave_height_m", full(p.Height)}, {"outside", p.Outside}})
		}
		out = append(out, object{{"level", l.Name}, {"g", full(l.G)}, {"points", points}})
	}
	return out
}

func hoursResult(d *engine.Dossier) object {
	r := &d.Hours
	o := object{{"logged_h", full(r.Logged)}, {"looked_to_h", full(r.LookedTo)}, {"at_risk_h", full(r.AtRisk)}, {"boats", r.Claim.Boats}, {"hours_that_count", full(r.Claim.Hours)}, {"cracked", r.Claim.Cracked}, {"says", r.Claim.Says}, {"but", r.Claim.But}}
	if r.Claim.Has {
		o.add("mean_time_bound_h", full(r.Claim.MeanTime))
		o.add("confidence", full(r.Claim.Confidence))
	}
	return o
}

func detailResults(d *engine.Dossier) []object {
	out := []object{}
	for i := range d.Details.Spots {
		s := &d.Details.Spots[i]
		out = append(out, object{{"key", s.Record.ID}, {"class", s.Class.Key}, {"relative", full(s.Relative)}, {"sum_100_h", full(s.Damage)}})
	}
	return out
}
