package record

import (
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"

	"hullfile/engine/finding"
)

// layout gives the tree of a TOML file with the place of every key and value, and no values. It knows nothing of
// what the keys mean. This is the only file that knows the parser behind it, whose tree is not a stable interface;
// the positions are held by golden tests.
func layout(file string, text []byte) (*node, error) {
	p := unstable.Parser{}
	p.Reset(text)
	l := layouter{parser: &p, ruler: newRuler(file, text), text: text}
	root := &node{shape: branch, at: finding.Place{File: file, Line: 1, Col: 1}, key: finding.Place{File: file, Line: 1, Col: 1}}
	here := root
	for p.NextExpression() {
		e := p.Expression()
		switch e.Kind {
		case unstable.Table:
			here = l.heading(root, e, false)
		case unstable.ArrayTable:
			here = l.heading(root, e, true)
		case unstable.KeyValue:
			l.pair(here, e)
		}
		if l.crossed {
			return nil, errors.New("a key is used both as a value and as a table")
		}
	}
	return root, p.Error()
}

type layouter struct {
	parser  *unstable.Parser
	ruler   *ruler
	text    []byte
	behind  int  // offset behind the last key or value
	crossed bool // a heading went through something that is not a table
}

// heading goes to the table that [a.b] or [[a.b]] opens.
func (l *layouter) heading(at *node, e *unstable.Node, many bool) *node {
	keys := e.Key()
	for keys.Next() {
		k := keys.Node()
		name, place := string(k.Data), l.ruler.at(int(k.Raw.Offset))
		last := keys.IsLast()
		if last && many {
			at = l.another(at, name, place)
			continue
		}
		at = l.into(at, name, place)
		if last {
			at.key, at.at = place, place
		}
	}
	return at
}

// into goes one table down, into the last of a list of tables.
func (l *layouter) into(at *node, name string, place finding.Place) *node {
	kid := at.kid(name)
	if kid == nil {
		kid = &node{shape: branch, key: place, at: place}
		at.put(name, kid)
	}
	if kid.shape == list && len(kid.items) > 0 {
		kid = kid.items[len(kid.items)-1]
	}
	if kid.shape != branch {
		l.crossed = true
		return &node{shape: branch}
	}
	return kid
}

// another adds one table to a list of tables.
func (l *layouter) another(at *node, name string, place finding.Place) *node {
	kid := at.kid(name)
	if kid == nil {
		kid = &node{shape: list, key: place, at: place}
		at.put(name, kid)
	}
	if kid.shape != list {
		l.crossed = true
		return &node{shape: branch}
	}
	item := &node{shape: branch, key: place, at: place}
	kid.items = append(kid.items, item)
	return item
}

// pair lays one key = value down, in the table of its dotted key.
func (l *layouter) pair(at *node, e *unstable.Node) {
	keys := e.Key()
	for keys.Next() {
		k := keys.Node()
		name, place := string(k.Data), l.ruler.at(int(k.Raw.Offset))
		l.passed(k)
		if !keys.IsLast() {
			at = l.into(at, name, place)
			continue
		}
		v := l.value(e.Value())
		v.key = place
		at.put(name, v)
	}
}

// value lays one value down.
func (l *layouter) value(v *unstable.Node) *node {
	switch v.Kind {
	case unstable.Array:
		return l.array(v)
	case unstable.InlineTable:
		n := &node{shape: branch, at: l.ruler.at(int(v.Raw.Offset))}
		l.passed(v)
		pairs := v.Children()
		for pairs.Next() {
			l.pair(n, pairs.Node())
		}
		return n
	}
	l.passed(v)
	n := &node{shape: leaf, at: l.ruler.at(int(v.Raw.Offset))}
	if v.Kind == unstable.Float || v.Kind == unstable.Integer {
		n.text = string(v.Data)
	}
	return n
}

// array lays a list down. The parser keeps no place of its bracket: it is the next one behind what was passed.
func (l *layouter) array(v *unstable.Node) *node {
	for l.behind < len(l.text) && l.text[l.behind] != '[' {
		l.behind++
	}
	n := &node{shape: list, at: l.ruler.at(l.behind)}
	l.behind++
	items := v.Children()
	for items.Next() {
		n.items = append(n.items, l.value(items.Node()))
	}
	return n
}

func (l *layouter) passed(n *unstable.Node) {
	l.behind = max(l.behind, int(n.Raw.Offset+n.Raw.Length))
}
