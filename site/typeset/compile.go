package typeset

import (
	"fmt"
	"reflect"
	"slices"
	"text/template/parse"
)

// compiler makes the program of one template and one type.
type compiler struct {
	set   *Set
	tree  *parse.Tree
	vars  []variable // those in scope, the innermost last
	slots int
}

// variable is a name in a template, where its value stands in a run, and its type.
type variable struct {
	name string
	slot int
	typ  reflect.Type
}

// list makes a step of nodes that follow one another. What they declare ends with them.
func (c *compiler) list(l *parse.ListNode, dot reflect.Type) (step, error) {
	if l == nil {
		return nothing, nil
	}
	scope := len(c.vars)
	defer func() { c.vars = c.vars[:scope] }()
	var steps []step
	for _, n := range l.Nodes {
		s, err := c.node(n, dot)
		if err != nil {
			return nil, err
		}
		if s != nil {
			steps = append(steps, s)
		}
	}
	switch len(steps) {
	case 0:
		return nothing, nil
	case 1:
		return steps[0], nil
	}
	return func(r *run, dot reflect.Value) {
		for _, s := range steps {
			s(r, dot)
		}
	}, nil
}

func nothing(*run, reflect.Value) {}

func (c *compiler) node(n parse.Node, dot reflect.Type) (step, error) {
	switch n := n.(type) {
	case *parse.TextNode:
		text := string(n.Text)
		return func(r *run, _ reflect.Value) { r.out = append(r.out, text...) }, nil
	case *parse.CommentNode:
		return nil, nil
	case *parse.ActionNode:
		return c.action(n, dot)
	case *parse.IfNode:
		return c.choice(&n.BranchNode, dot)
	case *parse.WithNode:
		return c.with(&n.BranchNode, dot)
	case *parse.RangeNode:
		return c.ranging(&n.BranchNode, dot)
	case *parse.TemplateNode:
		return c.call(n, dot)
	}
	return nil, c.refuse(n, "it is not taken over")
}

// refuse says what cannot be made, and where it stands.
func (c *compiler) refuse(n parse.Node, why string, more ...any) error {
	where, what := c.tree.ErrorContext(n)
	return fmt.Errorf("%s: %s: %s", where, what, fmt.Sprintf(why, more...))
}

// action prints a value, or keeps it under a name.
func (c *compiler) action(n *parse.ActionNode, dot reflect.Type) (step, error) {
	if len(n.Pipe.Decl) == 0 {
		return c.printed(n.Pipe, dot)
	}
	if n.Pipe.IsAssign {
		return nil, c.refuse(n, "a name that is set again is not taken over")
	}
	e, err := c.pipe(n.Pipe, dot)
	if err != nil {
		return nil, err
	}
	return c.declare(n.Pipe.Decl[0], e), nil
}

// declare keeps a value under a name until the end of the list.
func (c *compiler) declare(v *parse.VariableNode, e expr) step {
	slot := c.variable(v.Ident[0], e.typ)
	return func(r *run, dot reflect.Value) { r.vars[r.base+slot] = e.get(r, dot) }
}

func (c *compiler) variable(name string, typ reflect.Type) int {
	slot := c.slots
	c.slots++
	c.vars = append(c.vars, variable{name, slot, typ})
	return slot
}

// choice is an if.
func (c *compiler) choice(b *parse.BranchNode, dot reflect.Type) (step, error) {
	if len(b.Pipe.Decl) > 0 {
		return nil, c.refuse(b, "an if that keeps a value is not taken over")
	}
	is, err := c.truth(b.Pipe, dot)
	if err != nil {
		return nil, err
	}
	yes, no, err := c.branches(b, dot, dot)
	if err != nil {
		return nil, err
	}
	return func(r *run, dot reflect.Value) {
		if is(r, dot) {
			yes(r, dot)
			return
		}
		no(r, dot)
	}, nil
}

// branches makes what is printed with and without.
func (c *compiler) branches(b *parse.BranchNode, with, dot reflect.Type) (yes, no step, err error) {
	if yes, err = c.list(b.List, with); err != nil {
		return nil, nil, err
	}
	no, err = c.list(b.ElseList, dot)
	return yes, no, err
}

func (c *compiler) with(b *parse.BranchNode, dot reflect.Type) (step, error) {
	scope := len(c.vars)
	defer func() { c.vars = c.vars[:scope] }()
	e, err := c.pipe(b.Pipe, dot)
	if err != nil {
		return nil, err
	}
	is, err := c.isSet(b.Pipe, e.typ)
	if err != nil {
		return nil, err
	}
	slot := -1
	if len(b.Pipe.Decl) > 0 {
		slot = c.variable(b.Pipe.Decl[0].Ident[0], e.typ)
	}
	yes, no, err := c.branches(b, e.typ, dot)
	if err != nil {
		return nil, err
	}
	return func(r *run, dot reflect.Value) {
		v := e.get(r, dot)
		if slot >= 0 {
			r.vars[r.base+slot] = v
		}
		if is(v) {
			yes(r, v)
			return
		}
		no(r, dot)
	}, nil
}

// ranging goes over a list. With one name that is the element, with two the first is its number.
func (c *compiler) ranging(b *parse.BranchNode, dot reflect.Type) (step, error) {
	scope := len(c.vars)
	defer func() { c.vars = c.vars[:scope] }()
	e, err := c.pipe(b.Pipe, dot)
	if err != nil {
		return nil, err
	}
	if b.Pipe.IsAssign || e.typ == nil || e.typ.Kind() != reflect.Slice && e.typ.Kind() != reflect.Array {
		return nil, c.refuse(b, "a range is taken over a list alone, not over %v", e.typ)
	}
	number, element := -1, -1
	if d := b.Pipe.Decl; len(d) > 0 {
		if len(d) > 1 {
			number = c.variable(d[0].Ident[0], reflect.TypeFor[int]())
		}
		element = c.variable(d[len(d)-1].Ident[0], e.typ.Elem())
	}
	yes, no, err := c.branches(b, e.typ.Elem(), dot)
	if err != nil {
		return nil, err
	}
	return func(r *run, dot reflect.Value) {
		all := e.get(r, dot)
		n := all.Len()
		for i := range n {
			one := all.Index(i)
			if element >= 0 {
				r.vars[r.base+element] = one
			}
			if number >= 0 {
				r.vars[r.base+number] = reflect.ValueOf(i)
			}
			yes(r, one)
		}
		if n == 0 {
			no(r, dot)
		}
	}, nil
}

// call prints another template. Where it is given an interface, what is in it decides when it is printed.
func (c *compiler) call(n *parse.TemplateNode, dot reflect.Type) (step, error) {
	var e expr
	if n.Pipe != nil {
		var err error
		if e, err = c.pipe(n.Pipe, dot); err != nil {
			return nil, err
		}
	}
	if e.typ == nil || e.typ.Kind() != reflect.Interface {
		p := c.set.make(key{n.Name, e.typ})
		if e.typ == nil {
			return func(r *run, _ reflect.Value) { r.call(p, reflect.Value{}) }, p.err
		}
		return func(r *run, dot reflect.Value) { r.call(p, e.get(r, dot)) }, p.err
	}
	set, name := c.set, n.Name
	return func(r *run, dot reflect.Value) {
		inside := e.get(r, dot).Elem()
		k := key{name: name}
		if inside.IsValid() {
			k.typ = inside.Type()
		}
		p, err := set.program(k)
		if err != nil {
			panic(err) // taken up by Append
		}
		r.call(p, inside)
	}, nil
}

// known finds a name, the innermost first.
func (c *compiler) known(name string) (variable, bool) {
	for _, v := range slices.Backward(c.vars) {
		if v.name == name {
			return v, true
		}
	}
	return variable{}, false
}
