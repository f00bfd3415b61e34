package lines

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Compared is one dimension as the record states it and as the lines give it.
type Compared struct {
	Key, Name        string
	Unit             string // "m" or "°"
	Stated, Lines    float64
	Allowed          float64 // greatest difference that is not a contradiction
	HasLines, Agrees bool
	Place            finding.Place
}

// allowances of the comparison; no published limit was found, so they are common practice and said to be so.
const (
	allowPart  = 0.02  // of a length
	allowLeast = 0.030 // metre
	allowAngle = 1.0   // degree
)

// compare holds the dimensions of the record against those of the lines. What is not stated is not compared.
func (r *Result) compare(h *record.Hull) {
	n := len(r.Hull.Stations)
	aft, fore := r.Hull.AftEnd(), r.Hull.Stations[n-1].X
	beam := 0.0
	for _, s := range r.Hull.Stations {
		beam = math.Max(beam, 2*math.Max(s.At[Sheer].Y, math.Max(s.At[Outer].Y, s.At[Knuckle].Y)))
	}
	b := &h.Boat
	r.hold("boat.length_hull_m", "length of hull", b.LengthHull, fore-aft, true)
	r.hold("boat.beam_hull_m", "beam of hull", b.BeamHull, beam, true)
	r.hold("boat.length_waterline_m", "length of waterline", b.LengthWL, r.Afloat.LengthWL, r.HasAfloat)
	r.hold("boat.beam_chine_m", "beam between chines at 0.4 of the waterline", b.BeamChine, r.Afloat.BeamChine, r.HasAfloat)
	r.hold("boat.draught_m", "draught", b.Draught, r.Afloat.Draught, r.HasAfloat)
	r.angle("boat.deadrise_deg", "deadrise at 0.4 of the waterline", b.Deadrise, r.Afloat.Deadrise)
	if len(r.Compared) > 0 {
		r.Assumptions = append(r.Assumptions, finding.Assumption{Subject: "boat", Basis: finding.Practice,
			Says: fmt.Sprintf("stated dimensions may differ from the lines by %.0f %% but at least %.0f mm, angles by %.0f degree: common practice, no published limit",
				allowPart*100, allowLeast*1000, allowAngle), Settle: "nothing needs to be written; a yard that keeps closer limits reads the table"})
	}
}

func (r *Result) hold(key, name string, stated record.Val[unit.M], lines float64, has bool) {
	if !stated.Set {
		return
	}
	r.add(Compared{Key: key, Name: name, Unit: "m", Stated: float64(stated.V), Lines: lines, HasLines: has,
		Allowed: math.Max(allowLeast, allowPart*float64(stated.V)), Place: stated.At})
}

func (r *Result) angle(key, name string, stated record.Val[unit.Deg], lines float64) {
	if stated.Set {
		r.add(Compared{Key: key, Name: name, Unit: "°", Stated: float64(stated.V), Lines: lines, HasLines: r.HasAfloat,
			Allowed: allowAngle, Place: stated.At})
	}
}

// add judges one comparison: a check for each, and a contradiction where the two cannot both be right.
func (r *Result) add(c Compared) {
	c.Agrees = c.HasLines && math.Abs(c.Stated-c.Lines) <= c.Allowed+1e-9
	r.Compared = append(r.Compared, c)
	if !c.HasLines {
		return // told once for all of them by the check of the boat afloat
	}
	k := finding.Check{Rule: "lines-" + strings.TrimPrefix(strings.ReplaceAll(c.Key, "_", "-"), "boat."), Subject: "boat",
		Asks: c.Name + " as stated agrees with the lines", Basis: finding.Practice, Source: "the lines on record; allowance by common practice",
		Places: []finding.Place{c.Place}, Settle: "measure it on the boat, then mend the one that is wrong: " + c.Key + " or the stations"}
	switch {
	case c.Agrees:
		k.Standing, k.Says = finding.Met, fmt.Sprintf("%s stated as %s; the lines give %s", c.Name, figure(c.Stated, c.Unit), figure(c.Lines, c.Unit))
	default:
		k.Standing = finding.Short
		k.Says = fmt.Sprintf("%s stated as %s; the lines give %s, with %s allowed: both cannot be right",
			c.Name, figure(c.Stated, c.Unit), figure(c.Lines, c.Unit), figure(c.Allowed, c.Unit))
		r.Findings = append(r.Findings, finding.Finding{Kind: finding.Contradiction, Rule: k.Rule, Subject: k.Subject, Says: k.Says, Settle: k.Settle,
			Places: []finding.Place{c.Place, r.Hull.Stations[0].Place}})
	}
	r.Checks = append(r.Checks, k)
}

func figure(v float64, unit string) string {
	if unit == "°" {
		return fmt.Sprintf("%.1f°", v)
	}
	return fmt.Sprintf("%.2f %s", v, unit)
}
