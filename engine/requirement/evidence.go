package requirement

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// word judges one word of evidence for the hull. All that its entry names must be so.
func (a *assessor) word(w *record.Evidence) Answer {
	if made, ok := a.made[w.ID]; ok {
		return made
	}
	out := Answer{Word: w, Standing: finding.Met}
	a.checked(w, &out)
	a.papers(w, &out)
	a.keys(w, &out)
	a.tables(w, &out)
	if out.Says == "" {
		out.Says = "shown"
	}
	a.made[w.ID] = out
	return out
}

// lower lowers the standing of an answer and gives the reason; the gravest reason stays.
func (o *Answer) lower(s finding.Standing, says, settle string) {
	worse := finding.Worst(o.Standing, s)
	if s != finding.Met && (worse != o.Standing || o.Standing == finding.Met) {
		o.Says, o.Settle = says, settle
	}
	o.Standing = worse
}

// checked takes the checks and findings of the rules of a word.
func (a *assessor) checked(w *record.Evidence, out *Answer) {
	for _, rule := range w.Rules.V {
		if !slices.ContainsFunc(a.rules, func(of ruled) bool { return len(of.checks) > 0 && takes([]string{rule}, of.rule) }) {
			out.lower(finding.NotShown, "nothing of it is on record yet", "write the records that it is reckoned from")
		}
	}
	met, seen := 0, map[shownAs]int{}
	for _, of := range a.rules {
		if !takes(w.Rules.V, of.rule) && !takes(w.Also.V, of.rule) {
			continue
		}
		for _, c := range of.checks {
			if c.Standing == finding.Met {
				met++
			}
			out.count(c, seen)
			out.lower(c.Standing, c.Says, c.Settle)
		}
		for _, f := range of.findings {
			out.told(f, seen)
		}
	}
	if met > 0 && out.Standing == finding.Met {
		out.Says = unit.Count(met, "check", "checks") + " met"
	}
}

// ruled is the checks and findings of one rule.
type ruled struct {
	rule     string
	checks   []*finding.Check
	findings []*finding.Finding
}

// byRule gathers checks and findings by their rule, in the order in which the rules come.
func byRule(in *Input) []ruled {
	at := map[string]int{}
	var out []ruled
	of := func(rule string) *ruled {
		i, ok := at[rule]
		if !ok {
			i, at[rule] = len(out), len(out)
			out = append(out, ruled{rule: rule})
		}
		return &out[i]
	}
	for i := range in.Checks {
		r := of(in.Checks[i].Rule)
		r.checks = append(r.checks, &in.Checks[i])
	}
	for i := range in.Findings {
		r := of(in.Findings[i].Rule)
		r.findings = append(r.findings, &in.Findings[i])
	}
	return out
}

// shownAs is what tells one thing shown by checks and findings from another.
type shownAs struct {
	rule, subject string
	standing      finding.Standing
	doubt         bool
}

// count adds a check to those of its rule that are met; what is not met stands by itself. seen says where each thing shown is.
func (o *Answer) count(c *finding.Check, seen map[shownAs]int) {
	as := shownAs{rule: c.Rule, subject: c.Subject, standing: c.Standing}
	if c.Standing == finding.Met {
		as.subject = ""
		if i, there := seen[as]; there {
			o.Shown[i].Count++
			return
		}
	}
	s := Shown{Rule: c.Rule, Subject: c.Subject, Count: 1, Standing: c.Standing, Says: c.Says}
	if len(c.Places) > 0 {
		s.Place = c.Places[0]
	}
	seen[as] = len(o.Shown)
	o.Shown = append(o.Shown, s)
}

// told takes a finding: a contradiction or shortfall makes the answer short, a gap leaves it not shown, a doubt is shown
// beside it. What a check has said already is not said again.
func (o *Answer) told(f *finding.Finding, seen map[shownAs]int) {
	s := Shown{Rule: f.Rule, Subject: f.Subject, Count: 1, Says: f.Says}
	if len(f.Places) > 0 {
		s.Place = f.Places[0]
	}
	switch f.Kind {
	case finding.Doubt:
		s.Doubt, s.Standing = true, finding.Met
	case finding.Gap:
		s.Standing = finding.NotShown
	default:
		s.Standing = finding.Short
	}
	as := shownAs{s.Rule, s.Subject, s.Standing, s.Doubt}
	if _, there := seen[as]; there {
		return
	}
	seen[as] = len(o.Shown)
	o.Shown = append(o.Shown, s)
	if !s.Doubt {
		o.lower(s.Standing, f.Says, f.Settle)
	}
}

// papers looks for a document of one of the kinds.
func (a *assessor) papers(w *record.Evidence, out *Answer) {
	if len(w.Kinds.V) == 0 {
		return
	}
	best := finding.Standing("")
	for i := range a.in.Documents.Documents {
		d := &a.in.Documents.Documents[i]
		if !slices.Contains(w.Kinds.V, d.Record.Kind.V) || w.Named.V && !slices.Contains(d.Record.Shows.V, w.ID) {
			continue
		}
		s, says := a.paper(w, d)
		out.Shown = append(out.Shown, Shown{Subject: "document " + d.Record.ID, Count: 1, Standing: s, Says: says, Place: d.Record.At})
		if best == "" || s == finding.Met {
			best = s
		}
		if s == finding.Met && out.Standing == finding.Met {
			out.Says = says
		}
		if s != finding.Met {
			defer func() {
				if best != finding.Met {
					out.lower(s, d.Record.Title.V+": "+says, "put the right paper on record")
				}
			}()
		}
	}
	if best == "" {
		out.lower(finding.NotShown, "no such paper is on record", "put it on record as [document.KEY] with "+asked(w))
		out.Lacks = append(out.Lacks, "document")
	}
}

// asked says what the record of a paper must hold to count for a word.
func asked(w *record.Evidence) string {
	says := fmt.Sprintf("kind = %q", w.Kinds.V[0])
	if w.Named.V {
		says += fmt.Sprintf(" and shows = [%q]", w.ID)
	}
	if w.Signed.V {
		says += ", signed_by and sha256"
	}
	return says
}

// paper judges one document: by the checks of the documents themselves, and whether it is signed where it must be.
func (a *assessor) paper(w *record.Evidence, d *document.Document) (finding.Standing, string) {
	for i := range a.in.Checks {
		c := &a.in.Checks[i]
		if c.Subject == "document "+d.Record.ID && c.Standing != finding.Met {
			return c.Standing, c.Says
		}
	}
	switch {
	case !d.Present:
		return finding.NotShown, "the file is not there"
	case !d.Matches:
		return finding.Short, "it is not the file that was put on record"
	case w.Signed.V && !d.Record.SignedBy.Set:
		return finding.NotShown, "a draft: nobody is on record who signed it"
	case w.Signed.V && !d.Record.SHA256.Set:
		return finding.NotShown, "a draft: its hash is not on record"
	case w.Signed.V:
		return finding.Met, "signed by " + d.Record.SignedBy.V + ", hash on record"
	case !d.Record.SHA256.Set:
		return finding.Met, "there; no hash is on record to hold it against"
	}
	return finding.Met, "there, and unchanged since it was put on record"
}

// keys asks for record keys.
func (a *assessor) keys(w *record.Evidence, out *Answer) {
	var lacks []string
	for _, key := range w.Keys.V {
		f, ok := value(a.in.Hull, a.in.Builder, key)
		if !ok || !f.Set {
			lacks = append(lacks, key)
			continue
		}
		out.Shown = append(out.Shown, Shown{Count: 1, Standing: finding.Met, Says: key, Place: f.At})
	}
	if len(lacks) > 0 {
		out.Lacks = append(out.Lacks, lacks...)
		out.lower(finding.NotShown, strings.Join(lacks, ", ")+" not written", "write "+strings.Join(lacks, ", "))
	}
	if len(lacks) == 0 && len(w.Keys.V) > 0 && out.Standing == finding.Met && out.Says == "" {
		out.Says = "on record"
	}
}

// tables asks for entries of tables of the record.
func (a *assessor) tables(w *record.Evidence, out *Answer) {
	for _, key := range w.Tables.V {
		n, first, _ := a.in.Hull.Entries(key)
		if n == 0 {
			out.Lacks = append(out.Lacks, key)
			out.lower(finding.NotShown, "no entry is on record", "write ["+key+".KEY]")
			continue
		}
		says := unit.Count(n, "entry", "entries") + " on record"
		out.Shown = append(out.Shown, Shown{Count: n, Standing: finding.Met, Says: says + " in " + key, Place: first})
		if out.Standing == finding.Met && out.Says == "" {
			out.Says = says
		}
	}
}
