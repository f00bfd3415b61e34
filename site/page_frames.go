package site

import (
	"math"

	"hullfile/engine/beam"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
	"hullfile/site/chart"
)

// FramesPage lists the models of rings and bottoms, with the midship section.
type FramesPage struct {
	Midship  Drawing
	At       string // which frame is drawn
	Says     ModelsSays
	Rings    []ModelRow
	Bottoms  []ModelRow
	Findings []FindingRow
}

// ModelsSays is the answer.
type ModelsSays struct {
	Models   int
	Unsolved int
	Held     []TogetherRow // short alone and held by their neighbours
	More     []TogetherRow // met alone and not in a model
	Changed  []TogetherRow // both
	Decides  bool          // the record lets the models decide about frames
	Greatest TogetherRow   // the greatest moment over that of one span
}

// ModelRow is one model in a list.
type ModelRow struct {
	Link     Link
	Solved   bool
	Why      string
	Members  int
	Greatest Figure // moment, kN·m
	In       Link
	Ratio    Figure // greatest over the formula
	Least    Figure // least room of bending and shear in the model
	Alone    Figure // and of one span
}

// ModelPage is one ring or grillage: its drawing with sizes, its moments, what it says beside the formula.
type ModelPage struct {
	Title       string
	Ring        bool
	Solved      bool
	Why         string
	Pressure    string
	Section     Drawing // of the hull at a frame
	Moments     Drawing
	Bars        []BarRow
	Together    []TogetherRow
	Reactions   []ReactionRow
	Assumptions []string
	Findings    []FindingRow
}

// BarRow is one stretch of a model.
type BarRow struct {
	Member  Link
	From    string
	To      string
	Length  string
	Load    string
	EI      string // kN·m²
	EA      string // kN; empty where the model does not stretch
	GA      string // kN; empty where shear is taken as stiff
	Moment  string // greatest
	At      string // m from its start
	AtStart string
	AtEnd   string
	Shear   string
	Moves   string
}

// ReactionRow is what holds a joint.
type ReactionRow struct {
	Joint string
	At    string
	Force []string
}

func (p ModelPage) heading() (heading, under string) {
	if p.Ring {
		return p.Title, "section, and the ring as beams"
	}
	return p.Title, "the bottom as beams"
}

// modelTitle names a model as a page.
func modelTitle(m *scantling.Model) string {
	if m.Frame != "" {
		return "Frame " + m.Frame
	}
	return capital(m.Name)
}

func (l *leaf) framesPage() (FramesPage, error) {
	r := &l.dossier.Structure
	p := FramesPage{Findings: l.findingsOn()}
	p.At, p.Midship = l.midship()
	of := l.togetherByModel()
	for i := range r.Models {
		m := &r.Models[i]
		row := l.modelRow(i, m, of[i])
		p.Says.Models++
		if !m.Solved {
			p.Says.Unsolved++
		}
		if m.Kind == beam.Frame {
			p.Rings = append(p.Rings, row)
		} else {
			p.Bottoms = append(p.Bottoms, row)
		}
	}
	most := 0.0
	for i := range r.Members {
		m := &r.Members[i]
		rows := l.togetherRows(m)
		for k := range m.Together {
			t := &m.Together[k]
			p.Says.Decides = p.Says.Decides || t.Decides
			switch {
			case t.Alone < 1 && t.Margin >= 1:
				p.Says.Held = append(p.Says.Held, rows[k])
			case t.Alone >= 1 && t.Margin < 1:
				p.Says.More = append(p.Says.More, rows[k])
			}
			if t.Ratio > most {
				most, p.Says.Greatest = t.Ratio, rows[k]
			}
		}
	}
	p.Says.Changed = append(append(p.Says.Changed, p.Says.Held...), p.Says.More...)
	return p, nil
}

// togetherByModel are the members of each model by what it says of them.
func (l *leaf) togetherByModel() map[int][]beside {
	out := map[int][]beside{}
	r := &l.dossier.Structure
	for i := range r.Members {
		for k := range r.Members[i].Together {
			t := &r.Members[i].Together[k]
			out[t.Model] = append(out[t.Model], beside{&r.Members[i], t})
		}
	}
	return out
}

// beside is a member with what a model says of it.
type beside struct {
	member *scantling.Member
	says   *scantling.Together
}

func (l *leaf) modelRow(at int, m *scantling.Model, of []beside) ModelRow {
	row := ModelRow{Link: l.section(l.modelAt[at]), Solved: m.Solved, Why: m.Why, Members: len(m.Bars), Greatest: Figure{Why: "not solved"}, Ratio: Figure{Why: "not shown"}, Least: Figure{Why: "not shown"}, Alone: Figure{Why: "not shown"}}
	most, ratio, least, alone := 0.0, 0.0, math.Inf(1), math.Inf(1)
	for i := range m.Bars {
		for _, q := range m.Bars[i].At {
			if v := math.Abs(q.Moment); v > most {
				most = v
				row.Greatest, row.In = Figure{Text: unit.Text(v, 2)}, l.subjectAs("member "+m.Bars[i].Judged, m.Bars[i].Member)
			}
		}
	}
	for _, b := range of {
		ratio, least, alone = math.Max(ratio, b.says.Ratio), math.Min(least, b.says.Margin), math.Min(alone, b.says.Alone)
	}
	if len(of) > 0 {
		row.Ratio, row.Least, row.Alone = Figure{Text: unit.Text(ratio, 2)}, Figure{Text: times(least)}, Figure{Text: times(alone)}
	}
	return row
}

func (l *leaf) modelPage(at int) (ModelPage, error) {
	m := &l.dossier.Structure.Models[at]
	p := ModelPage{Title: modelTitle(m), Ring: m.Kind == beam.Frame, Solved: m.Solved, Why: m.Why, Assumptions: append([]string{}, m.Assumptions...), Findings: l.findingsOn()}
	p.Assumptions = append(p.Assumptions, stiffly, uncounted)
	if m.Pressure > 0 {
		p.Pressure = unit.Text(m.Pressure, 1)
	}
	if p.Ring {
		p.Section = l.framePicture(m.Frame)
	}
	if !m.Solved {
		return p, nil
	}
	p.Moments = l.modelPicture(m)
	for i := range m.Bars {
		p.Bars = append(p.Bars, l.barRow(&m.Bars[i]))
	}
	for _, b := range l.togetherByModel()[at] {
		for k := range b.member.Together {
			if &b.member.Together[k] == b.says {
				p.Together = append(p.Together, l.togetherRows(b.member)[k])
			}
		}
	}
	for _, q := range m.Reactions {
		row := ReactionRow{Joint: q.Joint, At: unit.Text(q.At.X, 2) + " / " + unit.Text(q.At.Y, 2) + " / " + unit.Text(q.At.Z, 2)}
		for _, f := range q.Force {
			row.Force = append(row.Force, signed(f, 2))
		}
		p.Reactions = append(p.Reactions, row)
	}
	return p, nil
}

// stiffly says how a bar gives way, so that somebody with another program can reckon the model again.
const stiffly = "A bar bends by its moment over EI and gives way to shear by its shear force over GA, in a ring also to the force along it over EA: E of the metal times the second moment of area, or the area, with the plating that counts, and G = E / (2 (1 + ν)) times the area of its web."

// uncounted is what no beam model here knows, whatever its kind.
const uncounted = "Not counted in any of these models: warping of open sections in torsion, the sideways bending of angles under a load square to the plate, and shear lag beyond the breadth of plating that the rule lets count."

func (l *leaf) barRow(b *scantling.ModelBar) BarRow {
	row := BarRow{Member: l.subjectAs("member "+b.Judged, b.Member), From: b.From, To: b.To, Length: unit.Text(b.Length, 2), Load: unit.Text(b.Load, 2), EI: unit.Figures(b.EI, 4)}
	for _, s := range []struct {
		text  *string
		stiff float64
	}{{&row.EA, b.EA}, {&row.GA, b.GA}} {
		if s.stiff > 0 {
			*s.text = unit.Text(s.stiff, 0)
		}
	}
	if n := len(b.At); n > 0 {
		row.AtStart, row.AtEnd = unit.Text(b.At[0].Moment, 2), unit.Text(b.At[n-1].Moment, 2)
	}
	var moment, shear, moves, where float64
	for _, q := range b.At {
		if math.Abs(q.Moment) > math.Abs(moment) {
			moment, where = q.Moment, q.At
		}
		shear = math.Max(shear, math.Abs(q.Shear))
		if math.Abs(float64(q.Moves)) > math.Abs(moves) {
			moves = float64(q.Moves)
		}
	}
	row.Moment, row.At, row.Shear, row.Moves = unit.Text(moment, 2), unit.Text(where, 2), unit.Text(shear, 2), unit.Text(moves, 2)
	return row
}

func (l *leaf) modelPicture(m *scantling.Model) Drawing {
	if m.Kind == beam.Frame {
		return withoutTable(drawing("Bending moments of the ring", chart.RingModel(*m)).says(l.modelSays(m)))
	}
	return withoutTable(drawing("The bottom in plan: moments, and what holds it", chart.GrillageModel(*m)).says(l.modelSays(m)))
}
