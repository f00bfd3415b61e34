package survey

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// desk are the beginnings of subjects that papers alone can settle; a surveyor on board cannot.
var desk = []string{"document ", "hours", "qualification ", "procedure ", "welder ", "inspection ", "nonconformity ", "weld ", "person ", "issue", "proofs", "records", "survey"}

// water are rules that only running the boat, or an instrument's paper, can answer.
var water = []string{"instrument-calibrated", "speed-reached"}

// ways says for a rule what to do on board and what is expected there; the first that begins the rule is taken.
var ways = []struct{ rule, do, expect string }{
	{"lines-", "measure the dimension on the boat with a tape", "one of the two values, and which"},
	{"loaded-mass", "weigh the boat, or read the freeboard at four places and what is on board", "one of the two masses, and which"},
	{"light-mass", "weigh the boat, or read the freeboard at four places and what is on board", "one of the two masses, and which"},
	{"weighing-", "weigh the boat, or read the freeboard at four places and what is on board", "one of the two masses, and which"},
	{"plate-", "read the plate on the boat", "the figures that the record gives for the plate"},
	{"imperfection-", "find the place and measure it again", "a size within its limit"},
	{"lot-", "read the mark on the metal at the parts of this lot", "the cast that the stock records give"},
	{"part-", "read the mark on the metal of this part", "the cast that the stock records give"},
	{"swamped-", "look for foam and chambers: how much, where, and whether they are tight", "the volumes on record"},
}

// contradictions are the records that cannot both be true, where the boat can say which is.
func (in *Input) contradictions() []Item {
	var out []Item
	for _, f := range in.Findings {
		if f.Kind != finding.Contradiction || atDesk(f.Rule, f.Subject) {
			continue
		}
		i := Item{Key: key(f.Rule, f.Subject), Class: Contradicts, Subject: f.Subject, Why: f.Says, Places: f.Places, Do: "find out on the boat which of the two is right"}
		in.locate(&i)
		in.measureAs(&i, f.Rule)
		out = append(out, i)
	}
	return out
}

// shortfalls are the checks that are short and that the boat itself answers.
func (in *Input) shortfalls() []Item {
	var out []Item
	for _, c := range in.Checks {
		if c.Standing != finding.Short || atDesk(c.Rule, c.Subject) || c.Rule == rule {
			continue
		}
		i := Item{Key: key(c.Rule, c.Subject), Class: Short, Subject: c.Subject, Why: c.Says, Places: c.Places, Do: "see whether the boat is as the record says"}
		in.locate(&i)
		in.measureAs(&i, c.Rule)
		out = append(out, i)
	}
	return out
}

func atDesk(rule, subject string) bool {
	return slices.Contains(water, rule) || slices.ContainsFunc(desk, func(start string) bool { return strings.HasPrefix(subject, start) })
}

// measureAs says what to measure or look at. A thickness in question is measured; else the rule says what to do.
func (in *Input) measureAs(i *Item, rule string) {
	kind, id, _ := strings.Cut(i.Subject, " ")
	thickness := strings.Contains(rule, "thick") || strings.Contains(rule, "measured") || rule == "part-panel"
	switch {
	case kind == "panel" && in.panel(id) != nil:
		i.thickness(in.panel(id))
		return
	case kind == "part" && thickness && in.part(id) != nil && in.part(id).Drawn.Set:
		p := in.part(id)
		i.Do, i.Unit = "measure the thickness at three places, away from welds, and write the least", "mm"
		i.Expect = thick(float64(p.Drawn.V), unit.Text(p.Drawn.V, 1)+" mm as drawn")
		return
	}
	i.Expect = Expect{Says: "as the record says", Source: "the findings of this file", Basis: finding.Yard}
	for _, w := range ways {
		if strings.HasPrefix(rule, w.rule) {
			i.Do, i.Expect.Says = w.do, w.expect
			return
		}
	}
}
