package weld

import (
	"slices"
	"time"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Life is how long a certificate held.
type Life struct {
	From  record.Date
	Until record.Date // last day, by the rule and by what was signed
	Ends  string      // why it ends then
	// Printed is a last day on the certificate that is later than its standard allows; zero where it is not.
	Printed record.Date
}

// Holds reports whether a certificate held on a day, and says why not.
func (l Life) Holds(d record.Date) (ok bool, why string) {
	switch {
	case d.Before(l.From):
		return false, "tested on " + l.From.String() + ", later than this day"
	case l.Until.Before(d):
		return false, "ended on " + l.Until.String() + ": " + l.Ends
	}
	return true, ""
}

// life walks the signatures of a certificate: it ends when one is late, or with its years unless it was prolonged.
func (s *WelderScheme) life(q *record.Qualification) Life {
	l := Life{From: q.Tested.V}
	last := after(q.Tested.V, s.Years, 0)
	l.Ends = unit.Count(s.Years, "year", "years") + " from the test"
	if q.Prolonged.Set && !last.Before(q.Prolonged.V) {
		last, l.Ends = after(q.Prolonged.V, s.ProlongYears, 0), unit.Count(s.ProlongYears, "year", "years")+" from its prolongation"
	}
	if q.Until.Set {
		if last.Before(q.Until.V) {
			l.Printed = q.Until.V
		} else {
			last, l.Ends = q.Until.V, "the last day printed on it"
		}
	}
	l.Until = last
	signed := q.Tested.V
	for _, d := range signatures(q) {
		due := after(signed, 0, s.ConfirmMonths)
		if due.Before(d) {
			break
		}
		signed = d
	}
	if due := after(signed, 0, s.ConfirmMonths); due.Before(l.Until) {
		l.Until, l.Ends = due, "no confirmation within "+unit.Count(s.ConfirmMonths, "month", "months")+" of "+signed.String()+" is on record"
	}
	return l
}

// signatures lists the days of confirmations and of the prolongation in order.
func signatures(q *record.Qualification) []record.Date {
	var all []record.Date
	for i := range q.Confirmations {
		all = append(all, q.Confirmations[i].Date.V)
	}
	if q.Prolonged.Set {
		all = append(all, q.Prolonged.V)
	}
	slices.SortFunc(all, func(a, b record.Date) int {
		switch {
		case a.Before(b):
			return -1
		case b.Before(a):
			return 1
		}
		return 0
	})
	return all
}

// after is the day some years and months later; a day that the month does not have becomes its last.
func after(d record.Date, years, months int) record.Date {
	first := time.Date(d.Year+years, d.Month+time.Month(months), 1, 0, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1).Day()
	return record.Date{Year: first.Year(), Month: first.Month(), Day: min(d.Day, last)}
}
