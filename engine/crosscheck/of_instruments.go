package crosscheck

import (
	"hullfile/engine/calibration"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// outOfCalibration finds instruments whose calibration did not cover a day on which they were used for a seam or a test,
// each with everything that it was used for.
func outOfCalibration(b *build) []told {
	found := map[string]*gathered{}
	says := map[string]finding.Check{}
	var order []string
	use := func(subject string, tool record.Val[string], day record.Val[record.Date]) {
		if !tool.Set || !day.Set {
			return
		}
		c := calibration.Check(&b.yard.Builder, calibration.Use{Subject: subject, Key: "instrument", Instrument: tool, Day: day})
		if c.Standing == finding.Met {
			return
		}
		if found[tool.V] == nil {
			found[tool.V], says[tool.V] = &gathered{}, c
			order = append(order, tool.V)
		}
		found[tool.V].add(subject, tool.At)
	}
	for i := range b.Hull.Inspections {
		use("inspection "+b.Hull.Inspections[i].ID, b.Hull.Inspections[i].Instrument, b.Hull.Inspections[i].Date)
	}
	for i := range b.Hull.LeakTests {
		use("leak test "+b.Hull.LeakTests[i].ID, b.Hull.LeakTests[i].Instrument, b.Hull.LeakTests[i].Date)
	}
	for i := range b.Hull.Welds {
		use("weld "+b.Hull.Welds[i].ID, b.Hull.Welds[i].Machine, b.Hull.Welds[i].Date)
	}
	var all []told
	for _, tool := range order {
		c := says[tool]
		all = append(all, tell("instrument "+tool, c.Settle, append(found[tool].places, c.Places...), "%s: %s", found[tool].list(), c.Says))
	}
	return all
}
