package site

import (
	"hullfile/engine/tracklog"
	"hullfile/engine/unit"
)

// TrackPage shows one log: what could be used of it, where the boat went, and its steady stretches.
type TrackPage struct {
	Key      string
	Trial    Link
	Standing Standing
	Samples  string
	From, To string
	Lines    string
	File     Link
	Size     string
	Hash     string
	Columns  []ColumnRow
	Track    Drawing
	Speed    Drawing
	Notes    []NoteRow
	Steady   []SteadyRow
	Rule     string
	Engines  bool // the log has engine speed or fuel
	More     int
	Facts    []Fact
	Note     string
	Checks   []CheckRow
	Findings []FindingRow
}

// ColumnRow is one column of a CSV log as the record names it.
type ColumnRow struct {
	Head, Holds, Unit string
	Place             Link
}

// NoteRow is one kind of thing that could not be used or must be known.
type NoteRow struct {
	What  string
	Count string
	Line  string
	Word  string
}

// SteadyRow is one stretch found by the rule.
type SteadyRow struct {
	From, To string
	Seconds  string
	Speed    Figure
	Spread   Figure
	Toward   Figure
	RPM      Figure
	Fuel     Figure
	Line     string
	Run      Link // the run that lies in it
}

func (l *leaf) trackPage(log *tracklog.Log) (TrackPage, error) {
	r := &log.Report
	checks := checksOf(l.dossier.Logs.Checks, log.Subject())
	p := TrackPage{
		Key: log.Record.ID, Trial: l.subjectAs("trial "+log.Trial.ID, log.Trial.ID), Standing: l.leftOn(log.Subject(), checks),
		Samples: unit.Text(float64(r.Samples), 0), From: tracklog.Spoken(r.First), To: tracklog.Clock(r.Last), Lines: unit.Text(float64(r.Lines), 0),
		Size: fileSize(log.Bytes), Hash: log.SHA256[:min(12, len(log.SHA256))], File: Link{Text: "the log as written", Href: l.to(log.Out, ""), To: log.Out},
		Track: l.logPicture(log), Speed: l.logHistory(log), Rule: steadyRule(), Engines: r.RPM.Has() || r.Fuel.Has(), More: r.More,
		Facts: l.fieldsWritten(log.Record, "note", "sha256"), Note: log.Record.Note.V, Checks: grouped(l.checkRows(checks)), Findings: l.findingsHere(""),
	}
	l.linkFacts(p.Facts)
	for i := range log.Record.Columns {
		c := &log.Record.Columns[i]
		p.Columns = append(p.Columns, ColumnRow{c.Head.V, label(c.Holds.V, ""), c.Unit.V, l.place(c.At)})
	}
	for _, n := range r.Notes {
		p.Notes = append(p.Notes, NoteRow{string(n.Trouble), unit.Text(float64(n.Count), 0), wordsOfInt(n.Line), n.Word})
	}
	for i := range r.Steady {
		p.Steady = append(p.Steady, l.steadyRow(log, &r.Steady[i]))
	}
	return p, nil
}

// steadyRule says by which rule the stretches were found.
func steadyRule() string {
	return "Rule (practice): averages of five seconds differ by no more than " + unit.Text(tracklog.SteadyKnots, 1) + " kn or " + unit.Text(tracklog.SteadyPart*100, 0) +
		" % of their mean, whichever is more, and by no more than " + unit.Text(tracklog.SteadyDegrees, 0) + "° in direction, for at least " + unit.Text(tracklog.SteadyLeast, 0) +
		" s, faster than " + unit.Text(tracklog.SteadySlowest, 1) + " kn, without a gap."
}

func (l *leaf) steadyRow(log *tracklog.Log, s *tracklog.Steady) SteadyRow {
	row := SteadyRow{
		From: tracklog.Clock(s.From), To: tracklog.Clock(s.To), Seconds: unit.Text(s.Seconds(), 0), Line: wordsOfInt(s.At),
		Speed: logged(s.Speed, 1), Spread: has(s.Speed.Has(), unit.Text(s.Speed.Spread(), 1), "not in the log"),
		Toward: has(s.Toward.Has(), unit.Text(s.Toward.Mean(), 0), "not in the log"), RPM: logged(s.RPM, 0), Fuel: logged(s.Fuel, 1),
	}
	for i := range l.dossier.Logs.Runs {
		run := &l.dossier.Logs.Runs[i]
		if w := run.Window; w != nil && run.Trial.ID == log.Trial.ID && w.From < s.To && w.To > s.From {
			row.Run = l.subjectAs(run.Subject(), run.Record.ID)
		}
	}
	return row
}

func logged(m tracklog.Measure, decimals int) Figure {
	return has(m.Has(), unit.Text(m.Mean, decimals), "not in the log")
}

func (p TrackPage) heading() (heading, under string) { return "Log " + p.Key, "trial " + p.Trial.Text }
