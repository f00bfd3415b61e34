package next

import (
	"path"

	"hullfile/engine/record"
)

// State is how far a part of the file has come. That a part is done says that its records are there, not that they are
// good enough; the checks say that.
type State string

// The three states.
const (
	NotYet State = "not begun"
	Begun  State = "begun"
	Done   State = "there"
)

// Part is one part of a hull's file, as a builder fills it.
type Part struct {
	Name    string   `json:"name"`
	State   State    `json:"state"`
	Missing []string `json:"missing,omitempty"` // record keys and tables that are not written
	Settle  string   `json:"settle"`            // what to write
	File    string   `json:"file"`              // where to write it, relative to the yard folder
}

// framed is the place of frames and stringers among the parts.
const framed = 3

// Parts lists the parts of a hull's file in the order in which a builder knows things.
func Parts(h *record.Hull) []Part {
	in := func(name string) string { return path.Join(h.Folder, name) }
	return []Part{
		part("principal data", in("hull.toml"), "write these keys under [boat]; where a line begins with #, take the mark away", principal(h)),
		part("shape", in("lines.csv"), "write one row a station with keel, chine and sheer, from the transom forward; three are enough to begin", shape(h)),
		part("plate", in("plating.csv"), "write one row a zone with its thickness and alloy", plate(h)),
		part("frames and stringers", in("frames.csv"), "write the bars into sections.csv, and where they stand into frames.csv and stringers.csv", framing(h)),
		part("weights", in("weights.csv"), "write one row an item with its mass and its centre", weights(h)),
		part("weighing", in("hull.toml"), "weigh the boat at two or more points and write [weighing.W1]", weighing(h)),
		part("trial", in("hull.toml"), "write [trial.T1], and its runs into runs.csv, each speed on two opposite headings", trial(h)),
		part("metal and seams", in("parts.csv"), "write parts.csv, joints.csv, welds.csv and inspections.csv, and the lots of metal into the folder stock; hullfile demo writes a yard that shows the form", built(h)),
		part("number and builder's plate", in("hull.toml"), "read the number off the boat and write identity.hin, and write what its plate says under [plate]", marked(h)),
		part("issue and papers", in("hull.toml"), "write [issue] with number, date and by; lay certificates and photographs into the folder documents and name each as [document.NAME]", papers(h)),
	}
}

// wanted is a key and whether it is written, in the order in which it is asked for.
type wanted struct {
	key     string
	written bool
}

// part is there when all that it wants is written, begun when some of it is.
func part(name, file, settle string, all []wanted) Part {
	p := Part{Name: name, File: file, Settle: settle, State: Done}
	for _, w := range all {
		if !w.written {
			p.Missing = append(p.Missing, w.key)
		}
	}
	switch len(p.Missing) {
	case 0:
	case len(all):
		p.State = NotYet
	default:
		p.State = Begun
	}
	return p
}

func principal(h *record.Hull) []wanted {
	b := &h.Boat
	return []wanted{
		{"boat.length_hull_m", b.LengthHull.Set}, {"boat.beam_hull_m", b.BeamHull.Set},
		{"boat.length_waterline_m", b.LengthWL.Set}, {"boat.beam_chine_m", b.BeamChine.Set},
		{"boat.deadrise_deg", b.Deadrise.Set}, {"boat.draught_m", b.Draught.Set},
		{"boat.loaded_mass_kg", b.LoadedMass.Set}, {"boat.speed_kn", b.Speed.Set},
		{"boat.category", b.Category.Set}, {"boat.persons", b.Persons.Set},
	}
}

// shape is begun with one station; three make a hull.
func shape(h *record.Hull) []wanted {
	return []wanted{{"station", len(h.Stations) > 0}, {"three stations", len(h.Stations) >= 3}}
}

// plate is there too where panels are listed by hand.
func plate(h *record.Hull) []wanted {
	return []wanted{{"plating", len(h.Platings) > 0 || len(h.Panels) > 0}}
}

// framing is there too where members are listed by hand.
func framing(h *record.Hull) []wanted {
	byHand := len(h.Members) > 0
	return []wanted{
		{"section", byHand || len(h.Sections) > 0}, {"frame", byHand || len(h.Frames) > 0},
		{"stringer", byHand || len(h.Stringers) > 0},
	}
}

func weights(h *record.Hull) []wanted { return []wanted{{"weight", len(h.Weights) > 0}} }

func weighing(h *record.Hull) []wanted { return []wanted{{"weighing", len(h.Weighings) > 0}} }

func trial(h *record.Hull) []wanted {
	runs := false
	for i := range h.Trials {
		runs = runs || len(h.Trials[i].Runs) > 0
	}
	return []wanted{{"trial", len(h.Trials) > 0}, {"trial.run", runs}}
}

func built(h *record.Hull) []wanted {
	return []wanted{
		{"part", len(h.Parts) > 0}, {"joint", len(h.Joints) > 0},
		{"weld", len(h.Welds) > 0}, {"inspection", len(h.Inspections) > 0},
	}
}

func marked(h *record.Hull) []wanted {
	p := &h.Plate
	return []wanted{
		{"identity.hin", h.Identity.HIN.Set}, {"plate.max_load_kg", p.MaxLoad.Set},
		{"plate.persons", p.Persons.Set}, {"plate.category", p.Category.Set},
	}
}

func papers(h *record.Hull) []wanted {
	return []wanted{
		{"issue.number", h.Issue.Number.Set}, {"issue.date", h.Issue.Date.Set}, {"issue.by", h.Issue.By.Set},
		{"document", len(h.Documents) > 0},
	}
}
