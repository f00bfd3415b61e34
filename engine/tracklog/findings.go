package tracklog

import (
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

const (
	straysShown   = 8    // names that one sentence holds
	mostStrays    = 1000 // files that are looked at in one folder
	mostHundreds  = 100  // engine speed that every engine exceeds when it idles (practice)
	hundredWithin = 0.1  // part by which a hundredfold may be off and still be one (practice)
)

// checks of one log: that it is there, could be read, and is the one that was put on record.
func checks(l *Log) []finding.Check {
	c := finding.Check{
		Rule: "log-present", Subject: l.Subject(), Asks: "the log is there and can be read", Standing: finding.Met,
		Basis: finding.Practice, Source: "practice", Places: []finding.Place{l.Record.File.At},
	}
	switch {
	case !l.Present:
		c.Standing, c.Says = finding.NotShown, fmt.Sprintf("%.80q: %s", l.Record.File.V, l.Why)
		c.Settle = "put the log into the folder logs beside the record"
	case l.Why != "":
		c.Standing, c.Says = finding.NotShown, fmt.Sprintf("the log cannot be read to its end: %s", l.Why)
		c.Settle = "mend what the record says about the log, or name another kind"
	case l.Report.Samples == 0:
		c.Standing, c.Says = finding.NotShown, "nothing in the log can be used as "+l.Record.Kind.V+"; "+firstTold(l.Report.Notes)
		c.Settle = "see whether the kind on record is that of the log"
	default:
		c.Says = fmt.Sprintf("%s samples from %s to %s", unit.Text(float64(l.Report.Samples), 0), Spoken(l.Report.First), Clock(l.Report.Last))
	}
	all := []finding.Check{c}
	if l.Present && l.Record.SHA256.Set {
		all = append(all, l.unchanged())
	}
	return all
}

func firstTold(notes []Note) string {
	if len(notes) == 0 {
		return "it holds no line of that kind"
	}
	return fmt.Sprintf("%s %s, first at line %d", unit.Text(float64(notes[0].Count), 0), notes[0].Trouble, notes[0].Line)
}

func (l *Log) unchanged() finding.Check {
	c := finding.Check{
		Rule: "log-unchanged", Subject: l.Subject(), Asks: "the log is the one that was put on record", Standing: finding.Met, Says: "the hash is the one on record",
		Basis: finding.Practice, Source: "practice", Places: []finding.Place{l.Record.SHA256.At}, Needed: l.Record.SHA256.V, Has: l.SHA256,
	}
	if !l.Matches {
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("it is not the log that was put on record: its hash begins %.12s, the one on record %.12s", l.SHA256, l.Record.SHA256.V)
		c.Settle = "put the log on record back, or put the new one on record with its hash"
	}
	return c
}

// say makes a finding about the log.
func (l *Log) say(kind finding.Kind, rule, settle string, line int, format string, args ...any) finding.Finding {
	return finding.Finding{
		Kind: kind, Rule: rule, Subject: l.Subject(), Settle: settle, Says: fmt.Sprintf(format, args...),
		Places: []finding.Place{l.Record.At, {File: l.Path, Line: line}},
	}
}

// findings of one log.
func (l *Log) findings() []finding.Finding {
	if !l.Present || l.SHA256 == "" {
		return nil
	}
	var all []finding.Finding
	if !l.Matches {
		c := l.unchanged()
		all = append(all, finding.Finding{Kind: finding.Contradiction, Rule: c.Rule, Subject: c.Subject, Says: c.Says, Settle: c.Settle, Places: c.Places})
	}
	if l.Report.Samples == 0 {
		return all
	}
	all = append(all, l.day()...)
	all = append(all, l.troubles()...)
	return append(all, l.hundreds()...)
}

// day holds the log against the day of the trial, with an hour of grace on both sides for a clock that is not UTC.
func (l *Log) day() []finding.Finding {
	start := dayStart(l.Trial.Date.V)
	if l.Report.Last >= start-14*hourSeconds && l.Report.First <= start+daySeconds+12*hourSeconds {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Contradiction, Rule: "log-day", Subject: l.Subject(),
		Says:   fmt.Sprintf("the log runs from %s to %s; the trial was on %s", Spoken(l.Report.First), Spoken(l.Report.Last), l.Trial.Date.V.String()),
		Settle: "put the log of that day on record, or correct the day of the trial", Places: []finding.Place{l.Record.At, l.Trial.Date.At, {File: l.Path, Line: 1}},
	}}
}

// harmless are troubles of which a few are part of every log: they are on the page, but no finding by themselves.
var harmless = []Trouble{Gaps, Segments, Repeated, NoFix, NoDay}

// troubles tells in one sentence what could not be used, and in one of its own that the clock went wrong.
func (l *Log) troubles() []finding.Finding {
	var all []finding.Finding
	var words []string
	first := 0
	for _, n := range l.Report.Notes {
		switch {
		case n.Trouble == Backwards || n.Trouble == Spikes:
			all = append(all, l.say(finding.Doubt, "log-clock", "look at the log around this line; what lies before and behind is used", n.Line,
				"%s %s, the first at line %d; they are not used", unit.Text(float64(n.Count), 0), n.Trouble, n.Line))
		case slices.Contains(harmless, n.Trouble):
		default:
			words = append(words, fmt.Sprintf("%s %s (first at line %d)", unit.Text(float64(n.Count), 0), n.Trouble, n.Line))
			if first == 0 {
				first = n.Line
			}
		}
	}
	if len(words) > 0 {
		all = append(all, l.say(finding.Doubt, "log-damaged", "the rest of the log is used; take the log from the instrument again if a run rests on these lines", first,
			"not used: %s", strings.Join(words, ", ")))
	}
	return all
}

// inHundreds reports engine speeds that no engine runs at: all below a hundred, and some of them running.
func (r *Report) inHundreds() bool { return r.RPM.Most > 0 && r.RPM.Most < mostHundreds }

// hundreds doubts such a log; nothing is multiplied by itself.
func (l *Log) hundreds() []finding.Finding {
	if !l.Report.inHundreds() {
		return nil
	}
	return []finding.Finding{l.say(finding.Doubt, "log-rpm-hundreds", `write unit = "100 rpm" for this column if the gauge counts in hundreds`, 0,
		"the greatest engine speed in the log is %s rpm; it looks as if it were written in hundreds, and none is taken from it", unit.Text(l.Report.RPM.Most, 1))}
}

// assumptions of one log: what nobody wrote and its reading rests on.
func (l *Log) assumptions() []finding.Assumption {
	if l.Report.Samples == 0 {
		return nil
	}
	var all []finding.Assumption
	if !l.Record.Gap.Set && l.Report.Has(Gaps) > 0 {
		all = append(all, finding.Assumption{
			Subject: l.Subject(), Says: fmt.Sprintf("more than %s s without a sample is a gap, over which nothing is reckoned", unit.Text(usualGap, 0)),
			Settle: "write gap_s in the log", Basis: finding.Practice,
		})
	}
	if l.Report.Has(NoZone) > 0 && !l.Record.Offset.Set {
		all = append(all, finding.Assumption{
			Subject: l.Subject(), Says: "times without a zone are UTC, as the schema of GPX asks", Settle: "utc_offset_h of the log", Basis: finding.Read,
		})
	}
	return all
}

// strays tells files in the folder logs that no record names.
func (r *Result) strays(root *os.Root, h *record.Hull) {
	if root == nil {
		return
	}
	named := map[string]bool{}
	for _, l := range r.Logs {
		named[l.Path] = true
	}
	// A folder that is not there has no strays.
	_ = fs.WalkDir(root.FS(), folderOf(h), func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return fs.SkipDir
		case entry.IsDir() || named[name] || strings.HasPrefix(entry.Name(), "."):
			return nil
		case len(r.Strays) == mostStrays:
			return fs.SkipAll
		}
		r.Strays = append(r.Strays, name)
		return nil
	})
	if len(r.Strays) == 0 {
		return
	}
	shown := make([]string, 0, straysShown)
	for _, s := range r.Strays[:min(len(r.Strays), straysShown)] {
		shown = append(shown, fmt.Sprintf("%+q", s))
	}
	says := fmt.Sprintf("%d files in the folder logs are named by no record: %s", len(r.Strays), strings.Join(shown, ", "))
	r.Findings = append(r.Findings, finding.Finding{
		Kind: finding.Doubt, Rule: "log-stray", Subject: "trials", Says: says, Settle: "put them on record with the trial they belong to, or take them out of the folder",
		Places: []finding.Place{{File: folderOf(h)}},
	})
}
