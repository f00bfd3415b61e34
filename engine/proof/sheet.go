package proof

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// bySheet takes the symbol that the case asks for out of a method sheet.
func (r *runner) bySheet(s *set, c *row) (outcome, error) {
	sheet, ok := r.lib.Sheet(s.Method)
	if !ok {
		return outcome{}, fmt.Errorf("no method sheet %q", s.Method)
	}
	scope := s.Scope
	if c.Scope != "" {
		scope = c.Scope
	}
	chain := scopes(sheet, scope)
	if len(chain) == 0 {
		return outcome{}, fmt.Errorf("sheet %s has no scope %q", s.Method, scope)
	}
	given, err := given(chain, s.Inputs, c.Inputs)
	out := outcome{inputs: given.text, symbol: c.Symbol}
	if err != nil {
		return out, err
	}
	if out.under, err = sheet.Follow(scope, c.Symbol, given.values, r.over); err != nil {
		return out, err
	}
	r.over = out.under
	return out, out.take(c.Symbol)
}

// take reads the result out of the working.
func (o *outcome) take(symbol string) error {
	shown, ok := o.under.Get(symbol)
	if !ok {
		return fmt.Errorf("the sheet has no symbol %q", symbol)
	}
	v, ok := o.under.Value(symbol)
	if !ok {
		if len(shown.Lacks()) > 0 {
			return fmt.Errorf("%s: %s %s (%s)", symbol, shown.State, shown.Why(), strings.Join(shown.Lacks(), ", "))
		}
		return fmt.Errorf("%s: %s %s", symbol, shown.State, shown.Why())
	}
	o.got, o.unit = v, shown.Unit
	return nil
}

// scopes lists the scopes from the top down to the one that is named; none if the sheet has no such scope.
func scopes(sheet *method.Sheet, name string) []*method.Scope {
	var chain []*method.Scope
	for name != "" && len(chain) <= len(sheet.Scopes) {
		sc := scopeNamed(sheet, name)
		if sc == nil {
			return nil
		}
		chain = append([]*method.Scope{sc}, chain...)
		name = sc.Above
	}
	return chain
}

func scopeNamed(sheet *method.Sheet, name string) *method.Scope {
	for _, sc := range sheet.Scopes {
		if sc.Name == name {
			return sc
		}
	}
	return nil
}

// put is the inputs of a case: as a Given, and as one line to print.
type put struct {
	values method.GivenMap
	text   string
}

// given turns the written inputs into a Given, in the order in which the sheet asks for them. An input that no scope
// asks for is an error: it would be a typing fault that changes nothing.
func given(chain []*method.Scope, shared, own map[string]any) (put, error) {
	out := put{values: make(method.GivenMap, len(shared)+len(own))}
	var parts []string
	for _, sc := range chain {
		for _, in := range sc.Inputs {
			v, ok := own[in.From]
			if !ok {
				v, ok = shared[in.From]
			}
			if !ok {
				continue
			}
			q, text, err := quantity(in, v)
			if err != nil {
				return out, err
			}
			out.values[in.From] = q
			parts = append(parts, method.Written(in.Symbol)+" "+text)
		}
	}
	out.text = strings.Join(parts, ", ")
	var idle []string
	for _, written := range []map[string]any{shared, own} {
		for name := range written {
			if _, ok := out.values[name]; !ok {
				idle = append(idle, name)
			}
		}
	}
	if len(idle) > 0 {
		return out, fmt.Errorf("no scope asks for %q", slices.Min(idle))
	}
	return out, nil
}

func quantity(in *method.Input, v any) (method.Quantity, string, error) {
	if word, ok := v.(string); ok && in.Words != nil {
		return method.Quantity{Word: word, IsWord: true}, word, nil
	}
	x, ok := number(v)
	if !ok || in.Words != nil {
		return method.Quantity{}, "", fmt.Errorf("input %s: %v is of the wrong kind", in.From, v)
	}
	return method.Quantity{Number: x, Unit: in.Unit}, strings.TrimSpace(plain(x) + " " + in.Unit), nil
}

// touch marks the formulas that a result speaks for: those that the case names, or all that it was reckoned from. It
// gives the first of the names on which the result does not rest.
func (r *runner) touch(s *set, checks []string, got outcome) (missed string) {
	if got.under == nil {
		return ""
	}
	rests := restsOn(got.under, got.symbol)
	for _, name := range checks {
		if rests[name] == nil {
			return name
		}
	}
	for name, f := range rests {
		if len(checks) == 0 || slices.Contains(checks, name) {
			r.mark(s, f)
		}
	}
	return ""
}

// restsOn is the formula of a result and every formula that it was reckoned from, by symbol.
func restsOn(w *method.Working, symbol string) map[string]*method.Formula {
	met := map[string]*method.Formula{}
	var follow func(symbol string)
	follow = func(symbol string) {
		shown, ok := w.Get(symbol)
		if !ok || shown.Formula == nil || met[shown.Symbol] != nil {
			return
		}
		met[shown.Symbol] = shown.Formula
		for _, used := range shown.Uses {
			follow(used)
		}
	}
	follow(symbol)
	return met
}

func (r *runner) mark(s *set, f *method.Formula) {
	t := r.touched[f]
	if t == nil {
		t = &touch{}
		r.touched[f] = t
	}
	switch {
	case s.Basis == finding.Read:
		t.outside = true
	case !slices.Contains(t.softly, s.name):
		t.softly = append(t.softly, s.name)
	}
}

// without lists the steps of every sheet that no outside check touched, in the order of the sheets.
func (r *runner) without() []Untouched {
	var out []Untouched
	for _, sheet := range r.lib.Sheets() {
		for _, sc := range sheet.Scopes {
			for _, st := range sc.Steps {
				t := r.touched[st.Formula]
				if t == nil {
					t = &touch{}
				}
				if !t.outside {
					out = append(out, untouched(sheet, sc, st, t.softly))
				}
			}
		}
	}
	return out
}

func untouched(sheet *method.Sheet, sc *method.Scope, st *method.Step, softly []string) Untouched {
	u := Untouched{Method: sheet.Name, Scope: sc.Name, Symbol: st.Symbol, Name: st.Name, Clause: st.Clause, Basis: st.Basis, Cause: causeOf(sheet, st), Softly: softly}
	if st.When != nil {
		u.When = st.When.String()
	}
	return u
}

func number(v any) (float64, bool) {
	switch x := v.(type) {
	case int64:
		return float64(x), true
	case float64:
		return x, true
	}
	return 0, false
}

// plain writes a number with as many digits as it has.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// listed writes inputs by name.
func listed(in map[string]float64) string {
	var parts []string
	for _, name := range sorted(in) {
		parts = append(parts, name+" "+plain(in[name]))
	}
	return strings.Join(parts, ", ")
}

func sorted[T any](m map[string]T) []string {
	names := make([]string, 0, len(m))
	for name := range m {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}
