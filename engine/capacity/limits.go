package capacity

import (
	"fmt"
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// Names of the limits of this package.
const (
	LimitMass    = "what the loaded mass leaves"
	LimitMeant   = "persons for whom the boat is meant"
	LimitUnited  = "capacity rule of the United States"
	LimitFrance  = "French rule for undecked boats"
	mostUSFeet   = 20
	feetPerMetre = 1 / 0.3048
)

// LabelUnited is the key of the label of the United States.
const LabelUnited = "us"

// own gives the limits that this package finds.
func (a *assessor) own() []Limit {
	all := []Limit{a.byMass(), a.meant(), a.united()}
	if a.France != nil {
		all = append(all, a.french())
	}
	return all
}

// byMass is what is left of the loaded mass, for which structure and stability are reckoned.
func (a *assessor) byMass() Limit {
	l := Limit{Name: LimitMass}
	if a.Figures == nil {
		l.Why = "the method sheet " + sheetPlate + " is not at hand"
		return l
	}
	l.take(a.Figures, "m_ML", "n_ML")
	if one, ok := a.Figures.Value("m_1"); ok {
		a.PerPerson = unit.KG(one)
	}
	return l
}

// take reads load and persons out of a working. What has no figure says why.
func (l *Limit) take(w *method.Working, load, persons string) {
	if s, ok := w.Get(load); ok {
		l.Source, l.Basis = w.Sheet.Cite(s.Clause), s.Rests
		l.Why, l.Missing = s.Why(), s.Lacks()
	}
	if v, ok := w.Value(load); ok {
		l.Load, l.HasLoad = unit.KG(settled(max(0, v))), true
	}
	if persons == "" {
		return
	}
	if v, ok := w.Value(persons); ok {
		l.Persons, l.HasPersons = int(math.Round(v)), true
	} else if s, found := w.Get(persons); found && l.Why == "" {
		l.Why, l.Missing = s.Why(), s.Lacks()
	}
	l.Places = append(l.Places, placesOf(w)...)
}

// placesOf lists the record lines of the inputs that were written.
func placesOf(w *method.Working) []finding.Place {
	var out []finding.Place
	for i := range w.Inputs {
		if p := w.Inputs[i].Place; p.Known() && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// settled rounds to a thousandth of a gram, so that an outcome does not hang on the last bit of a machine's arithmetic.
func settled(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// meant is the number of persons that the record states for the boat.
func (a *assessor) meant() Limit {
	n := a.hull.Boat.Persons
	l := Limit{Name: LimitMeant, Basis: finding.Yard, Source: "the record of the boat"}
	if !n.Set {
		l.Why, l.Missing = "boat.persons is not written", []string{"boat.persons"}
		return l
	}
	l.Persons, l.HasPersons, l.Places = n.V, true, []finding.Place{n.At}
	return l
}

// united is the United States' rule. Its load is taken without outboards and what belongs to them.
func (a *assessor) united() Limit {
	l := Limit{Name: LimitUnited, Info: !a.American.Binds}
	if a.Loading == nil {
		l.Why = "the method sheet " + sheetUnited + " is not at hand"
		return l
	}
	l.take(a.Loading, "m_L", "n_P")
	switch {
	case a.American.Beyond:
		l.Why, l.Missing = a.American.Why, nil // what it would need is not asked of this boat
	case l.Info && l.HasLoad:
		l.Why = a.American.Why
	}
	return l
}

// american says how far the United States' rule reaches the boat: under 20 feet, and where its plates stand under it.
func (a *assessor) american() Reach {
	r := Reach{Asked: slices.Contains(a.hull.Plate.Law.V, "US")}
	length := a.hull.Capacity.Length
	if !length.Set {
		length = a.hull.Boat.LengthHull
	}
	feet := float64(length.V) * feetPerMetre
	r.Length = length.Set && settled(feet) < mostUSFeet
	r.Beyond = length.Set && !r.Length
	r.Binds = r.Length && r.Asked
	switch {
	case r.Binds:
	case !length.Set:
		r.Why = "for information: no length is written, so whether the rule applies is not known"
	case r.Beyond:
		r.Why = fmt.Sprintf("the rule does not apply to this length, %s ft; it is for boats under %d ft", unit.Text(feet, 1), mostUSFeet)
	default:
		r.Why = "for information: the record does not say that the boat's plates stand under the law of the United States"
	}
	return r
}

func (a *assessor) french() Limit {
	l := Limit{Name: LimitFrance, Info: true}
	l.take(a.France, "M", "")
	if l.HasLoad {
		l.Why = "for information: whether the order is in force was not looked at"
	}
	return l
}
