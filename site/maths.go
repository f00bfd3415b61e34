package site

import (
	"html/template"
	"strings"

	"hullfile/engine/method"
	"hullfile/site/mathml"
)

// This file is the only one that calls the renderer of formulas.

// symbolMath sets a symbol with its letters below the line.
func symbolMath(symbol string) template.HTML {
	return template.HTML(mathml.Symbol(symbol)) //nolint:gosec // our own markup
}

// formulaMath sets a formula or a condition as the sheet has it.
func formulaMath(f *method.Formula) template.HTML {
	return template.HTML(mathml.Formula(f)) //nolint:gosec // our own markup
}

// definitionMath sets symbol = formula.
func definitionMath(symbol string, f *method.Formula) template.HTML {
	first, _ := lineMath(&method.Shown{Symbol: symbol, Formula: f, State: method.Missing}, nil)
	return first
}

// stepMath sets a step: symbol = formula, and the same with its values. The second is empty where there is no result
// or nothing to put in.
func stepMath(s *method.Shown, w *method.Working) (formula, values template.HTML) {
	return lineMath(s, w.Get)
}

func lineMath(s *method.Shown, look mathml.Look) (formula, values template.HTML) {
	if s.Formula == nil {
		return "", ""
	}
	const end = "</math>"
	first, rest, _ := strings.Cut(mathml.Line(s, look), end)
	second, third, _ := strings.Cut(rest, end)
	if strings.TrimSpace(third) == "" {
		second = "" // what is left is the result alone, which has a column of its own
	} else {
		second = strings.TrimSpace(second) + end
	}
	return template.HTML(first + end), template.HTML(second) //nolint:gosec // our own markup
}
