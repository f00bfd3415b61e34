package compare

import (
	"slices"
	"testing"
)

// Own arithmetic: changes are gathered by thing and by rule, and none is lost.
func TestDigestGathersAndLosesNothing(t *testing.T) {
	g := Group{
		Records: []Change{{How: Changed, What: "weld.W1.date", Old: "a", New: "b"}, {How: Gone, What: "weld.W2", Old: "x"}, {How: Changed, What: "weld.W1.joint", Old: "C1", New: "C2"}, {How: Added, What: "joint.C9", New: "y"}, {How: Changed, What: "title", Old: "p", New: "q"}},
		Standings: []Standing{{Rule: "part-lot", Subject: "part A", Old: "met"}, {Rule: "weighing", Subject: "boat", Old: "met", New: "not shown"}, {Rule: "part-lot", Subject: "part B", Old: "met"},
			{Rule: "speed", Subject: "boat", Old: "short", New: "not shown"}},
	}
	things := g.Things()
	n := 0
	for _, th := range things {
		n += len(th.Changes)
	}
	if n != len(g.Records) || len(things) != 4 {
		t.Errorf("%d changes in %d things", n, len(things))
	}
	if got, want := things[0].Words(), "date: before: a; now: b; joint: before: C1; now: C2"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := g.Counted(), "weld 1 changed, 1 gone; joint 1 new; title 1 changed"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	all := g.Outcomes()
	if len(all) != 3 || all[0].Rule != "weighing" || !all[0].Worse() || all[1].Worse() || all[2].Worse() {
		t.Errorf("%+v", all)
	}
	if i := slices.IndexFunc(all, func(o Outcome) bool { return o.Rule == "part-lot" }); i < 0 || len(all[i].Subjects) != 2 {
		t.Errorf("%+v", all)
	}
	if got, want := g.Met(), "weighing not shown"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
