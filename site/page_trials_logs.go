package site

import (
	"fmt"

	"hullfile/engine/record"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// LogRow is one log in the list of a trial.
type LogRow struct {
	Link     Link
	Kind     string
	From, To string
	Samples  string
	Standing Standing
	Why      string
	Place    Link
}

// ComparedPart is two trials side by side.
type ComparedPart struct {
	Title         string
	Says          string
	First, Second string
	Rows          []ComparedRow
}

// ComparedRow is one setting of both.
type ComparedRow struct {
	Name         string
	A, B, Off    Figure
	MileA, MileB Figure
	TrimA, TrimB Figure
}

// logRows lists the logs of one trial.
func (l *leaf) logRows(trialID string) []LogRow {
	var out []LogRow
	for i := range l.dossier.Logs.Logs {
		log := &l.dossier.Logs.Logs[i]
		if log.Trial.ID != trialID {
			continue
		}
		row := LogRow{Link: l.logLink(i), Kind: log.Record.Kind.V, Samples: unit.Text(float64(log.Report.Samples), 0), Why: log.Why, Place: l.place(log.Record.At),
			Standing: l.leftOn(log.Subject(), checksOf(l.dossier.Logs.Checks, log.Subject()))}
		row.Link.Text = log.Record.ID
		if log.Report.Samples > 0 {
			row.From, row.To = tracklog.Clock(log.Report.First), tracklog.Clock(log.Report.Last)
		}
		out = append(out, row)
	}
	return out
}

// movesLink leads to the page of the manoeuvres, where there is one.
func (l *leaf) movesLink() Link {
	path, has := l.tracks["manoeuvres"]
	if !has {
		return Link{}
	}
	return Link{Text: "manoeuvres", Href: l.to(path, ""), To: l.numberOf(path)}
}

// runLink leads to the page of a run that lies in a log.
func (l *leaf) runLink(trialID string, run *record.Run) Link {
	subject := "trial " + trialID + " run " + run.ID
	path, has := l.tracks[subject]
	if !has {
		return Link{}
	}
	return Link{Text: "run " + run.ID, Href: l.to(path, ""), To: l.numberOf(path)}
}

// numberOf gives the section number of a page, for print.
func (b *book) numberOf(path string) string {
	for _, s := range b.order {
		if s.path == path {
			return s.no
		}
	}
	return ""
}

// weatherWords gives the degree of the sea and the force of the wind by their tables.
func weatherWords(rec *record.Trial) string {
	words := ""
	if height, ok := rec.Wave.Get(); ok {
		code, name := trial.SeaState(float64(height))
		words = fmt.Sprintf("waves of %s m are degree %d, %s (WMO code table 3700)", unit.Text(height, 2), code, name)
	}
	if kn, ok := rec.Wind.Get(); ok {
		if words != "" {
			words += "; "
		}
		number, name := trial.Beaufort(float64(kn))
		words += fmt.Sprintf("%s kn of wind are force %d, %s", unit.Text(kn, 0), number, name)
	}
	return words
}

// comparedParts puts trials side by side.
func (l *leaf) comparedParts() []ComparedPart {
	var out []ComparedPart
	all := l.dossier.Trials.Trials
	for _, c := range l.dossier.Trials.Compared {
		a, b := &all[c.First], &all[c.Second]
		p := ComparedPart{First: a.Record.ID, Second: b.Record.ID}
		if c.Loads {
			p.Title = "Two loads: trials " + a.Record.ID + " and " + b.Record.ID
			p.Says = fmt.Sprintf("%s kg on trial %s and %s kg on trial %s. A difference above nought says that the heavier boat is slower.", mass(float64(a.Record.Mass.V)), a.Record.ID, mass(float64(b.Record.Mass.V)), b.Record.ID)
		} else {
			p.Title = "Run again: trials " + a.Record.ID + " and " + b.Record.ID
			p.Says = fmt.Sprintf("The same settings at nearly the same mass on %s and %s.", a.Record.Date.V.String(), b.Record.Date.V.String())
		}
		for _, r := range c.Rows {
			x, y := &a.Settings[r.First], &b.Settings[r.Second]
			p.Rows = append(p.Rows, ComparedRow{r.Name, mean(x.Speed, 1), mean(y.Speed, 1), has(r.Slower.Has, signed(r.Slower.Value, 1), r.Slower.Why), derived(x.PerMile, 2), derived(y.PerMile, 2), mean(x.Trim, 1), mean(y.Trim, 1)})
		}
		out = append(out, p)
	}
	return out
}
