package seam

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Plate is the thickness of one side of a joint.
type Plate struct {
	MM   float64
	Text string
	At   finding.Place
}

// Plates gives the thicknesses of a joint that are on record: as drawn on the weld map, else of its parts.
func (m *Map) Plates(j *Joint) []Plate {
	var all []Plate
	for i, drawn := range []record.Val[unit.MM]{j.Record.Thickness, j.Record.OtherThick} {
		if !drawn.Set && j.Parts[i] != nil {
			drawn = j.Parts[i].Drawn
		}
		if drawn.Set {
			all = append(all, Plate{float64(drawn.V), unit.Text(drawn.V, 1), drawn.At})
		}
	}
	return all
}

// KindOf gives the kind of weld of a joint as procedures and certificates name it: butt or fillet; empty for a corner, which
// may be either.
func KindOf(j *record.Joint) string {
	switch j.Type.V {
	case "butt":
		return "butt"
	case "fillet", "lap":
		return "fillet"
	}
	return ""
}

// Metal gives the alloy of a part: of its lot, else as drawn.
func (s *Stock) Metal(p *record.Part) record.Val[string] {
	if p == nil {
		return record.Val[string]{}
	}
	if l := s.Lots[p.Lot.V]; l != nil {
		return l.Alloy
	}
	return p.Alloy
}

// Group gives the material group of a part.
func (s *Stock) Group(p *record.Part) string { return GroupOf(s.Metal(p).V) }

// GroupOf gives the material group of ISO/TR 15608 of an alloy by its designation: Al-Mg above 3.5 % magnesium is 22.4,
// between 1.5 and 3.5 % 22.3, Al-Mg-Si 23.1, Al-Zn-Mg 23.2 (recalled). Empty for what is not in the list.
func GroupOf(alloy string) string {
	name, _, _ := strings.Cut(alloy, "-")
	switch name {
	case "5083", "5086", "5383", "5456", "5059":
		return "22.4"
	case "5754", "5052", "5454":
		return "22.3"
	case "5005":
		return "22.2"
	case "6082", "6061", "6005A", "6060", "6063":
		return "23.1"
	case "7020":
		return "23.2"
	}
	return ""
}

// Short gives a joint in few words: butt, 6.0 to 4.0 mm, shell.
func Short(j *record.Joint) string {
	text := j.Type.V
	switch {
	case j.Thickness.Set && j.OtherThick.Set && j.Thickness.V != j.OtherThick.V:
		text += ", " + unit.Text(j.Thickness.V, 1) + " to " + unit.Text(j.OtherThick.V, 1) + " mm"
	case j.Thickness.Set:
		text += ", " + unit.Text(j.Thickness.V, 1) + " mm"
	}
	if j.Throat.Set {
		text += ", a " + unit.Text(j.Throat.V, 1)
	}
	return text + ", " + j.Category.V
}
