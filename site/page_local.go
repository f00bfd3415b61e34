package site

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// LocalPage lists brackets and fittings.
type LocalPage struct {
	Says      FamilySays
	Brackets  []LocalRow
	Fittings  []LocalRow
	Collision CollisionSays
	Findings  []FindingRow
}

// LocalRow is one kind of bracket, or one fitting.
type LocalRow struct {
	Link     Link
	What     string
	Where    string
	Count    int
	Force    string
	Moment   string
	Governs  string
	Says     string
	Margin   Figure
	Standing Standing
	Basis    Basis
	Why      string
}

// CollisionSays is the stated case of running into something.
type CollisionSays struct {
	There        bool
	Shown        bool
	Why          string
	Force        string
	Acceleration string
	Working      Working
}

// bracketKind is one bracket of the record wherever it sits.
type bracketKind struct {
	title string
	at    []int // indices into the result
	page  *section
}

// BracketPage shows one kind of bracket, or one fitting: what passes, what is asked, and the working.
type BracketPage struct {
	Title    string
	Under    string
	Says     FamilySays
	What     string // "brackets" or "fitting"
	Force    string
	Moment   string
	From     string
	Where    string
	Facts    []Fact
	Rows     []FamilyRow
	Needs    []NeedRow
	Worked   string
	Working  Working
	Why      string
	Compare  Compare
	Sheet    Link
	Work     string
	Findings []FindingRow
}

func (p BracketPage) heading() (heading, under string) { return p.Title, p.Under }

// bracketKinds groups brackets by their record.
func (b *book) bracketKinds() []*bracketKind {
	r := &b.dossier.Structure
	var out []*bracketKind
	for i := range r.Brackets {
		rec := r.Brackets[i].Record
		at := slices.IndexFunc(out, func(k *bracketKind) bool { return r.Brackets[k.at[0]].Record == rec })
		if at < 0 {
			out = append(out, &bracketKind{title: "Brackets " + rec.ID + ", " + rec.Joins.V})
			at = len(out) - 1
		}
		out[at].at = append(out[at].at, i)
	}
	return out
}

func (l *leaf) localPage() (LocalPage, error) {
	r := &l.dossier.Structure
	p := LocalPage{Findings: l.findingsOn()}
	all := finding.Met
	for _, k := range l.brackets {
		worst := l.worstBracket(k)
		row := localRow(&worst.Local)
		row.Link, row.What, row.Where = l.section(k.page), worst.Record.Joins.V, "least room at "+strings.TrimPrefix(worst.ID, "bracket "+worst.Record.ID+" ")
		row.Force, row.Moment = loadText(worst.Force), loadText(worst.Moment)
		for _, i := range k.at {
			row.Count += r.Brackets[i].Count
			p.Says.count(r.Brackets[i].Standing, r.Brackets[i].Count)
			all = finding.Worst(all, r.Brackets[i].Standing)
		}
		p.Brackets = append(p.Brackets, row)
	}
	for i := range r.Fittings {
		f := &r.Fittings[i]
		row := localRow(&f.Local)
		row.Link, row.What, row.Where, row.Count = l.subjectAs("fitting "+f.Record.ID, f.Record.ID), f.Record.Kind.V, f.Record.Where.V, 1
		row.Force, row.Moment = loadText(f.Force), loadText(f.Moment)
		p.Says.count(f.Standing, 1)
		all = finding.Worst(all, f.Standing)
		p.Fittings = append(p.Fittings, row)
	}
	alignRows(p.Brackets, forceAndMoment)
	alignRows(p.Fittings, forceAndMoment)
	p.Says.Standing = standing(all)
	var err error
	p.Collision, err = l.collisionSays()
	return p, err
}

func forceAndMoment(r *LocalRow) []*string { return []*string{&r.Force, &r.Moment} }

// loadText writes a force or a moment, a dash for none.
func loadText(v float64) string {
	if v == 0 {
		return "–"
	}
	return unit.Figures(v, 3)
}

func localRow(o *scantling.Local) LocalRow {
	row := LocalRow{Margin: has(o.Margin > 0, roomText(o.Standing, o.Margin), "not shown"), Standing: standing(o.Standing), Basis: basis(o.Basis), Why: o.Why}
	if o.Standing != finding.NotShown {
		row.Governs, row.Says = o.Governs.Name, needSizes(o.Governs)
	}
	return row
}

func (l *leaf) worstBracket(k *bracketKind) *scantling.Bracket {
	r := &l.dossier.Structure
	worst := &r.Brackets[k.at[0]]
	for _, i := range k.at[1:] {
		if b := &r.Brackets[i]; graver(b.Standing, worst.Standing, b.Margin, worst.Margin) {
			worst = b
		}
	}
	return worst
}

func (l *leaf) bracketPage(k *bracketKind) (BracketPage, error) {
	r := &l.dossier.Structure
	worst := l.worstBracket(k)
	p := BracketPage{Title: k.title, Under: "least room first", What: "brackets", Where: worst.ID, Force: loadText(worst.Force), Moment: loadText(worst.Moment), From: worst.From, Facts: l.fieldsWritten(worst.Record), Worked: worst.ID, Why: worst.Why, Findings: l.findingsOn()}
	p.Under = worst.Record.Joins.V
	var ws []compared
	all := finding.Met
	softest := finding.Basis("")
	for _, i := range k.at {
		b := &r.Brackets[i]
		p.Says.count(b.Standing, b.Count)
		all, softest = finding.Worst(all, b.Standing), finding.Softer(softest, b.Basis)
		row := localRow(&b.Local)
		p.Rows = append(p.Rows, FamilyRow{ID: l.anchor(b.ID), Name: b.ID, Where: b.Member, Count: b.Count, Sides: loadText(b.Force) + " / " + loadText(b.Moment), Governs: row.Governs, Margin: row.Margin, Standing: row.Standing, Why: row.Why,
			Needed: has(row.Says != "", sizeText(b.Governs, b.Governs.Needed), "not shown"), Fitted: has(row.Says != "", sizeText(b.Governs, b.Governs.Fitted), "not shown")})
		ws = append(ws, compared{name: b.ID, working: b.Working, governs: b.Governs.Symbol})
	}
	p.Says.Standing, p.Says.Workings, p.Says.Basis = standing(all), len(ws), basis(softest)
	if err := l.localWorking(&p, &worst.Local); err != nil {
		return p, err
	}
	p.Compare = l.compare(ws, worst.Working, p.Working.at)
	return p, nil
}

// localWorking sets what brackets and fittings have in common.
func (l *leaf) localWorking(p *BracketPage, o *scantling.Local) error {
	var err error
	if p.Working, err = l.working(o.Working, "s-", o.Governs.Symbol); err != nil {
		return err
	}
	p.Needs = needRows(o.Needs, o.Governs.Symbol, p.Working.at)
	if o.Margin > 0 {
		p.Says.Least = PieceBrief{Says: needWords(o.Governs), Margin: roomText(o.Standing, o.Margin)}
	}
	if o.Working != nil {
		p.Sheet, p.Work = l.sheetLink(o.Working.Sheet), workOf(o.Working.Sheet)
	}
	return nil
}

func (l *leaf) fittingPage(f *scantling.Fitting) (BracketPage, error) {
	p := BracketPage{Title: capital(f.Record.Kind.V) + " " + f.Record.ID, Under: f.Record.Where.V, What: "fitting", Where: f.Record.Where.V, Force: loadText(f.Force), Moment: loadText(f.Moment), Facts: l.fieldsWritten(f.Record), Worked: "fitting " + f.Record.ID, Why: f.Why, Findings: l.findingsOn()}
	p.Says.count(f.Standing, 1)
	p.Says.Standing, p.Says.Workings, p.Says.Basis = standing(f.Standing), 1, basis(f.Basis)
	return p, l.localWorking(&p, &f.Local)
}

func (l *leaf) collisionSays() (CollisionSays, error) {
	c := l.dossier.Structure.Collision
	if c == nil {
		return CollisionSays{}, nil
	}
	s := CollisionSays{There: true, Shown: c.Shown, Why: c.Why, Force: loadText(c.Force), Acceleration: unit.Text(c.Acceleration, 1)}
	var err error
	s.Working, err = l.working(c.Working, "c-", "")
	return s, err
}
