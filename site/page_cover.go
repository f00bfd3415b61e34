package site

import (
	"html/template"

	"hullfile/engine/finding"
)

// CoverPage says what the boat is, how it stands, and what is short, contradictory or missing.
type CoverPage struct {
	Number      string
	Title       string
	Use         string
	Verdict     Verdict
	Facts       []Fact
	Ways        []Ways
	Boat        Discipline
	Data        BoatSays
	Structure   Discipline
	Panels      StructureSays
	Weight      Discipline
	Masses      WeightSays
	Afloat      Discipline
	Floats      AfloatSays
	Loading     Discipline
	Plates      LoadingSays
	Trials      Discipline
	Speeds      TrialsSays
	Ride        Discipline
	Hits        RideSays
	Limits      Discipline
	Fast        LimitsSays
	Hours       Discipline
	Run         HoursSays
	Materials   Discipline
	Metal       MaterialsSays
	Welding     Discipline
	Weld        WeldingSays
	Seams       Discipline
	Chains      SeamsSays
	Looked      Discipline
	Looks       InspectionsSays
	Required    Discipline
	Asked       RequirementsSays
	Documents   Discipline
	Papers      DocumentsSays
	Open        []FindingRow
	More        int // findings that the cover does not list
	AllFindings Link
	Issue       []Fact
	Issues      []IssueRow
	HowToCheck  Link
	Root        string
	About       template.HTML
	Caution     template.HTML
}

// Verdict is the standing of the whole file in words.
type Verdict struct {
	Tally
	Counts         []Count
	Contradictions int
	Soft           bool // no check is short or not shown, but there are doubts
}

// Discipline is one line of the table of standings.
type Discipline struct {
	Link Link
	Tally
	Open int
}

// coverFindings is the number of findings that the cover lists.
const coverFindings = 12

// principal are the keys of [boat] that the cover shows.
var principal = []string{"length_hull_m", "beam_hull_m", "loaded_mass_kg", "speed_kn", "category", "persons", "power_kw", "fuel_usable_l"}

// whose says whose figure one is of which the sentences below have others, reckoned or timed.
var whose = map[string]string{"loaded_mass_kg": ", as stated", "speed_kn": ", as intended"}

func (l *leaf) coverPage() (CoverPage, error) {
	d, h := l.dossier, l.hull
	c := CoverPage{
		Number: h.Number, Title: h.Title.V, Use: h.Boat.Use.V, Verdict: l.verdict(), Facts: l.coverFacts(), Ways: l.ways(),
		Boat: l.discipline(boatPath, l.otherChecks()), Data: l.boatSays(),
		Structure: l.discipline(structurePath, d.Structure.Checks), Panels: l.structureSays(),
		Weight: l.discipline(weightPath, d.Weight.Checks), Masses: l.weightSays(),
		Afloat: l.discipline(afloatPath, l.afloatChecks()), Floats: l.afloatSays(),
		Loading: l.discipline(loadingPath, d.Capacity.Checks), Plates: l.loadingSays(),
		Trials: l.discipline(trialsPath, d.Trials.Checks), Speeds: l.trialsSays(),
		Ride: l.discipline(ridePath, d.Ride.Checks), Hits: l.rideSays(),
		Limits: l.discipline(limitsPath, nil), Fast: l.limitsSays(),
		Hours: l.discipline(hoursPath, d.Hours.Checks), Run: l.hoursSays(),
		Materials: l.discipline(materialsPath, d.Stock.Checks), Metal: l.materialsSays(),
		Welding: l.discipline(weldingPath, d.Welding.Checks), Weld: l.weldingSays(),
		Seams: l.seamDiscipline(), Chains: l.seamsSays(),
		Looked: l.discipline(inspectionsPath, d.Inspections.Checks), Looks: l.inspectionsSays(),
		Required: l.discipline(requirementsPath, d.Requirements.Checks), Asked: l.requirementsSays(),
		Documents: l.discipline(documentsPath, d.Documents.Checks), Papers: l.documentsSays(),
		AllFindings: Link{Href: l.to(findingsPath, "")}, HowToCheck: Link{Href: l.to(documentsPath, "hashes")},
		Root: l.root, About: l.press.notes["about"], Caution: l.press.notes["cautions"],
		Issue: l.fieldsWritten(&h.Issue), Issues: l.issueRows(),
	}
	for i, f := range l.findings {
		if f.Kind == finding.Doubt {
			break
		}
		if i == coverFindings {
			break
		}
		row := l.findingRow(f, i+1)
		row.ID = ""
		c.Open = append(c.Open, row)
	}
	c.More = len(l.findings) - len(c.Open)
	return c, nil
}

func (l *leaf) verdict() Verdict {
	v := Verdict{Tally: tally(l.dossier.Checks), Counts: l.counts()}
	n := tellKinds(l.findings)
	v.Contradictions = n[finding.Contradiction]
	v.Standing = standing(l.dossier.Standing())
	v.Soft = n[finding.Doubt] > 0
	return v
}

func (l *leaf) discipline(path string, checks []finding.Check) Discipline {
	s := l.sectionOf(path)
	return Discipline{Link: l.section(s), Tally: l.tallyAt(path, checks), Open: l.open[s]}
}

// seamDiscipline counts joints where others count checks: one that has a whole chain is met.
func (l *leaf) seamDiscipline() Discipline {
	out := l.discipline(seamsPath, nil)
	if l.dossier.Seams == nil {
		return out
	}
	joints := make([]finding.Check, 0, len(l.dossier.Seams.Joints))
	for _, j := range l.dossier.Seams.Joints {
		joints = append(joints, finding.Check{Standing: l.dossier.Seams.Standing(j)})
	}
	out.Tally = l.tallyAt(seamsPath, joints)
	return out
}

// coverFacts are the facts that an owner would name first.
func (l *leaf) coverFacts() []Fact {
	all := l.fields(&l.hull.Boat)
	var out []Fact
	for _, key := range principal {
		for _, f := range all {
			if f.Key == key {
				f.Name += whose[key]
				out = append(out, f)
			}
		}
	}
	return append(out, l.fieldsWritten(&l.hull.Identity, "state", "owner_contact")...) // whom to call is asked by a recall, not by whoever opens the file
}

func (c CoverPage) heading() (heading, under string) { return c.Number, c.Title }
