package site

import (
	"fmt"

	"hullfile/engine/manoeuvre"
	"hullfile/engine/tracklog"
	"hullfile/engine/unit"
)

// MovesPage shows what the boat did beside its steady runs.
type MovesPage struct {
	Says     string
	Parts    []MovePart
	Noises   []NoiseRow
	Sights   []SightRow
	Findings []FindingRow
}

// MovePart is one manoeuvre.
type MovePart struct {
	ID       string
	Title    string
	Says     string
	Picture  Drawing
	Rows     []MoveFigure
	Facts    []Fact
	Note     string
	When     string
	Log      Link
	Findings []FindingRow
}

// MoveFigure is one figure: written by hand and out of the log.
type MoveFigure struct {
	Name    string
	Unit    string
	Written Figure
	Logged  Figure
}

// NoiseRow is one reading of a sound level meter.
type NoiseRow struct {
	Key, Where, Setting string
	Speed, Level        Figure
	Instrument          Link
	Note                string
	Place               Link
}

// SightRow is what the helm sees through the hump.
type SightRow struct {
	Key, Position string
	From, To      Figure
	Seconds       Figure
	Note          string
	Place         Link
}

// moves is the manoeuvres of the book's hull.
type moves struct{ *manoeuvre.Result }

func (b *book) moves() moves { return moves{&b.dossier.Moves} }

func (m moves) any() bool {
	return len(m.Accelerations)+len(m.Turnings)+len(m.Stoppings)+len(m.Noises)+len(m.Sights) > 0
}

// subjects lists the manoeuvres in the words of findings, in the order of the page.
func (m moves) subjects() []string {
	var all []string
	for i := range m.Accelerations {
		all = append(all, "trial "+m.Accelerations[i].Trial.ID+" acceleration "+m.Accelerations[i].Record.ID)
	}
	for i := range m.Turnings {
		all = append(all, "trial "+m.Turnings[i].Trial.ID+" turning "+m.Turnings[i].Record.ID)
	}
	for i := range m.Stoppings {
		all = append(all, "trial "+m.Stoppings[i].Trial.ID+" stopping "+m.Stoppings[i].Record.ID)
	}
	return all
}

func (l *leaf) movesPage(m moves) (MovesPage, error) {
	p := MovesPage{Says: l.movesSays(m), Findings: l.findingsHere("")}
	subjects := m.subjects()
	for i := range m.Accelerations {
		p.Parts = append(p.Parts, l.acceleration(&m.Accelerations[i], subjects[i]))
	}
	subjects = subjects[len(m.Accelerations):]
	for i := range m.Turnings {
		p.Parts = append(p.Parts, l.turning(&m.Turnings[i], subjects[i]))
	}
	subjects = subjects[len(m.Turnings):]
	for i := range m.Stoppings {
		p.Parts = append(p.Parts, l.stopping(&m.Stoppings[i], subjects[i]))
	}
	for _, n := range m.Noises {
		rec := n.Record
		p.Noises = append(p.Noises, NoiseRow{rec.ID, rec.Where.V, rec.Setting.V, measured(rec.Speed, "kn"), measured(rec.Level, "dB"), l.subjectAs("instrument "+rec.Instrument.V, rec.Instrument.V), rec.Note.V, l.place(rec.At)})
	}
	for _, s := range m.Sights {
		rec := s.Record
		p.Sights = append(p.Sights, SightRow{rec.ID, rec.Position.V, measured(rec.From, "kn"), measured(rec.To, "kn"), measured(rec.Seconds, "s"), rec.Note.V, l.place(rec.At)})
	}
	return p, nil
}

// movesSays is the answer of the page: the figures that an owner asks for.
func (l *leaf) movesSays(m moves) string {
	says := ""
	add := func(ok bool, format string, args ...any) {
		if ok {
			says += fmt.Sprintf(format, args...)
		}
	}
	for i := range m.Accelerations {
		a := &m.Accelerations[i]
		v, ok := a.Plane.Value()
		add(ok, "On the plane %s s after rest. ", unit.Text(v, 1))
		v, ok = a.Speed.Value()
		add(ok && a.Record.Speed.Set, "From rest to %s kn in %s s. ", unit.Text(a.Record.Speed.V, 0), unit.Text(v, 1))
	}
	for i := range m.Turnings {
		t := &m.Turnings[i]
		v, ok := t.Diameter.Value()
		add(ok, "Turns to %s in a circle of %s m%s. ", t.Record.Side.V, unit.Text(v, 0), inLengths(t.Lengths))
	}
	for i := range m.Stoppings {
		s := &m.Stoppings[i]
		v, ok := s.Distance.Value()
		kn, known := s.Before.Value()
		add(ok && known, "Stops from %s kn in %s m%s, %s. ", unit.Text(kn, 0), unit.Text(v, 0), inLengths(s.Lengths), s.Record.How.V)
	}
	return says
}

func inLengths(n float64) string {
	if n <= 0 {
		return ""
	}
	return ", " + unit.Text(n, 1) + " hull lengths"
}

// movePart is what all manoeuvres share.
func (l *leaf) movePart(subject, title string, m *tracklog.Move, rec any, figures ...*manoeuvre.Figure) MovePart {
	p := MovePart{ID: l.anchor(subject), Title: title, Facts: l.fieldsWritten(rec, "note", "from", "to", "log"), Findings: l.findingsHere(l.anchor(subject))}
	if m != nil {
		p.Log = l.logLink(m.Log)
		if m.Window != nil {
			p.When = tracklog.Clock(m.Window.From) + " to " + tracklog.Clock(m.Window.To)
		}
	}
	for _, f := range figures {
		p.Rows = append(p.Rows, MoveFigure{f.Name, f.Sign, has(f.Written.Set, unit.Text(f.Written.V, f.Decimals), "not written"), has(f.HasLog, unit.Text(f.Logged, f.Decimals), f.Why)})
	}
	return p
}

func (l *leaf) acceleration(a *manoeuvre.Acceleration, subject string) MovePart {
	p := l.movePart(subject, "Acceleration "+a.Record.ID+" of trial "+a.Trial.ID, a.Move, a.Record, &a.Plane, &a.Speed, &a.Trim)
	p.Picture, p.Note = l.accelerationPicture(a, p.ID), a.Record.Note.V
	for _, r := range a.To {
		p.Rows = append(p.Rows, MoveFigure{"time to " + unit.Text(r.Knots, 0) + " kn", "s", Figure{Why: "not written"}, Figure{Text: unit.Text(r.Seconds, 1)}})
	}
	if a.PlaneKn > 0 {
		p.Says = "The boat counts as on the plane from " + unit.Text(a.PlaneKn, 1) + " kn (speed coefficient on the chine beam, practice)."
	}
	if a.HasTrim {
		p.Says += " The trim is greatest at " + unit.Text(a.TrimAt, 1) + " kn: the hump."
	}
	return p
}

func (l *leaf) turning(t *manoeuvre.Turning, subject string) MovePart {
	p := l.movePart(subject, "Turning "+t.Record.ID+" of trial "+t.Trial.ID, t.Move, t.Record, &t.Diameter, &t.Tactical, &t.Seconds)
	p.Picture, p.Note = l.turningPicture(t, p.ID), t.Record.Note.V
	if t.HasLog {
		p.Says = fmt.Sprintf("Over one full turn the circle was set aside at %s kn towards %03.0f°; that is taken out. The track then strays from a circle by %s m (root mean square).",
			unit.Text(t.Drift, 2), t.DriftTo, unit.Text(t.Residue, 2))
	}
	return p
}

func (l *leaf) stopping(s *manoeuvre.Stopping, subject string) MovePart {
	p := l.movePart(subject, "Stopping "+s.Record.ID+" of trial "+s.Trial.ID, s.Move, s.Record, &s.Before, &s.Distance, &s.Seconds)
	p.Picture, p.Note = l.stoppingPicture(s, p.ID), s.Record.Note.V
	p.Says = "The way is the sum of the speed over time, until the boat makes no more than 1 kn."
	return p
}
