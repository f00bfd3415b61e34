package scantling

import (
	"fmt"
	"strings"

	"hullfile/engine/method"
	"hullfile/engine/record"
)

// rule is one method sheet with what all panels and members of a hull share under it.
type rule struct {
	name    string
	sheet   *method.Sheet
	metals  *alloys
	boat    *record.Boat
	rules   *record.Rules
	craft   *method.Working
	refuses string   // why no panel or member can be judged
	missing []string // record keys that would settle it
	governs bool
	desk
}

// desk is what is overwritten from panel to panel.
type desk struct {
	turned map[string]*method.Working // by scope
	trays  map[string]*tray           // by scope
	memo   map[string]judged          // panels by all that went in
	kept   map[string]held            // members likewise
	key    []byte
}

func newDesk() desk {
	return desk{turned: map[string]*method.Working{}, trays: map[string]*tray{}, memo: map[string]judged{}, kept: map[string]held{}}
}

// newRule reckons the craft by a sheet. A sheet that is not there, has no scope for the craft, or takes a value in another
// unit than the record has, judges nothing and says why.
func newRule(name string, in *Input, w wires) *rule {
	r := &rule{name: strings.TrimSuffix(name, ".toml"), boat: &in.Hull.Boat, rules: &in.Hull.Rules, desk: newDesk()}
	sheet, found := in.Library.Sheet(name)
	if !found {
		r.refuses = fmt.Sprintf("method sheet %q is not among the sheets at hand: %s", name, strings.Join(in.Library.Names(), ", "))
		return r
	}
	r.sheet = sheet
	r.metals = &alloys{table: in.Alloys, source: sheet.Strengths(), wires: w, found: map[asked]*metal{}}
	t := r.tray("craft", r.given())
	if t == nil {
		r.refuses = fmt.Sprintf("%s has no scope %q", sheet.Name, "craft")
		return r
	}
	craft, err := sheet.Evaluate("craft", t, nil)
	if err != nil {
		r.refuses = err.Error()
		return r
	}
	r.craft = craft
	return r
}

// given is what every scope of the sheet may ask for.
func (r *rule) given() *given { return &given{boat: r.boat, rules: r.rules} }

// work reckons a scope in a working of its own, which the caller keeps.
func (r *rule) work(scope string, from method.Given) (*method.Working, error) {
	return r.sheet.Evaluate(scope, from, r.craft)
}

// turn reckons a scope in the one working that is kept for it, without its sentences; the next turn overwrites it.
func (r *rule) turn(scope string, from method.Given) (*method.Working, error) {
	w := r.turned[scope]
	if w != nil {
		return w, w.Turn(from)
	}
	w, err := r.work(scope, from)
	if err == nil {
		r.turned[scope] = w
	}
	return w, err
}

// apart is the same sheet with a boat and a craft of its own, for questions of what if: the boat may be changed and the
// craft reckoned again.
func (r *rule) apart() *rule {
	boat, own := *r.boat, *r
	own.boat, own.desk = &boat, newDesk()
	own.craft, _ = r.sheet.Evaluate("craft", own.tray("craft", own.given()), nil) // it did not fail before
	return &own
}

// again reckons the craft once more after its boat was changed.
func (r *rule) again() error {
	clear(r.memo)
	clear(r.kept)
	return r.craft.Turn(r.tray("craft", r.given()))
}

func (r *rule) public(governs bool) Rule {
	out := Rule{Name: r.name, Cite: r.name, Sheet: r.sheet, Craft: r.craft, Governs: governs, Refuses: r.refuses}
	if r.sheet != nil {
		out.Cite = r.sheet.Cite("")
		out.Recalled, out.Formulas = recalledSteps(r.sheet)
	}
	return out
}
