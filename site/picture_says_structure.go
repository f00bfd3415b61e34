package site

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
	"hullfile/site/chart"
)

// Conclusions of the pictures of structure and weight; picture_says.go has the others.

// judged is a panel or member of a picture as its caption speaks of it.
type judged struct {
	name     string
	standing finding.Standing
	margin   float64 // nought where not shown
}

// roomSays tells what is short, or else where the least room is, and how many could not be shown. what names one of them.
func roomSays(what string, all []judged) string {
	var worst judged
	open := 0
	for _, j := range all {
		if j.standing == finding.NotShown || j.margin <= 0 {
			open++
			continue
		}
		if worst.name == "" || j.margin < worst.margin {
			worst = j
		}
	}
	var parts []string
	switch {
	case worst.name == "":
	case worst.standing == finding.Short:
		parts = append(parts, "short at "+worst.name+", "+roomText(worst.standing, worst.margin)+" times what is needed")
	default:
		parts = append(parts, "no "+what+" short, the least room "+roomText(worst.standing, worst.margin)+" times, at "+worst.name)
	}
	if open > 0 {
		parts = append(parts, plural(open, what+" not shown", what+"s not shown"))
	}
	return strings.Join(parts, "; ")
}

// facesSay tells it of the plate of unrolled faces, and of the worst member that is short on them.
func facesSay(faces []chart.Unfolded) string {
	var panels []judged
	least := math.Inf(1)
	for i := range faces {
		for _, t := range faces[i].Tiles {
			if !t.Plain {
				panels = append(panels, judged{t.Name, t.Standing, t.Margin})
			}
		}
		for _, b := range faces[i].Bars {
			if b.Standing == finding.Short {
				least = math.Min(least, b.Margin)
			}
		}
	}
	out := roomSays("panel", panels)
	if !math.IsInf(least, 1) {
		out = joinedBy(out, "; ", "the worst member has "+roomText(finding.Short, least)+" times what is needed")
	}
	return out
}

func joinedBy(a, between, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + between + b
}

// familySays tells it of the panels or members that share one working.
func (l *leaf) familySays(f *family) string {
	r := &l.dossier.Structure
	var panels, members []judged
	for _, i := range f.panels {
		p := &r.Panels[i]
		panels = append(panels, judged{p.Record.ID, p.Standing, p.Margin})
	}
	for _, i := range f.members {
		m := &r.Members[i]
		members = append(members, judged{m.Record.ID, m.Standing, m.Margin})
	}
	return joinedBy(roomSays("panel", panels), "; ", roomSays("member", members))
}

func (l *leaf) marginsSay() string {
	var all []judged
	for i := range l.dossier.Structure.Panels {
		p := &l.dossier.Structure.Panels[i]
		all = append(all, judged{"panel " + p.Record.ID, p.Standing, p.Margin})
	}
	return roomSays("panel", all)
}

func panelSays(p *scantling.Panel) string {
	if p.Standing == finding.NotShown {
		return "what is needed is not shown"
	}
	return fmt.Sprintf("%s mm fitted, %s mm needed", written(float64(p.Fitted), "mm"), unit.Up(p.Needed, 2))
}

// sectionSays tells what the section has of what is asked of the member.
func sectionSays(m *scantling.Member) string {
	n, ok := m.Need(m.Governs)
	if !ok || !n.Shown {
		return ""
	}
	return needWords(n) + ", " + roomText(m.Standing, m.Margin) + " times"
}

// frameSays tells where the water stands at a frame.
func frameSays(c *chart.FrameCut, chine, sheer float64) string {
	if !c.HasWater {
		return platesSay(c)
	}
	side := func(v float64) string {
		if v < 0 {
			return unit.Text(-v, 2) + " m below"
		}
		return unit.Text(v, 2) + " m above"
	}
	return "the chine lies " + side(chine-c.Water) + " the water, loaded, the sheer " + side(sheer-c.Water) + " it"
}

// platesSay names the plates of a frame; without a loaded mass there is no water to speak of.
func platesSay(c *chart.FrameCut) string {
	var all []string
	for _, s := range c.Skins {
		if s.Words != "" {
			all = append(all, s.Words)
		}
	}
	return strings.Join(all, ", ")
}

// modelSays tells the greatest moment beside that of one span by itself.
func (l *leaf) modelSays(m *scantling.Model) string {
	r := &l.dossier.Structure
	var most *scantling.Together
	name := ""
	for i := range r.Members {
		for k := range r.Members[i].Together {
			t := &r.Members[i].Together[k]
			if &r.Models[t.Model] == m && (most == nil || t.Moment > most.Moment) {
				most, name = t, r.Members[i].Record.ID
			}
		}
	}
	if most == nil {
		return ""
	}
	return fmt.Sprintf("the greatest moment is %s kN·m, in %s, %s times that of one span by itself", unit.Text(most.Moment, 2), name, unit.Text(most.Ratio, 2))
}

// whatIfSays tells how far the stiffeners of a zone may stand apart by the rule that governs.
func whatIfSays(q *scantling.WhatIf) string {
	for _, s := range q.Greatest {
		if s.Rule != 0 || s.Plate <= 0 {
			continue
		}
		if s.Plate < q.Spacing {
			return fmt.Sprintf("by the rule that governs the short side of %s mm is too long; %s mm are allowed", unit.Text(q.Spacing, 0), unit.Text(s.Plate, 0))
		}
		out := fmt.Sprintf("by the rule that governs the short side of %s mm may become %s mm", unit.Text(q.Spacing, 0), unit.Text(s.Plate, 0))
		if s.PlateEnds {
			out += " or more"
		}
		return out
	}
	return ""
}

// movingSays tells what a tenth more of the item that weighs most would do.
func (l *leaf) movingSays() string {
	var most *weight.Item
	for i := range l.dossier.Weight.Items {
		if it := &l.dossier.Weight.Items[i]; it.HasMass && (most == nil || it.MovesKG > most.MovesKG) {
			most = it
		}
	}
	if most == nil || most.MovesKG <= 0 {
		return ""
	}
	out := "a tenth more of " + most.Record.Name.V + " adds " + unit.Text(most.MovesKG, 1) + " kg"
	if !most.HasX || most.MovesX == 0 {
		return out
	}
	way := "forward"
	if most.MovesX < 0 {
		way = "aft"
	}
	return out + fmt.Sprintf(" and moves the centre of the loaded boat %s mm %s", unit.Text(math.Abs(float64(most.MovesX)), 1), way)
}

// weighingSays tells the mass weighed beside the one reckoned.
func weighingSays(w *weight.Weighing) string {
	if !w.HasMass {
		return ""
	}
	more, way := "more", "further forward"
	if w.DiffMass < 0 {
		more = "less"
	}
	if w.DiffX < 0 {
		way = "further aft"
	}
	out := fmt.Sprintf("%s kg weighed, %s kg %s than reckoned", mass(float64(w.Mass)), unit.Text(math.Abs(float64(w.DiffMass)), 0), more)
	if w.HasX {
		out += fmt.Sprintf(", the centre %s mm %s", unit.Text(math.Abs(float64(w.DiffX)), 0), way)
	}
	return out
}
