package site

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// afloatSays is the answer: the loaded condition first, because it is the one that the plate speaks of.
func (l *leaf) afloatSays() AfloatSays {
	d := l.dossier
	s := AfloatSays{Tally: l.tallyAt(afloatPath, l.afloatChecks()), Of: len(d.Loading.Conditions)}
	for i := range d.Loading.Conditions {
		if d.Loading.Conditions[i].Floats {
			s.Conditions++
		}
	}
	c, ok := d.Loading.Find("loaded ready")
	switch {
	case !ok:
		s.Why = "no loaded condition"
		if d.Lines.Hull == nil {
			s.Why = "the lines are not on record"
		} else if d.Lines.Why != "" {
			s.Why = d.Lines.Why
		}
		return s
	case !c.Floats:
		s.Why = c.Why
		return s
	}
	s.Title, s.Mass, s.Freeboard, s.GM = c.Title, mass(c.Mass), unit.Text(c.Least, 2), unit.Text(c.GMFluid, 2)
	l.saysLever(&s, c.ID)
	l.saysCrowd(&s)
	for _, k := range l.afloatChecks() {
		if k.Standing == finding.Short {
			s.Short = append(s.Short, k.Says)
		}
	}
	return s
}

func (l *leaf) saysLever(s *AfloatSays, id string) {
	c := l.leverOf(id)
	if c == nil || len(c.Sides) == 0 {
		return
	}
	side := &c.Sides[0]
	if side.Greatest > 0 {
		s.Lever, s.LeverAt = unit.Text(side.Greatest, 2), unit.Text(side.GreatestA, 0)
	}
	if !side.Flooding.Never {
		s.Flooding, s.By = unit.Text(side.Flooding.Heel, 0), side.Flooding.Name
	}
}

// saysCrowd takes the greatest heel with everybody to one side.
func (l *leaf) saysCrowd(s *AfloatSays) {
	most := math.Inf(-1)
	for _, h := range l.dossier.Stability.Heelings {
		if h.Rests && ofPeople(h.Name) && h.Heel > most {
			most = h.Heel
			s.Crowd = unit.Text(h.Heel, 1)
		}
	}
}
