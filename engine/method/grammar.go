package method

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/parser/lexer"
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
}

func newGrammar(tables []*Table) *grammar {
	g := &grammar{config: conf.CreateNew(), tables: map[string]*Table{}}
	g.config.MaxNodes = mostNodes
	for _, name := range builtin.Names {
		g.config.Disabled[name] = true
	}
	for _, t := range tables {
		g.tables[t.Name] = t
	}
	return g
}

// read gives the tree of a formula. Symbols are not resolved and kinds not checked yet.
func (g *grammar) read(text string) (*Formula, *slip) {
	if n := len([]rune(text)); n > longestFormula {
		return nil, &slip{0, fmt.Sprintf("has %d characters, may have %d", n, longestFormula), "part it into several steps"}
	}
	if wrong := g.tokens(text); wrong != nil {
		return nil, wrong
	}
	tree, err := parser.ParseWithConfig(text, g.config)
	if err != nil {
		return nil, unread(err)
	}
	b := builder{grammar: g, text: []rune(text)}
	root, wrong := b.node(tree.Node, 0)
	if wrong != nil {
		return nil, wrong
	}
	return &Formula{Text: text, Root: root}, nil
}

// tokens refuses every sign that has no place in a formula, with its own words, before the parser makes something of it.
func (g *grammar) tokens(text string) *slip {
	for _, comment := range []string{"//", "/*"} {
		if before, _, found := strings.Cut(text, comment); found {
			return &slip{len([]rune(before)), comment + " is not allowed", "remarks belong in note; division is one /"}
		}
	}
	all, err := lexer.Lex(file.NewSource(text))
	if err != nil {
		return unread(err)
	}
	for i, t := range all {
		if says, hint := refused(t); says != "" {
			return &slip{t.From, says, hint}
		}
		if t.Kind == lexer.Identifier && i+1 < len(all) && all[i+1].Is(lexer.Bracket, "(") && !g.callable(t.Value) {
			return g.unknown(t.Value, t.From)
		}
	}
	return nil
}

func (g *grammar) callable(name string) bool {
	_, function := functions[name]
	return function || g.tables[name] != nil
}

func refused(t lexer.Token) (says, hint string) {
	switch t.Kind {
	case lexer.Bytes:
		return "bytes are not allowed", ""
	case lexer.Identifier:
		if strings.ContainsRune(t.Value, '$') {
			return t.Value + " is not a symbol", ""
		}
	case lexer.Number:
		if strings.ContainsAny(t.Value, "xXoObB_") {
			return t.Value + " is not a number as people write it", "write 1000 or 1e-6"
		}
	case lexer.Operator, lexer.Bracket:
		return refusedSign(t.Value)
	}
	return "", ""
}

func refusedSign(sign string) (says, hint string) {
	switch sign {
	case "+", "-", "*", "/", "**", "<", "<=", ">", ">=", "==", "!=", "?", ":", ",", "(", ")", "[", "]",
		"and", "or", "not", "in", "&&", "||", "!":
		return "", ""
	case "^":
		return "^ is not allowed", "write a power as **"
	case "=":
		return "= is not allowed", "write a comparison as =="
	}
	return sign + " is not allowed", "a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"
}

// unread turns an error of the parser into ours.
func unread(err error) *slip {
	var e *file.Error
	if !errors.As(err, &e) {
		return &slip{0, "cannot be read: " + err.Error(), ""}
	}
	says := e.Message
	switch {
	case strings.Contains(says, "maximum allowed nodes"):
		return &slip{0, fmt.Sprintf("is made of more than %d parts", mostNodes), "part it into several steps"}
	case strings.Contains(says, "EOF"), strings.Contains(says, "unexpected end"):
		says = "ends too early"
	case strings.HasPrefix(says, "unexpected token "):
		says = "has something out of place: " + clip(strings.TrimPrefix(says, "unexpected token "))
	default:
		says = "cannot be read: " + clip(says)
	}
	return &slip{e.From, says, "look for a missing sign or bracket"}
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
		return b.number(float64(n.Value), n.Location())
	case *ast.FloatNode:
		return b.number(n.Value, n.Location())
	case *ast.StringNode:
		if !clean(n.Value) {
			return nil, &slip{at, "holds a character that cannot be seen", "take out control characters"}
		}
		return &Node{Op: OpWord, Word: n.Value, at: at}, nil
	case *ast.IdentifierNode:
		return b.symbol(n.Value, at)
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

func (b *builder) number(v float64, loc file.Location) (*Node, *slip) {
	raw := string(b.text[loc.From:loc.To])
	if math.IsInf(v, 0) {
		return nil, &slip{loc.From, raw + " is too large a number", ""}
	}
	return &Node{Op: OpNumber, Number: v, Raw: raw, at: loc.From}, nil
}

func (b *builder) symbol(name string, at int) (*Node, *slip) {
	if Written(name) == "π" {
		return &Node{Op: OpNumber, Number: math.Pi, Raw: "π", at: at}, nil
	}
	return &Node{Op: OpSymbol, Symbol: name, at: at}, nil
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
	made := &Node{Op: op, Symbol: symbol, at: at}
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

// unknown is a call of something that is neither a function nor a table.
func (g *grammar) unknown(name string, at int) *slip {
	known := functionNames()
	for t := range g.tables {
		known = append(known, t)
	}
	return &slip{at, name + " is no function of method sheets and no table of this sheet", suggest(name, known)}
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
