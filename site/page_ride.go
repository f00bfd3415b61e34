package site

import (
	"html/template"
	"strings"

	"hullfile/engine/ride"
	"hullfile/engine/unit"
)

// RidePage shows how hard the boat was hit under way.
type RidePage struct {
	Says     RideSays
	Rides    []RidePart
	Assumed  []AssumptionRow
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// RideSays is the answer about the ride; it speaks of the hardest record.
type RideSays struct {
	Tally
	Rides  int
	Tenth  string // g, empty where no record gives one
	Speed  string
	Wave   string
	Peaks  int
	Error  string // percent
	Design string // g, empty where none
	Share  string // percent of the design acceleration
	Way    Link
}

// RidePart is one acceleration record.
type RidePart struct {
	ID       string
	Key      string
	Date     string
	Why      string
	Picture  Drawing
	Means    []RideMean
	Values   []Fact
	Doubts   string
	Facts    []Fact
	Checks   []CheckRow
	Note     string
	Findings []FindingRow
}

// RideMean is a mean of the highest impacts beside what the exponential law gives for the same mean of all.
type RideMean struct {
	Name  string
	G     Figure
	Count string
	Law   string
}

func (l *leaf) ridePage() (RidePage, error) {
	r := &l.dossier.Ride
	notes, err := l.notesFor("ride")
	if err != nil {
		return RidePage{}, err
	}
	p := RidePage{Says: l.rideSays(), Assumed: l.assumed(r.Assumptions), Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["ride"]}
	for i := range r.Rides {
		p.Rides = append(p.Rides, l.ridePart(&r.Rides[i]))
	}
	return p, nil
}

func (l *leaf) rideSays() RideSays {
	r := &l.dossier.Ride
	s := RideSays{Tally: l.tallyAt(ridePath, r.Checks), Rides: len(r.Rides)}
	var hardest *ride.Ride
	for i := range r.Rides {
		if one := &r.Rides[i]; one.Whole() && (hardest == nil || one.Tenth.G > hardest.Tenth.G) {
			hardest = one
		}
	}
	if hardest == nil {
		return s
	}
	rec := hardest.Record
	s.Tenth, s.Speed, s.Wave = unit.Text(hardest.Tenth.G, 2), unit.Plain(rec.Speed.V), unit.Plain(rec.Wave.V)
	s.Peaks, s.Error = len(hardest.Peaks.Sizes), unit.Text(100*hardest.Error, 0)
	s.Way = l.subjectAs("ride "+rec.ID, rec.ID)
	if hardest.Design > 0 {
		s.Design, s.Share = unit.Text(hardest.Design, 2), unit.Text(100*hardest.Tenth.G/hardest.Design, 0)
	}
	return s
}

func (l *leaf) ridePart(r *ride.Ride) RidePart {
	rec := r.Record
	subject := "ride " + rec.ID
	p := RidePart{
		ID: l.anchor(subject), Key: rec.ID, Date: rec.Date.V.String(), Why: r.Why, Doubts: strings.Join(r.Doubts, ", "),
		Facts: l.fieldsWritten(rec, "note", "date"), Checks: grouped(l.checkRows(checksOf(l.dossier.Ride.Checks, subject))), Note: rec.Note.V, Findings: l.findingsHere(l.anchor(subject)),
	}
	l.linkFacts(p.Facts)
	if r.Why != "" {
		return p
	}
	p.Picture = l.exceedancePicture(r)
	p.Means = rideMeans(r)
	p.Values = rideValues(r)
	return p
}

// rideMeans gives the means with those of the law that begins at the threshold.
func rideMeans(r *ride.Ride) []RideMean {
	average := r.Peaks.Average()
	over := average - r.Peaks.RMS
	law := func(n float64) string { return unit.Text(r.Peaks.RMS+float64(over*ride.Exponential(n)), 2) }
	row := func(name string, m ride.Mean, n float64) RideMean {
		return RideMean{name, has(m.Has, unit.Text(m.G, 2), "too few impacts"), has(m.Has, wordsOfInt(m.K), "").Text, law(n)}
	}
	return []RideMean{
		{"all impacts", Figure{Text: unit.Text(average, 2)}, wordsOfInt(len(r.Peaks.Sizes)), unit.Text(average, 2)},
		row("highest third", r.Third, 3), row("highest tenth", r.Tenth, 10), row("highest hundredth", r.Hundredth, 100),
	}
}

// rideValues are the rule and the figures without which a mean of impacts says nothing.
func rideValues(r *ride.Ride) []Fact {
	p := &r.Peaks
	fact := func(name, text, sign string) Fact { return Fact{Name: name, Value: Figure{Text: text}, Unit: sign} }
	out := []Fact{
		fact("length of the record", unit.Text(p.Seconds, 1), "s"), fact("samples", unit.Text(float64(p.Samples), 0), ""),
		fact("filter", unit.Plain(p.Rule.Filter), "Hz"), fact("an impact counts above", unit.Text(p.RMS, 3), "g"),
		fact("and apart from a higher one by", unit.Plain(p.Rule.Apart), "s"), fact("mean taken away", unit.Text(p.Mean, 3), "g"),
	}
	if r.Tenth.Has {
		out = append(out, fact("scatter of the highest tenth from the number of impacts alone", "± "+unit.Text(100*r.Error, 0), "%"))
	}
	if r.HasDeparts {
		out = append(out, fact("off the exponential law", signed(100*r.Departs, 0), "%"))
	}
	if r.Design > 0 && r.Tenth.Has {
		out = append(out, fact("design acceleration of the structure", unit.Text(r.Design, 2), "g"), fact("highest tenth over it", unit.Text(100*r.Tenth.G/r.Design, 0), "%"))
	}
	return out
}
