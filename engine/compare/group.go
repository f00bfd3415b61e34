package compare

import "strings"

// groups lists the parts of a file by which changes are told, in the order in which a surveyor goes through a boat.
func groups() []Group {
	return []Group{
		{Key: "identity", Name: "Identity and issue", Again: "read the number off the boat, and ask why the file was issued anew"},
		{Key: "boat", Name: "Principal data", Again: "hold a tape to the dimensions named"},
		{Key: "structure", Name: "Structure", Again: "hold a gauge to the plates named, and look at the members"},
		{Key: "materials", Name: "Metal and parts", Again: "hold the marks on the metal against the certificates"},
		{Key: "seams", Name: "Seams and inspections", Again: "look at the seams named, and read the reports of their inspection"},
		{Key: "weight", Name: "Weight", Again: "ask for a weighing that is later than the change"},
		{Key: "afloat", Name: "Lines, stability and flooding", Again: "hold openings, tanks and conditions against the boat, and the tests on the water against the day of the change"},
		{Key: "loading", Name: "Loading and plates", Again: "read the plates on board"},
		{Key: "trials", Name: "Trials, prediction and limits", Again: "read the sheets of the trial; another engine, propeller or mass asks for a new one"},
		{Key: "hours", Name: "Running hours and care", Again: "read the hour meter, and look where the last look was"},
		{Key: "requirements", Name: "Requirements", Again: "see who took each item as answered, and by what"},
		{Key: "documents", Name: "Documents", Again: "read the papers named"},
		{Key: "yard", Name: "Yard, people and instruments", Again: "see whether people and instruments were fit on the day they were used"},
		{Key: otherGroup, Name: "Other", Again: "read what is named"},
	}
}

const otherGroup = "other"

// recordGroups says to which group a table of the records belongs, by the first part of its key.
var recordGroups = map[string]string{
	"identity": "identity", "issue": "identity", "title": "identity", "design": "identity", "based_on": "identity", "number": "identity", "note": "identity",
	"boat": "boat", "panel": "structure", "plating": "structure", "member": "structure", "stiffener": "structure", "bracket": "structure", "fitting": "structure", "section": "structure", "stringer": "structure", "support": "structure", "gauging": "structure", "rules": "structure", "frame": "structure",
	"part": "materials", "stock": "materials",
	"joint": "seams", "weld": "seams", "inspection": "seams", "imperfection": "seams", "nonconformity": "seams", "repair": "seams", "hold_point": "seams",
	"leak_test": "seams", "stage": "seams", "extent": "seams", "procedures": "seams",
	"weight": "weight", "weighing": "weight",
	"lines": "afloat", "station": "afloat", "recess": "afloat", "opening": "afloat", "afloat": "afloat", "tank": "afloat", "crew_area": "afloat", "condition": "afloat",
	"buoyancy": "afloat", "heel_test": "afloat", "freeboard": "afloat", "offset_test": "afloat", "swamp_test": "afloat", "list_test": "afloat",
	"plate": "loading", "capacity": "loading",
	"trial": "trials", "prediction": "trials", "ride": "trials", "spot": "trials", "comfort": "trials", "engine": "trials",
	"hours": "hours", "look": "hours", "warranty": "hours", "service": "hours", "serviced": "hours", "care": "hours", "claim": "hours", "spare": "hours", "survey": "hours",
	"fitted": "requirements", "conformity": "requirements", "accepted": "requirements", "document": "documents", "yard": "yard", "contact": "yard",
}

// resultGroups does the same for results.json.
var resultGroups = map[string]string{
	"panels": "structure", "structure": "structure", "weight": "weight", "lines": "afloat", "afloat": "afloat", "capacity": "loading", "trials": "trials", "logs": "trials", "manoeuvres": "trials",
	"seams": "seams", "requirements": "requirements", "underway hours": "hours", "underway": "trials",
}

// subjectGroups does the same for the first word of what a check or a finding is about.
var subjectGroups = map[string]string{
	"panel": "structure", "member": "structure", "stiffener": "structure", "bracket": "structure", "lot": "materials", "part": "materials", "consumable": "seams", "welder": "seams", "qualification": "seams", "procedure": "seams",
	"leak": "seams", "joints": "seams", "welds": "seams", "inspections": "seams", "weights": "weight", "loading": "afloat", "running": "hours", "limits": "trials", "prediction": "trials", "person": "yard", "instrument": "yard",
	"list": "requirements", "requirement": "requirements", "item": "requirements",
}

// boatRules does the same for checks of the boat as a whole, by the beginning of their rule.
var boatRules = []struct{ begins, group string }{
	{"lines", "afloat"}, {"stability", "afloat"}, {"downflooding", "afloat"}, {"flotation", "afloat"}, {"swamped", "afloat"}, {"structure", "structure"}, {"plating", "structure"},
	{"loaded-mass", "weight"}, {"light-mass", "weight"}, {"speed", "trials"}, {"welding", "seams"},
}

func groupOfRecord(key string) string {
	first, _, _ := strings.Cut(key, ".")
	return known(recordGroups[first])
}

func groupOfResult(path string) string {
	words := strings.Fields(path)
	if len(words) > 1 && resultGroups[words[0]+" "+words[1]] != "" {
		return resultGroups[words[0]+" "+words[1]]
	}
	if len(words) == 0 {
		return otherGroup
	}
	return known(resultGroups[words[0]])
}

func groupOfSubject(subject, rule string) string {
	first, _, _ := strings.Cut(subject, " ")
	if first == "boat" {
		for _, r := range boatRules {
			if strings.HasPrefix(rule, r.begins) {
				return r.group
			}
		}
		return "boat"
	}
	if group := subjectGroups[first]; group != "" {
		return group
	}
	return known(recordGroups[first])
}

func known(group string) string {
	if group == "" {
		return otherGroup
	}
	return group
}
