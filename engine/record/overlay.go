package record

import (
	"fmt"
	"slices"
	"strings"
)

// overlay lays one record over another, value by value. Every value keeps the place where it was written, an entry the
// place of its first heading. The trees that go in are not changed: a design lies under many hulls.
type overlay struct {
	fs       *faults
	absent   []Absent
	replaced []Replaced
}

// table lays over base; base may be nil.
func (o *overlay) table(t *table, base, over *node, way *trail) *node {
	if base == nil && !t.nests() {
		return over
	}
	out := copyOf(base, over)
	each := way.to("")
	for i, name := range over.names {
		f, kid, to := t.byKey[name], over.kids[i], each.turned(name)
		old := base.kid(name)
		switch {
		case f == nil:
		case kid.shape != branch || old != nil && old.shape != branch:
			o.replace(old, kid, to)
			out.put(name, kid)
		case f.kind == plain:
			out.put(name, o.table(f.sub, old, kid, to))
		case f.kind == entries:
			out.put(name, o.entries(f, old, kid, to))
		}
	}
	return out
}

// entries lays one keyed table over another, entry by entry.
func (o *overlay) entries(f *field, base, over *node, way *trail) *node {
	out := copyOf(base, over)
	each := way.to("")
	gone := map[string]bool{}
	for i, name := range over.names {
		kid, to := over.kids[i], each.turned(name)
		old := base.kid(name)
		switch {
		case kid.absent && old == nil:
			o.fs.add(kid.key, to.String(), nothingBelow(name, base), "there is nothing below that could be taken away")
		case kid.absent:
			gone[name] = true
			o.absent = append(o.absent, Absent{Subject: to.subject(), At: kid.key, Was: old.key})
		case kid.ordinal && old != nil:
			o.fs.add(kid.key, to.String(), "give the entries keys of their own, so that it is clear which one is meant", "an entry known by its order stands in both records; below %s", written(old.key))
		case kid.shape != branch || old != nil && old.shape != branch:
			out.put(name, kid)
		default:
			o.back(to)
			out.put(name, o.table(f.sub, old, kid, to))
		}
	}
	return out.without(gone)
}

// replace remembers a value that stands otherwise in the record below. One laid over twice keeps the value of the lowest.
func (o *overlay) replace(old, kid *node, way *trail) {
	if old == nil || old.shape == branch || asWritten(old) == asWritten(kid) || old.shape == leaf && kid.shape == leaf && old.value == kid.value {
		return
	}
	r := Replaced{Key: way.String(), Old: asWritten(old), New: asWritten(kid), At: kid.at, Was: old.at}
	at := slices.IndexFunc(o.replaced, func(before Replaced) bool { return before.Key == r.Key })
	if at < 0 {
		o.replaced = append(o.replaced, r)
		return
	}
	r.Old, r.Was = o.replaced[at].Old, o.replaced[at].Was
	o.replaced[at] = r
}

// asWritten is a value as it was written; of a list its values.
func asWritten(n *node) string {
	switch {
	case n.shape == list:
		parts := make([]string, len(n.items))
		for i, item := range n.items {
			parts[i] = asWritten(item)
		}
		return strings.Join(parts, ", ")
	case n.text != "":
		return n.text
	case n.shape == leaf:
		return fmt.Sprint(n.value)
	}
	return ""
}

func nothingBelow(name string, base *node) string {
	if hint := meant(name, namesIn(base)); hint != "" {
		return hint
	}
	return "absent = true is for an entry of the design; an entry of this record is left out by not writing it"
}

// back forgets that an entry was taken away further down, now that it is there again.
func (o *overlay) back(way *trail) {
	if len(o.absent) == 0 {
		return
	}
	subject := way.subject()
	o.absent = slices.DeleteFunc(o.absent, func(a Absent) bool { return a.Subject == subject })
}

// nests reports whether a table holds tables.
func (t *table) nests() bool {
	return slices.ContainsFunc(t.fields, func(f *field) bool { return f.sub != nil })
}

func copyOf(base, over *node) *node {
	if base == nil {
		return &node{shape: branch, key: over.key, at: over.at, implied: over.implied}
	}
	out := &node{shape: branch, key: base.key, at: base.at, implied: base.implied && over.implied}
	for i, name := range base.names {
		out.put(name, base.kids[i])
	}
	return out
}

// without is the branch without some of its children, all taken out at once.
func (n *node) without(gone map[string]bool) *node {
	if len(gone) == 0 {
		return n
	}
	out := &node{shape: branch, key: n.key, at: n.at, implied: n.implied}
	for i, name := range n.names {
		if !gone[name] {
			out.put(name, n.kids[i])
		}
	}
	return out
}
