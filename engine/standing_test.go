package engine

import (
	"testing"

	"hullfile/engine/finding"
)

// Two records that contradict each other leave no file met, nor does evidence that is missing; a doubt does. By the words for standing.
func TestFindingsTakePartInTheStanding(t *testing.T) {
	for kind, want := range map[finding.Kind]finding.Standing{
		finding.Contradiction: finding.Short, finding.Shortfall: finding.Short, finding.Gap: finding.NotShown, finding.Doubt: finding.Met,
	} {
		d := Dossier{Checks: []finding.Check{{Standing: finding.Met}}, Findings: []finding.Finding{{Kind: kind}}}
		if got := d.Standing(); got != want {
			t.Errorf("all checks met and a %s: %s, want %s", kind, got, want)
		}
	}
	if got := (&Dossier{}).Standing(); got != finding.NotShown {
		t.Errorf("nothing checked: %s", got)
	}
}
