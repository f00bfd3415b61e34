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
	slates map[string]*method.Slate   // by scope; nil where the sheet has none
	trays  map[string]*tray           // by scope
	memo   map[string]judged          // panels by all that went in
	kept   map[string]held            // members likewise
	key    []byte
}

func newDesk() desk {
	return desk{turned: map[string]*method.Working{}, slates: map[string]*method.Slate{}, trays: map[string]*tray{}, memo: map[string]judged{}, kept: map[string]held{}}
}

// newRule reckons the craft by a sheet. A sheet that is not there, has no scope for the craft, or takes a value in another
// unit than the record has, judges nothing and says why.
func newRule(name string, in *Input, w wires) *rule {
	r := &rule{name: strings.TrimSuffix(name, ".toml"), boat: &in.Hull.Boat, rules: &in.Hull.Rules, desk: newDesk()}
	sheet, found := in.Library.Sheet(name)
	if !found {
		r.refuses = fmt.Sprintf("method sheet %q is neither in the yard's folder methods nor among those of the program: %s", name, strings.Join(in.Library.Shipped(), ", "))
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

// answers are what is asked of a sheet in a search: what a panel needs, and what a member needs on the plating that counts.
var answers = []string{"needed", "effective", "modulus", "shear", "inertia", "slender"}

// slate gives what answers a search in a scope, with the craft reckoned above it; nil where the sheet has none.
func (r *rule) slate(scope string) *method.Slate {
	s, made := r.slates[scope]
	if made {
		return s
	}
	craft := r.slates["craft"]
	if craft == nil {
		craft, _ = r.sheet.Slate("craft", nil) // there is such a scope: it has been reckoned
		r.slates["craft"] = craft
		_ = r.again()
	}
	s, _ = r.sheet.Slate(scope, craft, answers...)
	r.slates[scope] = s
	return s
}

// beside is the same rule with a desk of its own.
func (r *rule) beside() *rule {
	out := *r
	out.desk = newDesk()
	if r.metals != nil {
		out.metals = r.metals.anew()
	}
	return &out
}

// apart is the same sheet with a boat of its own, for questions of what if: the boat may be changed and the craft reckoned
// again. It answers searches alone, and may do so beside the rule itself.
func (r *rule) apart() *rule {
	boat := *r.boat
	return &rule{name: r.name, sheet: r.sheet, metals: r.metals.anew(), boat: &boat, rules: r.rules, craft: r.craft, governs: r.governs, desk: newDesk()}
}

// again reckons the craft of searches once more after its boat was changed.
func (r *rule) again() error {
	craft := r.slates["craft"]
	if craft == nil {
		return nil // the first that asks reckons it
	}
	return craft.Reckon(r.tray("craft", r.given()))
}

func (r *rule) public(governs bool) Rule {
	out := Rule{Name: r.name, Cite: r.cite(), Sheet: r.sheet, Craft: r.craft, Governs: governs, Refuses: r.refuses}
	if r.sheet != nil {
		out.Recalled, out.Formulas = recalledSteps(r.sheet)
	}
	return out
}

// cite names the sheet; one that is not there by what the record calls it.
func (r *rule) cite() string {
	if r.sheet == nil {
		return r.name
	}
	return r.sheet.Cite("")
}
