package site

import (
	"html/template"
	"strconv"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/survey"
	"hullfile/site/chart"
)

// surveyPath is where the survey sheet lies, surveyBlank the table to type it back with.
const (
	surveyPath  = "survey.html"
	surveyBlank = "survey.csv"
)

// SurveyPage is the sheet that a surveyor takes on board: what to look at, ranked from the file, with blanks to fill.
type SurveyPage struct {
	Number, Design string
	Says           SurveySays
	Skin           template.HTML
	Classes        []SurveyClass
	Strays         []SurveyRead
	Rules          []SurveyRule
	Blank          Link
	Columns        string
	Keys           []string
	Findings       []FindingRow
	Caution        template.HTML
}

// SurveySays is the answer of the sheet.
type SurveySays struct {
	Items, Read, Met, Short, NotShown int
	First                             string // the first item in words
}

// SurveyClass is one class of items.
type SurveyClass struct {
	Name  string
	Items []SurveyItem
	Left  string // how many more there are, and where
	Rest  Link
}

// SurveyItem is one thing to look at.
type SurveyItem struct {
	No       int
	ID       string // anchor
	Key      string // what is typed back
	Subject  Link
	Why      string
	Where    string
	Picture  template.HTML
	Do       string
	Unit     string
	Expected string
	Source   string
	Basis    Basis
	Places   []Link
	Read     []SurveyRead
}

// SurveyRead is one line that was filled in.
type SurveyRead struct {
	Key, Measured, Seen, Day, By, Instrument, Note string
	Standing                                       Standing
	Says                                           string
	Place                                          Link
}

// SurveyRule is one line of the rule by which items are ranked.
type SurveyRule struct{ Class, Order, Most string }

// surveySubjects are the subjects that this page shows.
func (b *book) surveySubjects(add func(subject, path, anchor string)) {
	add("survey", surveyPath, "")
	for i := range b.dossier.Survey.Items {
		key := b.dossier.Survey.Items[i].Key
		add("survey "+key, surveyPath, b.anchors.take("survey-"+key))
	}
}

func (l *leaf) surveyPage() (SurveyPage, error) {
	r := &l.dossier.Survey
	skin := chart.NewSkin(l.dossier.Lines)
	p := SurveyPage{
		Number: l.hull.Number, Design: l.hull.Design.V, Skin: skinPicture(skin),
		Blank: Link{Text: surveyBlank, Href: l.to(surveyBlank, "")}, Columns: strings.Join(surveyColumns, ","), Findings: l.findingsHere(""), Caution: l.press.notes["survey"],
	}
	for _, rule := range survey.Rules() {
		p.Rules = append(p.Rules, SurveyRule{capital(string(rule.Class)), rule.Order, strconv.Itoa(rule.Most)})
	}
	seen := map[string]bool{}
	for i := range r.Items {
		item := l.surveyItem(&r.Items[i], i+1, skin)
		if seen[item.ID] {
			item.ID = l.anchors.take(item.ID)
		}
		seen[item.ID] = true
		p.Keys = append(p.Keys, item.Key)
		name := capital(string(r.Items[i].Class))
		if n := len(p.Classes); n == 0 || p.Classes[n-1].Name != name {
			p.Classes = append(p.Classes, SurveyClass{Name: name})
		}
		at := &p.Classes[len(p.Classes)-1]
		at.Items = append(at.Items, item)
	}
	for _, left := range r.Left {
		for i := range p.Classes {
			if p.Classes[i].Name == capital(string(left.Class)) {
				p.Classes[i].Left, p.Classes[i].Rest = plural(left.N, "more of this kind is", "more of this kind are"), l.subject(left.Rest)
			}
		}
	}
	for i := range r.Strays {
		p.Strays = append(p.Strays, l.surveyRead(&r.Strays[i]))
	}
	p.Says = surveySays(r)
	return p, nil
}

func surveySays(r *survey.Result) SurveySays {
	s := SurveySays{Items: len(r.Items)}
	for i := range r.Items {
		if len(r.Items[i].Readings) > 0 {
			s.Read++
		}
		for _, read := range r.Items[i].Readings {
			switch standing(read.Standing).Class {
			case "met":
				s.Met++
			case "short":
				s.Short++
			default:
				s.NotShown++
			}
		}
	}
	if len(r.Items) > 0 {
		s.First = spoken(r.Items[0].Subject)
		if s.First == "boat" {
			s.First = "the boat itself"
		}
	}
	return s
}

func (l *leaf) surveyItem(i *survey.Item, no int, skin chart.Skin) SurveyItem {
	out := SurveyItem{
		No: no, ID: l.anchor("survey " + i.Key), Key: i.Key, Subject: l.subjectAs(i.Subject, capital(spoken(i.Subject))), Why: i.Why, Where: i.Where, Do: i.Do, Unit: i.Unit,
		Expected: i.Expect.Says, Source: i.Expect.Source, Basis: basis(i.Expect.Basis), Places: l.places(i.Places),
	}
	if strings.HasPrefix(i.Subject, "spot ") {
		out.Subject, out.Where = l.subjectAs(i.Subject, capital(i.Where)), ""
	}
	if i.Spot.Everywhere && i.Where == "" {
		out.Where = "on the boat as a whole"
	}
	if out.Source == out.Basis.Word {
		out.Source = ""
	}
	words := i.Where
	if words == "" {
		words = spoken(i.Subject)
	}
	out.Picture = spotPicture(skin, l.surveyMark(&i.Spot), "On the unrolled hull: "+words)
	for n := range i.Readings {
		out.Read = append(out.Read, l.surveyRead(&i.Readings[n]))
	}
	return out
}

// surveyMark turns keys of joints and panels into places on the skin.
func (l *leaf) surveyMark(s *survey.Spot) chart.Pin {
	var m chart.Pin
	for _, key := range s.Joints {
		if l.dossier.Seams == nil || l.dossier.Seams.ByKey[key] == nil {
			continue
		}
		if r := l.dossier.Seams.ByKey[key].Record; r.AftX.Set && r.AftGirth.Set && r.ForeX.Set && r.ForeGirth.Set {
			m.Seams = append(m.Seams, chart.Seam{Key: r.ID, X: float64(r.AftX.V), Girth: float64(r.AftGirth.V), ToX: float64(r.ForeX.V), ToGirth: float64(r.ForeGirth.V)})
		}
	}
	for _, key := range s.Panels {
		if p := l.panelOf(key); p != nil && p.X.Set {
			m.Fields = append(m.Fields, chart.Field{Zone: p.Zone.V, X: float64(p.X.V), Long: max(0.3, float64(p.Long.V)/1000)})
		}
	}
	return m
}

// panelOf finds a panel, listed by hand or of the grid.
func (l *leaf) panelOf(key string) *record.Panel {
	for i := range l.dossier.Structure.Panels {
		if p := l.dossier.Structure.Panels[i].Record; p.ID == key {
			return p
		}
	}
	return nil
}

func (l *leaf) surveyRead(r *survey.Reading) SurveyRead {
	rec := r.Record
	out := SurveyRead{Key: rec.Item.V, Seen: rec.Seen.V, Day: rec.Date.V.String(), By: rec.By.V, Note: rec.Note.V, Standing: standing(r.Standing), Says: closed(capital(r.Says)), Place: l.place(rec.At)}
	if rec.Measured.Set {
		out.Measured = written(float64(rec.Measured.V), "")
	}
	if rec.Instrument.Set {
		out.Instrument = l.nameOf("instrument", rec.Instrument.V)
	}
	return out
}

// surveyColumns are the heads of survey.csv.
var surveyColumns = []string{"item", "measured", "seen", "date", "by", "instrument", "note"}

// surveyBlanks writes a table with the keys of the sheet, ready to be filled and put beside hull.toml.
func (b *book) surveyBlanks() error {
	t := &csvTable{head: surveyColumns}
	for i := range b.dossier.Survey.Items {
		t.add(b.dossier.Survey.Items[i].Key, "", "", "", "", "", "")
	}
	return b.folder.write(surveyBlank, t.text())
}
