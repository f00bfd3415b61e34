package site

import "strconv"

// TermRow is one paper, calibration or lot that runs out, beside the days on which the building rested on it.
type TermRow struct {
	Link     Link
	From     Figure
	Until    Figure
	Ends     string
	First    Figure
	Last     Figure
	Uses     string
	Standing Standing
	Says     string
	Place    Link
}

// termRows are the calendar of what had to be in date while the boat was welded and looked at.
func (l *leaf) termRows() []TermRow {
	if l.dossier.Seams == nil {
		return nil
	}
	var out []TermRow
	for _, t := range l.dossier.Seams.Terms() {
		row := TermRow{Link: l.subject(t.Subject), From: has(t.From.Year != 0, t.From.ISO(), "not recorded"), Until: has(t.HasUntil, t.Until.ISO(), "no end"),
			First: has(t.First.Year != 0, t.First.ISO(), "no day"), Last: has(t.Last.Year != 0, t.Last.ISO(), "no day"), Uses: strconv.Itoa(t.Uses),
			Standing: standing(t.Standing), Says: t.Says, Place: l.place(t.At)}
		if t.HasUntil {
			row.Ends = t.Ends
		}
		if t.Outside > 0 {
			row.Says += ": " + strconv.Itoa(t.Outside) + " of " + row.Uses + " outside"
		}
		out = append(out, row)
	}
	return out
}
