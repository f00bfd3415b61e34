package site

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// mostShort is how many sentences the owner's book tells of what is not in order; the file has them all.
const mostShort = 12

// ownerShort tells what people on board hang on and what is not in order: strength, floating and load short of what is asked, a boat
// that runs faster than its structure is reckoned for, and a crack that nobody looked at again. The yard's work is left out.
func (l *leaf) ownerShort() []string {
	var out []string
	left := 0
	for _, f := range told(l.dossier.Findings) {
		if !l.touchesOwner(&f) {
			continue
		}
		if len(out) == mostShort {
			left++
			continue
		}
		says := closed(capital(f.Says))
		if s := unsaid(subjectWords(f.Name()), f.Says); s != "" {
			says = s + ": " + closed(f.Says)
		}
		if !slices.Contains(out, says) {
			out = append(out, says)
		}
	}
	if left > 0 {
		out = append(out, "And "+wordsOfInt(left)+" more, which the yard's file tells.")
	}
	return out
}

// touchesOwner reports whether a finding belongs there. A crack that was not looked at again is a gap; the others are short.
func (l *leaf) touchesOwner(f *finding.Finding) bool {
	if f.Rule == "look-again" || f.Rule == "look-repair" || f.Rule == "speed-reached" && f.Kind == finding.Shortfall {
		return true
	}
	return slices.ContainsFunc(l.dossier.Safety(), func(c finding.Check) bool {
		return c.Standing == finding.Short && c.Rule == f.Rule && c.Subject == f.Subject
	})
}

// strongTable tells by what the boat is lifted, towed and moored, and for what that was reckoned.
func (l *leaf) strongTable() *OwnerTable {
	t := newOwnerTable("Strong points on record", "For", "Where", "Forward of the transom|m|n", "Sides", "Boat lifted, at most|kg|n", "Points", "Sling from upright, at most|°|n", "Reckoned strength")
	for i := range l.dossier.Structure.Fittings {
		f := &l.dossier.Structure.Fittings[i]
		rec := f.Record
		if !slices.Contains([]string{"lifting point", "towing eye", "towing post", "cleat", "mooring bollard"}, rec.Kind.V) {
			continue
		}
		sides := "one"
		if rec.Both.V {
			sides = "both"
		}
		lifted, points, angle := Figure{Text: "–"}, "–", Figure{Text: "–"}
		if rec.Kind.V == "lifting point" {
			lifted, angle = measured(rec.Mass, "kg"), measured(rec.Angle, "°")
			points = wordsOfInt(max(1, rec.Share.V))
		}
		t.row(Figure{Text: capital(rec.Kind.V)}, word(rec.Where), Figure{Text: unit.Text(float64(rec.X.V), 2)}, Figure{Text: sides}, lifted, Figure{Text: points}, angle, Figure{Text: string(f.Standing)})
	}
	return t
}
