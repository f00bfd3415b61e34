package loading

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Allowances between a dimension that the record states and the one that the lines give (practice): a part of it, or so
// many degrees or metres.
const (
	lengthApart   = 0.03
	deadriseApart = 1.5
	draughtApart  = 0.04
)

// compare holds the dimensions of the record against the lines, afloat loaded and ready.
func (a *assessor) compare() {
	if len(a.lines.Stations) == 0 {
		return
	}
	b := &a.hull.Boat
	part := func(v float64) float64 { return lengthApart * v }
	a.metres("boat.length_hull_m", "length of hull", b.LengthHull, a.lines.Stations[len(a.lines.Stations)-1].X-a.lines.Stations[0].X, part)
	a.metres("boat.beam_hull_m", "beam of hull", b.BeamHull, a.beam(), part)
	c, ok := a.out.Find("loaded ready")
	if !ok || !c.Floats {
		return
	}
	a.metres("boat.length_waterline_m", "length of waterline", b.LengthWL, c.Afloat.LengthWL, part)
	a.metres("boat.beam_chine_m", "beam between chines", b.BeamChine, c.Afloat.BeamChine, part)
	a.metres("boat.draught_m", "draught", b.Draught, c.Afloat.Draught, func(float64) float64 { return draughtApart })
	if b.Deadrise.Set {
		a.hold(Compared{Key: "boat.deadrise_deg", Name: "deadrise", Stated: float64(b.Deadrise.V), Derived: c.Afloat.Deadrise, Allowed: deadriseApart, Unit: "°", Place: b.Deadrise.At})
	}
}

// beam is the greatest breadth of the hull over its edges.
func (a *assessor) beam() float64 {
	half := 0.0
	for _, s := range a.lines.Stations {
		for e := lines.Keel; e <= lines.Sheer; e++ {
			half = math.Max(half, s.At[e].Y)
		}
	}
	return 2 * half
}

func (a *assessor) metres(key, name string, stated record.Val[unit.M], derived float64, allowed func(float64) float64) {
	if stated.Set {
		v := float64(stated.V)
		a.hold(Compared{Key: key, Name: name, Stated: v, Derived: derived, Allowed: allowed(v), Unit: " m", Place: stated.At})
	}
}

// hold is the check of one dimension; where it differs the two records cannot both be true.
func (a *assessor) hold(k Compared) {
	a.out.Compared = append(a.out.Compared, k)
	c := finding.Check{Rule: "lines-" + strings.ReplaceAll(k.Name, " ", "-"), Subject: "boat", Asks: "the " + k.Name + " that is stated is that of the lines", Standing: finding.Met,
		Basis: finding.Practice, Source: "practice", Places: known([]finding.Place{k.Place, a.lines.Stations[0].Place})}
	show := func(v float64) string { return unit.Text(v, 2) + k.Unit }
	c.Needed, c.Has = show(k.Derived)+" ± "+show(k.Allowed), show(k.Stated)
	c.Says = fmt.Sprintf("%s stated as %s, the lines give %s; %s allowed", k.Name, show(k.Stated), show(k.Derived), show(k.Allowed))
	if math.Abs(k.Stated-k.Derived) > k.Allowed {
		c.Standing = finding.Short
		c.Settle = "hold the lines against the drawing, or correct " + k.Key
		a.say(finding.Contradiction, c.Rule, c.Subject, c.Says, c.Settle, c.Places...)
	}
	a.out.Checks = append(a.out.Checks, c)
	a.assume("dimensions agree with the lines within "+unit.Text(lengthApart*100, 0)+" % of a length, "+unit.Plain(deadriseApart)+"° of deadrise and "+
		unit.Plain(draughtApart*1000)+" mm of draught", "correct the lines or the dimension", finding.Practice)
}
