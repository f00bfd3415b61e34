package method_test

import (
	"testing"

	"hullfile/engine/method"
)

// Standards are cited as their bodies cite them (ISO/IEC Directives part 2, 10.4: number and year with a colon); own reading.
func TestCite(t *testing.T) {
	for _, r := range []struct{ work, edition, clause, want string }{
		{"ISO 12215-5", "2008", "", "ISO 12215-5:2008"},
		{"ISO 12217-1", "2015", "6.3", "ISO 12217-1:2015, 6.3"},
		{"ISO/TR 18491", "2015", "", "ISO/TR 18491:2015"},
		{"DNV HSLC", "January 2011", "", "DNV HSLC, January 2011"},
		{"Savitsky and Brown, plate and beam theory", "1978", "", "Savitsky and Brown, plate and beam theory, 1978"},
		{"D. Savitsky, Marine Technology 1(1), October 1964", "1964", "figure 18", "D. Savitsky, Marine Technology 1(1), October 1964, figure 18"},
		{"33 CFR 183", "as in force 2024 to 2026", "", "33 CFR 183, as in force 2024 to 2026"},
		{"practice of small-craft design", "", "", "practice of small-craft design"},
	} {
		if got := (&method.Sheet{Work: r.work, Edition: r.edition}).Cite(r.clause); got != r.want {
			t.Errorf("%q, %q, %q: %q, want %q", r.work, r.edition, r.clause, got, r.want)
		}
	}
}
