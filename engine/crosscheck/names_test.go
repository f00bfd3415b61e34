package crosscheck

import (
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/record"
)

// Finding a hull by the words of its number gives what looking for every number in the text gives.
func TestNamesAreFoundAsByLookingForEach(t *testing.T) {
	some := rapid.StringOfN(rapid.RuneFrom([]rune("AB1- .Ö/")), 0, 12, -1)
	rapid.Check(t, func(t *rapid.T) {
		var hulls []*record.Hull
		for range rapid.IntRange(1, 6).Draw(t, "hulls") {
			h := &record.Hull{Number: some.Draw(t, "number")}
			h.Identity.HIN = put(some.Draw(t, "hin"))
			hulls = append(hulls, h)
		}
		own := marksOf(hulls[0])
		text := some.Draw(t, "before") + rapid.SampledFrom(hulls).Draw(t, "named").Number + some.Draw(t, "after")
		var want Marks
		for _, h := range hulls[1:] {
			if h.Number != own.Number && mentions(text, marksOf(h)) {
				want = marksOf(h)
				break
			}
		}
		if got, _ := namesOf(hulls).first(text, own.Number); got != want {
			t.Fatalf("in %q found %+v, want %+v", text, got, want)
		}
	})
}
