package typeset

import (
	"errors"
	"fmt"
	"html/template"
	"text/template/parse"
)

// html/template looks through all templates that a page uses together, and copies what it knows for each that it comes to.
// Here each is made safe for itself, when it is first wanted: those that it calls are stood in for by a text. That is the
// same as long as every template begins and ends between elements, which html/template itself asks of one that is printed
// alone; and one that is called elsewhere, such as inside a tag, gets a name that no template has, and is refused.

// standIn is what a template is taken for that another calls.
func standIn(name string) *parse.Tree {
	text := &parse.TextNode{NodeType: parse.NodeText, Text: []byte("x")}
	return &parse.Tree{Name: name, Root: &parse.ListNode{NodeType: parse.NodeList, Nodes: []parse.Node{text}}}
}

// makeSafe puts into a template how each value must be escaped. The nodes of the template are changed where they are.
func (s *Set) makeSafe(t *template.Template) error {
	name := t.Name()
	if err, done := s.safe[name]; done {
		return err
	}
	alone, err := template.New(name).AddParseTree(name, t.Tree)
	for called := range calledIn(t.Tree.Root, map[string]bool{}) {
		if err == nil && called != name {
			_, err = alone.AddParseTree(called, standIn(called))
		}
	}
	if err == nil {
		err = escaped(alone)
	}
	if err != nil {
		err = fmt.Errorf("template %s cannot be made safe: %w", name, err)
	}
	s.safe[name] = err
	return err
}

// errStop is what the writer says that nothing is printed to.
var errStop = errors.New("stop")

type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, errStop }

// escaped has html/template do so. It escapes before it prints; what goes wrong in printing nothing is no matter here.
func escaped(t *template.Template) error {
	var unsafe *template.Error
	if err := t.Execute(closed{}, nil); errors.As(err, &unsafe) {
		return err
	}
	return nil
}

// calledIn gathers the names of the templates that are called below a node.
func calledIn(n parse.Node, names map[string]bool) map[string]bool {
	switch n := n.(type) {
	case *parse.ListNode:
		if n == nil {
			break
		}
		for _, below := range n.Nodes {
			calledIn(below, names)
		}
	case *parse.IfNode:
		calledIn(n.ElseList, calledIn(n.List, names))
	case *parse.WithNode:
		calledIn(n.ElseList, calledIn(n.List, names))
	case *parse.RangeNode:
		calledIn(n.ElseList, calledIn(n.List, names))
	case *parse.TemplateNode:
		names[n.Name] = true
	}
	return names
}
