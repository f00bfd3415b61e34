package scantling

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// The sheets for what no rule for plating and stiffeners speaks of.
const (
	bracketSheet = "brackets"
	spotSheet    = "local-loads"
)

// Rules of the checks.
const (
	ruleBracket = "bracket-strength"
	ruleSpot    = "local-load"
)

// newLocal prepares such a sheet; one that needs no craft has no scope of that name.
func newLocal(name string, in *Input, w wires) *rule {
	r := newRule(name, in, w)
	if r.sheet != nil && r.craft == nil && r.tray("craft", r.given()) == nil {
		r.refuses = ""
	}
	return r
}

// local is one bracket or fitting on its way through its sheet.
type local struct {
	Local
	rule    *rule
	lacks   lacks
	rests   []finding.Place
	subject string
	asks    string
	settle  string
}

// judge reckons a scope and holds what it asks for against what is fitted.
func (l *local) judge(scope string, g finder) {
	l.Standing = finding.NotShown
	if l.rule.refuses != "" {
		l.Why = l.rule.refuses
		return
	}
	t := l.rule.tray(scope, g)
	if t == nil {
		l.Why = l.rule.name + " has no scope " + scope
		return
	}
	w, err := l.rule.work(scope, t)
	if err != nil {
		l.Why = err.Error()
		return
	}
	l.Working, l.rests = w, t.places()
	l.gather(w)
	l.weigh(w)
	if l.Standing == finding.Met {
		return
	}
	for _, answer := range []string{"needed", "fitted", "demand", "capacity", "throat"} {
		l.lacks.look(w, w.Scope.Gives[answer])
	}
	if len(l.lacks.whys) == 0 && l.Standing == finding.NotShown {
		l.lacks.why("the sheet asks for nothing here")
	}
	l.Why = strings.Join(l.lacks.whys, "; ")
}

// gather pairs the answers of the sheet: needed with fitted, demand with capacity, each with the one at its place.
func (l *local) gather(w *method.Working) {
	gives := w.Scope.Gives
	for i, symbol := range gives["demand"] {
		if i < len(gives["capacity"]) {
			l.pair(w, symbol, gives["capacity"][i], true)
		}
	}
	for i, symbol := range gives["needed"] {
		if i < len(gives["fitted"]) {
			l.pair(w, symbol, gives["fitted"][i], false)
		}
	}
}

// pair adds what a sheet needs beside what there is. For most, the first may not be more than the second.
func (l *local) pair(w *method.Working, one, other string, most bool) {
	a, ok := w.Get(one)
	b, both := w.Get(other)
	if !ok || !both {
		return
	}
	n := Need{What: a.Name, Symbol: one, Name: a.Name, Unit: a.Unit, Most: most, State: a.State, reason: reasonOf(a)}
	if !most {
		n.What, n.Name = b.Name, b.Name
	}
	x, shown := w.Value(one)
	y, known := w.Value(other)
	if a.State != method.NotSet && !known {
		n.State, n.reason = b.State, reasonOf(b)
	}
	l.size(&n, x, y, shown && known)
	l.Needs = append(l.Needs, n)
}

// size fills in what is asked and what there is: x is the demand or the need, y the capacity or what is fitted.
func (l *local) size(n *Need, x, y float64, shown bool) {
	if !shown {
		return
	}
	x, y = settled(x), settled(y)
	if x <= 0 {
		n.State, n.reason = method.NotSet, reason{says: "nothing is asked"}
		return
	}
	n.Shown = true
	n.Needed, n.Fitted = x, y
	if n.Most {
		n.Needed, n.Fitted = y, x
	}
	n.Margin = y / x
}

// fitted adds a need of the sheet whose fitted size is on record.
func (l *local) fitted(w *method.Working, gives string, has float64, there bool) {
	for _, symbol := range w.Scope.Gives[gives] {
		s, ok := w.Get(symbol)
		if !ok || s.State == method.NotSet {
			continue
		}
		n := Need{What: s.Name, Symbol: symbol, Name: s.Name, Unit: s.Unit, State: s.State, reason: reasonOf(s)}
		x, shown := w.Value(symbol)
		if !there && shown {
			n.State = method.Missing
		}
		l.size(&n, x, has, shown && there)
		l.Needs = append(l.Needs, n)
	}
}

// weigh takes the need with the least room.
func (l *local) weigh(w *method.Working) {
	open, found := false, false
	for _, n := range l.Needs {
		switch {
		case n.Shown && (!found || n.Margin < l.Governs.Margin):
			l.Governs, found = n, true
		case !n.Shown && n.State != method.NotSet:
			open = true
		}
		l.Outside = l.Outside || n.State == method.Outside
	}
	switch {
	case !found:
		return
	case l.Governs.Margin < 1:
		l.Standing = finding.Short
	case open:
		l.Governs = Need{}
		return
	default:
		l.Standing = finding.Met
	}
	l.Margin = l.Governs.Margin
	if s, ok := w.Get(l.Governs.Symbol); ok {
		l.Basis = s.Rests
	}
}

// check turns the judgement into a check.
func (l *local) check(rule string) finding.Check {
	c := finding.Check{Rule: rule, Subject: l.subject, Asks: l.asks, Standing: l.Standing, Basis: l.Basis, Missing: l.lacks.missing, Places: l.rests}
	if l.rule.sheet != nil {
		c.Source = l.rule.sheet.Cite("")
	}
	if l.Standing == finding.NotShown {
		c.Says, c.Settle = "what it must carry is not shown: "+l.Why, settleBy(l.lacks.missing)
		return c
	}
	n := l.Governs
	c.Needed, c.Has = n.sizes()
	word := "at least"
	if n.Most {
		word = "at most"
	}
	c.Says = fmt.Sprintf("%s: %s, %s %s is asked; %s times", n.Name, c.Has, word, c.Needed, marginText(n.Margin, n.Margin >= 1))
	if l.Outside {
		c.Says += "; outside the range of the method"
	}
	if l.Standing == finding.Short {
		c.Settle = l.settle
		if l.Why != "" {
			c.Says += "; more may be needed: " + l.Why
		}
	}
	return c
}

// mm hands a length of the record to a sheet.
func mm(v unit.MM, source string) method.Quantity {
	return method.Quantity{Number: float64(v), Unit: "mm", Source: source}
}
