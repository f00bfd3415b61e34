package method

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser/lexer"
)

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
		_, err := strconv.ParseFloat(t.Value, 64)
		if err != nil || len(t.Value) > 18 {
			return clip(t.Value) + " is not a number that can be reckoned with", "write 1000 or 1e-6"
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

// unknown is a call of something that is neither a function nor a table.
func (g *grammar) unknown(name string, at int) *slip {
	known := functionNames()
	for t := range g.tables {
		known = append(known, t)
	}
	return &slip{at, name + " is no function of method sheets and no table of this sheet", suggest(name, known)}
}
