package record

import (
	"strings"

	"hullfile/engine/finding"
)

// shape is what a node is.
type shape int

const (
	leaf   shape = iota // a value
	list                // values in square brackets, or [[tables]]
	branch              // a table
	broken              // already reported; stands in so that it does not count as missing
)

// node is one value of a record as written, with the places of its key and of the value. Trees of nodes are shared
// between hulls of one design: after a file has been checked its nodes are only read.
type node struct {
	shape   shape
	text    string  // of a number as it was written
	value   any     // of a leaf: string, int64, float64, bool, Date or time.Time; after the check: string, int, float64, bool, Date
	items   []*node // of a list
	names   []string
	kids    []*node // of a branch, beside names
	index   map[string]int
	key, at finding.Place

	ordinal bool // an entry whose key is its order in the list
	implied bool // nothing of this entry itself is written: a CSV row only names it
	absent  bool // takes the entry below away
}

// few is the number of keys up to which looking through them is quicker than a map.
const few = 24

// kid finds a child of a branch, nil if it has none of that name.
func (n *node) kid(name string) *node {
	if n == nil {
		return nil
	}
	if i, ok := n.find(name); ok {
		return n.kids[i]
	}
	return nil
}

func (n *node) find(name string) (int, bool) {
	if n.index != nil {
		i, ok := n.index[name]
		return i, ok
	}
	for i, s := range n.names {
		if s == name {
			return i, true
		}
	}
	return 0, false
}

// put adds a child, or replaces the one of that name.
func (n *node) put(name string, child *node) {
	if i, ok := n.find(name); ok {
		n.kids[i] = child
		return
	}
	n.names = append(n.names, name)
	n.kids = append(n.kids, child)
	if len(n.names) <= few {
		return
	}
	if n.index == nil {
		n.index = make(map[string]int, 4*few)
		for i, s := range n.names {
			n.index[s] = i
		}
		return
	}
	n.index[name] = len(n.names) - 1
}

// trail is the way to a value through its tables; it becomes text only when a fault is told.
type trail struct {
	up  *trail
	key string
}

func (t *trail) to(key string) *trail { return &trail{up: t, key: key} }

// turned is the way to the next of many in one table, over that to the one before, which nobody keeps.
func (t *trail) turned(key string) *trail {
	t.key = key
	return t
}

// String gives the dotted key, with parts in quotes where TOML needs them.
func (t *trail) String() string {
	if t == nil {
		return ""
	}
	if t.up == nil {
		return quoteKey(t.key)
	}
	return t.up.String() + "." + quoteKey(t.key)
}

// subject gives the kind and the key of the nearest entry: "panel B3", "trial T1 run 3"; a plain table its own name.
func (t *trail) subject() string {
	var parts []string
	for ; t != nil; t = t.up {
		parts = append([]string{shown(t.key)}, parts...)
	}
	return strings.Join(parts, " ")
}

// bare reports whether TOML takes the key without quotes.
func bare(key string) bool {
	for _, r := range key {
		if !asciiWord(r) && r != '-' {
			return false
		}
	}
	return key != ""
}

func asciiWord(r rune) bool {
	return r == '_' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
}

func quoteKey(key string) string {
	if bare(key) && len(key) <= longestShown {
		return key
	}
	return quoted(key)
}
