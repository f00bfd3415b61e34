package stability

import (
	"fmt"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Flotation is what keeps the swamped boat up, and how it then lies.
type Flotation struct {
	Pieces  []Piece
	Fitted  float64 // litres that count
	Swamped Swamped
	Why     string // why it was not reckoned
}

// Piece is one piece of foam or one chamber.
type Piece struct {
	Record *record.Buoyancy
	Litres float64 // of both sides together
	Counts bool
	Why    string // why it does not count
}

// shares of persons and other load that a swamped boat still carries: 33 CFR 183.105 (read).
const (
	personsShare = 2.0 / 15
	loadShare    = 0.25
	leftOut      = 2 // of the largest air chambers: 33 CFR 183.105 (read)
)

// flotation adds up what is fitted, lets the swamped boat float, and asks whether it does where the law wants it.
func (j *judge) flotation() {
	f := &j.out.Flotation
	f.Pieces = pieces(j.hull.Buoyancy)
	for _, p := range f.Pieces {
		if p.Counts {
			f.Fitted += p.Litres
		}
	}
	wanted := j.length() < 6 && j.decking() != "decked"
	if !wanted && len(f.Pieces) == 0 {
		f.Why = "no foam or chamber is on record, and none is asked for"
		j.notApplying("swamped-floats", "asked for below 6 m of hull where the boat can be swamped", "Directive 2013/53/EU, annex I A 3.3")
		return
	}
	j.swampedFloats(f)
}

// pieces lists the buoyancy, the two largest chambers left out.
func pieces(all []record.Buoyancy) []Piece {
	out := make([]Piece, len(all))
	var chambers []int
	for i := range all {
		b := &all[i]
		out[i] = Piece{Record: b, Litres: float64(b.Volume.V), Counts: true}
		if b.Both.V {
			out[i].Litres *= 2
		}
		if b.Kind.V == "chamber" {
			chambers = append(chambers, i)
		}
	}
	slices.SortStableFunc(chambers, func(a, b int) int {
		switch {
		case all[a].Volume.V > all[b].Volume.V:
			return -1
		case all[a].Volume.V < all[b].Volume.V:
			return 1
		}
		return 0
	})
	left := leftOut
	for _, i := range chambers {
		n := 1
		if all[i].Both.V {
			n = 2
		}
		gone := min(left, n)
		left -= gone
		if gone > 0 {
			out[i].Litres -= float64(gone) * float64(all[i].Volume.V)
			out[i].Counts = out[i].Litres > 0
			out[i].Why = "the two largest chambers are left out"
		}
	}
	return out
}

// swampedFloats asks whether what is fitted carries the boat full of water.
func (j *judge) swampedFloats(f *Flotation) {
	c := finding.Check{Rule: "swamped-floats", Subject: "boat", Asks: "the boat stays afloat when it is full of water", Standing: finding.NotShown, Basis: finding.Practice,
		Source: "Directive 2013/53/EU, annex I A 3.3; what is on board as in 33 CFR 183.105, in fresh water", Places: finding.Places(j.lines.Stations[0].Place)}
	for i := range j.hull.Buoyancy {
		c.Places = append(c.Places, j.hull.Buoyancy[i].At)
	}
	b, why := j.burden()
	switch {
	case len(f.Pieces) == 0:
		f.Why = "no foam or chamber is on record"
		c.Says, c.Missing, c.Settle = "not shown: "+f.Why, []string{"buoyancy"}, "write foam and chambers as [buoyancy.NAME]"
	case why != "":
		f.Why = why
		c.Says, c.Settle = "not shown: "+why, "complete the weight breakdown"
	default:
		f.Swamped = j.settle(b, f.Pieces)
		c.Has, c.Needed = kilo(f.Swamped.Lift), "at least "+kilo(f.Swamped.Burden)
		c.Says = fmt.Sprintf("under water the boat and its share of load weigh %s; foam and chambers carry %s", kilo(f.Swamped.Burden), kilo(f.Swamped.Lift))
		c.Standing = finding.Short
		c.Settle = "more foam, high up and near the sides"
		if f.Swamped.Floats {
			c.Standing, c.Settle = finding.Met, ""
			c.Says += fmt.Sprintf("; it lies at %s° of heel and %s° of trim with %s %% of the gunwale above the water", unit.Text(f.Swamped.Heel, 0), unit.Text(f.Swamped.Trim, 0), unit.Text(f.Swamped.Above, 0))
			j.doubtAttitude(f)
		}
	}
	j.assume("a swamped boat carries 2/15 of its persons and a quarter of its other load, and machinery weighs 85 % of itself under water", "test the boat full of water", finding.Practice)
	j.show(Shown{Check: c})
}

// doubtAttitude tells of a swamped boat that floats, but not level.
func (j *judge) doubtAttitude(f *Flotation) {
	s := f.Swamped
	if s.Above >= swampedPeriphery && s.Heel < 10 && s.Heel > -10 {
		return
	}
	j.say(finding.Doubt, "swamped-attitude", "boat", fmt.Sprintf("swamped, the boat is reckoned to lie at %s° of heel and %s° of trim with %s %% of the gunwale above the water, so it floats but not level",
		unit.Text(s.Heel, 0), unit.Text(s.Trim, 0), unit.Text(s.Above, 0)), "foam farther aft, higher and nearer the sides; a test of the swamped boat", j.hull.Buoyancy[0].At)
}
