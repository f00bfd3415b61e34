package method

import (
	"fmt"
	"math"
	"sync"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"
)

// The walls of a formula: what a page of a rule never needs and a hostile sheet might use to be slow.
const (
	longestFormula = 2000 // characters
	mostNodes      = 400
	deepest        = 40 // nodes inside each other
)

// slip is what is wrong in a formula, and how many characters in.
type slip struct {
	at         int
	says, hint string
}

// grammar turns the text of a formula into its tree. The text is parsed by expr-lang/expr with all its builtins off;
// every token and every node that is not on our own short list is refused.
type grammar struct {
	config *conf.Config
	tables map[string]*Table
	before map[string]*Node // what was read so far, for conditions stand at many steps alike
	known  bool             // the sheet comes with the program: tests have looked at its signs
}

func newGrammar(tables []*Table) *grammar {
	g := &grammar{config: language(), tables: map[string]*Table{}, before: map[string]*Node{}}
	for _, t := range tables {
		g.tables[t.Name] = t
	}
	return g
}

// language is that of the parser without its builtins; all grammars only read it.
var language = sync.OnceValue(func() *conf.Config {
	c := conf.CreateNew()
	c.MaxNodes = mostNodes
	for _, name := range builtin.Names {
		c.Disabled[name] = true
	}
	return c
})

// read gives the tree of a formula. Symbols are not resolved and kinds not checked yet.
func (g *grammar) read(text string) (*Formula, *slip) {
	if root := g.before[text]; root != nil {
		return &Formula{Text: text, Root: root.copy()}, nil
	}
	root, wrong := g.parse(text)
	if wrong != nil {
		return nil, wrong
	}
	g.before[text] = root // whose symbols are given their meaning anew in every copy
	return &Formula{Text: text, Root: root}, nil
}

// copy is the same tree once more, so that its symbols can mean those of another scope.
func (n *Node) copy() *Node {
	out := *n
	if len(n.Args) > 0 {
		out.Args = make([]*Node, len(n.Args))
		for i, a := range n.Args {
			out.Args[i] = a.copy()
		}
	}
	return &out
}

func (g *grammar) parse(text string) (*Node, *slip) {
	if n := len([]rune(text)); n > longestFormula {
		return nil, &slip{0, fmt.Sprintf("has %d characters, may have %d", n, longestFormula), "part it into several steps"}
	}
	if !g.known {
		if wrong := g.tokens(text); wrong != nil {
			return nil, wrong
		}
	}
	tree, err := parser.ParseWithConfig(text, g.config)
	if err != nil {
		return nil, unread(err)
	}
	b := builder{grammar: g, text: []rune(text)}
	return b.node(tree.Node, 0)
}

// builder walks the tree of the parser.
type builder struct {
	*grammar
	text []rune
}

func (b *builder) node(n ast.Node, depth int) (*Node, *slip) {
	if depth > deepest {
		return nil, &slip{0, fmt.Sprintf("is nested more than %d deep", deepest), "part it into several steps"}
	}
	at := n.Location().From
	switch n := n.(type) {
	case *ast.IntegerNode:
		return b.number(float64(n.Value), n.Location()), nil
	case *ast.FloatNode:
		return b.number(n.Value, n.Location()), nil
	case *ast.StringNode:
		if !clean(n.Value) {
			return nil, &slip{at, "holds a character that cannot be seen", "take out control characters"}
		}
		return &Node{Op: OpWord, Word: n.Value, at: at}, nil
	case *ast.IdentifierNode:
		return b.symbol(n.Value, at), nil
	case *ast.UnaryNode:
		return b.unary(n, depth)
	case *ast.BinaryNode:
		return b.binary(n, depth)
	case *ast.ConditionalNode:
		return b.made(OpCases, "", at, depth, n.Cond, n.Exp1, n.Exp2)
	case *ast.CallNode:
		return b.called(n, depth)
	case *ast.ArrayNode:
		return b.list(n)
	case *ast.BoolNode, *ast.NilNode:
		return nil, &slip{at, n.String() + " is not allowed", ""}
	}
	return nil, &slip{at, "[ ] after a value is not allowed", "a table is read as NAME(value)"}
}

func (b *builder) number(v float64, loc file.Location) *Node {
	return &Node{Op: OpNumber, Number: v, Raw: string(b.text[loc.From:loc.To]), at: loc.From}
}

func (b *builder) symbol(name string, at int) *Node {
	if Written(name) == "π" {
		return &Node{Op: OpNumber, Number: math.Pi, Raw: "π", at: at}
	}
	return &Node{Op: OpSymbol, Symbol: name, at: at}
}

func (b *builder) unary(n *ast.UnaryNode, depth int) (*Node, *slip) {
	at := n.Location().From
	switch n.Operator {
	case "-":
		return b.made(OpNeg, "", at, depth, n.Node)
	case "not", "!":
		return b.made(OpNot, "", at, depth, n.Node)
	}
	return nil, &slip{at, n.Operator + " before a value is not allowed", "leave it out"}
}

func (b *builder) binary(n *ast.BinaryNode, depth int) (*Node, *slip) {
	op, sign := OpCompare, n.Operator
	switch n.Operator {
	case "+":
		op, sign = OpAdd, ""
	case "-":
		op, sign = OpSub, ""
	case "*":
		op, sign = OpMul, ""
	case "/":
		op, sign = OpDiv, ""
	case "**":
		op, sign = OpPow, ""
	case "and", "&&":
		op, sign = OpAnd, ""
	case "or", "||":
		op, sign = OpOr, ""
	}
	return b.made(op, sign, n.Location().From, depth, n.Left, n.Right)
}

func (b *builder) made(op Op, symbol string, at, depth int, args ...ast.Node) (*Node, *slip) {
	made := &Node{Op: op, Symbol: symbol, at: at, Args: make([]*Node, 0, len(args))}
	for _, a := range args {
		arg, wrong := b.node(a, depth+1)
		if wrong != nil {
			return nil, wrong
		}
		made.Args = append(made.Args, arg)
	}
	return made, nil
}

func (b *builder) called(n *ast.CallNode, depth int) (*Node, *slip) {
	at := n.Location().From
	callee, ok := n.Callee.(*ast.IdentifierNode)
	if !ok {
		return nil, &slip{at, "a call of this form is not allowed", ""}
	}
	name, count := callee.Value, len(n.Arguments)
	if t, ok := b.tables[name]; ok {
		if count != 1 {
			return nil, &slip{at, fmt.Sprintf("table %s is read with one value, here are %d", name, count), ""}
		}
		made, wrong := b.made(OpTable, name, at, depth, n.Arguments...)
		if made != nil {
			made.table = t
		}
		return made, wrong
	}
	f, ok := functions[name]
	if !ok {
		return nil, b.unknown(name, at)
	}
	if count < f.least || f.most > 0 && count > f.most {
		return nil, &slip{at, fmt.Sprintf("%s takes %s, here %s", name, f.takes(), are(count)), ""}
	}
	op := OpCall
	if name == "sqrt" {
		op = OpRoot
	}
	made, wrong := b.made(op, name, at, depth, n.Arguments...)
	if made != nil {
		made.call = f.call
	}
	return made, wrong
}

func (f function) takes() string {
	switch {
	case f.most == 0:
		return fmt.Sprintf("at least %d values", f.least)
	case f.least == 1:
		return "one value"
	}
	return fmt.Sprintf("%d values", f.least)
}

func are(n int) string {
	if n == 1 {
		return "is 1"
	}
	return fmt.Sprintf("are %d", n)
}

// list is the words on the right of "in".
func (b *builder) list(n *ast.ArrayNode) (*Node, *slip) {
	made := &Node{Op: OpList, at: n.Location().From}
	for _, one := range n.Nodes {
		word, ok := one.(*ast.StringNode)
		if !ok || !clean(word.Value) {
			return nil, &slip{made.at, "a list in [ ] may hold words only", `write category in ["A", "B"]`}
		}
		made.Args = append(made.Args, &Node{Op: OpWord, Word: word.Value, at: word.Location().From})
	}
	if len(made.Args) == 0 {
		return nil, &slip{made.at, "the list is empty", ""}
	}
	return made, nil
}
