// Package typeset prints templates fast. html/template looks through a template and says for each place how a text must
// be escaped there; it then prints by asking every value for its type, anew for every page. Here a template that is made
// safe so is turned once into steps that know their types, one program for a template and a type that it is printed with.
//
//	html/template (parsed and made safe) -> program of a template and a type -> bytes
//
// Only what templates of pages need is taken over: if, with, range, template, variables, fields, and the functions of
// value.go and truth.go. Anything else, such as a map or a number with a fraction, is an error when the program is made, never a guess.
// Every program says byte for byte what html/template says; tests hold the two against each other.
package typeset

import (
	"fmt"
	"html/template"
	"reflect"
	"sync"
)

// Set is templates that can be printed. It may be used from many goroutines; the templates may not be used elsewhere at
// the same time, because html/template changes them when they are made safe.
type Set struct {
	pages *template.Template
	funcs template.FuncMap
	ready sync.Map  // key -> *program
	runs  sync.Pool // *run, to be used again

	mu   sync.Mutex // programs are made one at a time
	made map[key]*program
	safe map[string]error // templates that were made safe, nil where that went well
}

// key is a template and the type that it is printed with, nil for no value.
type key struct {
	name string
	typ  reflect.Type
}

// program prints one template with values of one type.
type program struct {
	body  step
	slots int // variables, the first is what the template was given
	err   error
}

// step prints a piece of a template.
type step func(r *run, dot reflect.Value)

// run is one printing.
type run struct {
	out  []byte
	vars []reflect.Value
	base int // of the variables of the template that is being printed
}

// New takes templates up. The functions are those that they were parsed with, beside the built-in ones.
func New(pages *template.Template, funcs template.FuncMap) *Set {
	s := &Set{pages: pages, funcs: funcs, made: map[key]*program{}, safe: map[string]error{}}
	s.runs.New = func() any { return new(run) }
	return s
}

// Append prints a template after what is in out already. The error names the template: one that is not there, that holds
// what is not taken over, or that came upon a nil.
func (s *Set) Append(out []byte, name string, data any) (all []byte, err error) {
	p, err := s.program(key{name, reflect.TypeOf(data)})
	if err != nil {
		return out, err
	}
	r := s.runs.Get().(*run)
	r.out = out
	defer func() {
		clear(r.vars[:cap(r.vars)]) // it keeps no page alive
		*r = run{vars: r.vars[:0]}
		s.runs.Put(r)
	}()
	defer func() {
		if fault := recover(); fault != nil {
			all, err = out, fmt.Errorf("template %s: %v", name, fault)
		}
	}()
	r.call(p, reflect.ValueOf(data))
	return r.out, nil
}

// call prints a template inside another.
func (r *run) call(p *program, dot reflect.Value) {
	caller := r.base
	r.base = len(r.vars)
	r.vars = append(r.vars, dot)
	for range p.slots - 1 {
		r.vars = append(r.vars, reflect.Value{})
	}
	p.body(r, dot)
	r.vars, r.base = r.vars[:r.base], caller
}

// program gives the program of a template and a type.
func (s *Set) program(k key) (*program, error) {
	if p, ok := s.ready.Load(k); ok {
		return p.(*program), p.(*program).err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	p := s.make(k)
	s.ready.Store(k, p)
	return p, p.err
}

// make gives a program that is made, or makes it. One that is in the making is given as it is: it is whole before
// anything is printed.
func (s *Set) make(k key) *program {
	if p := s.made[k]; p != nil {
		return p
	}
	p := &program{}
	s.made[k] = p
	t := s.pages.Lookup(k.name)
	if t == nil || t.Tree == nil {
		p.err = fmt.Errorf("there is no template %q", k.name)
		return p
	}
	if p.err = s.makeSafe(t); p.err != nil {
		return p
	}
	c := &compiler{set: s, tree: t.Tree, vars: []variable{{"$", 0, k.typ}}, slots: 1}
	p.body, p.err = c.list(t.Tree.Root, k.typ)
	p.slots = c.slots
	return p
}
