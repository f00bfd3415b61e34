package method

import (
	"bytes"
	"errors"
	"fmt"
	"path"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// largest keeps a sheet to the size of a long rule chapter; no honest one comes near it.
const largest = 256 << 10

// Load reads and compiles one sheet. The name is that of the file, with the folders that messages shall show. The error
// is finding.Faults, with every fault of the sheet at its line and column.
func Load(name string, text []byte) (*Sheet, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	rows, fault := decode(name, text)
	if fault != nil {
		return nil, finding.Faults{*fault}
	}
	p := &page{places: locate(name, text)}
	s := p.sheet(path.Base(name), rows)
	if len(p.faults) > 0 {
		p.faults.Sort()
		return nil, p.faults
	}
	return s, nil
}

// decode gives the sheet as the TOML decoder understands it.
func decode(name string, text []byte) (map[string]any, *finding.Fault) {
	at := finding.Place{File: name, Line: 1, Col: 1}
	switch {
	case len(text) > largest:
		return nil, &finding.Fault{Place: at, Says: fmt.Sprintf("has %d bytes, a method sheet may have %d", len(text), largest)}
	case !utf8.Valid(text):
		at.Line, at.Col = badByte(text)
		return nil, &finding.Fault{Place: at, Says: "is not UTF-8 text", Hint: "save the file as UTF-8"}
	}
	if offset, deep := nested(text); deep {
		at.Line = 1 + bytes.Count(text[:offset], []byte("\n"))
		at.Col = 1 + utf8.RuneCount(text[bytes.LastIndexByte(text[:offset], '\n')+1:offset])
		return nil, &finding.Fault{Place: at, Says: fmt.Sprintf("is nested more than %d deep", deepestTOML), Hint: "a method sheet has scopes, and steps in them"}
	}
	var rows map[string]any
	_, err := toml.Decode(string(text), &rows)
	var wrong toml.ParseError
	switch {
	case err == nil:
		return rows, nil
	case errors.As(err, &wrong):
		at.Line, at.Col = max(1, wrong.Position.Line), max(1, wrong.Position.Col)
		return nil, &finding.Fault{Place: at, Says: "is no TOML: " + seen(wrong.Message)}
	}
	return nil, &finding.Fault{Place: at, Says: "is no TOML: " + seen(err.Error())}
}

// badByte gives line and column of the first byte that is no UTF-8.
func badByte(text []byte) (line, col int) {
	line, col = 1, 1
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		switch {
		case r == utf8.RuneError && size == 1:
			return line, col
		case r == '\n':
			line, col = line+1, 1
		default:
			col++
		}
		text = text[size:]
	}
	return line, col
}

// sheet reads the head, the tables and the scopes, and compiles the scopes from the top down.
func (p *page) sheet(name string, rows map[string]any) *Sheet {
	top := &block{page: p, rows: rows}
	s := &Sheet{
		Name:     name,
		Title:    top.must("title", `write title = "..."`),
		Work:     top.must("work", "name the work the formulas come from"),
		Standing: top.must("standing", "say how far the sheet can be relied on"),
	}
	s.Edition, _ = top.text("edition")
	s.About, _ = top.text("about")
	s.Strength, _ = top.text("strengths")
	s.Tables = p.tables(top)
	drafts := p.scopes(top)
	top.close()
	c := compiler{page: p, grammar: newGrammar(s.Tables), drafts: drafts}
	c.grammar.known = p.partly
	s.Scopes = c.scopes()
	return s
}
