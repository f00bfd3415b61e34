package record

import (
	"hullfile/engine/finding"
)

// checker holds one record file against its table, whether it came from TOML or CSV: keys, types, ranges, words, and
// references to what the whole yard knows. What depends on other records of the hull is looked at once they are laid
// over each other.
type checker struct {
	fs    *faults
	what  string              // "yard", "design" or "hull"
	names map[string][]string // known names by kind; a kind that is not in it cannot be checked
	lone  bool                // a hull.toml without a yard
}

// table checks every key of one table.
func (c *checker) table(t *table, n *node, way *trail) {
	each := way.to("")
	for i, name := range n.names {
		kid, to := n.kids[i], each.turned(name)
		f := t.byKey[name]
		switch {
		case f != nil:
			c.field(f, kid, to)
		case name == absentKey && t.keyed:
			c.absence(n, kid, to)
		default:
			c.unknown(t, n, name, kid, to)
		}
	}
}

func (c *checker) field(f *field, n *node, way *trail) {
	if f.in != "" && f.in != c.what {
		c.spoil(n, n.key, way, "take the line out here", "%s belongs in %s.toml only", f.key, f.in)
		return
	}
	switch f.kind {
	case plain:
		if n.shape != branch {
			c.spoil(n, n.key, way, "write it as a table: ["+way.String()+"]", "%s is expected to be a table", shown(f.key))
			return
		}
		c.table(f.sub, n, way)
	case entries:
		c.entries(f, n, way)
	default:
		c.value(f, n, way)
	}
}

// entries checks a keyed table.
func (c *checker) entries(f *field, n *node, way *trail) {
	if n.shape == list && f.rows {
		numbered(n)
	}
	key := way.String()
	switch {
	case n.shape == list:
		c.spoil(n, n.key, way, "give every one its own key: ["+key+".A1]", "[[%s]] is a list of tables without keys", key)
	case n.shape != branch:
		c.spoil(n, n.key, way, "write a heading for every one: ["+key+".A1]", "%s is expected to be a table with a key", key)
	case keyless(f.sub, n):
		c.spoil(n, n.key, way, "write ["+key+".A1], with a key of your own in place of A1", "[%s] stands without a key of its own", key)
	default:
		each := way.to("")
		for i, name := range n.names {
			c.entry(f, name, n.kids[i], each.turned(name))
		}
	}
}

func (c *checker) entry(f *field, name string, n *node, way *trail) {
	if n.shape == broken {
		return
	}
	if says, hint := badKey(name); says != "" {
		c.spoil(n, n.key, way, hint, "%s", says)
		return
	}
	if n.shape != branch {
		c.spoil(n, n.key, way, "write it as a table: ["+way.String()+"]", "%s is expected to be a table", shown(name))
		return
	}
	c.table(f.sub, n, way)
}

// numbered gives the tables of a list the keys 1, 2, 3 in their order.
func numbered(n *node) {
	keyed := &node{shape: branch, key: n.key, at: n.at}
	for i, item := range n.items {
		item.ordinal = true
		if item.shape == leaf {
			item.key = item.at
		}
		keyed.put(ordinal(i+1), item)
	}
	*n = *keyed
}

// keyless reports a keyed table whose heading has no key: its own fields stand where the keys should.
func keyless(sub *table, n *node) bool {
	for i, name := range n.names {
		if sub.byKey[name] != nil && n.kids[i].shape != branch {
			return true
		}
	}
	return false
}

// absence checks the line that takes an entry of the record below away.
func (c *checker) absence(entry, n *node, way *trail) {
	switch {
	case n.value != true || n.shape != leaf:
		c.spoil(entry, n.at, way, "write absent = true, or take the line out", "%s is expected to be true", absentKey)
	case len(entry.names) > 1:
		c.spoil(entry, n.key, way, "absent = true stands alone under its heading", "the entry is taken away and described at the same time")
	default:
		entry.absent = true
	}
}

// spoil tells a fault and marks the node, so that it is neither used nor called missing.
func (c *checker) spoil(n *node, at finding.Place, way *trail, hint, says string, values ...any) {
	c.fs.add(at, way.String(), hint, says, values...)
	n.shape = broken
}
