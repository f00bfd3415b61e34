package capacity

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// labels says what each plate must say, those of the boat first.
func (a *assessor) labels() {
	all := []Label{a.european(), a.unitedStates(), a.australian()}
	for _, onBoat := range []bool{true, false} {
		for _, l := range all {
			if l.OnBoat == onBoat {
				a.Labels = append(a.Labels, l)
			}
		}
	}
}

// under reports whether the boat's plates stand under a law.
func (a *assessor) under(laws ...string) bool {
	return slices.ContainsFunc(laws, func(l string) bool { return slices.Contains(a.hull.Plate.Law.V, l) })
}

// other reports whether the boat's plates stand under other laws alone.
func (a *assessor) other(laws ...string) bool { return a.hull.Plate.Law.Set && !a.under(laws...) }

func rests(w *method.Working, symbol string) finding.Basis {
	if s, ok := w.Get(symbol); ok {
		return s.Rests
	}
	return finding.Recalled
}

// field makes one; stated and reckoned are texts, empty where there is none. What was read off a plate of another law is
// no statement of this one.
func (l *Label) field(name, stated, reckoned, source string, basis finding.Basis, missing string) *Field {
	if l.Other && stated != "" {
		stated, reckoned = "", stated
	}
	l.Fields = append(l.Fields, Field{Name: name, Stated: stated, Reckoned: reckoned, Source: source, Basis: basis, Missing: missing})
	return &l.Fields[len(l.Fields)-1]
}

func (l *Label) large(name, stated, reckoned, source string, basis finding.Basis, missing string) {
	l.field(name, stated, reckoned, source, basis, missing).Large = true
}

// european is the builder's plate of the European Union and of the United Kingdom. The fields of the old directive were
// read; what the new one adds is recalled.
func (a *assessor) european() Label {
	const old, now = "94/25/EC as amended, annex I, A 2.2", "2013/53/EU, annex I, A 2.2"
	p, b := &a.hull.Plate, a.builder
	l := Label{Key: "eu", Title: "Builder's plate, European Union and United Kingdom", Under: now, OnBoat: a.under("EU", "UK"), Other: a.other("EU", "UK")}
	if !l.OnBoat {
		l.Why = a.notNamed()
	}
	l.field("maker", "", b.Name.V, old, finding.Read, "name")
	l.field("contact address", "", oneLine(b.Address.V), now, finding.Recalled, "address")
	l.field("mark of conformity", "", a.mark(), old, finding.Read, "plate.law").Note = "set as a mark of its own, not as letters"
	l.large("design category", p.Category.V, a.hull.Boat.Category.V, old, finding.Read, "boat.category")
	l.large("persons", count(p.Persons.V, p.Persons.Set), a.mostPersons(), old, finding.Read, "plate.persons")
	l.large("greatest load", kilograms(p.MaxLoad.V, p.MaxLoad.Set), a.mostLoad(), old, finding.Read, "plate.max_load_kg")
	l.Fields[len(l.Fields)-1].Note = "without the contents of full fixed tanks"
	l.field("greatest power", kilowatts(p.Power.V, p.Power.Set), kilowatts(a.hull.Boat.Power.V, a.hull.Boat.Power.Set), "ISO 14945", finding.Recalled, "plate.power_kw").Note = "of outboards"
	return l
}

func (a *assessor) notNamed() string {
	return "for information: the record does not name this law under plate.law"
}

// mark is CE in the Union and UKCA in the United Kingdom (recalled).
func (a *assessor) mark() string {
	switch eu, uk := a.under("EU"), a.under("UK"); {
	case eu && uk:
		return "CE, UKCA"
	case uk:
		return "UKCA"
	}
	return "CE"
}

// unitedStates is the capacity label of 33 CFR 183. What must stand in which size was read; the wording of 183.25(b) is
// that of our own.
func (a *assessor) unitedStates() Label {
	p := &a.hull.Plate
	l := Label{Key: LabelUnited, Title: "Capacity label, United States", Under: "33 CFR 183.23 and 183.25", OnBoat: a.under("US"), Why: a.American.Why}
	if a.American.Binds {
		l.Why = ""
	}
	l.large("persons", count(p.Persons.V, p.Persons.Set && l.OnBoat), a.whole("n_P", ""), "33 CFR 183.25(c)(2)", finding.Read, "capacity.max_displacement_kg")
	l.large("or, all persons", a.pounds(p.AllPersons.V, p.AllPersons.Set && l.OnBoat), a.whole("P", "lb"), "33 CFR 183.25(c)(3)", finding.Read, "capacity.max_displacement_kg")
	what := "persons, motors and gear"
	if a.hull.Capacity.Drive.V != "outboard" {
		what = "persons and gear"
	}
	l.large(what, a.pounds(p.WithEngine.V, p.WithEngine.Set && l.OnBoat), a.whole("W", "lb"), "33 CFR 183.23", finding.Recalled, "capacity.max_displacement_kg")
	if a.hull.Capacity.Drive.V == "outboard" {
		stated := ""
		if p.Power.Set && l.OnBoat {
			stated = unit.Text(float64(p.Power.V)/kwPerHP, 0) + " hp"
		}
		l.large("motors, horsepower", stated, a.horsepower(), "33 CFR 183.23, 183.53", finding.Recalled, "capacity.transom_width_m")
	}
	l.field("heading", "", "maximum capacities, U.S. Coast Guard", "33 CFR 183.25(c)(6) and (7)", finding.Read, "")
	l.field("maker", "", a.builder.Name.V, "33 CFR 181.15", finding.Recalled, "name")
	l.field("certification", "", "the words of the rule, which the maker stands for: \"meets the Coast Guard's safety standards in effect on the date of certification\"", "33 CFR 181.15", finding.Recalled, "").Note = "may share one label with the capacity if a border parts them"
	return l
}

// australian is the builders plate of the states. Its fields were read on the states' pages.
func (a *assessor) australian() Label {
	p := &a.hull.Plate
	l := Label{Key: "au", Title: "Builders plate, Australia", Under: "Australian Builders Plate standard, by state law", OnBoat: a.under("Australia"), Other: a.other("Australia")}
	if !l.OnBoat {
		l.Why = a.notNamed()
	}
	l.field("builder", "", a.builder.Name.V, sourceAU, finding.Read, "name")
	l.field("hull number, or year built", "", a.numberOrYear(), sourceAU, finding.Read, "identity.hin")
	l.large("outboards, greatest power", kilowatts(p.Power.V, p.Power.Set), kilowatts(a.hull.Boat.Power.V, a.hull.Boat.Power.Set), sourceAU, finding.Read, "plate.power_kw")
	l.field("outboards, greatest mass", kilograms(p.EngineMass.V, p.EngineMass.Set), "", sourceAU, finding.Read, "plate.engine_mass_kg")
	l.large("persons", count(p.Persons.V, p.Persons.Set), a.mostPersons(), sourceAU, finding.Read, "plate.persons")
	l.field("all persons, mass", kilograms(p.AllPersons.V, p.AllPersons.Set), a.personsMass(), sourceAU, finding.Read, "plate.persons_mass_kg")
	l.large("greatest load", kilograms(p.WithEngine.V, p.WithEngine.Set), a.value(a.Figures, "m_AU"), sourceAU, finding.Read, "plate.max_load_with_engines_kg")
	l.Fields[len(l.Fields)-1].Note = "people, equipment and outboards"
	if length := a.hull.Boat.LengthHull; length.Set && length.V < shortBoat {
		stated := ""
		if p.Buoyancy.Set {
			stated = p.Buoyancy.V + " flotation"
		}
		l.field("flotation", stated, "", sourceAU, finding.Read, "plate.buoyancy").Note = "asked only under 6 m"
	}
	l.field("warnings", "", "overloading is dangerous; move with care", sourceAU, finding.Read, "").Note = "the wording that the standard asks for was not read"
	l.field("figures by", p.Standard.V, "", sourceAU, finding.Read, "plate.standard")
	return l
}
