// Package next tells a builder what to do next: of all that a technical file says of a hull, the one thing that matters
// most now, and how far the file has come. It judges nothing itself; it puts in order what the trades have found.
//
// The order, which is practice and ours:
//
//  1. a principal datum that is not written, because every trade begins from these;
//  2. shape, frames and stringers where plates are on record, because until then one plate reaches from end to end and is
//     short only for want of what holds it;
//  3. what is too weak, or does not float as it must, because people can be hurt;
//  4. what contradicts, the boat as a whole before its pieces, because what is reckoned from it may be wrong;
//  5. what else is short;
//  6. the first part of the file that is not whole, in the order in which a builder knows things;
//  7. what is missing in the parts that are there;
//  8. what is doubtful.
//
// Within one step the order is that of the findings. A score would have to weigh a weak frame against a missing paper; an order
// says its reasons in words.
//
//   - Question: what is the one thing to do next?
//   - In: the findings, checks and records of a hull.
//   - Out: one step with its reason, and how far each part of the file has come.
//   - Source: practice, ours.
package next

import (
	"cmp"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Rank is the step of the order, from 1; of two hulls the one with the lower rank comes first. 9 is a file in order.
type Rank int

// The steps.
const (
	Principal Rank = iota + 1
	Frameless
	Unsafe
	Contradicts
	Falls
	NotBegun
	Missing
	Doubtful
	Nothing
)

// Step is the one thing to do next.
type Step struct {
	Rank    Rank            `json:"rank"`
	Why     string          `json:"why"`             // why this comes before all else
	Subject string          `json:"subject"`         // what it is about, as in a finding; a part of the file by its name
	Named   string          `json:"named,omitempty"` // as in a finding
	Says    string          `json:"says"`            // what is the matter
	Settle  string          `json:"settle"`          // what to do
	Places  []finding.Place `json:"places,omitempty"`
	Alike   int             `json:"alike,omitempty"` // how many findings of this kind and rule there are, this one counted
}

// Name gives the subject as its readers call it.
func (s Step) Name() string { return cmp.Or(s.Named, s.Subject) }

// Input is what the order is made from.
type Input struct {
	Hull     *record.Hull
	Safety   []finding.Check   // of strength, and of floating
	Findings []finding.Finding // of all trades, in the order in which they are told
}

// Of gives the one thing to do next for a hull.
func Of(in Input) Step {
	parts := Parts(in.Hull)
	if boat := parts[0]; boat.State != Done {
		return partly(Principal, boat)
	}
	if at := slices.IndexFunc(parts[:framed+1], func(p Part) bool { return p.State != Done }); at >= 0 && len(in.Hull.Platings) > 0 {
		return partly(Frameless, parts[at])
	}
	if f := first(in.Findings, finding.Shortfall, func(f *finding.Finding) bool { return unsafe(in.Safety, f) }); f != nil {
		return in.from(Unsafe, f)
	}
	if f := first(in.Findings, finding.Contradiction, whole); f != nil {
		return in.from(Contradicts, f)
	}
	if f := first(in.Findings, finding.Contradiction, anything); f != nil {
		return in.from(Contradicts, f)
	}
	if f := first(in.Findings, finding.Shortfall, anything); f != nil {
		return in.from(Falls, f)
	}
	if at := slices.IndexFunc(parts, func(p Part) bool { return p.State != Done }); at >= 0 {
		return partly(NotBegun, parts[at])
	}
	if f := first(in.Findings, finding.Gap, anything); f != nil {
		return in.from(Missing, f)
	}
	if f := first(in.Findings, finding.Doubt, anything); f != nil {
		return in.from(Doubtful, f)
	}
	return Step{Rank: Nothing, Why: Nothing.why(), Subject: "boat", Says: "nothing is short, contradictory, missing or doubtful", Settle: "render the file, read it as a stranger would, and seal it"}
}

// why says in words why a step comes before those after it.
func (r Rank) why() string {
	switch r {
	case Principal:
		return "every trade begins from the principal data"
	case Frameless:
		return "frames and stringers divide the plate; without them it is reckoned as one panel from end to end"
	case Unsafe:
		return "people can be hurt where a boat is too weak or does not float as it must"
	case Contradicts:
		return "two records cannot both be true, and what is reckoned from them may be wrong"
	case Falls:
		return "a requirement is not reached"
	case NotBegun:
		return "it is the first part of the file that is not whole"
	case Missing:
		return "every part is begun, and this is the first thing missing in them"
	case Doubtful:
		return "nothing is missing, and this is the first thing that a stranger will doubt"
	}
	return "the file is in order"
}

// partly is the step that a part of the file asks for.
func partly(r Rank, p Part) Step {
	says := p.Name + " not begun"
	if r == Principal || p.State == Begun {
		says = p.Name + ": not written: " + strings.Join(p.Missing, ", ")
	}
	return Step{Rank: r, Why: r.why(), Subject: p.Name, Says: says, Settle: p.Settle, Places: []finding.Place{{File: p.File}}}
}

func (in Input) from(r Rank, f *finding.Finding) Step {
	alike := 0
	for _, g := range in.Findings {
		if g.Kind == f.Kind && g.Rule == f.Rule {
			alike++
		}
	}
	return Step{Rank: r, Why: r.why(), Subject: f.Subject, Named: f.Named, Says: f.Says, Settle: f.Settle, Places: f.Places, Alike: alike}
}

func first(all []finding.Finding, kind finding.Kind, asked func(*finding.Finding) bool) *finding.Finding {
	for i := range all {
		if all[i].Kind == kind && asked(&all[i]) {
			return &all[i]
		}
	}
	return nil
}

func anything(*finding.Finding) bool { return true }

// whole reports whether a finding is about the boat as a whole: its data, its weights, its lines, its plate.
func whole(f *finding.Finding) bool {
	return slices.Contains([]string{"boat", "weights", "plate"}, f.Subject) || strings.HasPrefix(f.Subject, "weighing ")
}

// unsafe reports whether a finding stands for one of the checks of strength and floating.
func unsafe(safety []finding.Check, f *finding.Finding) bool {
	return slices.ContainsFunc(safety, func(c finding.Check) bool {
		return c.Standing == finding.Short && c.Rule == f.Rule && c.Subject == f.Subject
	})
}
