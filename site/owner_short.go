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
	left, short := 0, map[[2]string]bool{}
	for _, c := range l.dossier.Safety() {
		if c.Standing == finding.Short {
			short[[2]string{c.Rule, c.Subject}] = true
		}
	}
	for _, f := range told(l.dossier.Findings) {
		if !touchesOwner(&f) && !short[[2]string{f.Rule, f.Subject}] {
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

// touchesOwner reports whether a finding belongs there beside those of safety that are short. A crack that was not looked at again
// is a gap.
func touchesOwner(f *finding.Finding) bool {
	return f.Rule == "look-again" || f.Rule == "look-repair" || f.Rule == "speed-reached" && f.Kind == finding.Shortfall
}

// strongTable tells by what the boat is lifted, towed and moored, and for what that was reckoned. What must not be missed on a small
// screen stands first.
func (l *leaf) strongTable() *OwnerTable {
	t := newOwnerTable("Strong points on record; points are those that carry a lift together", "For", "Boat at most|kg|n", "Sling from upright|°|n", "Points", "Reckoned", "Where")
	for i := range l.dossier.Structure.Fittings {
		f := &l.dossier.Structure.Fittings[i]
		rec := f.Record
		if !slices.Contains([]string{"lifting point", "towing eye", "towing post", "cleat", "mooring bollard"}, rec.Kind.V) {
			continue
		}
		lifted, angle, points := Figure{Text: "–"}, Figure{Text: "–"}, "–"
		if rec.Kind.V == "lifting point" {
			lifted, angle, points = measured(rec.Mass, "kg"), measured(rec.Angle, "°"), wordsOfInt(max(1, rec.Share.V))
		}
		where := unit.Text(float64(rec.X.V), 2) + " m forward of the transom"
		if rec.Both.V {
			where += ", both sides"
		}
		if rec.Where.V != "" {
			where = rec.Where.V + "; " + where
		}
		t.row(Figure{Text: capital(rec.Kind.V)}, lifted, angle, Figure{Text: points}, Figure{Text: string(f.Standing)}, Figure{Text: where})
	}
	return t
}
