package record

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// completer looks at the records of one hull once they are laid over each other: what must be there, what names another
// entry, dates and sizes that stand beside each other, and values that are possible but unlikely.
type completer struct {
	fs     *faults
	names  map[string][]string        // documents, weights and panels of this hull
	sets   map[string]map[string]bool // the same of kinds with many
	gone   []Absent
	doubts []finding.Finding
}

func (c *completer) table(t *table, n *node, way *trail) {
	each := way.to("")
	for _, f := range t.fields {
		kid, to := n.kid(f.key), each.turned(f.key)
		switch {
		case kid == nil && f.must && f.unless != "" && n.kid(f.unless) != nil:
		case kid == nil && f.must:
			c.fs.add(n.key, to.String(), "add "+f.key+": "+f.inShort(), "missing")
		case kid == nil || kid.shape == broken:
		case f.kind == plain:
			c.table(f.sub, kid, to)
		case f.kind == entries:
			c.entries(f, kid, to)
		case f.looksAround():
			c.value(f, kid, n, to)
		}
	}
}

func (c *completer) entries(f *field, n *node, way *trail) {
	if c.tooMany(f, n, way) {
		return
	}
	folded := make(map[string]string, len(n.names))
	each := way.to("")
	for i, key := range n.names {
		kid, to := n.kids[i], each.turned(key)
		low := strings.ToLower(key)
		if other, twice := folded[low]; twice {
			c.fs.add(kid.key, to.String(), "write it alike if it is the same, or give one another key", "the key differs from %s only in letter case", shown(other))
		}
		folded[low] = key
		switch {
		case kid.shape == broken:
		case kid.implied:
			hint := "add [" + to.String() + "]"
			if near := meant(key, solid(n)); near != "" {
				hint += ", or correct the row; " + near
			}
			c.fs.add(kid.key, to.String(), hint, "the row belongs to %s %s, which is not on record", f.key, quoted(key))
		default:
			c.table(f.sub, kid, to)
		}
	}
}

// tooMany tells when there are more entries than any boat has of their kind. Such records are for pieces that are laid
// against each other, so that work would grow with the square of what no boat has.
func (c *completer) tooMany(f *field, n *node, way *trail) bool {
	if !f.entries.set || len(n.kids) <= int(f.entries.v) {
		return false
	}
	c.fs.add(n.kids[int(f.entries.v)].key, way.String(), "see whether a table was pasted twice; what is alike stands in one entry with its number or its spacing",
		"there are %d entries, and one boat has at most %s", len(n.kids), f.entries.text)
	return true
}

// solid lists the entries that are really written.
func solid(n *node) []string {
	var all []string
	for i, key := range n.names {
		if !n.kids[i].implied {
			all = append(all, key)
		}
	}
	return all
}

// looksAround reports whether a value has anything to be held against once the whole hull is known.
func (f *field) looksAround() bool {
	return f.ref != "" || f.after != nil || f.upto != "" || f.low.set
}

func (c *completer) value(f *field, n, table *node, way *trail) {
	switch f.kind {
	case word:
		c.refers(f, n.value.(string), n, way)
	case words:
		for i, s := range n.value.([]string) {
			c.refers(f, s, n.items[i], way)
		}
	case day:
		c.follows(f, n, table, way)
	case number, whole:
		c.fits(f, n, table, way)
		c.likely(f, n, way)
	}
}

// refers checks that a text names an entry of this hull.
func (c *completer) refers(f *field, s string, n *node, way *trail) {
	known, checked := c.names[f.ref]
	if f.ref == "" || !checked || c.has(f.ref, s) {
		return
	}
	says, hint := quoted(s)+" is not "+article(f.ref), meant(s, known)
	if len(known) == 0 {
		hint = "add [" + f.ref + "." + quoteKey(s) + "]"
	}
	for _, a := range c.gone {
		if a.Subject == f.ref+" "+shown(s) {
			says, hint = quoted(s)+" is taken away at "+a.At.String(), "name another, or keep it"
		}
	}
	c.fs.add(n.at, way.String(), hint, "%s", says)
}

// has reports whether an entry can be named. There may be thousands, and as many that name them.
func (c *completer) has(kind, name string) bool {
	all := c.names[kind]
	if len(all) <= few {
		return slices.Contains(all, name)
	}
	if c.sets == nil {
		c.sets = map[string]map[string]bool{}
	}
	if c.sets[kind] == nil {
		c.sets[kind] = make(map[string]bool, len(all))
		for _, n := range all {
			c.sets[kind][n] = true
		}
	}
	return c.sets[kind][name]
}

// follows checks that a day is not before one beside it that must come first.
func (c *completer) follows(f *field, n, table *node, way *trail) {
	d := n.value.(Date)
	for _, key := range f.after {
		first := table.kid(key)
		if first == nil || first.shape == broken {
			continue
		}
		if before := first.value.(Date); d.Before(before) {
			c.fs.add(n.at, way.String(), "one of the two days is wrong", "%s is before %s, %s, %s", d.ISO(), key, before.ISO(), written(first.at))
		}
	}
}

// fits checks that a size is not more than the one beside it.
func (c *completer) fits(f *field, n, table *node, way *trail) {
	other := table.kid(f.upto)
	if f.upto == "" || other == nil || other.shape == broken {
		return
	}
	v, most := asFloat(n.value), asFloat(other.value)
	if v > most {
		c.fs.add(n.at, way.String(), "one of the two is wrong, or they have changed places", "%s is more than %s %s, %s", figure(v), f.upto, figure(most), written(other.at))
	}
}

// likely keeps a doubt about a value that is possible but that one seldom sees: 40 mm where 4.0 was meant.
func (c *completer) likely(f *field, n *node, way *trail) {
	if !f.low.set {
		return
	}
	v := asFloat(n.value)
	if v >= f.low.v && v <= f.high.v {
		return
	}
	sign := ""
	if f.unit.Sign != "" {
		sign = " " + f.unit.Sign
	}
	c.doubts = append(c.doubts, finding.Finding{
		Kind: finding.Doubt, Rule: "unlikely-value", Subject: way.up.subject(),
		Says:   f.key + " is " + figure(v) + sign + "; " + f.low.text + " to " + f.high.text + sign + " is usual",
		Settle: "look at the part or the paper the figure came from; it is used as it stands",
		Places: []finding.Place{n.at},
	})
}

func asFloat(v any) float64 {
	if i, is := v.(int); is {
		return float64(i)
	}
	return v.(float64)
}

// named lists the entries of the given kinds, which the other records beside them can name.
func named(root *node, kinds string) map[string][]string {
	names := map[string][]string{}
	for _, kind := range strings.Fields(kinds) {
		names[kind] = namesIn(root.kid(kind))
	}
	if all, has := names["panel"]; has { // a part or a test may name the plate that panels are cut from
		names["panel"] = append(all, namesIn(root.kid("plating"))...)
	}
	return names
}

// What the records of a hull, and those of yard.toml, can name among themselves.
const (
	hullNames = "document weight panel inspection imperfection nonconformity repair stage leak_test care warranty section frame"
	yardNames = "person instrument welder inspector"
)
