package typeset

import (
	"reflect"
	"text/template/parse"
)

// truths are the functions that tell true from false.
var truths = map[string]bool{"and": true, "or": true, "not": true, "eq": true, "ne": true, "gt": true}

// test tells true from false when a page is printed.
type test func(r *run, dot reflect.Value) bool

// truth makes a test of what stands behind an if.
func (c *compiler) truth(n parse.Node, dot reflect.Type) (test, error) {
	switch n := n.(type) {
	case *parse.PipeNode:
		if len(n.Cmds) == 1 && len(n.Decl) == 0 {
			return c.truth(n.Cmds[0], dot)
		}
	case *parse.CommandNode:
		if id, ok := n.Args[0].(*parse.IdentifierNode); ok && truths[id.Ident] {
			return c.truthOf(id, n.Args[1:], dot)
		}
		if len(n.Args) == 1 {
			return c.truthOfValue(n, n.Args[0], dot)
		}
		e, err := c.command(n, dot)
		if err != nil {
			return nil, err
		}
		return c.testOf(n, e)
	}
	return c.truthOfValue(n, n, dot)
}

func (c *compiler) truthOfValue(at, n parse.Node, dot reflect.Type) (test, error) {
	if p, ok := n.(*parse.PipeNode); ok && at != n {
		return c.truth(p, dot)
	}
	e, err := c.operand(n, dot)
	if err != nil {
		return nil, err
	}
	return c.testOf(at, e)
}

func (c *compiler) testOf(at parse.Node, e expr) (test, error) {
	is, err := c.isSet(at, e.typ)
	return func(r *run, dot reflect.Value) bool { return is(e.get(r, dot)) }, err
}

// isSet tells whether a value of a type counts as true: not the zero of its type; a struct always does.
func (c *compiler) isSet(at parse.Node, t reflect.Type) (func(reflect.Value) bool, error) {
	if t == nil {
		return func(reflect.Value) bool { return false }, nil
	}
	switch k := t.Kind(); {
	case hasLength(t):
		return func(v reflect.Value) bool { return v.Len() > 0 }, nil
	case k == reflect.Bool:
		return reflect.Value.Bool, nil
	case isInt(t):
		return func(v reflect.Value) bool { return v.Int() != 0 }, nil
	case k == reflect.Struct:
		return func(reflect.Value) bool { return true }, nil
	case k == reflect.Pointer:
		return func(v reflect.Value) bool { return !v.IsNil() }, nil
	}
	return nil, c.refuse(at, "whether a %v is true is not taken over", t)
}

// truthOf makes a test of one of the truths.
func (c *compiler) truthOf(id *parse.IdentifierNode, args []parse.Node, dot reflect.Type) (test, error) {
	switch id.Ident {
	case "and", "or", "not":
		return c.joined(id, args, dot)
	}
	return c.compared(id, args, dot)
}

func (c *compiler) joined(id *parse.IdentifierNode, args []parse.Node, dot reflect.Type) (test, error) {
	var all []test
	for _, a := range args {
		t, err := c.truth(a, dot)
		if err != nil {
			return nil, err
		}
		all = append(all, t)
	}
	if id.Ident == "not" {
		if len(all) != 1 {
			return nil, c.refuse(id, "not takes one value")
		}
		return func(r *run, dot reflect.Value) bool { return !all[0](r, dot) }, nil
	}
	ends := id.Ident == "or" // the first that is so decides
	return func(r *run, dot reflect.Value) bool {
		for _, t := range all {
			if t(r, dot) == ends {
				return ends
			}
		}
		return !ends
	}, nil
}

// compared holds a value against others: eq is one of them, ne and gt take one.
func (c *compiler) compared(id *parse.IdentifierNode, args []parse.Node, dot reflect.Type) (test, error) {
	var all []expr
	for _, a := range args {
		e, err := c.operand(a, dot)
		if err != nil {
			return nil, err
		}
		all = append(all, e)
	}
	if len(all) < 2 || id.Ident != "eq" && len(all) != 2 {
		return nil, c.refuse(id, "it takes two values")
	}
	one, others := all[0].get, all[1:]
	for _, o := range others {
		if !isInt(all[0].typ) && !isText(all[0].typ) || isInt(all[0].typ) != isInt(o.typ) || isText(all[0].typ) != isText(o.typ) {
			return nil, c.refuse(id, "%v is not held against %v", all[0].typ, o.typ)
		}
	}
	other := others[0].get
	switch text := isText(all[0].typ); {
	case id.Ident == "gt" && text:
		return func(r *run, dot reflect.Value) bool { return one(r, dot).String() > other(r, dot).String() }, nil
	case id.Ident == "gt":
		return func(r *run, dot reflect.Value) bool { return one(r, dot).Int() > other(r, dot).Int() }, nil
	case text:
		return among(one, others, id.Ident == "eq", func(a, b reflect.Value) bool { return a.String() == b.String() }), nil
	}
	return among(one, others, id.Ident == "eq", func(a, b reflect.Value) bool { return a.Int() == b.Int() }), nil
}

// among tells whether a value is one of others, or is not.
func among(one func(*run, reflect.Value) reflect.Value, others []expr, want bool, same func(a, b reflect.Value) bool) test {
	return func(r *run, dot reflect.Value) bool {
		v := one(r, dot)
		for _, o := range others {
			if same(v, o.get(r, dot)) {
				return want
			}
		}
		return !want
	}
}

func isText(t reflect.Type) bool { return t != nil && t.Kind() == reflect.String }
