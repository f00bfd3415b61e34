package site

import (
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// RunPage shows one run that lies in a log: its track among the other runs of its setting, its minutes, and what is written
// of it beside what the log has.
type RunPage struct {
	Key      string
	Setting  Link
	Trial    Link
	From, To string
	Seconds  string
	Samples  string
	Log      Link
	Used     bool
	Why      string
	Agree    int
	Apart    int
	Taken    int
	Track    Drawing
	Speed    Drawing
	Course   Drawing
	Rows     []HeldRow
	Place    Link
	Findings []FindingRow
}

// HeldRow is one value as it is written and as the log has it.
type HeldRow struct {
	Name    string
	Unit    string
	Written Figure
	Mean    string
	Least   string
	Most    string
	N       string
	State   string
	Apart   bool
	Log     Link
}

func (l *leaf) runPage(run *tracklog.Run) (RunPage, error) {
	w, rec := run.Window, run.Record
	p := RunPage{
		Key: rec.ID, Setting: Link{Text: rec.Setting.V, Href: l.subject("trial " + run.Trial.ID).Href}, Trial: l.subjectAs("trial "+run.Trial.ID, run.Trial.ID),
		From: tracklog.Clock(w.From), To: tracklog.Clock(w.To), Seconds: unit.Text(w.To-w.From, 0), Samples: unit.Text(float64(w.Samples), 0),
		Log: l.logLink(run.Log), Used: !rec.Left.Set, Why: rec.Left.V, Place: l.place(rec.At), Findings: l.findingsHere(""),
	}
	if run.Why != "" {
		p.Used, p.Why = false, run.Why
	}
	p.Track, p.Speed, p.Course = l.runPictures(run)
	for _, h := range run.Held {
		row := l.heldRow(h)
		switch {
		case h.Taken:
			p.Taken++
		case h.Agrees:
			p.Agree++
		default:
			p.Apart++
		}
		p.Rows = append(p.Rows, row)
	}
	return p, nil
}

func (l *leaf) heldRow(h tracklog.Held) HeldRow {
	row := HeldRow{
		Name: h.Name, Unit: h.Sign, Written: has(h.HasWritten, unit.Text(h.Written, h.Decimals), "not written"), Mean: unit.Text(h.Mean, h.Decimals),
		Least: unit.Text(h.Least, h.Decimals), Most: unit.Text(h.Most, h.Decimals), N: unit.Text(float64(h.N), 0), Apart: h.HasWritten && !h.Agrees, Log: l.logLink(h.Log),
	}
	switch {
	case h.Taken:
		row.State = "taken from the log"
	case h.Agrees:
		row.State = "within what the log shows"
	default:
		row.State = "outside what the log shows"
	}
	return row
}

// logLink leads to the page of a log.
func (l *leaf) logLink(i int) Link {
	if i < 0 || i >= len(l.dossier.Logs.Logs) {
		return Link{}
	}
	log := &l.dossier.Logs.Logs[i]
	return l.subjectAs(log.Subject(), log.Record.ID)
}

func (p RunPage) heading() (heading, under string) {
	return "Run " + p.Key, "setting " + p.Setting.Text + ", trial " + p.Trial.Text
}

// settingOf gives the setting of a run as it was reduced, nil where it is not.
func (l *leaf) settingOf(run *tracklog.Run) *trial.Setting {
	for i := range l.dossier.Trials.Trials {
		t := &l.dossier.Trials.Trials[i]
		if t.Record.ID != run.Trial.ID {
			continue
		}
		for j := range t.Settings {
			if t.Settings[j].Name == run.Record.Setting.V {
				return &t.Settings[j]
			}
		}
	}
	return nil
}
