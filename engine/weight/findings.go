package weight

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/unit"
)

// Limits beyond which a breakdown is questioned, all practice.
const (
	waysAgree     = 0.05 // part by which two ways to one mass may differ: plate is rolled and cut to that
	mostEstimated = 0.10 // part of the light craft that may be estimated
	keysShown     = 12   // items that one sentence names
)

// carried are the groups that are carried, by the record's vocabulary.
var carried = [...]string{"people", "stores", "fuel and water"}

// itemFindings looks at every item by itself.
func itemFindings(r *Result, how []reckoned, alloys *material.Table) []finding.Finding {
	var all []finding.Finding
	for i := range r.Items {
		it := &r.Items[i]
		all = append(all, twoWays(it, how[i].ways)...)
		all = append(all, twoDensities(it, alloys)...)
		all = append(all, weighedWithoutMass(it)...)
		all = append(all, misplaced(it)...)
	}
	return all
}

// of makes a finding about one item.
func of(it *Item, kind finding.Kind, rule, settle, format string, args ...any) []finding.Finding {
	return []finding.Finding{{
		Kind: kind, Rule: rule, Subject: "weight " + it.Record.ID, Settle: settle,
		Says: fmt.Sprintf(format, args...), Places: []finding.Place{it.Record.At},
	}}
}

// twoWays finds a mass that is given twice and not alike.
func twoWays(it *Item, ways []way) []finding.Finding {
	for i := 1; i < len(ways); i++ {
		apart := math.Abs(ways[i].each - ways[0].each)
		if apart <= waysAgree*math.Abs(ways[0].each) {
			continue
		}
		return of(it, finding.Contradiction, "weight-two-ways", "take away the one that is wrong",
			"%s gives %s kg and is used; %s gives %s kg (%s)", ways[0].name, unit.Text(ways[0].each, 1), ways[i].name, unit.Text(ways[i].each, 1), ways[i].text)
	}
	return nil
}

// twoDensities finds a density that is not that of the alloy beside it.
func twoDensities(it *Item, alloys *material.Table) []finding.Finding {
	ofAlloy, differ := densitiesDiffer(it.Record, alloys)
	if !differ {
		return nil
	}
	return of(it, finding.Contradiction, "weight-density", "take away the density, or the alloy",
		"density written as %s kg/m³; that of %s is %s kg/m³ and is used", unit.Text(it.Record.Density.V, 0), it.Record.Alloy.V, unit.Text(ofAlloy, 0))
}

// weighedWithoutMass finds an item that says it was weighed and has no mass written.
func weighedWithoutMass(it *Item) []finding.Finding {
	if it.Record.Basis.V != "weighed" || it.Record.Mass.Set || !it.HasMass {
		return nil
	}
	return of(it, finding.Contradiction, "weight-basis", "write the mass that was weighed, or call it reckoned",
		"basis is weighed, but no mass is written; it is reckoned: %s", it.Working)
}

// misplaced doubts what is carried and counted with the light craft.
func misplaced(it *Item) []finding.Finding {
	if it.Record.Load.V || !slices.Contains(carried[:], it.Record.Group.V) {
		return nil
	}
	return of(it, finding.Doubt, "weight-load", "write load = true, or give it another group",
		"group %s is counted with the light craft, because load is not true", it.Record.Group.V)
}

// sumFindings looks at the sums.
func sumFindings(r *Result) []finding.Finding {
	var all []finding.Finding
	if r.Light.Items > len(r.Light.NoMass) && r.Light.Mass <= 0 {
		all = append(all, finding.Finding{
			Kind: finding.Contradiction, Rule: "weight-sum", Subject: "weights",
			Says:   "the items of the light craft add up to " + unit.Text(r.Light.Mass, 1) + " kg, which no boat has",
			Settle: "correct the items that are taken out", Places: []finding.Place{r.Items[0].Record.At},
		})
	}
	return append(all, estimated(r)...)
}

// estimated doubts a light craft of which too much is estimated.
func estimated(r *Result) []finding.Finding {
	for _, p := range basisParts(r.Items, light) {
		share := float64(p.Mass) / float64(r.Light.Mass)
		if p.Basis != "estimated" || r.Light.Mass <= 0 || share <= mostEstimated {
			continue
		}
		return []finding.Finding{{
			Kind: finding.Doubt, Rule: "weight-estimated", Subject: "weights",
			Says: fmt.Sprintf("%s kg or %s %% of the light craft is estimated, more than %s %%",
				unit.Text(p.Mass, 0), unit.Text(share*100, 0), unit.Text(mostEstimated*100, 0)),
			Settle: "weigh what is estimated, or weigh the boat",
			Places: []finding.Place{firstEstimated(r).Record.At},
		}}
	}
	return nil
}

func firstEstimated(r *Result) *Item {
	for i := range r.Items {
		if it := &r.Items[i]; light(it) && it.Record.Basis.V == "estimated" {
			return it
		}
	}
	return &r.Items[0]
}

// weighingFindings looks at what a weighing says of itself and of the items that it names.
func weighingFindings(w *Weighing, items []Item) []finding.Finding {
	var all []finding.Finding
	say := func(rule, settle string, at finding.Place, format string, args ...any) {
		all = append(all, finding.Finding{
			Kind: finding.Contradiction, Rule: rule, Subject: "weighing " + w.Record.ID, Settle: settle,
			Says: fmt.Sprintf(format, args...), Places: []finding.Place{at},
		})
	}
	for _, p := range w.Points {
		if p.Net < 0 {
			say("weighing-tare", "read the weighing sheet again", p.Record.At, "point %s: the tare of %s kg is greater than the reading of %s kg",
				p.Record.ID, unit.Text(p.Record.Tare.V, 1), unit.Text(p.Record.Reading.V, 1))
		}
	}
	for i := range items {
		rec := items[i].Record
		if rec.Load.V && slices.Contains(w.Record.Ashore.V, rec.ID) {
			say("weighing-ashore", "leave load out of ashore; it counts only where load_aboard names it", w.Record.Ashore.At, "%s is load and stands under ashore", rec.ID)
		}
		if !rec.Load.V && slices.Contains(w.Record.Aboard.V, rec.ID) {
			say("weighing-aboard", "leave the light craft out of load_aboard; it counts unless ashore names it", w.Record.Aboard.At, "%s is not load and stands under load_aboard", rec.ID)
		}
	}
	return all
}

// keys lists names, the first dozen and how many more.
func keys(all []string) string {
	if len(all) <= keysShown {
		return strings.Join(all, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(all[:keysShown], ", "), len(all)-keysShown)
}
