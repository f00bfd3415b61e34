package site

import (
	"slices"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// ownerValues makes the values that chapters of the owner's book may name, each with its unit. A value that is not on
// record has a reason in place of a text. The set is that of engine/handbook; a test holds the two together.
func (l *leaf) ownerValues() map[string]Figure {
	if l.values != nil {
		return l.values // as for another chapter
	}
	v := map[string]Figure{}
	l.identityValues(v)
	l.boatValues(v)
	l.afloatValues(v)
	l.fuelValues(v)
	l.careValues(v)
	l.values = v
	return v
}

const noBreak = "\u00a0"

// with gives a recorded quantity with its unit.
func with[T ~float64](v record.Val[T], sign string) Figure {
	return has(v.Set, written(float64(v.V), sign)+noBreak+sign, "not recorded")
}

// and puts a unit behind a text that may be empty.
func and(text, sign string) Figure { return has(text != "", text+noBreak+sign, "not worked out") }

func (l *leaf) identityValues(v map[string]Figure) {
	h, b := l.hull, l.dossier.Builder
	id := &h.Identity
	v["hull.number"] = Figure{Text: h.Number}
	v["hull.name"], v["hull.title"], v["hull.hin"], v["hull.owner"] = word(id.Name), word(h.Title), word(id.HIN), word(id.Owner)
	v["hull.design"] = has(h.Design.V != "", h.Design.V, "not recorded")
	v["hull.begun"], v["hull.launched"], v["hull.handed"] = day(id.KeelLaid), day(id.Launched), day(id.Handed)
	v["issue.number"] = has(h.Issue.Number.Set, wordsOfInt(h.Issue.Number.V), "not recorded")
	v["issue.date"] = day(h.Issue.Date)
	v["builder.name"], v["builder.address"], v["builder.contact"] = word(b.Name), word(b.Address), word(b.Contact)
}

func (l *leaf) boatValues(v map[string]Figure) {
	b, p := &l.hull.Boat, &l.hull.Plate
	v["boat.use"], v["boat.category"] = word(b.Use), word(b.Category)
	v["boat.length"], v["boat.beam"], v["boat.draught"] = with(b.LengthOverall, "m"), with(b.BeamHull, "m"), with(b.Draught, "m")
	v["boat.light"], v["boat.loaded"], v["boat.speed"] = with(b.LightMass, "kg"), with(b.LoadedMass, "kg"), with(b.Speed, "kn")
	v["boat.sea"] = has(b.Category.Set, categorySea(b.Category.V), "no design category is recorded")
	v["plate.load"], v["plate.person"], v["plate.power"] = with(p.MaxLoad, "kg"), with(p.PersonMass, "kg"), with(p.Power, "kW")
	v["plate.persons"] = has(p.Persons.Set, plural(p.Persons.V, "person", "persons"), "not recorded")
	v["plate.category"], v["plate.seen"] = word(p.Category), word(p.Seen)
	s := l.loadingSays()
	v["load.most"], v["load.persons"] = and(s.Load, "kg"), has(s.People != "", s.People, "not worked out")
	w := &l.dossier.Weight
	v["lift.light"] = has(w.Lift.Shown, mass(float64(w.Lift.Light))+noBreak+"kg", "the weight breakdown is not complete")
	v["lift.full"] = has(w.Lift.HasFull, mass(float64(w.Lift.Full))+noBreak+"kg", "the weight breakdown or the tanks are not complete")
	v["lift.centre"] = has(w.Light.HasX, unit.Text(w.Light.X, 2)+noBreak+"m", "the weight breakdown gives no centre")
}

// categorySea says in words what a design category means (Directive 2013/53/EU, annex I, A.1).
func categorySea(letter string) string {
	switch letter {
	case "A":
		return "wind that may exceed force 8 and significant waves of 4 m and more, abnormal conditions excluded"
	case "B":
		return "wind up to force 8 and significant waves up to 4 m"
	case "C":
		return "wind up to force 6 and significant waves up to 2 m"
	case "D":
		return "wind up to force 4 and significant waves up to 0.3 m, with occasional waves of 0.5 m"
	}
	return ""
}

func (l *leaf) afloatValues(v map[string]Figure) {
	s := l.afloatSays()
	v["afloat.freeboard"], v["afloat.crowd"] = and(s.Freeboard, "m"), has(s.Crowd != "", s.Crowd+"°", "not worked out")
	v["afloat.flooding"] = has(s.Flooding != "", s.Flooding+"°", "not worked out")
	v["afloat.opening"] = has(s.By != "", s.By, "not worked out")
	var drains []string
	for _, r := range l.hull.Recesses {
		if r.Drains.V {
			drains = append(drains, strings.ReplaceAll(r.Kind.V, "_", " "))
		}
	}
	v["afloat.drains"] = has(len(drains) > 0, strings.Join(drains, ", "), "nothing that drains by itself is recorded")
}

func (l *leaf) fuelValues(v map[string]Figure) {
	b, s := &l.hull.Boat, l.trialsSays()
	v["fuel.tank"], v["fuel.usable"] = with(b.FuelTank, "l"), with(b.FuelUsable, "l")
	var kinds []string
	for _, e := range l.hull.Engines {
		if e.Fuel.Set && !slices.Contains(kinds, e.Fuel.V) {
			kinds = append(kinds, e.Fuel.V)
		}
	}
	v["fuel.kind"] = has(len(kinds) > 0, strings.Join(kinds, ", "), "no engine says what it runs on")
	v["fuel.best"], v["fuel.mile"] = and(s.BestSpeed, "kn"), and(s.BestMile, "l")
	v["fuel.range"], v["fuel.reserve"] = and(s.Range, "nautical miles"), and(s.Reserve, "%")
	v["trial.speed"], v["trial.mass"] = and(s.Speed, "kn"), and(s.Mass, "kg")
	v["trial.noise"] = Figure{Why: "no reading is recorded"}
	for _, t := range l.hull.Trials {
		for _, n := range t.Noises {
			if n.Level.Set {
				v["trial.noise"] = Figure{Text: written(float64(n.Level.V), "dB") + noBreak + "dB(A)"}
			}
		}
	}
}

func (l *leaf) careValues(v map[string]Figure) {
	r := &l.dossier.Hours
	v["hours.run"] = has(len(r.Rows) > 0, unit.Text(r.Logged, 0)+noBreak+"h", "no running hours are recorded")
	v["hours.next"] = Figure{Why: "no running hours are recorded"}
	for i := len(r.Ladder) - 1; i >= 0; i-- {
		if s := &r.Ladder[i]; s.Look == nil && s.Hours > r.LookedTo {
			v["hours.next"] = Figure{Text: unit.Text(s.Hours, 0) + noBreak + "h"}
		}
	}
	var alloys []string
	for _, p := range l.hull.Plated() {
		if a := p.Alloy.V; a != "" && !slices.Contains(alloys, a) {
			alloys = append(alloys, a)
		}
	}
	v["build.alloys"] = has(len(alloys) > 0, strings.Join(alloys, " and "), "no panel is recorded")
	v["build.welders"], v["build.inspectors"] = l.initialsOfWelders(), l.initialsOfInspectors()
	v["warranty.structure"] = Figure{Why: "no warranty on the structure is recorded"}
	for i := range l.hull.Warranties {
		if w := &l.hull.Warranties[i]; !w.Of.Set || w.Of.V == "structure" {
			v["warranty.structure"] = Figure{Text: warrantyLength(w)}
		}
	}
}

// initialsOfWelders names those who welded this boat by their initials: more of a person does not leave the yard.
func (l *leaf) initialsOfWelders() Figure {
	var out []string
	for i := range l.hull.Welds {
		for _, w := range l.dossier.Builder.Welders {
			if w.Stamp.V == l.hull.Welds[i].Welder.V && l.hull.Welds[i].Welder.Set {
				out = addOnce(out, initials(l.nameOf("person", w.Person.V)))
			}
		}
	}
	return has(len(out) > 0, strings.Join(out, ", "), "no welds are recorded")
}

func (l *leaf) initialsOfInspectors() Figure {
	var out []string
	for i := range l.hull.Inspections {
		for _, p := range l.dossier.Builder.Inspectors {
			if p.ID == l.hull.Inspections[i].By.V {
				out = addOnce(out, initials(l.nameOf("person", p.Person.V)))
			}
		}
	}
	return has(len(out) > 0, strings.Join(out, ", "), "no inspections are recorded")
}

func addOnce(all []string, one string) []string {
	if one == "" || slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

// initials gives the first letters of a name.
func initials(name string) string {
	var b strings.Builder
	for _, part := range strings.Fields(name) {
		for _, r := range part {
			b.WriteString(strings.ToUpper(string(r)) + ".")
			break
		}
	}
	return b.String()
}
