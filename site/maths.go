package site

import (
	"html/template"

	"hullfile/engine/method"
	"hullfile/site/mathml"
)

// This file is the only one that calls the renderer of formulas.

// symbolKey is a symbol among what is made once.
type symbolKey string

// symbol gives symbolMath, made once.
func (p *press) symbol(symbol string) template.HTML {
	out, _ := get(p.lasting, symbolKey(symbol), func() (template.HTML, error) { return symbolMath(symbol), nil })
	return out
}

// symbolMath sets a symbol with its letters below the line.
func symbolMath(symbol string) template.HTML {
	return template.HTML(mathml.Symbol(symbol)) //nolint:gosec // our own markup
}

// formulaMath sets a formula or a condition as the sheet has it.
func formulaMath(f *method.Formula) template.HTML {
	if f == nil || f.Root == nil {
		return ""
	}
	return template.HTML(mathml.Formula(f)) //nolint:gosec // our own markup
}

// definitionMath sets symbol = formula.
func definitionMath(symbol string, f *method.Formula) template.HTML {
	if f == nil || f.Root == nil {
		return ""
	}
	line := mathml.Line(&method.Shown{Said: &method.Said{Symbol: symbol, Formula: f}, State: method.Missing}, nil) // without a value it ends there
	return template.HTML(line)                                                                                     //nolint:gosec // our own markup
}

// valuesMath sets the formula of a step with the values that went in. It is empty where there is no result, or nothing
// to put in.
func valuesMath(s *method.Shown, w *method.Working) template.HTML {
	if s.Formula == nil || s.Formula.Root == nil || len(s.Formula.Root.Args) == 0 || !s.HasFigure() {
		return ""
	}
	return template.HTML(mathml.With(s.Formula, w.Get)) //nolint:gosec // our own markup
}
