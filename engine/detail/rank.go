package detail

import (
	"cmp"
	"fmt"
	"slices"

	"hullfile/engine/fatigue"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/ride"
	"hullfile/engine/unit"
)

// Result is the ranking of the welded details of one hull.
type Result struct {
	Why         string // why there is no ranking
	Spots       []Spot // the one used up fastest first
	Rides       []string
	Seconds     float64 // of all records together
	Cycles      float64 // ranges counted in them
	Scatter     Scatter
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Spot is one detail with the damage that the records do to it.
type Spot struct {
	Record   *record.Spot
	Class    Class
	Damage   float64 // sum of Miner's rule for a hundred hours like those recorded
	Relative float64 // over that of the first
	Range    float64 // equivalent stress range, N/mm²
	Greatest float64 // greatest stress range, N/mm²
}

// Assess ranks the spots by the ranges counted in the acceleration records, each turned into stress by the transfer on
// record. Without a spot or without a record there is no ranking, which is no gap: no rule asks for one.
func Assess(h *record.Hull, rides []ride.Ride, table *Table) Result {
	r := Result{Scatter: MinerScatter()}
	if len(h.Spots) == 0 {
		r.Why = "no welded details with their stress for one g are on record"
		return r
	}
	var cycles []fatigue.Cycle
	for i := range rides {
		if one := &rides[i]; one.Why == "" && len(one.Cycles) > 0 {
			cycles = append(cycles, one.Cycles...)
			r.Seconds += one.Peaks.Seconds
			r.Rides = append(r.Rides, one.Record.ID)
		}
	}
	for _, c := range cycles {
		r.Cycles += c.Count
	}
	for i := range h.Spots {
		r.spot(&h.Spots[i], cycles, table)
	}
	if len(cycles) == 0 {
		r.Why, r.Spots = "no acceleration record could be used", nil
		return r
	}
	slices.SortStableFunc(r.Spots, func(a, b Spot) int { return cmp.Compare(b.Damage, a.Damage) })
	for i := range r.Spots {
		r.Spots[i].Relative = r.Spots[i].Damage / r.Spots[0].Damage
	}
	r.assume()
	return r
}

// spot reckons one detail; one of an unknown class is told and left out.
func (r *Result) spot(rec *record.Spot, cycles []fatigue.Cycle, table *Table) {
	class, ok := table.Find(rec.Detail.V)
	if !ok {
		settle := "name one of the classes listed on the page"
		if near, found := finding.Nearest(rec.Detail.V, table.keys()); found {
			settle = "did you mean " + near + "?"
		}
		r.Findings = append(r.Findings, finding.Finding{Kind: finding.Gap, Rule: "spot-detail", Subject: "spot " + rec.ID,
			Says: fmt.Sprintf("the detail class %q is not known, so this place is not ranked", rec.Detail.V), Settle: settle, Places: []finding.Place{rec.Detail.At}})
		return
	}
	if r.Seconds == 0 {
		return
	}
	scale := float64(rec.Transfer.V)
	sum, err := fatigue.Damage(cycles, scale, class.Line)
	if err != nil {
		return
	}
	s := Spot{Record: rec, Class: class, Damage: sum / r.Seconds * 3600 * 100, Range: fatigue.Equivalent(cycles, scale, class.Line.Slope)}
	for _, c := range cycles {
		s.Greatest = max(s.Greatest, c.Range*scale)
	}
	r.Spots = append(r.Spots, s)
}

func (r *Result) assume() {
	say := func(says, settle string, b finding.Basis) {
		r.Assumptions = append(r.Assumptions, finding.Assumption{Subject: "fatigue", Says: says, Settle: settle, Basis: b})
	}
	if len(r.Spots) == 0 {
		return
	}
	say(fmt.Sprintf("the %s s recorded stand for all running; the ranking depends little on that, the sums do", unit.Text(r.Seconds, 0)), "records in other seas and at other speeds", finding.Practice)
	say("stress follows the acceleration at the sensor by one factor for each place", "strain gauges", finding.Practice)
	say("no endurance limit: small ranges count too, as in sea water", "nothing; it is on the safe side", finding.Recalled)
}
