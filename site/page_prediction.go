package site

import (
	"html/template"
	"strings"

	"hullfile/engine"
	"hullfile/engine/method"
	"hullfile/engine/planing"
	"hullfile/engine/unit"
)

// PredictionPage shows what the boat should do by calculation beside what it did.
type PredictionPage struct {
	Says     PredictionSays
	Cases    []PredictionCase
	Assumed  []AssumptionRow
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// PredictionSays is the answer about the prediction.
type PredictionSays struct {
	Why         string // why there is none
	Trial       Link
	Mass        string // kg
	Speed       string // kn, measured; empty without a trial
	Least, Most string // kW at that speed
	Installed   string // kW
	From, To    string // kn that the installed power gives in the prediction; empty where the curve ends before
	Outside     bool   // the prediction at that speed lies outside its range
}

// PredictionCase is the boat at one mass.
type PredictionCase struct {
	Title    string
	Form     string
	Facts    []Fact
	Pictures []Drawing
	Settings []PredictedRow
	Limit    string // porpoising in one sentence
	Sister   SisterPart
	Workings []SheetWorking
	At       string // kn, of the workings
}

// PredictedRow is one setting of the trial beside its prediction.
type PredictedRow struct {
	Name              string
	Speed             Figure
	Coefficient       Figure
	Trim, Predicted   Figure
	Short             Figure
	Critical, Second  Figure
	Drag, Least, Most Figure
	Keel, Chine       Figure
	Spray             Figure
	Flags             string
	Outside           bool
}

// SisterPart is the coefficient that carries over to sister boats.
type SisterPart struct {
	Knots, Miles, Metric string // the coefficient in three sets of units
	Rows                 []SisterRow
	Most                 int // of them that are listed
}

// SisterRow is one sister with the speed to expect.
type SisterRow struct {
	Number  string
	Mass    string
	Power   string
	Speed   string
	Outside bool
}

func (l *leaf) predictionPage() (PredictionPage, error) {
	r := &l.dossier.Prediction
	notes, err := l.notesFor("prediction")
	if err != nil {
		return PredictionPage{}, err
	}
	p := PredictionPage{Says: l.predictionSays(), Assumed: l.assumed(r.Assumptions), Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["prediction"]}
	for i := range r.Cases {
		c, err := l.predictionCase(&r.Cases[i], i)
		if err != nil {
			return PredictionPage{}, err
		}
		p.Cases = append(p.Cases, c)
	}
	return p, nil
}

func (l *leaf) predictionSays() PredictionSays {
	r := &l.dossier.Prediction
	if len(r.Cases) == 0 {
		return PredictionSays{Why: r.Why}
	}
	c := &r.Cases[0]
	s := PredictionSays{Mass: mass(c.Mass)}
	if c.Trial != nil {
		s.Trial = l.subjectAs("trial "+c.Trial.ID, "trial "+c.Trial.ID)
	}
	if c.Installed > 0 {
		s.Installed = unit.Plain(c.Installed)
	}
	if c.Reach.HasLow && c.Reach.HasHigh {
		s.From, s.To = unit.Text(c.Reach.Low, 0), unit.Text(c.Reach.High, 0)
	}
	if top := c.FastestMeasured(); top != nil {
		s.Speed, s.Least, s.Most, s.Outside = unit.Text(top.Knots, 1), unit.Text(top.Least, 0), unit.Text(top.Most, 0), !top.Inside()
	}
	return s
}

func (l *leaf) predictionCase(c *planing.Case, n int) (PredictionCase, error) {
	key := "design"
	p := PredictionCase{Title: "The boat as designed", Form: "all forces through the centre of gravity (equations 36 and 37)", At: unit.Text(c.Shown.Knots, 1)}
	if c.Trial != nil {
		key = c.Trial.ID
		p.Title = "The boat as on trial " + key
	}
	if c.Full {
		p.Form = "thrust line and moments (equation 35); the short form stands beside it in the table"
	}
	p.Facts = l.caseFacts(c)
	p.Pictures = l.predictionPictures(c, key)
	for i := range c.Settings {
		p.Settings = append(p.Settings, predictedRow(&c.Settings[i]))
	}
	p.Limit = porpoisingWords(c)
	l.sisterPart(&p.Sister, c)
	var err error
	p.Workings, err = l.predictionWorkings(c, n)
	return p, err
}

func (l *leaf) caseFacts(c *planing.Case) []Fact {
	fact := func(name, text, sign string) Fact { return Fact{Name: name, Value: Figure{Text: text}, Unit: sign} }
	out := []Fact{
		fact("mass", mass(c.Mass), "kg"), fact("centre of gravity, forward of the transom", unit.Text(c.LCG, 2), "m"),
		fact("beam between chines", unit.Text(c.Hull.Beam, 2), "m"), fact("deadrise", unit.Plain(c.Hull.Deadrise), "°"),
	}
	if c.HasVCG {
		out = append(out, fact("centre of gravity, above the keel", unit.Text(c.VCG, 2), "m"))
	}
	if c.Full {
		out = append(out, fact("centre of gravity above the thrust line", unit.Text(c.Hull.ThrustArm, 2), "m"))
	}
	if c.Installed > 0 {
		out = append(out, fact("installed power", unit.Plain(c.Installed), "kW"))
	}
	return out
}

func predictedRow(s *planing.Setting) PredictedRow {
	row := PredictedRow{Name: s.Name, Speed: has(s.Knots > 0, unit.Text(s.Knots, 1), "no mean"), Trim: has(s.HasTrim, unit.Text(s.Trim, 1), "not recorded"), Flags: s.Why}
	if s.Point == nil {
		none := Figure{Why: "not predicted"}
		row.Coefficient, row.Predicted, row.Short, row.Critical, row.Second = none, none, none, none, none
		row.Drag, row.Least, row.Most, row.Keel, row.Chine, row.Spray = none, none, none, none, none, none
		return row
	}
	p := s.Point
	text := func(v float64, n int) Figure { return Figure{Text: unit.Text(v, n)} }
	row.Coefficient, row.Predicted, row.Short = text(p.Coefficient, 2), text(p.Run.Trim, 1), has(p.HasOther, unit.Text(p.Other.Trim, 1), "the form above is the short one")
	row.Critical, row.Second = has(p.HasCritical, unit.Text(p.Critical, 1), "outside the chart"), text(p.Second, 1)
	row.Drag, row.Least, row.Most, row.Spray = text(p.Drag/1000, 2), text(p.Least, 0), text(p.Most, 0), has(p.Spray > 0, unit.Text(p.Spray/1000, 2), "left out")
	row.Keel, row.Chine = text(p.Run.Keel, 2), text(p.Run.Chine, 2)
	row.Flags, row.Outside = strings.Join(p.Flags, "; "), !p.Inside()
	return row
}

// porpoisingWords says how far the boat stays below the limit, or where the chart gives none.
func porpoisingWords(c *planing.Case) string {
	least, at, found := 0.0, 0.0, false
	for i := range c.Points {
		p := &c.Points[i]
		if !p.HasCritical || !p.Inside() {
			continue
		}
		if room := p.Critical - p.Run.Trim; !found || room < least {
			least, at, found = room, p.Knots, true
		}
	}
	switch {
	case !found && len(c.Points) > 0:
		return "No porpoising limit can be read off the chart at any of these speeds: " + c.Points[len(c.Points)-1].OffChart
	case !found:
		return ""
	case least < 0:
		return "At " + unit.Text(at, 0) + " kn the predicted trim lies " + unit.Text(-least, 1) + "° above the porpoising limit, which is read off a figure to within 0.3°"
	}
	return "The predicted trim stays below the porpoising limit, by " + unit.Text(least, 1) + "° at the least, at " + unit.Text(at, 0) + " kn; the limit is read off a figure to within 0.3°"
}

func (l *leaf) sisterPart(s *SisterPart, c *planing.Case) {
	w := c.Shown.Sister
	for symbol, to := range map[string]*string{"C_kn": &s.Knots, "C_mph": &s.Miles} {
		if v, ok := w.Value(symbol); ok {
			*to = unit.Text(v, 0)
		}
	}
	if v, ok := w.Value("K"); ok {
		s.Metric = unit.Text(v, 1)
	}
	s.Most = engine.MostSisters
	for _, one := range c.Sisters {
		s.Rows = append(s.Rows, SisterRow{one.Number, mass(one.Mass), unit.Plain(one.Power), unit.Text(one.Speed, 1), one.Outside})
	}
}

func (l *leaf) predictionWorkings(c *planing.Case, n int) ([]SheetWorking, error) {
	prefix := "p" + wordsOfInt(n+1) + "-"
	var out []SheetWorking
	w := &c.Shown
	for _, one := range []struct {
		title, key string
		working    *method.Working
	}{
		{"Running attitude and bare hull", "a-", w.Planing}, {"Whisker spray", "s-", w.Spray}, {"Porpoising limit", "l-", w.Porpoising},
		{"Power", "w-", w.Power}, {"Coefficient for sister boats", "c-", w.Sister},
	} {
		part, ok, err := l.sheetWorking(one.title, prefix+one.key, one.working)
		if err != nil {
			return nil, err
		}
		if ok {
			out = append(out, part)
		}
	}
	return out, nil
}
