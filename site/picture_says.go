package site

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/ride"
	"hullfile/engine/seam"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// What follows from a picture stands at the head of its caption, so that a reader who looks at nothing else has it. Each of
// these gives that sentence without its end, or nothing where there is nothing to say.

// says puts the conclusion into the caption.
func (d Drawing) says(conclusion string) Drawing {
	d.Says = conclusion
	return d
}

// groupsSay tells how much of the loaded mass was on scales and how much is a guess.
func (l *leaf) groupsSay() string {
	r := &l.dossier.Weight
	if !r.Loaded.Whole() || r.Loaded.Mass <= 0 {
		return ""
	}
	by := map[string]float64{}
	for _, g := range r.Groups {
		for _, b := range g.Basis {
			by[b.Basis] += float64(b.Mass)
		}
	}
	share := func(basis string) string { return unit.Text(100*by[basis]/float64(r.Loaded.Mass), 0) + " %" }
	return fmt.Sprintf("%s of the loaded mass was weighed, %s is estimated", share("weighed"), share("estimated"))
}

// centresSay tells where the loaded boat balances.
func (l *leaf) centresSay() string {
	t := &l.dossier.Weight.Loaded
	if !t.HasX || !t.HasZ {
		return ""
	}
	return fmt.Sprintf("fully loaded the boat balances %s m forward of the transom, %s m above the base line", unit.Text(float64(t.X), 2), unit.Text(float64(t.Z), 2))
}

// leversSay tells the greatest lever of the loaded boat and where it ends.
func (l *leaf) leversSay() string {
	s := l.afloatSays()
	if s.Lever == "" {
		return ""
	}
	out := fmt.Sprintf("%s, the greatest lever is %s m at %s°", s.Title, s.Lever, s.LeverAt)
	if s.Flooding != "" {
		out += ", and water comes in at " + s.Flooding + "°"
	}
	return out
}

// fastestSays tells the greatest speed of a trial; leastSays the speed with the least fuel for a mile.
func fastestSays(t *trial.Trial) string {
	if t.Top < 0 {
		return ""
	}
	out := "at most " + unit.Text(t.Settings[t.Top].Speed.Value, 1) + " kn"
	if rpm := t.Settings[t.Top].RPM; rpm.Has {
		out += " at " + unit.Text(rpm.Value, 0) + " rpm"
	}
	return out
}

func leastSays(t *trial.Trial) string {
	if t.Best < 0 || derived(t.Settings[t.Best].PerMile, 2).Text == "" {
		return ""
	}
	return fmt.Sprintf("on the plane %s l for a mile at least, at %s kn", derived(t.Settings[t.Best].PerMile, 2).Text, unit.Text(t.Settings[t.Best].Speed.Value, 1))
}

// peaksSay tells the mean of the highest tenth beside what the bottom is reckoned for.
func (l *leaf) peaksSay(r *ride.Ride) string {
	if !r.Tenth.Has {
		return ""
	}
	out := "the highest tenth have a mean of " + unit.Text(r.Tenth.G, 2) + " g"
	if design := l.rideSays().Design; design != "" {
		out += "; the bottom is reckoned for " + design + " g"
	}
	return out
}

// seamsSay counts the joints by standing.
func seamsSay(m *seam.Map) string {
	n := map[finding.Standing]int{}
	for _, j := range m.Joints {
		n[m.Standing(j)]++
	}
	return fmt.Sprintf("of %d joints %d have a whole chain, %d are short, %d are not shown", len(m.Joints), n[finding.Met], n[finding.Short], n[finding.NotShown])
}
