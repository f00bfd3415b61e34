package site

import (
	"fmt"
	"strings"

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

// groupsSay tells how much of the loaded mass is known in which way.
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
	var parts []string
	for _, how := range []struct{ basis, words string }{{"weighed", "weighed"}, {"reckoned", "reckoned"}, {"maker's", "stated by makers"}, {"estimated", "estimated"}} {
		if kg := by[how.basis]; kg > 0 {
			parts = append(parts, unit.Text(100*kg/float64(r.Loaded.Mass), 0)+" % "+how.words)
		}
	}
	return "of the loaded mass " + strings.Join(parts, ", ")
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
	out := fmt.Sprintf("%d of %d joints with a whole chain", n[finding.Met], len(m.Joints))
	if n[finding.Short] > 0 {
		out += fmt.Sprintf(", %d rejected or open", n[finding.Short])
	}
	if n[finding.NotShown] > 0 {
		out += fmt.Sprintf(", %d not shown", n[finding.NotShown])
	}
	return out
}
