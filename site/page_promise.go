package site

import (
	"strings"

	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// PromisePart is a warranty against what the hours show.
type PromisePart struct {
	Part    string
	Years   string
	Yearly  string
	Hours   string // empty where the yearly hours are not written
	Note    string
	Place   Link
	Picture Drawing
	Rows    []ShownRow
	Needed  []LineRow
	Working []LineRow
}

// ShownRow is what one slope and confidence show.
type ShownRow struct {
	Slope, Confidence            string
	Scale, All, FirstYear, Tenth string
	Said                         bool // the one of the first sentence
}

func (l *leaf) promisePart(r *running.Result, w *running.Promise) PromisePart {
	rec := w.Record
	p := PromisePart{Part: rec.Part.V, Years: unit.Plain(rec.Years.V), Note: rec.Note.V, Place: l.place(rec.Entry.At)}
	if !w.Has {
		return p
	}
	p.Yearly, p.Hours, p.Picture = unit.Plain(rec.Yearly.V), unit.Text(w.Hours, 0), l.boundPicture(w)
	for _, s := range w.Shown {
		p.Rows = append(p.Rows, ShownRow{unit.Plain(s.Slope), unit.Text(100*s.Confidence, 0), running.Down(s.Scale), percentDown(s.All), percentDown(s.FirstYear), running.Down(s.Tenth), s.Slope == 1 && s.Confidence == r.Claim.Confidence})
	}
	for _, n := range w.Needed {
		p.Needed = append(p.Needed, LineRow{Name: "one boat, slope " + unit.Plain(n.Slope), Text: "run without a crack", Result: unit.Text(n.Hours, 0) + " h"})
	}
	if w.Boats > 0 {
		p.Needed = append(p.Needed, LineRow{Name: "or boats that each run all " + p.Hours + " h", Text: "whatever the slope", Result: wordsOfInt(w.Boats)})
	}
	p.Working = claimWorking(r, w)
	return p
}

// percentDown gives a part in percent, rounded down to a tenth.
func percentDown(v float64) string { return unit.Text(float64(int64(1000*v+1e-9))/10, 1) }

// claimWorking shows how the first sentence was reckoned.
func claimWorking(r *running.Result, w *running.Promise) []LineRow {
	c := &r.Claim
	if !c.Has {
		return nil
	}
	var parts []string
	for _, e := range r.Pool {
		if e.Why == "" {
			parts = append(parts, unit.Text(e.Hours, 1))
		}
	}
	factor := "χ²(" + unit.Plain(c.Confidence) + "; 2 × " + wordsOfInt(c.Cracked) + " + 2) / 2"
	if c.Cracked == 0 {
		factor = "−ln(1 − " + unit.Plain(c.Confidence) + ")"
	}
	out := []LineRow{
		{"hours that count", strings.Join(parts, " + "), unit.Text(c.Hours, 1) + " h", "each hull up to its last look, or to the last clean look before a crack", basis("derived")},
		{"factor", factor, unit.Text(c.Factor, 3), "NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.1; the form with failures from general texts on reliability", basis("read")},
		{"mean time to a first crack, at least", unit.Text(c.Hours, 1) + " / " + unit.Text(c.Factor, 3), running.Down(c.MeanTime) + " h", "the same", basis("read")},
	}
	if s, ok := w.At(1, c.Confidence); ok {
		out = append(out, LineRow{"boats that run " + unit.Text(w.Hours, 0) + " h without a crack, at least", "exp(−" + unit.Text(w.Hours, 0) + " / " + running.Down(c.MeanTime) + ")", percentDown(s.All) + " %", "law of a chance that does not change with age", basis("derived")})
	}
	if s, ok := w.At(2, c.Confidence); ok {
		out = append(out, LineRow{"the same with slope 2", "exp(−(" + unit.Text(w.Hours, 0) + " / " + unit.Text(s.Scale, 1) + ")²), " + unit.Text(s.Scale, 1) + " = (ΣT² / " + unit.Text(c.Factor, 3) + ")^½", percentDown(s.All) + " %", "Weibull's law with a slope that is chosen (Abernethy)", basis("derived")})
	}
	return out
}
