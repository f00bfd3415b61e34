package scantling

import (
	"math"
	"strings"

	"hullfile/engine/beam"
	"hullfile/engine/grid"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// structure turns rings and grillages of the grid into beam models of the members that are judged.
type structure struct {
	judge *judge
	all   []held
	at    map[string]int // of the records of members, into all
}

// ordinates is how many places along each stretch are kept, its ends with it.
const ordinates = 11

// span is one stretch with the member that judges it.
type span struct {
	grid.Span
	judged string
	member *held
	stiff  beam.Stiffness
}

// spans finds the members of stretches; why says which of them has no stiffness that is shown.
func (s *structure) spans(all []grid.Span) (out []span, why string) {
	for _, one := range all {
		if one.From == one.To {
			continue // two stringers that follow each other meet at one joint
		}
		judged := one.Member
		if name, drawn := s.judge.judgedAs[one.Member]; drawn {
			judged = name
		}
		i, known := s.at[judged]
		if !known {
			stiff, ok := s.unjudged(one)
			if !ok {
				return nil, "a part of section " + one.Section + " in the " + one.Zone + " is neither judged nor on record"
			}
			out = append(out, span{one, "", nil, stiff})
			continue
		}
		m := &s.all[i]
		if m.Fitted.I <= 0 || m.Pressure <= 0 {
			return nil, "member " + judged + " is not shown"
		}
		out = append(out, span{one, judged, m, beam.StiffnessOf(m.Fitted, unit.MPa(s.young(m.bar)), poisson)})
	}
	return out, ""
}

// unjudged is the stiffness of a part that no record judges, such as a keel bar between frames: with the plate that works
// with it by plate theory.
func (s *structure) unjudged(one grid.Span) (beam.Stiffness, bool) {
	b := s.judge.bars.found[one.Section]
	if b == nil || b.wrong != "" || one.Width <= 0 {
		return beam.Stiffness{}, false
	}
	breadth := unit.MM(0)
	if one.Attached > 0 {
		breadth, _ = section.Lag(unit.MM(one.Width*1000), unit.MM(one.Width*1000), poisson)
	}
	f, err := b.with(unit.MM(one.Attached), breadth)
	if err != nil {
		return beam.Stiffness{}, false
	}
	return beam.StiffnessOf(f.props, unit.MPa(s.young(b)), poisson), true
}

// young is the modulus of elasticity of a bar, N/mm².
func (s *structure) young(b *bar) float64 {
	r := s.judge.governing()
	if r.metals == nil {
		return usualYoung
	}
	of, _ := r.metals.of(b.record.Alloy, unit.MM(b.thickness()), b.form())
	if e := of.young(); e > 0 {
		return e
	}
	return usualYoung
}

// usualYoung stands in where the alloy is not known, which its own check says. Aluminium, N/mm²; recalled.
const usualYoung = 70000

// solve reckons a model and keeps what happens along it.
func (s *structure) solve(m *Model, b beam.Model, all []span, joints []grid.Joint) {
	solution, err := b.Solve()
	if err != nil {
		m.Why = strings.ReplaceAll(err.Error(), "\n", "; ")
		return
	}
	m.Solved = true
	for i := range all {
		m.Bars = append(m.Bars, along(&all[i], solution.Bars[i], &b.Members[i], joints))
	}
	for _, r := range solution.Reactions {
		m.Reactions = append(m.Reactions, ModelReaction{Joint: joints[r.Node].Name, At: joints[r.Node].At, Force: r.Force})
	}
}

// along reads a bar at even places, and where its moment and its shear are greatest.
func along(s *span, bar beam.Bar, m *beam.Member, joints []grid.Joint) ModelBar {
	out := ModelBar{Member: s.Member, Judged: s.judged, From: joints[s.From].Name, To: joints[s.To].Name, Length: bar.Length, EI: s.stiff.EI, EA: m.EA, GA: m.GA,
		Ends: [2]hydrostatics.Vector{joints[s.From].At, joints[s.To].At}}
	inward := 1.0
	for _, l := range m.Loads {
		for _, v := range l.Across {
			if math.Abs(v) > out.Load {
				out.Load = math.Abs(v)
				inward = math.Copysign(1, v)
			}
		}
	}
	e := bar.Extremes()
	places := make([]float64, 0, ordinates+2)
	for i := range ordinates {
		places = append(places, bar.Length*float64(i)/(ordinates-1))
	}
	for _, x := range append(places, e.Moment().At, e.Shear().At) {
		out.At = insert(out.At, point(bar.At(x), inward))
	}
	return out
}

func point(o beam.Ordinate, inward float64) ModelPoint {
	return ModelPoint{At: settled(o.At), Moment: settled(inward * o.Moment), Shear: settled(inward * o.Shear), Moves: unit.MM(settled(inward * o.Moves * 1000))}
}

// insert keeps the points in order, each place once.
func insert(all []ModelPoint, p ModelPoint) []ModelPoint {
	for i := range all {
		switch {
		case math.Abs(all[i].At-p.At) < 1e-6:
			return all
		case p.At < all[i].At:
			return append(all[:i], append([]ModelPoint{p}, all[i:]...)...)
		}
	}
	return append(all, p)
}
