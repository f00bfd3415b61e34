package scantling

import (
	"math"

	"hullfile/engine/unit"
)

// points of a curve, and the steps in which a greatest spacing is sought, mm.
const (
	curvePoints = 13
	spacingStep = 5
)

// whatIfs answers for every zone that has a panel that is shown.
func (j *judge) whatIfs(out *Result) {
	for i := range out.Zones {
		z := &out.Zones[i]
		if z.ByRule[0].Panel < 0 {
			continue
		}
		q := j.whatIf(out, z)
		q.Builds = j.builds(out, &q)
		out.WhatIfs = append(out.WhatIfs, q)
	}
}

func (j *judge) whatIf(out *Result, z *Zone) WhatIf {
	p := &out.Panels[z.ByRule[0].Panel]
	q := WhatIf{Zone: z.Name, Panel: z.ByRule[0].Panel, Member: leastStiffener(out, z.Name), Spacing: p.Record.Short.V, Fitted: p.Fitted}
	if q.Member >= 0 {
		q.Carries = out.Members[q.Member].Record.Spacing.V
	}
	for i, r := range j.rules {
		if r.craft == nil {
			continue
		}
		s := Spacing{Rule: i}
		if l, ok := r.layPanel(q.Panel, p); ok {
			q.Curves = append(q.Curves, Curve{Rule: i, Points: r.curve(&l, p)})
			s.Plate, s.PlateEnds = r.greatestSpacing(&l, p.Record.Long.V, r.setSides(p))
		}
		if q.Member >= 0 {
			m := &out.Members[q.Member]
			if l, ok := r.layMember(q.Member, m, j.bars); ok {
				s.Member, s.MemberEnds = r.greatestSpacing(&l, 4*m.Record.Spacing.V, setSpacing)
			}
		}
		q.Greatest = append(q.Greatest, s)
	}
	return q
}

// leastStiffener is the secondary member of a zone with the least room by the governing sheet, -1 without one.
func leastStiffener(out *Result, zone string) int {
	at := -1
	for i := range out.Members {
		m := &out.Members[i]
		if m.Record.Zone.V == zone && m.Scope == "stiffener" && m.Margin > 0 && (at < 0 || m.Margin < out.Members[at].Margin) {
			at = i
		}
	}
	return at
}

// setSides gives a panel another distance of its stiffeners; its other side stays. Beyond that side the two change roles.
func (r *rule) setSides(p *Panel) func(*laid, float64) {
	long := float64(p.Record.Long.V)
	return func(l *laid, spacing float64) {
		l.set("panel.short_side_mm", math.Min(spacing, long))
		l.set("panel.long_side_mm", math.Max(spacing, long))
	}
}

func setSpacing(l *laid, spacing float64) { l.set("member.spacing_mm", spacing) }

// curve is the thickness needed from half to twice the spacing of today.
func (r *rule) curve(l *laid, p *Panel) []SpacingPoint {
	set, now := r.setSides(p), float64(p.Record.Short.V)
	out := make([]SpacingPoint, 0, curvePoints)
	for i := range curvePoints {
		s := settled(now * (0.5 + 1.5*float64(i)/(curvePoints-1)))
		set(l, s)
		point := SpacingPoint{Spacing: unit.MM(s)}
		if needed, symbol, ok := r.neededBy(l); ok {
			point.Needed, point.Shown = unit.MM(needed), true
			slate := r.slate(l.scope)
			point.Pressure, _ = slate.Under(symbol, pressureUnit)
			point.Stress, _ = slate.Under(symbol, stressUnit)
		}
		out = append(out, point)
	}
	set(l, now)
	return out
}

// looks is how many places between today and the most are looked at, because not every rule grows with the spacing: one
// lets a side panel follow the mode that governs the bottom, and that may change.
const looks = 8

// greatestSpacing goes up from the least step in equal strides and halves the first in which something becomes short; ends
// says that even the most is met. Nought where nothing is shown, or where not even one step is met.
func (r *rule) greatestSpacing(l *laid, most unit.MM, set func(*laid, float64)) (greatest unit.MM, ends bool) {
	top := int(float64(most) / spacingStep)
	met := func(k int) bool {
		set(l, float64(k*spacingStep))
		margin, ok := r.room(l)
		return ok && margin >= 1
	}
	low, high := 0, 0
	for i := 1; i <= looks && high == 0; i++ {
		switch k := top * i / looks; {
		case k <= low:
		case met(k):
			low = k
		default:
			high = k
		}
	}
	if high == 0 {
		return unit.MM(low * spacingStep), low > 0
	}
	for high-low > 1 {
		if mid := (low + high) / 2; met(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return unit.MM(low * spacingStep), false
}
