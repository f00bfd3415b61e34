package site

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/scantling"
)

// OpinionPage shows how a rule that does not govern comes to what it would ask: its values of the craft, and for plate and for each
// kind of member one worked in full, with the values of the others beside it.
type OpinionPage struct {
	Rule     Link
	Governs  Link // the rule that does
	Zones    []OpinionZone
	Refuses  string
	Recalled int
	Formulas int
	Craft    Working
	Parts    []OpinionPart
}

// OpinionZone is what the rule says of one zone.
type OpinionZone struct {
	Zone  Link
	Words string
	Least Link // with the least room
	Room  Figure
	Standing
}

// OpinionPart is one scope of the sheet.
type OpinionPart struct {
	Title   string
	Of      Link // the one that is worked in full
	Says    string
	Working Working
	Compare Compare
}

func (p OpinionPage) heading() (heading, under string) { return p.Rule.Text, "second opinion" }

func (l *leaf) opinionPage(rule int, pieces []second) (OpinionPage, error) {
	r := &l.dossier.Structure
	of := &r.Rules[rule]
	p := OpinionPage{Rule: l.ruleLink(of), Governs: l.ruleLink(&r.Rules[0]), Recalled: of.Recalled, Formulas: of.Formulas}
	for _, name := range l.zoneNames() {
		p.Zones = append(p.Zones, l.opinionZone(rule, name))
	}
	var err error
	if p.Craft, err = l.working(of.Craft, "craft-", ""); err != nil {
		return p, err
	}
	by := r.Second(rule)
	for _, scope := range []struct{ name, title string }{{"panel", "Panels"}, {"stiffener", "Stiffeners"}, {"primary", "Primary members"}} {
		part, any, err := l.opinionPart(rule, by, scope.name, pieces)
		if err != nil {
			return p, err
		}
		if any {
			part.Title = scope.title
			p.Parts = append(p.Parts, part)
		}
	}
	return p, nil
}

func (l *leaf) opinionZone(rule int, name string) OpinionZone {
	r, z := &l.dossier.Structure, l.zone(name)
	v := &z.ByRule[rule]
	row := OpinionZone{Zone: l.zoneSays(z).Link, Words: zoneWords(v, z), Standing: standing(v.Standing), Room: Figure{Why: "none shown"}}
	least := 0.0
	take := func(subject, id string, o *scantling.Opinion) {
		if least == 0 || o.Margin < least {
			least = o.Margin
			row.Least, row.Room = l.subjectAs(subject, id), Figure{Text: roomText(o.Standing, o.Margin)}
		}
	}
	if v.Panel >= 0 {
		id := r.Panels[v.Panel].Record.ID
		take("panel "+id, id, &r.Panels[v.Panel].Opinions[rule-1])
	}
	if v.Member >= 0 {
		id := r.Members[v.Member].Record.ID
		take("member "+id, id, &r.Members[v.Member].Opinions[rule-1])
	}
	return row
}

// opinionPart works all pieces of a scope by a rule. In full stands the one with the least room by it.
func (l *leaf) opinionPart(rule int, by scantling.Second, scope string, pieces []second) (OpinionPart, bool, error) {
	r := &l.dossier.Structure
	var ws []compared
	var least *scantling.Opinion
	at, of := 0, ""
	for _, q := range pieces {
		subject := q.name(l.book)
		_, id, _ := strings.Cut(subject, " ")
		c := compared{name: id}
		var o *scantling.Opinion
		switch {
		case q.panel >= 0 && scope == "panel":
			p := &r.Panels[q.panel]
			c.working, c.governs = by.Panel(p.Record)
			o = &p.Opinions[rule-1]
		case q.member >= 0 && scope == r.Members[q.member].Scope:
			m := &r.Members[q.member]
			c.working, c.governs = by.Member(m.Record)
			o = &m.Opinions[rule-1]
		}
		if c.working == nil {
			continue
		}
		c.id, c.href = l.secondAt[subject], l.subject(subject).Href
		if least == nil || tighter(o, least) {
			least, at, of = o, len(ws), subject
		}
		ws = append(ws, c)
	}
	if len(ws) == 0 {
		return OpinionPart{}, false, nil
	}
	shown := &ws[at]
	part := OpinionPart{Of: l.subject(of), Says: opinionSays(least)}
	var err error
	if part.Working, err = l.working(shown.working, scope+"-", shown.governs); err != nil {
		return part, false, err
	}
	part.Compare = l.compare(ws, shown.working, part.Working.at)
	if len(part.Compare.Blocks) == 0 { // one alone, or none differs: the ways lead to the head
		part.Compare.IDs = anchorsOf(ws)
	}
	return part, true, nil
}

// tighter reports whether an opinion has less room than another; one that shows nothing has none to show.
func tighter(o, than *scantling.Opinion) bool {
	if shown, other := o.Standing != finding.NotShown, than.Standing != finding.NotShown; shown != other {
		return shown
	}
	return o.Margin < than.Margin
}

func anchorsOf(all []compared) []string {
	out := make([]string, len(all))
	for i := range all {
		out[i] = all[i].id
	}
	return out
}

// opinionSays is what a rule asks of a piece and what there is, in half a sentence.
func opinionSays(o *scantling.Opinion) string {
	if o.Standing == finding.NotShown {
		return "not shown: " + o.Why
	}
	needed, fitted := opinionSizes(o)
	return method.Written(o.What) + ": " + fitted + " " + o.Unit + " there, " + needed + " " + o.Unit + " asked"
}
