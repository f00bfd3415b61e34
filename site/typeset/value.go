package typeset

import (
	"reflect"
	"text/template/parse"
)

// expr is a value in the making: its type, nil for none, and how it is got when a page is printed.
type expr struct {
	typ reflect.Type
	get func(r *run, dot reflect.Value) reflect.Value
}

func constant(v any) expr {
	made := reflect.ValueOf(v)
	return expr{made.Type(), func(*run, reflect.Value) reflect.Value { return made }}
}

// pipe makes a value of a pipe of one command.
func (c *compiler) pipe(p *parse.PipeNode, dot reflect.Type) (expr, error) {
	if len(p.Cmds) != 1 {
		return expr{}, c.refuse(p, "a pipe is taken over only where a text is printed")
	}
	return c.command(p.Cmds[0], dot)
}

func (c *compiler) command(cmd *parse.CommandNode, dot reflect.Type) (expr, error) {
	if id, ok := cmd.Args[0].(*parse.IdentifierNode); ok {
		return c.function(id, cmd.Args[1:], dot)
	}
	if len(cmd.Args) > 1 {
		return expr{}, c.refuse(cmd, "only a function takes values")
	}
	return c.operand(cmd.Args[0], dot)
}

func (c *compiler) operand(n parse.Node, dot reflect.Type) (expr, error) {
	here := expr{dot, func(_ *run, dot reflect.Value) reflect.Value { return dot }}
	switch n := n.(type) {
	case *parse.DotNode:
		return here, nil
	case *parse.FieldNode:
		return c.fields(n, here, n.Ident)
	case *parse.VariableNode:
		v, ok := c.known(n.Ident[0])
		if !ok {
			return expr{}, c.refuse(n, "there is no such name")
		}
		held := expr{v.typ, func(r *run, _ reflect.Value) reflect.Value { return r.vars[r.base+v.slot] }}
		return c.fields(n, held, n.Ident[1:])
	case *parse.ChainNode:
		of, err := c.operand(n.Node, dot)
		if err != nil {
			return expr{}, err
		}
		return c.fields(n, of, n.Field)
	case *parse.PipeNode:
		return c.pipe(n, dot)
	case *parse.StringNode:
		return constant(n.Text), nil
	case *parse.BoolNode:
		return constant(n.True), nil
	case *parse.NumberNode:
		if n.IsInt {
			return constant(int(n.Int64)), nil
		}
	}
	return expr{}, c.refuse(n, "it is not taken over")
}

// fields goes down from a value by the names of its fields.
func (c *compiler) fields(at parse.Node, e expr, names []string) (expr, error) {
	for _, name := range names {
		if e.typ == nil {
			return expr{}, c.refuse(at, "nothing has no field %s", name)
		}
		if m, ok := e.typ.MethodByName(name); ok {
			var err error
			if e, err = c.method(at, e, m); err != nil {
				return expr{}, err
			}
			continue
		}
		typ, pointer := e.typ, e.typ.Kind() == reflect.Pointer
		if pointer {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct {
			return expr{}, c.refuse(at, "%v has no field %s", e.typ, name)
		}
		f, ok := typ.FieldByName(name)
		if _, hides := reflect.PointerTo(typ).MethodByName(name); !ok || !f.IsExported() || hides {
			return expr{}, c.refuse(at, "%v has no field %s that can be printed", e.typ, name)
		}
		e = expr{f.Type, below(e.get, f.Index, pointer)}
	}
	return e, nil
}

// below gets a field of what another gets. A nil on the way ends the printing.
func below(get func(*run, reflect.Value) reflect.Value, index []int, pointer bool) func(*run, reflect.Value) reflect.Value {
	switch {
	case pointer:
		return func(r *run, dot reflect.Value) reflect.Value { return get(r, dot).Elem().FieldByIndex(index) }
	case len(index) == 1:
		i := index[0]
		return func(r *run, dot reflect.Value) reflect.Value { return get(r, dot).Field(i) }
	}
	return func(r *run, dot reflect.Value) reflect.Value { return get(r, dot).FieldByIndex(index) }
}

// method calls a method that takes nothing and gives one value.
func (c *compiler) method(at parse.Node, e expr, m reflect.Method) (expr, error) {
	if m.Type.NumIn() != 1 || m.Type.NumOut() != 1 { // what it is a method of is the first that it takes
		return expr{}, c.refuse(at, "the method %s takes or gives more than a field would", m.Name)
	}
	return expr{m.Type.Out(0), func(r *run, dot reflect.Value) reflect.Value {
		return e.get(r, dot).Method(m.Index).Call(nil)[0]
	}}, nil
}

// function makes the value of a function: len, index, what tells true from false, and those that the set was given.
func (c *compiler) function(id *parse.IdentifierNode, args []parse.Node, dot reflect.Type) (expr, error) {
	if truths[id.Ident] {
		is, err := c.truthOf(id, args, dot)
		return expr{reflect.TypeFor[bool](), func(r *run, dot reflect.Value) reflect.Value { return reflect.ValueOf(is(r, dot)) }}, err
	}
	var given []expr
	for _, a := range args {
		e, err := c.operand(a, dot)
		if err != nil {
			return expr{}, err
		}
		given = append(given, e)
	}
	switch id.Ident {
	case "len":
		return c.length(id, given)
	case "index":
		return c.element(id, given)
	}
	return c.own(id, given)
}

func (c *compiler) length(at parse.Node, given []expr) (expr, error) {
	if len(given) != 1 || !hasLength(given[0].typ) {
		return expr{}, c.refuse(at, "len takes one list or text")
	}
	get := given[0].get
	return expr{reflect.TypeFor[int](), func(r *run, dot reflect.Value) reflect.Value { return reflect.ValueOf(get(r, dot).Len()) }}, nil
}

func hasLength(t reflect.Type) bool {
	return t != nil && (t.Kind() == reflect.Slice || t.Kind() == reflect.Array || t.Kind() == reflect.String)
}

func (c *compiler) element(at parse.Node, given []expr) (expr, error) {
	if len(given) != 2 || !hasLength(given[0].typ) || given[0].typ.Kind() == reflect.String || !isInt(given[1].typ) {
		return expr{}, c.refuse(at, "index takes a list and a number")
	}
	list, number := given[0].get, given[1].get
	return expr{given[0].typ.Elem(), func(r *run, dot reflect.Value) reflect.Value {
		return list(r, dot).Index(int(number(r, dot).Int()))
	}}, nil
}

// own calls a function that the set was given. It returns one value.
func (c *compiler) own(id *parse.IdentifierNode, given []expr) (expr, error) {
	f := reflect.ValueOf(c.set.funcs[id.Ident])
	if !f.IsValid() || f.Type().IsVariadic() || f.Type().NumIn() != len(given) || f.Type().NumOut() != 1 {
		return expr{}, c.refuse(id, "there is no such function, or it takes other values")
	}
	for i, e := range given {
		if e.typ == nil || !e.typ.AssignableTo(f.Type().In(i)) {
			return expr{}, c.refuse(id, "it does not take a %v", e.typ)
		}
	}
	if words, ok := f.Interface().(func(string) string); ok { // most are; a call by reflection takes ten times as long
		return expr{f.Type().Out(0), func(r *run, dot reflect.Value) reflect.Value {
			return reflect.ValueOf(words(given[0].get(r, dot).String()))
		}}, nil
	}
	return expr{f.Type().Out(0), func(r *run, dot reflect.Value) reflect.Value {
		args := make([]reflect.Value, len(given))
		for i, e := range given {
			args[i] = e.get(r, dot)
		}
		return f.Call(args)[0]
	}}, nil
}

func isInt(t reflect.Type) bool {
	return t != nil && t.Kind() >= reflect.Int && t.Kind() <= reflect.Int64
}
