package scantling

import (
	"fmt"
	"math"

	"hullfile/engine/beam"
	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// byModel is the word by which a record lets the models decide about frames.
const byModel = "grillage"

// ruleModel is the name of the doubt that a model raises.
const ruleModel = "frame-model"

// together solves every ring and grillage of the grid and sets what comes out beside each member. Only where the record
// names the models as what decides does the standing of a primary member follow them.
func (j *judge) together(all []held, out *Result) {
	at := make(map[string]int, len(all))
	for i := range all {
		at[all[i].Record.ID] = i
	}
	s := structure{judge: j, all: all, at: at}
	g := j.in.Grid
	for i := range g.Rings {
		out.Models = append(out.Models, s.ring(&g.Rings[i]))
	}
	for i := range g.Grillages {
		out.Models = append(out.Models, s.grillage(&g.Grillages[i]))
	}
	decides := j.hull.Rules.FramesBy.V == byModel
	for i := range out.Models {
		s.beside(i, &out.Models[i], decides)
	}
	out.Findings = append(out.Findings, s.doubts(out)...)
}

// doubts tells where a model asks for more than the rule does and more than is fitted: once for each kind of model and
// zone, with the worst named.
func (s *structure) doubts(out *Result) []finding.Finding {
	type group struct {
		kind beam.Kind
		zone string
	}
	worst, count := map[group]*Together{}, map[group]int{}
	subject, places := map[group]string{}, map[group][]finding.Place{}
	var order []group
	for i := range s.all {
		m := &s.all[i]
		for k := range m.Together {
			t := &m.Together[k]
			if t.Decides || t.Alone < 1 || t.Margin >= 1 {
				continue
			}
			g := group{out.Models[t.Model].Kind, m.Record.Zone.V}
			count[g]++
			if worst[g] == nil {
				order = append(order, g)
			}
			if worst[g] == nil || t.Margin < worst[g].Margin {
				worst[g], subject[g], places[g] = t, "member "+m.Record.ID, placesOf(m.Record.Section.At)
			}
		}
	}
	var all []finding.Finding
	for _, g := range order {
		all = append(all, finding.Finding{Kind: finding.Doubt, Rule: ruleModel, Subject: subject[g], Places: places[g],
			Says:   fmt.Sprintf("%s: %s. So with %d of the %s", subject[g], worst[g].Says, count[g], g.zone),
			Settle: "look at the moments of the model, fix or bracket the joints that it takes as free, or have a naval architect judge the frame"})
	}
	return all
}

// beside sets one solved model beside its members.
func (s *structure) beside(at int, m *Model, decides bool) {
	if !m.Solved {
		return
	}
	most := map[int]*Together{}
	var order []int
	for i := range m.Bars {
		k, ok := s.at[m.Bars[i].Judged]
		if !ok {
			continue
		}
		t := most[k]
		if t == nil {
			t = &Together{Model: at}
			most[k], order = t, append(order, k)
		}
		for _, p := range m.Bars[i].At {
			t.Moment, t.Shear = math.Max(t.Moment, math.Abs(p.Moment)), math.Max(t.Shear, math.Abs(p.Shear))
			if math.Abs(float64(p.Moves)) > math.Abs(float64(t.Moves)) {
				t.Moves = p.Moves
			}
		}
	}
	for _, k := range order {
		s.all[k].stand(*most[k], m, decides)
	}
}

// stand compares a member among its neighbours with itself as one span. The model takes the place of moment and shear
// alone: the modulus that is needed goes with the moment, the web with the shear.
func (m *held) stand(t Together, model *Model, decides bool) {
	bending, bends := m.Need("bending")
	shear, shears := m.Need("shear")
	if m.Standing == finding.NotShown || !bends || m.Moment <= 0 || t.Moment <= 0 {
		return
	}
	t.Ratio = t.Moment / m.Moment
	t.Alone, t.Margin = bending.Margin, bending.Margin/t.Ratio
	if shears && m.Force > 0 && t.Shear > 0 {
		t.Alone = math.Min(t.Alone, shear.Margin)
		t.Margin = math.Min(t.Margin, shear.Margin*m.Force/t.Shear)
	}
	t.Decides = decides && model.Kind == beam.Grillage && m.Scope == "primary"
	t.Says = t.says(m, model)
	m.Together = append(m.Together, t)
	if t.Decides {
		m.decide(t)
	}
}

func (t *Together) says(m *held, model *Model) string {
	says := fmt.Sprintf("in the model %s its greatest moment is %s kN·m, %s times that of one span alone (%s kN·m), and it moves %s mm; bending and shear have %s times, alone %s",
		model.Name, unit.Figures(t.Moment, 3), unit.Text(t.Ratio, 2), unit.Figures(m.Moment, 3), unit.Text(t.Moves, 1), marginText(t.Margin, t.Margin >= 1), marginText(t.Alone, t.Alone >= 1))
	switch {
	case t.Decides:
		return says + "; the record lets this decide"
	case t.Alone < 1 && t.Margin >= 1:
		return says + ". Its neighbours hold it by this model; the standing stays that of the rule"
	case t.Alone >= 1 && t.Margin < 1:
		return says + ". The model asks for more than the rule; the standing stays that of the rule"
	}
	return says
}

// decide puts the outcome of the model in place of bending and shear of one span. Slenderness and inertia stay.
func (m *held) decide(t Together) {
	least := Need{What: "bending and shear among its neighbours", Name: "strength over what the model puts on it", Needed: 1, Fitted: settled(t.Margin), Margin: t.Margin, Shown: true}
	for _, n := range m.Needs {
		if n.Shown && n.What != "bending" && n.What != "shear" && n.Margin < least.Margin {
			least = n
		}
	}
	m.governs = least
	m.Governs, m.Margin, m.asked = least.What, least.Margin, least.Name
	m.Basis = finding.Softer(m.Basis, finding.Derived)
	m.Standing = finding.Met
	if least.Margin < 1 {
		m.Standing = finding.Short
	}
}
