package site

import (
	"html/template"

	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// TrialsPage shows what the boat did on the water.
type TrialsPage struct {
	Says     TrialsSays
	Trials   []TrialPart
	Moves    Link // page of the manoeuvres
	Compared []ComparedPart
	Strays   []string
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// TrialsSays is the answer about the trials; the cover says it too. It speaks of the trial with the fastest setting.
type TrialsSays struct {
	Tally
	Trials    int
	Date      string
	Speed     string // kn, empty where none
	RPM       string
	Mass      string
	OneWay    bool
	BestMile  string // l/NM, empty where none
	BestSpeed string
	Range     string // NM, at the best setting
	Reserve   string
	Way       Link
}

// TrialPart is one trial.
type TrialPart struct {
	ID       string
	Key      string
	Date     string
	Says     TrialsSays
	Facts    []Fact
	Speed    Drawing
	Mile     Drawing
	Trim     Drawing
	Settings []SettingRow
	Runs     []RunRow
	Logs     []LogRow
	Weather  string // sea and wind by their tables
	RangeWhy string
	Checks   []CheckRow
	Note     string
	Findings []FindingRow
}

// SettingRow is one throttle setting with its means.
type SettingRow struct {
	ID      string
	Name    string
	RPM     Figure
	Speed   Figure
	Spread  Figure
	Stream  Figure
	Fuel    Figure
	Trim    Figure
	PerMile Figure
	Range   Figure
	Slip    Figure // percent
	Depth   Figure // depth Froude number
	Runs    string // "4 of 4"
	Best    bool
	Top     bool
	OneWay  bool
	Why     string
	Half    string // half the 95 % interval, empty where not shown
	HalfWhy string
	Working []LineRow
}

// LineRow is one line of working.
type LineRow struct {
	Name   string
	Text   string
	Result string
	Source string
	Basis  Basis
}

// RunRow is one run.
type RunRow struct {
	Setting  string
	RPM      Figure
	Heading  Figure
	Speed    Figure
	Fuel     Figure
	Trim     Figure
	Duration Figure
	Used     bool
	Why      string
	Place    Link
	Page     Link // of the run, where it lies in a log
}

func (l *leaf) trialsPage() (TrialsPage, error) {
	notes, err := l.notesFor("trials")
	if err != nil {
		return TrialsPage{}, err
	}
	p := TrialsPage{Says: l.trialsSays(), Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["trials"]}
	p.Moves, p.Strays = l.movesLink(), l.dossier.Logs.Strays
	p.Compared = l.comparedParts()
	for i := range l.dossier.Trials.Trials {
		p.Trials = append(p.Trials, l.trialPart(&l.dossier.Trials.Trials[i]))
	}
	return p, nil
}

func (l *leaf) trialPart(t *trial.Trial) TrialPart {
	rec := t.Record
	subject := "trial " + rec.ID
	p := TrialPart{
		ID: l.anchor(subject), Key: rec.ID, Date: rec.Date.V.String(), Says: l.trialSays(t), Facts: l.fieldsWritten(rec, "note", "date"), RangeWhy: t.RangeWhy,
		Checks: grouped(l.checkRows(checksOf(l.dossier.Trials.Checks, subject))), Note: rec.Note.V, Findings: l.findingsHere(l.anchor(subject)),
	}
	p.Speed, p.Mile, p.Trim = l.trialPictures(t)
	p.Logs, p.Weather = l.logRows(rec.ID), weatherWords(rec)
	l.linkFacts(p.Facts)
	for i := range t.Settings {
		s := &t.Settings[i]
		row := settingRow(s)
		row.ID, row.Best, row.Top = l.anchors.take("setting-"+rec.ID+"-"+s.Name), i == t.Best, i == t.Top
		p.Settings = append(p.Settings, row)
		for j := range s.Runs {
			row := l.runRow(s.Name, &s.Runs[j])
			row.Page = l.runLink(rec.ID, s.Runs[j].Record)
			p.Runs = append(p.Runs, row)
		}
	}
	return p
}

func settingRow(s *trial.Setting) SettingRow {
	row := SettingRow{
		Name: s.Name, RPM: mean(s.RPM, 0), Speed: mean(s.Speed, 1), Stream: has(s.HasStream, unit.Text(s.Current, 2), "not shown"), Fuel: mean(s.Fuel, 1), Trim: mean(s.Trim, 1),
		PerMile: derived(s.PerMile, 2), Range: derived(s.Range, 0), Runs: wordsOfInt(s.Used) + " of " + wordsOfInt(len(s.Runs)), OneWay: s.OneWay, Why: s.Why,
		Depth: derived(s.Depth, 2),
		Slip:  has(s.Slip.Has, unit.Text(s.Slip.Value*100, 0), s.Slip.Why), Spread: has(s.Speed.Has && s.Speed.N > 1, unit.Text(s.Speed.Spread, 1), "one run only"),
	}
	if !s.Speed.Has && s.OneWay {
		row.Speed = Figure{Text: unit.Text(s.Simple, 1)}
	}
	if s.Interval.Has {
		row.Half = unit.Text(s.Interval.Half, 2)
	}
	row.HalfWhy = s.Interval.Why
	for _, w := range s.Working {
		row.Working = append(row.Working, LineRow{w.Name, w.Text, w.Result, w.Source, basis(w.Basis)})
	}
	return row
}

func mean(m trial.Mean, n int) Figure { return has(m.Has, unit.Text(m.Value, n), "not recorded") }

func derived(v trial.Value, n int) Figure {
	if v.Has {
		return Figure{Text: unit.Text(v.Value, n)}
	}
	if v.Why == "" {
		return Figure{Why: "not shown"}
	}
	return Figure{Why: v.Why}
}

func (l *leaf) runRow(setting string, r *trial.Run) RunRow {
	rec := r.Record
	return RunRow{
		Setting: setting, RPM: measured(rec.RPM, "rpm"), Heading: has(rec.Heading.Set, unit.Text(rec.Heading.V, 0), "not recorded"), Speed: measured(rec.Speed, "kn"),
		Fuel: has(rec.Fuel.Set, unit.Text(rec.Fuel.V, 1), "not recorded"), Trim: has(rec.Trim.Set, unit.Text(rec.Trim.V, 1), "not recorded"), Duration: measured(rec.Seconds, "s"),
		Used: r.Used, Why: r.Why, Place: l.place(rec.At),
	}
}

func (l *leaf) trialsSays() TrialsSays {
	r := &l.dossier.Trials
	best := TrialsSays{}
	fastest := -1.0
	for i := range r.Trials {
		t := &r.Trials[i]
		if t.Top >= 0 && t.Settings[t.Top].Speed.Value > fastest {
			fastest = t.Settings[t.Top].Speed.Value
			best = l.trialSays(t)
		}
	}
	best.Tally, best.Trials = l.tallyAt(trialsPath, r.Checks), len(r.Trials)
	return best
}

func (l *leaf) trialSays(t *trial.Trial) TrialsSays {
	s := TrialsSays{Date: t.Record.Date.V.String(), Way: l.subjectAs("trial "+t.Record.ID, t.Record.ID), Tally: tally(checksOf(l.dossier.Trials.Checks, "trial "+t.Record.ID))}
	if t.Record.Mass.Set {
		s.Mass = mass(float64(t.Record.Mass.V))
	}
	if t.Top >= 0 {
		top := &t.Settings[t.Top]
		s.Speed, s.OneWay = unit.Text(top.Speed.Value, 1), top.OneWay
		if top.RPM.Has {
			s.RPM = unit.Text(top.RPM.Value, 0)
		}
	}
	if t.Best >= 0 {
		best := &t.Settings[t.Best]
		s.BestMile, s.BestSpeed = derived(best.PerMile, 2).Text, unit.Text(best.Speed.Value, 1)
		s.Range, s.Reserve = derived(best.Range, 0).Text, unit.Plain(t.Reserve)
	}
	return s
}
