package site

import (
	"cmp"
	"html/template"
	"slices"
	"strings"

	"hullfile/engine/limits"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// LimitsPage says how fast the boat may be driven in which sea.
type LimitsPage struct {
	Says     LimitsSays
	Picture  Drawing
	Card     HelmCard
	Levels   []LevelRow
	Met      []MetRow
	Workings []SheetWorking
	At       string // kn, of the workings
	Assumed  []AssumptionRow
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// LimitsSays is the answer about the limits.
type LimitsSays struct {
	Why      string
	Levels   []LevelSays
	Category string
	Sea      string // what the category says
	Outside  bool
}

// LevelSays is one level with the sea at which it is reached at the greatest speed.
type LevelSays struct {
	Name   string
	G      string
	Height string // m
	Speed  string // kn
	Flat   bool   // it is reached in flat water
}

// HelmCard is the small card for the helm.
type HelmCard struct {
	Hull   string
	Name   string
	Issue  string
	Heads  []string // one a level
	Rows   []HelmRow
	People string // for whom the level of the people was chosen
	Mass   string
	From   string // kn, where the boat planes
}

// HelmRow is one sea.
type HelmRow struct {
	Height string
	Words  string
	Speeds []HelmSpeed
}

// HelmSpeed is the greatest speed for one level: a number, or off the plane.
type HelmSpeed struct {
	Text string
	Note string
}

// LevelRow is one level with where it is from.
type LevelRow struct {
	Name   string
	G      string
	Source string
	Basis  Basis
	Place  Link
}

// MetRow is one speed in one sea that the boat was run in.
type MetRow struct {
	Subject  Link
	Speed    string
	Height   string
	Reckoned Figure
	Measured Figure
	Outside  bool
}

func (l *leaf) limitsPage() (LimitsPage, error) {
	r := &l.dossier.Limits
	notes, err := l.notesFor("limits")
	if err != nil {
		return LimitsPage{}, err
	}
	p := LimitsPage{Says: l.limitsSays(), Assumed: l.assumed(r.Assumptions), Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["limits"], Met: l.metRows(r)}
	if r.Why != "" {
		return p, nil
	}
	p.Picture, p.Card, p.At = l.limitsPicture(), l.helmCard(r), unit.Text(r.Shown.Knots, 0)
	for _, one := range r.Levels {
		p.Levels = append(p.Levels, LevelRow{one.Name, unit.Text(one.G, 2), one.Source, basis(one.Basis), l.place(one.Place)})
	}
	p.Workings, err = l.limitsWorkings(r)
	return p, err
}

func (l *leaf) limitsSays() LimitsSays {
	r := &l.dossier.Limits
	s := LimitsSays{Why: r.Why, Category: r.Category.Letter, Sea: r.Category.Says}
	for _, one := range r.Levels {
		n := len(one.Curve)
		if n == 0 {
			continue
		}
		end := one.Curve[n-1]
		s.Levels = append(s.Levels, LevelSays{one.Name, unit.Text(one.G, 1), waveText(end.Height), unit.Text(end.Knots, 0), end.Height == 0})
		s.Outside = s.Outside || end.Outside
	}
	return s
}

func (l *leaf) helmCard(r *limits.Result) HelmCard {
	c := HelmCard{Hull: l.hull.Number, Name: l.hull.Identity.Name.V, People: l.hull.Comfort.Who.V, Mass: mass(float64(l.hull.Boat.LoadedMass.V)), From: unit.Text(r.From, 0)}
	if l.hull.Issue.Number.Set {
		c.Issue = "issue " + wordsOfInt(l.hull.Issue.Number.V)
	}
	for _, one := range r.Levels {
		c.Heads = append(c.Heads, one.Short)
	}
	for _, row := range r.Card {
		one := HelmRow{Height: waveText(row.Height), Words: seaName(row.Height)}
		for _, lim := range row.Limits {
			one.Speeds = append(one.Speeds, helmSpeed(lim))
		}
		c.Rows = append(c.Rows, one)
	}
	return c
}

func helmSpeed(c limits.CardLimit) HelmSpeed {
	if c.Slow {
		return HelmSpeed{Text: "off the plane"}
	}
	return HelmSpeed{Text: unit.Text(c.Knots, 0), Note: "kn"}
}

// waveText gives a wave height in tenths of a metre, in hundredths where tenths would not tell it.
func waveText(height float64) string {
	if height < 0.1 || unit.Text(height, 2) != unit.Text(height, 1)+"0" && height < 2 {
		return unit.Text(height, 2)
	}
	return unit.Text(height, 1)
}

// seaName is the word of WMO code table 3700 for a wave height.
func seaName(height float64) string {
	_, name := trial.SeaState(height)
	return name
}

// loggedMet is the number of entries of the log of hours that the table of seas met lists; the log has them all.
const loggedMet = 12

// metRows gives the seas met: records and trials, then the hardest entries of the log.
func (l *leaf) metRows(r *limits.Result) []MetRow {
	var out []MetRow
	logged := 0
	for _, m := range hardestFirst(r.Met) {
		if strings.HasPrefix(m.Subject, "hours ") {
			if logged++; logged > loggedMet {
				continue
			}
		}
		out = append(out, MetRow{l.subject(m.Subject), unit.Text(m.Knots, 1), unit.Plain(m.Height), has(m.Reckoned > 0, unit.Text(m.Reckoned, 1), "below planing speed"), has(m.Measured > 0, unit.Text(m.Measured, 1), "not measured"), m.Outside})
	}
	return out
}

func (l *leaf) limitsWorkings(r *limits.Result) ([]SheetWorking, error) {
	var out []SheetWorking
	take := func(part SheetWorking, ok bool, err error) error {
		if ok && err == nil {
			out = append(out, part)
		}
		return err
	}
	if err := take(l.sheetWorking("The boat at this speed", "b-", r.Shown.Boat)); err != nil {
		return nil, err
	}
	if err := take(l.sheetWorking("In a sea of "+unit.Text(r.Shown.Height, 2)+" m", "s-", r.Shown.Sea)); err != nil {
		return nil, err
	}
	for i, w := range r.Shown.Levels {
		if i >= len(r.Levels) {
			break
		}
		if err := take(l.sheetWorking(capital(r.Levels[i].Name), "l"+wordsOfInt(i+1)+"-", w)); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// hardestFirst puts the seas met in order: records and trials as they stand, then the log by impacts.
func hardestFirst(all []limits.Met) []limits.Met {
	out := slices.Clone(all)
	logged := func(m limits.Met) int {
		if strings.HasPrefix(m.Subject, "hours ") {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(out, func(a, b limits.Met) int {
		if c := cmp.Compare(logged(a), logged(b)); c != 0 || logged(a) == 0 {
			return c
		}
		return cmp.Compare(b.Reckoned, a.Reckoned)
	})
	return out
}
