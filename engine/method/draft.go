package method

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// draft is a scope as it is written, before its formulas are read.
type draft struct {
	scope *Scope
	table *block
	in    []*block // of the inputs of the scope, one for one
	steps []*draftStep
	gives *block
}

type draftStep struct {
	step  *Step
	table *block
	unit  string
	bare  bool // no unit is written: that of the first step for the symbol holds
}

// scopes reads every table of the sheet that is not part of its head.
func (p *page) scopes(top *block) []*draft {
	var out []*draft
	for _, name := range top.names() {
		if _, isTable := top.rows[name].(map[string]any); !isTable || top.has(name) {
			continue
		}
		t := top.sub(name)
		if !isSymbol(name) {
			p.fault(p.ofKey(t.path), t.shown, strconv.Quote(clip(name))+" cannot be the name of a scope", "use letters, digits and _")
		}
		out = append(out, p.scope(name, t))
	}
	if len(out) == 0 {
		p.fault(finding.Place{File: p.file, Line: 1, Col: 1}, "", "has no scope", "write [[craft.input]] and [[craft.step]]")
	}
	return out
}

func (p *page) scope(name string, t *block) *draft {
	d := &draft{scope: &Scope{Name: name}, table: t}
	d.scope.Above, _ = t.text("above")
	for _, in := range t.tables("input") {
		d.scope.Inputs = append(d.scope.Inputs, p.input(in))
		d.in = append(d.in, in)
	}
	for _, st := range t.tables("step") {
		d.steps = append(d.steps, p.step(st))
	}
	d.gives = t.sub("gives")
	t.close()
	if len(d.in)+len(d.steps) == 0 {
		p.fault(p.ofKey(t.path), t.shown, "has neither input nor step", "write [["+t.shown+".step]]")
	}
	return d
}

// named reads the symbol of an input or a step and names the table after it in messages.
func (t *block) named() string {
	s := t.must("symbol", `write the symbol of the source, e.g. symbol = "k_2"`)
	if s == "" {
		return ""
	}
	if !isSymbol(s) {
		t.wrong("symbol", strconv.Quote(clip(s))+" cannot be a symbol", "a letter, then letters, digits and single _, 40 bytes at most")
		return ""
	}
	t.shown = t.shown[:strings.LastIndex(t.shown, ".")+1] + s
	if why := reserved(s); why != "" {
		t.wrong("symbol", s+" "+why, "choose another symbol")
	}
	return s
}

var fromName = regexp.MustCompile(`^[a-z][a-z0-9_]*(\.[a-z0-9_]+)+$`)

func (p *page) input(t *block) *Input {
	in := &Input{
		Symbol: t.named(),
		Name:   t.must("name", "say in plain words what it is"),
		From:   t.must("from", `name the record value, e.g. from = "panel.short_side_mm"`),
		Words:  t.words("words"),
		Least:  t.number("least"),
		Most:   t.number("most"),
	}
	in.At = p.ofValue(child(t.path, "from"))
	in.Note, _ = t.text("note")
	in.Unit = p.inputUnit(t, in)
	if in.From != "" && !fromName.MatchString(in.From) {
		t.wrong("from", strconv.Quote(clip(in.From))+" is no name of a record value", `write it as kind.key, e.g. "boat.loaded_mass_kg"`)
	}
	if in.Least != nil && in.Most != nil && *in.Least > *in.Most {
		t.wrong("least", fmt.Sprintf("is %v, above most, which is %v", *in.Least, *in.Most), "")
	}
	t.close()
	return in
}

// inputUnit reads the unit and holds it against the unit at the end of the record name.
func (p *page) inputUnit(t *block, in *Input) string {
	u, written := t.text("unit")
	if _, words := t.rows["words"]; words {
		if written && u != "" || in.Least != nil || in.Most != nil {
			t.wrong("words", "stand beside a unit or a range", "an input is either a word or a number")
		}
		return ""
	}
	if _, there := t.rows["unit"]; !there {
		p.fault(p.ofKey(t.path), t.key("unit"), "is missing", `write unit = "" for a number without unit`)
		return ""
	}
	t.knownSign(u)
	if n, ok := unitOfKey(in.From); ok && n.Sign != u && written {
		t.wrong("unit", fmt.Sprintf("is %s, but %s is in %s", strconv.Quote(clip(u)), in.From, n.Sign), "write unit = "+strconv.Quote(n.Sign))
	}
	return u
}

// knownSign faults a unit that is a known one spelt another way. Units that no record uses, such as kN·m, may stand.
func (t *block) knownSign(u string) {
	for _, n := range named() {
		if n.Sign == u {
			return
		}
	}
	if u == "kN" { // kilonewton, which no record uses; without this it is taken for a knot written wrongly
		return
	}
	if sign, known := signs()[plainSign(u)]; known {
		t.wrong("unit", strconv.Quote(u)+" is not how the unit is written here", "write unit = "+strconv.Quote(sign))
		return
	}
	if len(u) > 24 {
		t.wrong("unit", strconv.Quote(clip(u))+" is too long for a unit", "")
	}
}

// plainSign is a unit without what keyboards and habits make of it.
func plainSign(u string) string {
	return strings.ToLower(strings.ToUpper(strings.NewReplacer("²", "2", "³", "3", "^", "", " ", "").Replace(u)))
}

// signs gives how a unit is written here, by its plain form; of two alike the first.
var signs = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, n := range named() {
		if plain := plainSign(n.Sign); n.Sign != "" && out[plain] == "" {
			out[plain] = n.Sign
		}
	}
	return out
})

// named lists the units that records know; every step of every sheet asks.
var named = sync.OnceValue(func() []unit.Named {
	names := unit.Types()
	slices.Sort(names)
	var out []unit.Named
	for _, name := range names {
		n, _ := unit.Of(name)
		out = append(out, n)
	}
	return out
})

// unitOfKey gives the unit at the end of a record name; the longest that fits is meant.
func unitOfKey(from string) (found unit.Named, ok bool) {
	for _, n := range named() {
		if n.Suffix != "" && strings.HasSuffix(from, "_"+n.Suffix) && len(n.Suffix) > len(found.Suffix) {
			found, ok = n, true
		}
	}
	return found, ok
}

func (p *page) step(t *block) *draftStep {
	s := &Step{Symbol: t.named(), Line: p.line(t.path)}
	d := &draftStep{step: s, table: t}
	s.Name, _ = t.text("name")
	s.Note, _ = t.text("note")
	s.Clause = t.must("clause", "name clause, table or page of the work")
	s.Basis = t.basis()
	_, written := t.rows["unit"]
	d.unit, _ = t.text("unit")
	d.bare = !written
	t.knownSign(d.unit)
	t.asked = append(t.asked, "when", "formula", "range")
	t.close()
	return d
}

func (t *block) basis() finding.Basis {
	b := t.must("basis", basesHint())
	if b != "" && !slices.Contains(finding.Bases(), finding.Basis(b)) {
		t.wrong("basis", strconv.Quote(clip(b))+" is no basis", basesHint())
	}
	return finding.Basis(b)
}

var basesHint = sync.OnceValue(func() string {
	var known []string
	for _, b := range finding.Bases() {
		known = append(known, string(b))
	}
	return "one of " + strings.Join(known, ", ")
})
