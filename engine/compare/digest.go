package compare

import (
	"fmt"
	"slices"
	"strings"
)

// Outcome is checks of one rule that went the same way, told together.
type Outcome struct {
	Rule     string
	Old, New string // as in Standing
	Subjects []string
	Says     string // of the first
}

// Thing is what changed of one thing on record: a weld, a panel, the plate.
type Thing struct {
	What    string // "weld.W001"
	How     string
	Changes []Change
}

// worse reports whether what was met, or not asked, is short or not shown.
func worse(old, new string) bool {
	return old != new && (new == "short" || new == "not shown" && old != "short")
}

// Worse reports whether the checks stand worse than before.
func (o Outcome) Worse() bool { return worse(o.Old, o.New) }

// Words says how the checks came out before and now.
func (o Outcome) Words() string { return Standing{Old: o.Old, New: o.New}.Words() }

// Outcomes gathers checks of one rule that went the same way; those that stand worse come first, else the order is kept.
func (g *Group) Outcomes() []Outcome {
	var all []Outcome
	at := map[[3]string]int{}
	for _, s := range g.Standings {
		key := [3]string{s.Rule, s.Old, s.New}
		i, known := at[key]
		if !known {
			i = len(all)
			at[key] = i
			all = append(all, Outcome{Rule: s.Rule, Old: s.Old, New: s.New, Says: s.Says})
		}
		all[i].Subjects = append(all[i].Subjects, s.Subject)
	}
	slices.SortStableFunc(all, func(a, b Outcome) int {
		switch {
		case a.Worse() == b.Worse():
			return 0
		case a.Worse():
			return -1
		}
		return 1
	})
	return all
}

// Things gathers the changes of records by the thing that they are of, in the order of the changes.
func (g *Group) Things() []Thing {
	var all []Thing
	at := map[[2]string]int{}
	for _, r := range g.Records {
		key := [2]string{thingOf(r.What), r.How}
		i, known := at[key]
		if !known {
			i = len(all)
			at[key] = i
			all = append(all, Thing{What: key[0], How: r.How})
		}
		all[i].Changes = append(all[i].Changes, r)
	}
	return all
}

// thingOf cuts a record key to the thing: its table and its name.
func thingOf(key string) string {
	parts := strings.SplitN(key, ".", 3)
	return strings.Join(parts[:min(2, len(parts))], ".")
}

// Words says what changed of a thing, value by value.
func (t Thing) Words() string {
	parts := make([]string, len(t.Changes))
	for i, c := range t.Changes {
		if parts[i] = c.Words(); len(t.Changes) > 1 {
			parts[i] = strings.TrimPrefix(c.What, t.What+".") + ": " + parts[i]
		}
	}
	return strings.Join(parts, "; ")
}

// Counted says how many things of each table of the records changed, came or went: "weld 46 changed, 148 gone".
func (g *Group) Counted() string {
	type count struct{ changed, added, gone int }
	var order []string
	by := map[string]*count{}
	for _, t := range g.Things() {
		table, _, _ := strings.Cut(t.What, ".")
		if by[table] == nil {
			by[table] = &count{}
			order = append(order, table)
		}
		switch t.How {
		case Added:
			by[table].added++
		case Gone:
			by[table].gone++
		default:
			by[table].changed++
		}
	}
	var parts []string
	for _, table := range order {
		var words []string
		for _, one := range []struct {
			n    int
			what string
		}{{by[table].changed, "changed"}, {by[table].added, "new"}, {by[table].gone, "gone"}} {
			if one.n > 0 {
				words = append(words, fmt.Sprintf("%d %s", one.n, one.what))
			}
		}
		parts = append(parts, table+" "+strings.Join(words, ", "))
	}
	return strings.Join(parts, "; ")
}

// Met says which rules were met before, or not asked, and are not met now; empty where none is.
func (g *Group) Met() string {
	var parts []string
	for _, o := range g.Outcomes() {
		if !o.Worse() {
			continue
		}
		words := o.Rule + " " + o.New
		if n := len(o.Subjects); n > 1 {
			words += fmt.Sprintf(" (%d)", n)
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, "; ")
}

// screenful is how many changes a reader takes in line by line.
const screenful = 60

// Long reports whether there are more changes than a reader takes in line by line.
func (c *Comparison) Long() bool {
	n := c.Counts
	return n.Records+n.Results+n.Standings+n.Findings+n.Documents > screenful
}
