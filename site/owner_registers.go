package site

import (
	"strconv"
	"strings"
	"time"

	"hullfile/engine/record"
	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// Tables of the owner's book that are kept on: plan of care, registers, warranties, with lines to write on.

// blankLines is how many empty lines stand under a register.
const blankLines = 8

func (l *leaf) careTable() *OwnerTable {
	t := newOwnerTable("Plan of care", "What", "Where", "First|h|n", "Every|h|n", "Every|months|n", "By", "Asked for by")
	for i := range l.hull.Care {
		c := &l.hull.Care[i]
		months := Figure{Why: "–"}
		if c.Months.Set {
			months = Figure{Text: strconv.Itoa(c.Months.V)}
		}
		t.row(Figure{Text: c.What.V}, dash(c.Where.V), hoursFigure(c.First), hoursFigure(c.Every), months, word(c.By), word(c.Source))
	}
	return t
}

func dash(s string) Figure { return has(s != "", s, "–") }

func hoursFigure(v record.Val[unit.Hour]) Figure { return has(v.Set, unit.Plain(v.V), "–") }

func (l *leaf) serviceTable() *OwnerTable {
	t := newOwnerTable("Register of service", "Day||k", "Hours|h|n", "What was done", "By", "Remark")
	for i := range l.hull.Serviced {
		s := &l.hull.Serviced[i]
		t.row(dated(s.Date), hoursFigure(s.Meter), Figure{Text: s.What.V}, dash(s.By.V), dash(s.Note.V))
	}
	t.blank(blankLines)
	return t
}

func (l *leaf) hoursTable() *OwnerTable {
	t := newOwnerTable("Register of running hours", "Day", "From|h|n", "To|h|n", "Waves|m|n", "Speed|kn|n", "Remark")
	rows := l.hull.Hours
	if n := len(rows); n > 1 {
		first, last := &rows[0], &rows[n-1]
		t.row(Figure{Text: "the yard, " + first.Date.V.ISO() + " to " + last.Date.V.ISO()}, hoursFigure(first.From), hoursFigure(last.To), dash(""), dash(""), Figure{Text: plural(n, "entry", "entries") + " in the yard's file"})
	}
	t.blank(blankLines + 3) // with the plan of care and the register of service no more than fills two sheets
	return t
}

// warrantyLength says how long a warranty lasts.
func warrantyLength(w *record.Warranty) string {
	text := unit.Plain(w.Years.V) + noBreak + "years"
	if float64(w.Years.V) == 1 {
		text = "1" + noBreak + "year"
	}
	if w.Hours.Set {
		text += " or " + unit.Text(w.Hours.V, 0) + noBreak + "running hours, whichever comes first"
	}
	return text
}

// warrantyEnd gives the last day of a warranty: that many years after its first day, whole months of a part of a year.
func (l *leaf) warrantyEnd(w *record.Warranty) Figure {
	from := w.From
	if !from.Set {
		from = l.hull.Identity.Handed
	}
	if !from.Set {
		return Figure{Why: "counts from the handover, which is not recorded"}
	}
	d := from.V
	months := int(d.Month) - 1 + int(float64(w.Years.V)*12+0.5)
	d.Year, d.Month = d.Year+months/12, time.Month(months%12+1)
	d.Day = min(d.Day, daysIn(d.Month, d.Year))
	return Figure{Text: d.ISO()}
}

// daysIn counts the days of a month.
func daysIn(month time.Month, year int) int {
	switch month {
	case time.April, time.June, time.September, time.November:
		return 30
	case time.February:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

func (l *leaf) warrantyTable() *OwnerTable {
	t := newOwnerTable("Warranties, part by part", "Part", "Promised by", "How long", "Ends||k", "Conditions")
	for i := range l.hull.Warranties {
		w := &l.hull.Warranties[i]
		by := w.By.V
		if by == "" {
			by = l.dossier.Builder.Name.V
		}
		conditions := strings.TrimSpace(strings.Join([]string{w.Note.V, w.Conditions.V}, "; "))
		t.row(Figure{Text: w.Part.V}, dash(by), Figure{Text: warrantyLength(w)}, l.warrantyEnd(w), has(strings.Trim(conditions, "; ") != "", strings.Trim(conditions, "; "), "not recorded"))
	}
	return t
}

func (l *leaf) claimTable() *OwnerTable {
	t := newOwnerTable("Register of claims", "Day||k", "Part", "Hours|h|n", "What is wrong", "Answer", "What was done", "Closed||k")
	for i := range l.hull.Claims {
		c := &l.hull.Claims[i]
		part := c.Warranty.V
		for n := range l.hull.Warranties {
			if l.hull.Warranties[n].ID == c.Warranty.V {
				part = l.hull.Warranties[n].Part.V
			}
		}
		answer := c.Answer.V
		if answer == "" {
			answer = "open"
		}
		t.row(dated(c.Date), dash(part), hoursFigure(c.Meter), Figure{Text: c.What.V}, Figure{Text: answer}, dash(c.Done.V), has(c.Closed.Set, c.Closed.V.ISO(), "–"))
	}
	t.blank(blankLines)
	return t
}

func (l *leaf) spareTable() *OwnerTable {
	t := newOwnerTable("Spare parts", "Part", "For", "Size", "Number", "Lot", "On board||n", "From")
	for i := range l.hull.Spares {
		s := &l.hull.Spares[i]
		t.row(Figure{Text: s.Name.V}, dash(s.For.V), dash(s.Size.V), dash(s.Number.V), dash(s.Lot.V), has(s.Aboard.Set, strconv.Itoa(s.Aboard.V), "–"), dash(s.Supplier.V))
	}
	return t
}

func placesOf(r *running.Result) string {
	var all []string
	for i := range r.Places {
		all = append(all, r.Places[i].Name)
	}
	return strings.Join(all, ", ")
}

// lookTable gives the looks at the welds by the yard's ladder of hours, done and to come, with blank lines.
func (l *leaf) lookTable() *OwnerTable {
	r := &l.dossier.Hours
	t := newOwnerTable("Looks at the welds", "At|h|n", "Day||k", "Method", "Places", "Found")
	for i := range r.Looks {
		rec := r.Looks[i].Record
		found := "no" + noBreak + "crack"
		if r.Looks[i].Cracks > 0 {
			found = plural(r.Looks[i].Cracks, "indication that counts as a crack", "indications that count as cracks")
		}
		t.row(hoursFigure(rec.Meter), dated(rec.Date), word(rec.Method), Figure{Text: strings.Join(rec.Places.V, ", ")}, Figure{Text: found})
	}
	places := "every place above"
	if len(r.Looks) == 0 {
		places = placesOf(r)
	}
	for i := range r.Ladder {
		if s := &r.Ladder[i]; s.Look == nil && s.Hours > r.LookedTo {
			t.row(Figure{Text: unit.Text(s.Hours, 0)}, Figure{Why: "to come"}, Figure{Text: "visual, penetrant where in doubt"}, Figure{Text: places}, Figure{Why: "to come"})
		}
	}
	t.blank(blankLines)
	return t
}
