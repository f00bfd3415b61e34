package site

import (
	"html/template"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
	"hullfile/site/chart"
)

// SeamsPage shows all joints of the weld map, where they lie and what stands behind them.
type SeamsPage struct {
	Says       SeamsSays
	Findings   []FindingRow
	Picture    Drawing
	Joints     []JointRow
	Methods    []string
	Categories []CategoryRow
	Procedures []RateRow
	Welders    []RateRow
	Proposed   *ProposedSeams
	Notes      []Note
	Caution    template.HTML
}

// SeamsSays is the answer about the seams; the cover says it too.
type SeamsSays struct {
	Joints       int
	Metres       string
	Welded       string
	Shell, Whole string
	AllWhole     bool
	Open         int
	Standing     Standing
}

// JointRow is one line of the register of joints.
type JointRow struct {
	ID       string
	Link     Link
	Where    string
	What     string
	Category string
	Metres   string
	Parts    []Link
	Welders  string
	Done     string
	Seen     string
	Standing Standing
	Lacks    string
	Place    Link
}

// CategoryRow is how far the seams of one category were inspected, method by method.
type CategoryRow struct {
	Name   string
	Joints int
	Metres string
	Shares []string
}

// RateRow is how much of what was welded by one procedure, or one welder, had to be repaired.
type RateRow struct {
	Link     Link
	Welds    int
	Metres   string
	Repairs  int
	Repaired string
	Part     string
}

func (l *leaf) seamsPage() (SeamsPage, error) {
	d := l.dossier
	notes, err := l.notesFor("seams")
	if err != nil {
		return SeamsPage{}, err
	}
	p := SeamsPage{Says: l.seamsSays(), Findings: l.findingsHere(""), Picture: l.seamPicture(), Methods: seam.Methods(), Proposed: l.proposedSeams(), Notes: notes, Caution: l.press.notes["seams"]}
	for _, j := range d.Seams.Joints {
		p.Joints = append(p.Joints, l.jointRow(j))
	}
	for _, c := range d.Coverage.Categories {
		row := CategoryRow{Name: c.Name, Joints: c.Joints, Metres: unit.Text(c.Metres, 1)}
		for _, s := range c.Methods {
			row.Shares = append(row.Shares, unit.Text(100*s.Part, 0))
		}
		p.Categories = append(p.Categories, row)
	}
	for _, r := range d.Coverage.Procedures {
		p.Procedures = append(p.Procedures, l.rateRow("procedure "+r.Key, r))
	}
	for _, r := range d.Coverage.Welders {
		subject := "welder " + r.Key
		if who := d.Seams.Stamps[r.Key]; len(who) > 0 {
			subject = "welder " + who[0].ID
		}
		p.Welders = append(p.Welders, l.rateRow(subject, r))
	}
	return p, nil
}

func (l *leaf) rateRow(subject string, r seam.Rate) RateRow {
	return RateRow{l.subjectAs(subject, r.Key), r.Welds, unit.Text(r.Metres, 1), r.Repairs, unit.Text(r.Repaired, 2), unit.Text(100*r.Part, 1)}
}

func (l *leaf) seamsSays() SeamsSays {
	d := l.dossier
	s := SeamsSays{}
	if d.Seams == nil {
		return s
	}
	c := &d.Coverage
	s.Joints, s.Metres, s.Welded, s.Shell, s.Whole, s.Open = c.Joints, unit.Text(c.Metres, 1), unit.Text(c.Welded, 1), unit.Text(c.Shell, 1), unit.Text(c.Whole, 1), len(c.Open)
	s.AllWhole = c.Shell > 0 && c.Shell-c.Whole < 1e-9
	all := make([]finding.Standing, 0, len(d.Seams.Joints))
	for _, j := range d.Seams.Joints {
		all = append(all, d.Seams.Standing(j))
	}
	s.Standing = l.leftAt(seamsPath, all)
	return s
}

func (l *leaf) jointRow(j *seam.Joint) JointRow {
	m, rec := l.dossier.Seams, j.Record
	row := JointRow{
		Link: l.subjectAs("joint "+rec.ID, rec.ID), Where: rec.Where.V, What: seam.Short(rec), Category: rec.Category.V, Metres: written(float64(rec.Length.V), "m"),
		Standing: standing(m.Standing(j)), Place: l.place(rec.At),
	}
	for _, p := range j.Parts {
		if p != nil {
			row.Parts = append(row.Parts, l.subjectAs("part "+p.ID, p.ID))
		}
	}
	row.Welders, row.Done = j.WeldedBy()
	row.Seen = seenHow(j)
	if lacks := m.Lacks(j); len(lacks) > 0 {
		row.Lacks = lacks[0].Says
		if len(lacks) > 1 {
			row.Lacks += ", and " + strconv.Itoa(len(lacks)-1) + " more"
		}
	}
	return row
}

// seenHow says by what methods a joint was looked at, and how the last look ended.
func seenHow(j *seam.Joint) string {
	text := ""
	for _, method := range seam.Methods() {
		for _, look := range j.Looks {
			if look.Method.V == method {
				text += ", " + method
				break
			}
		}
	}
	if text == "" {
		return ""
	}
	if last := j.LastLook(); last != nil && last.Result.Set {
		return text[2:] + ": " + last.Result.V
	}
	return text[2:]
}

func (l *leaf) seamPicture() Drawing {
	m := l.dossier.Seams
	var all []chart.Seam
	for _, j := range m.Joints {
		r := j.Record
		if !r.AftX.Set || !r.AftGirth.Set || !r.ForeX.Set || !r.ForeGirth.Set {
			continue
		}
		all = append(all, chart.Seam{
			Key: r.ID, X: float64(r.AftX.V), Girth: float64(r.AftGirth.V), ToX: float64(r.ForeX.V), ToGirth: float64(r.ForeGirth.V),
			Standing: m.Standing(j), Shell: j.OfShell(), Name: j.OfShell() || r.Category.V == "watertight", Href: l.subject("joint " + r.ID).Href,
		})
	}
	if len(all) == 0 {
		return Drawing{}
	}
	return drawing("Seams on the unrolled hull", chart.SeamMap(l.dossier.Lines, all)).says(seamsSay(m))
}
