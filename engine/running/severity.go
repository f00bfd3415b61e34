package running

import (
	"math"

	"hullfile/engine/endurance"
)

// power is how damage of welds grows with the load: 3 is the slope of welded details (recalled).
const power = 3

// equal turns the hours of this hull up to its last look into hours of the expected service. Hours without speed and sea
// take no part: they could have been run at the quay.
func (in *Input) equal(r *Result) Equal {
	e := Equal{Power: power}
	s := &in.Hull.Service
	if len(r.Rows) == 0 {
		return e
	}
	if in.Tenth == nil || !s.Wave.Set || !s.Speed.Set {
		e.Why = "the record does not say at which speed and in which sea the boat will mostly run"
		return e
	}
	g, outside, ok := in.Tenth(float64(s.Speed.V), float64(s.Wave.V))
	if !ok || !(g > 0) {
		e.Why = "the sheet for impacts gives no number for the expected service"
		return e
	}
	e.G, e.Outside = g, outside
	e.count(r)
	if e.Counted == 0 {
		e.Why = "no hours up to the last look state speed and sea"
		return e
	}
	cracked := 0
	if r.Pool[0].Cracked {
		cracked = 1
	}
	bound, _, err := endurance.MeanTime(e.Hours, cracked, confidence)
	if err != nil {
		e.Why = err.Error()
		return e
	}
	e.MeanTime, e.Has = bound, true
	return e
}

// count turns each row of the log, as far as the last look saw it, into hours of the expected service.
func (e *Equal) count(r *Result) {
	seen := 0.0
	if own := r.Pool[0]; own.Why == "" {
		seen = own.Hours
	}
	before := 0.0
	for i := range r.Rows {
		row := &r.Rows[i]
		counted := math.Max(0, math.Min(row.Sum, seen)-before)
		before = math.Max(before, math.Min(row.Sum, seen))
		if row.G == 0 {
			e.Left += counted
			continue
		}
		worth, err := endurance.Harsher(counted, row.G/e.G, power)
		if err != nil {
			continue
		}
		e.Counted += counted
		e.Hours += worth
		e.Outside = e.Outside || row.Outside
	}
}
