package site

import (
	"strings"

	"hullfile/engine/scantling"
	"hullfile/engine/unit"
	"hullfile/site/chart"
)

// WhatIfPage says what another spacing, plate, bar, speed or mass would do.
type WhatIfPage struct {
	Headrooms []HeadroomRow
	Zones     []WhatIfZone
	Findings  []FindingRow
}

// HeadroomRow says how far a value of the boat may go by one rule.
type HeadroomRow struct {
	Rule    Link
	Governs bool
	Of      string
	Unit    string
	Now     string
	Most    Figure
	Limits  Link
	Says    Prose
	Counts  int
}

// WhatIfZone is one zone.
type WhatIfZone struct {
	ID       string
	Name     string
	Panel    Link
	Member   Link
	Fitted   string
	Spacing  string
	Long     string // the side that stays
	Stresses []StressRow
	Carries  string
	Picture  Drawing
	Greatest []SpacingRow
	Builds   []BuildRow
	Lightest BuildRow // that meets and is lighter than as built
	Lighter  bool
	Lighten  string // by so many kilograms
}

// StressRow is the stress that a rule allows in the panel that is drawn.
type StressRow struct {
	Rule Link
	N    string // N/mm²
}

// SpacingRow is the greatest spacing by one rule.
type SpacingRow struct {
	Rule    Link
	Governs bool
	Plate   Figure
	Member  Figure
}

// BuildRow is plate and bar of a zone at one spacing.
type BuildRow struct {
	AsBuilt bool
	Plate   string
	Section string
	Spacing string
	Mass    string
	Weld    string
	Saved   string
	Spared  string
	Meets   bool
}

func (l *leaf) whatIfPage() (WhatIfPage, error) {
	p := WhatIfPage{Headrooms: l.headroomRows(), Findings: l.findingsOn()}
	ids := slugs{}
	for _, zone := range l.zoneNames() {
		for i := range l.dossier.Structure.WhatIfs {
			if q := &l.dossier.Structure.WhatIfs[i]; q.Zone == zone {
				p.Zones = append(p.Zones, l.whatIfZone(q, ids.take(q.Zone)))
			}
		}
	}
	return p, nil
}

func (p WhatIfPage) heading() (heading, under string) {
	return "What if", "another spacing, plate, bar, speed or mass"
}

func (l *leaf) headroomRows() []HeadroomRow {
	var out []HeadroomRow
	r := &l.dossier.Structure
	for i := range r.Headrooms {
		h := &r.Headrooms[i]
		row := HeadroomRow{Rule: l.ruleLink(&r.Rules[h.Rule]), Governs: h.Rule == 0, Of: h.Of, Unit: h.Unit, Now: headroomText(h.Unit, h.Now), Limits: l.subject(h.Limits), Says: Prose(closed(capital(h.Says))), Counts: h.Counts}
		switch {
		case !h.Shown:
			row.Most, row.Says = Figure{Why: h.Why}, Prose(closed(capital(h.Why)))
		case h.Ends:
			row.Most = Figure{Text: headroomText(h.Unit, h.Most) + " or more"}
		default:
			row.Most = has(h.Most > 0, headroomText(h.Unit, h.Most), "short at every value tried")
		}
		out = append(out, row)
	}
	return out
}

func headroomText(sign string, v float64) string {
	if sign == "kg" {
		return mass(v)
	}
	return unit.Text(v, 1)
}

func (l *leaf) whatIfZone(q *scantling.WhatIf, id string) WhatIfZone {
	r := &l.dossier.Structure
	panel := &r.Panels[q.Panel]
	z := WhatIfZone{ID: id, Name: q.Zone, Panel: l.subject("panel " + panel.Record.ID), Fitted: written(float64(q.Fitted), "mm"), Spacing: unit.Text(q.Spacing, 0), Long: measured(panel.Record.Long, "mm").Text, Stresses: l.stressRows(q), Picture: l.whatIfPicture(q, id)}
	if q.Member >= 0 {
		z.Member, z.Carries = l.subjectAs("member "+r.Members[q.Member].Record.ID, r.Members[q.Member].Record.ID), unit.Text(q.Carries, 0)
	}
	for _, s := range q.Greatest {
		z.Greatest = append(z.Greatest, SpacingRow{l.ruleLink(&r.Rules[s.Rule]), s.Rule == 0, spacingFigure(s.Plate, s.PlateEnds), spacingFigure(s.Member, s.MemberEnds)})
	}
	for i := range q.Builds {
		b := buildRow(&q.Builds[i], i == 0)
		z.Builds = append(z.Builds, b)
		if i > 0 && b.Meets && !z.Lighter && q.Builds[i].Saved > 0 {
			z.Lightest, z.Lighter, z.Lighten = b, true, mass(float64(q.Builds[i].Saved))
		}
	}
	return z
}

// stressRows gives, for each rule that goes by pressure, the stress that it allows; it does not change with the spacing.
func (l *leaf) stressRows(q *scantling.WhatIf) []StressRow {
	var out []StressRow
	for _, c := range q.Curves {
		for _, p := range c.Points {
			if p.Shown && p.Stress > 0 {
				out = append(out, StressRow{l.ruleLink(&l.dossier.Structure.Rules[c.Rule]), unit.Text(p.Stress, 0)})
				break
			}
		}
	}
	return out
}

func spacingFigure(v unit.MM, ends bool) Figure {
	switch {
	case v <= 0:
		return Figure{Why: "not shown, or short at any spacing"}
	case ends:
		return Figure{Text: unit.Text(v, 0) + " or more"}
	}
	return Figure{Text: unit.Text(v, 0)}
}

func buildRow(b *scantling.Build, asBuilt bool) BuildRow {
	row := BuildRow{AsBuilt: asBuilt, Plate: "as they are", Section: "as they are", Spacing: unit.Text(b.Spacing, 0), Mass: mass(float64(b.Mass)), Weld: unit.Text(b.Weld, 1), Saved: signed(-float64(b.Saved), 1), Spared: signed(-float64(b.Spared), 1), Meets: b.Meets}
	if b.Plate > 0 {
		row.Plate = written(float64(b.Plate), "mm")
	}
	if b.Section != "" {
		row.Section = b.Section
	}
	return row
}

// whatIfPicture draws the thickness that each rule needs over the spacing of the stiffeners.
func (l *leaf) whatIfPicture(q *scantling.WhatIf, id string) Drawing {
	spec := chart.Spec{ID: "what-if-" + id, Title: "Thickness needed over stiffener spacing, " + q.Zone,
		X: chart.Axis{Name: "Short side of the panel", Unit: "mm"}, Y: chart.Axis{Name: "Thickness needed", Unit: "mm", From0: true},
		Note:  "The ring is the panel as built: its short side and the plate fitted. A rule is met where its line passes below the ring.",
		Marks: []chart.Mark{{X: float64(q.Spacing), Y: float64(q.Fitted), Text: "fitted " + written(float64(q.Fitted), "mm") + " mm"}},
		Table: [][]string{{"Short side, mm"}}}
	spec.Dots = []chart.Dots{{Name: "as built", X: []float64{float64(q.Spacing)}, Y: []float64{float64(q.Fitted)}, Class: chart.OneWay}}
	classes := []chart.Class{chart.LineA, chart.LineB, chart.LineC, chart.LineD}
	rules := l.dossier.Structure.Rules
	for _, c := range q.Curves {
		line := chart.Line{Name: shortRule(rules[c.Rule].Cite), Class: classes[c.Rule%len(classes)]}
		for _, p := range c.Points {
			if p.Shown {
				line.X, line.Y = append(line.X, float64(p.Spacing)), append(line.Y, float64(p.Needed))
			}
		}
		if len(line.X) > 0 {
			spec.Lines = append(spec.Lines, line)
		}
	}
	spec.Table = curveTable(q, rules)
	return drawing(spec.Title, chart.Plot(spec)).says(whatIfSays(q))
}

// curveTable lists the points of the curves: for each rule the thickness and the pressure that it stands on.
func curveTable(q *scantling.WhatIf, rules []scantling.Rule) [][]string {
	head := []string{"Short side, mm"}
	var out [][]string
	for n, c := range q.Curves {
		head = append(head, shortRule(rules[c.Rule].Cite)+", mm", "under kN/m²")
		for i, p := range c.Points {
			if n == 0 {
				out = append(out, []string{unit.Text(p.Spacing, 0)})
			}
			if i >= len(out) {
				continue
			}
			text, under := "–", "–"
			if p.Shown {
				text = unit.Up(p.Needed, 2)
			}
			if p.Pressure > 0 {
				under = unit.Text(p.Pressure, 1)
			}
			out[i] = append(out[i], text, under)
		}
	}
	return append([][]string{head}, out...)
}

// shortRule cuts the name of a work to what stands at the end of a line.
func shortRule(cite string) string {
	const most = 24
	if len([]rune(cite)) <= most {
		return cite
	}
	cut := string([]rune(cite)[:most-1])
	if at := strings.LastIndex(cut, " "); at > most/2 {
		cut = cut[:at]
	}
	return strings.TrimRight(cut, " ,;") + " …"
}
