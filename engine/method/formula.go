package method

// Formula is an expression as a tree that is neither the syntax of the sheet nor any page format: the plain text in
// this package and the MathML of the site are both drawn from it, and it is built from the very tree that is evaluated.
type Formula struct {
	Text string // as it stands in the sheet
	Root *Node
}

// Op says what a node of a formula is.
type Op uint8

// What a node can be. The comment gives its arguments.
const (
	OpNumber  Op = iota + 1 // Number
	OpWord                  // Word
	OpSymbol                // Symbol
	OpAdd                   // a, b
	OpSub                   // a, b
	OpMul                   // a, b
	OpDiv                   // a, b: a fraction
	OpPow                   // a, b
	OpNeg                   // a
	OpRoot                  // a: square root
	OpCall                  // Symbol is the function (min, max, abs, sin, ln, ...), arguments
	OpTable                 // Symbol is the table, arguments: read or interpolated
	OpCompare               // Symbol is the sign (<, <=, ==, !=, >, >=, in), a, b
	OpAnd                   // a, b
	OpOr                    // a, b
	OpNot                   // a
	OpCases                 // condition, then, otherwise
	OpList                  // words, on the right of "in" only
)

// Node is one node of a formula.
type Node struct {
	Op     Op
	Number float64
	Raw    string // the number as it was written in the sheet, so that 0.50 stays 0.50
	Word   string
	Symbol string
	Args   []*Node

	at    int // characters into the text
	means *symbol
	slot  int // of the symbol among all that the scope sees
	call  func(args []float64) float64
	table *Table
}

// Case is one row of a case distinction: what holds, and under which condition; the last has none.
type Case struct {
	Then *Node
	If   *Node
}

// Cases gives a case distinction as rows of which the first that holds is taken. A distinction inside a case becomes rows
// of its own, whose conditions hold together with that of the case.
func (n *Node) Cases() []Case { return n.cases(nil, nil) }

func (n *Node) cases(under *Node, into []Case) []Case {
	if n.Op != OpCases {
		return append(into, Case{Then: n, If: under})
	}
	first := n.Args[0]
	if under != nil {
		first = &Node{Op: OpAnd, Args: []*Node{under, n.Args[0]}}
	}
	return n.Args[2].cases(under, n.Args[1].cases(first, into))
}
