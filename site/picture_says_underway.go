package site

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/manoeuvre"
	"hullfile/engine/planing"
	"hullfile/engine/running"
	"hullfile/engine/stability"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// Conclusions of the pictures of lines, of the boat afloat, under way and over its hours; picture_says.go has the others.

// draughtSays tells how the loaded boat floats.
func (l *leaf) draughtSays() string {
	r := &l.dossier.Lines
	if !r.HasAfloat {
		return ""
	}
	return fmt.Sprintf("with %s kg the hull draws %s m and has %s m of freeboard at least", mass(r.Afloat.Load.Mass), unit.Text(r.Afloat.Draught, 2), unit.Text(slices.Min(r.Afloat.Freeboard[:]), 2))
}

// sectionsSay tells the shape of the bottom where it carries the boat.
func (l *leaf) sectionsSay() string {
	a := &l.dossier.Lines.Afloat
	if !l.dossier.Lines.HasAfloat {
		return ""
	}
	return fmt.Sprintf("at 0.4 of the waterline %s m between the chines and %s° of deadrise", unit.Text(a.BeamChine, 2), unit.Text(a.Deadrise, 1))
}

// hullSays tells how the loaded boat trims.
func (l *leaf) hullSays() string {
	if !l.dossier.Lines.HasAfloat {
		return ""
	}
	trim := l.dossier.Lines.Afloat.Rest.Trim * 180 / math.Pi
	way := "up"
	if trim < 0 {
		way = "down"
	}
	return fmt.Sprintf("loaded and at rest it trims %s° bow %s", unit.Text(math.Abs(trim), 2), way)
}

// formAt is the row of the hydrostatic table next to the draught of the loaded boat.
func (l *leaf) formAt() (f *hydrostatics.Form, ok bool) {
	r := &l.dossier.Lines
	if !r.HasAfloat {
		return nil, false
	}
	for i := range r.Form {
		if f == nil || math.Abs(r.Form[i].Level-r.Afloat.Draught) < math.Abs(f.Level-r.Afloat.Draught) {
			f = &r.Form[i]
		}
	}
	return f, f != nil
}

func (l *leaf) massesSay() string {
	f, ok := l.formAt()
	if !ok {
		return ""
	}
	return fmt.Sprintf("at %s m of draught the hull carries %s kg, and %s kg sink it by a centimetre", unit.Text(f.Level, 2), mass(f.Mass), unit.Text(f.PerCM, 0))
}

func (l *leaf) heightsSay() string {
	f, ok := l.formAt()
	if !ok {
		return ""
	}
	return fmt.Sprintf("at %s m of draught the metacentre lies %s m above the base line", unit.Text(f.Level, 2), unit.Text(f.KB+f.BM, 2))
}

func leverSays(c *stability.Condition) string {
	if len(c.Sides) == 0 || c.Sides[0].Greatest <= 0 {
		return ""
	}
	s := &c.Sides[0]
	out := fmt.Sprintf("the greatest lever that counts is %s m at %s°", unit.Text(s.Greatest, 3), unit.Text(s.GreatestA, 0))
	if !s.Flooding.Never {
		out += ", and water comes in at " + unit.Text(s.Flooding.Heel, 1) + "°"
	}
	return out
}

func heelingSays(h *stability.Heeling) string {
	if !h.Rests {
		return "no lever balances the moment"
	}
	return fmt.Sprintf("the boat heels %s°, and the lowest way in stays %s m above the water", unit.Text(h.Heel, 1), unit.Text(h.Least, 3))
}

func incliningSays(t *stability.Inclining) string {
	if !(t.GM > 0) {
		return ""
	}
	return "metacentric height " + unit.Text(t.GM, 3) + " m"
}

// trimSays tells the greatest running trim and that at the greatest speed.
func trimSays(t *trial.Trial) string {
	var most *trial.Setting
	for i := range t.Settings {
		if s := &t.Settings[i]; s.Trim.Has && s.Speed.Has && (most == nil || s.Trim.Value > most.Trim.Value) {
			most = s
		}
	}
	if most == nil {
		return ""
	}
	out := fmt.Sprintf("at most %s° at %s kn", unit.Text(most.Trim.Value, 1), unit.Text(most.Speed.Value, 1))
	if t.Top >= 0 {
		if top := &t.Settings[t.Top]; top.Trim.Has && top.Speed.Has && top != most {
			out += fmt.Sprintf(", %s° at %s kn", unit.Text(top.Trim.Value, 1), unit.Text(top.Speed.Value, 1))
		}
	}
	return out
}

// predicted are the conclusions of the pictures of one prediction, at the fastest setting of the trial.
type predicted struct{ power, trim, drag, wetted string }

func predictionSay(c *planing.Case) predicted {
	p := c.FastestMeasured()
	if p == nil {
		return predicted{}
	}
	at := "at " + unit.Text(p.Knots, 1) + " kn "
	out := predicted{
		power:  at + unit.Text(p.Least, 0) + " to " + unit.Text(p.Most, 0) + " kW are needed",
		trim:   at + unit.Text(p.Run.Trim, 1) + "° are predicted",
		drag:   at + unit.Text(p.Drag/1000, 2) + " kN in all",
		wetted: at + "the keel is wet over " + unit.Text(p.Run.Keel, 2) + " m, the chine over " + unit.Text(p.Run.Chine, 2) + " m",
	}
	if c.Installed > 0 {
		out.power += ", " + unit.Plain(c.Installed) + " kW are installed"
	}
	for i := range c.Settings {
		if s := &c.Settings[i]; s.Point == p && s.HasTrim {
			out.trim += ", " + unit.Text(s.Trim, 1) + "° were measured"
		}
	}
	return out
}

// seasSay tells the sea in which each level is reached at the greatest speed.
func (l *leaf) seasSay() string {
	var parts []string
	for _, s := range l.limitsSays().Levels {
		in := "in waves of " + s.Height + " m"
		if s.Flat {
			in = "in flat water"
		}
		parts = append(parts, fmt.Sprintf("%s, %s g, at %s kn %s", lower(s.Name), s.G, s.Speed, in))
	}
	return strings.Join(parts, "; ")
}

// lower begins a text with a small letter.
func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// loggedSays tells how far the hours reach and what was found.
func loggedSays(r *running.Result) string {
	if len(r.Rows) == 0 {
		return ""
	}
	out := unit.Text(r.Logged, 1) + " h on record"
	if len(r.Looks) == 0 {
		return out + ", and nobody has looked"
	}
	cracks := 0
	for i := range r.Looks {
		cracks += r.Looks[i].Cracks
	}
	found := "no crack found"
	if cracks > 0 {
		found = plural(cracks, "crack found", "cracks found")
	}
	return out + ", " + unit.Text(r.LookedTo, 1) + " h of them up to the last look; " + found
}

// boundSays tells what part of the boats the hours show to outlast a promise.
func boundSays(r *running.Result, w *running.Promise) string {
	s, ok := w.At(1, r.Claim.Confidence)
	if !ok || !r.Claim.Has {
		return ""
	}
	if percentDown(s.All) == percentDown(0) {
		return fmt.Sprintf("at %s h nothing is shown that could be told from nought, at %s %% confidence", unit.Text(w.Hours, 0), unit.Text(100*r.Claim.Confidence, 0))
	}
	return fmt.Sprintf("at %s h at least %s %%, at %s %% confidence and slope 1", unit.Text(w.Hours, 0), percentDown(s.All), unit.Text(100*r.Claim.Confidence, 0))
}

// runSays tells the means of a run; courseSays how far its course strays from the mean.
func runSays(w *tracklog.Window) string {
	if w == nil || !w.Speed.Has() {
		return ""
	}
	out := "mean " + unit.Text(w.Speed.Mean, 1) + " kn"
	if w.Toward.Has() {
		out += fmt.Sprintf(" towards %03.0f°", math.Mod(math.Round(w.Toward.Mean()), 360))
	}
	return out
}

func speedSays(w *tracklog.Window) string {
	if w == nil || !w.Speed.Has() {
		return ""
	}
	return fmt.Sprintf("mean %s kn, between %s and %s", unit.Text(w.Speed.Mean, 1), unit.Text(w.Speed.Least, 1), unit.Text(w.Speed.Most, 1))
}

func courseSays(w *tracklog.Window) string {
	if w == nil || !w.Toward.Has() {
		return ""
	}
	return "within " + unit.Text(w.Toward.Spread(), 0) + "° from side to side"
}

func accelerationSays(a *manoeuvre.Acceleration) string {
	var parts []string
	if v, ok := a.Speed.Value(); ok && a.Record.Speed.Set {
		parts = append(parts, unit.Text(a.Record.Speed.V, 0)+" kn after "+unit.Text(v, 1)+" s")
	}
	if v, ok := a.Trim.Value(); ok {
		parts = append(parts, "trim at most "+unit.Text(v, 1)+"°")
	}
	return strings.Join(parts, "; ")
}

func turningSays(t *manoeuvre.Turning) string {
	v, ok := t.Diameter.Value()
	if !ok {
		return ""
	}
	return "a circle of " + unit.Text(v, 0) + " m" + inLengths(t.Lengths)
}

func stoppingSays(s *manoeuvre.Stopping) string {
	v, ok := s.Distance.Value()
	if !ok {
		return ""
	}
	out := "stopped in " + unit.Text(v, 0) + " m" + inLengths(s.Lengths)
	if t, ok := s.Seconds.Value(); ok {
		out += ", after " + unit.Text(t, 1) + " s"
	}
	return out
}

// personsSay tells how many persons the boat is meant for.
func (l *leaf) personsSay() string {
	if !l.hull.Boat.Persons.Set {
		return ""
	}
	return plural(l.hull.Boat.Persons.V, "person", "persons") + " at most"
}
