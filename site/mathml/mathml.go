// Package mathml draws the formulas of method sheets as MathML Core. It draws the tree that is evaluated, so that a
// printed formula is the calculated one. Every text that comes out of a sheet or a record is escaped, and there is no
// style attribute, so that the strictest Content-Security-Policy lets it through.
//
// The style sheet of the page may set "math .cases" (the table of a case distinction) and "math .unit".
package mathml

import (
	"html"
	"strings"

	"hullfile/engine/method"
)

// Look finds the value of a symbol; a method.Working's Get is one.
type Look func(symbol string) (*method.Shown, bool)

// Formula gives one <math> element for a formula or a condition; empty for nil.
func Formula(f *method.Formula) string {
	if f == nil {
		return ""
	}
	return draw(func(w *writer) { w.row(f.Root) })
}

// With gives the same with the values of the symbols put in, and what tables give for them, so that a reader can reckon
// the line again without another page. Symbols without a value stay.
func With(f *method.Formula, look Look) string {
	if f == nil {
		return ""
	}
	return draw(func(w *writer) {
		w.look, w.root = look, f.Root
		w.row(f.Root)
	})
}

// Symbol gives a symbol for running text and tables: <math> with its letter and what stands below it.
func Symbol(symbol string) string {
	w := &writer{}
	w.Grow(usual / 6)
	w.put("<math>")
	w.symbol(symbol, nil)
	w.put("</math>")
	return w.String()
}

// Line gives the working of one result in up to three <math> elements, so that a narrow page breaks between them:
// "symbol = formula", "= formula with values", "= result unit". An input is "symbol = value unit". A result without a
// value ends after the formula; a formula that is a bare number is its own result.
func Line(s *method.Shown, look Look) string {
	if s.Formula == nil {
		return draw(func(w *writer) {
			w.symbol(s.Symbol, nil)
			w.result(s)
		})
	}
	root := s.Formula.Root
	bare := root.Op == method.OpNumber && s.Number() == method.RawNumber(root.Raw)
	line := draw(func(w *writer) {
		w.symbol(s.Symbol, nil)
		w.equals()
		w.row(root)
		if bare {
			w.unit(s.Unit)
		}
	})
	if bare || !s.HasFigure() {
		return line
	}
	if len(root.Args) > 0 {
		line += " " + draw(func(w *writer) {
			w.look, w.root = look, root
			w.equals()
			w.row(root)
		})
	}
	return line + " " + draw(func(w *writer) { w.result(s) })
}

func draw(body func(w *writer)) string {
	w := &writer{}
	w.Grow(usual)
	w.put(`<math displaystyle="true">`)
	body(w)
	w.put("</math>")
	return w.String()
}

// usual is about how long a formula is, bytes; of a longer one the room doubles.
const usual = 288

// writer gathers the markup.
type writer struct {
	strings.Builder
	look  Look
	root  *method.Node // of the formula whose values are put in
	last  *method.Shown
	text  string // the number of last
	small bool   // inside a fraction or an exponent: a simple quotient is written on the line
}

func (w *writer) put(markup string) { w.WriteString(markup) }

// element writes a token element around text that is not ours.
func (w *writer) element(tag, text string) {
	w.put("<")
	w.put(tag)
	w.put(">")
	w.put(html.EscapeString(text))
	w.put("</")
	w.put(tag)
	w.put(">")
}

func (w *writer) sign(s string) { w.element("mo", s) }

func (w *writer) equals() { w.sign("=") }

// says writes words between the parts of a formula.
func (w *writer) says(text string) { w.element("mtext", "\u00a0"+text+"\u00a0") }

// result writes "= value unit", nothing where there is no value.
func (w *writer) result(s *method.Shown) {
	switch {
	case !s.HasFigure():
		return
	case s.IsWord:
		w.equals()
		w.element("mtext", s.Word)
		return
	}
	w.equals()
	w.numeral(s.Number())
	w.unit(s.Unit)
}

func (w *writer) unit(sign string) {
	if sign == "" {
		return
	}
	if sign != "°" {
		w.put(`<mspace width="0.25em"/>`)
	}
	w.put(`<mtext class="unit">`)
	w.put(html.EscapeString(sign))
	w.put(`</mtext>`)
}
