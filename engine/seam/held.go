package seam

import "hullfile/engine/record"

// years is how long a certificate of a welder holds from its test where it prints no last day (ISO 9606-2:2004; reported).
const years = 2

// Ends gives the last day of a certificate: as printed, or two years from the test or from the day it was prolonged.
func Ends(q *record.Qualification) record.Date {
	if q.Until.Set {
		return q.Until.V
	}
	from := q.Tested.V
	if q.Prolonged.Set {
		from = q.Prolonged.V
	}
	return Later(from, 12*years)
}

// Held lists the certificates of a welder that were in force on a day, in the order of the record. What they cover is not
// asked here.
func (s *Stock) Held(w *record.Welder, day record.Date) []*record.Qualification {
	var all []*record.Qualification
	for _, q := range s.Qualifications[w.ID] {
		if q.Tested.Set && !day.Before(q.Tested.V) && !Ends(q).Before(day) {
			all = append(all, q)
		}
	}
	return all
}
