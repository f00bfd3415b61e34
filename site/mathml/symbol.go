package mathml

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"hullfile/engine/method"
)

// symbol writes a symbol, with an exponent if there is one.
func (w *writer) symbol(name string, exponent func()) {
	letter, below := method.Letters(name)
	tag := scripts(len(below) > 0, exponent != nil)
	if tag != "" {
		w.put("<" + tag + ">")
	}
	w.element("mi", letter)
	w.below(below)
	if exponent != nil {
		exponent()
	}
	if tag != "" {
		w.put("</" + tag + ">")
	}
}

func scripts(sub, sup bool) string {
	switch {
	case sub && sup:
		return "msubsup"
	case sub:
		return "msub"
	case sup:
		return "msup"
	}
	return ""
}

// below writes what stands below a symbol: labels upright, numbers as numbers.
func (w *writer) below(parts []string) {
	if len(parts) > 1 {
		w.put("<mrow>")
	}
	for i, part := range parts {
		if i > 0 {
			w.sign(",")
		}
		w.label(part)
	}
	if len(parts) > 1 {
		w.put("</mrow>")
	}
}

func (w *writer) label(part string) {
	first, size := utf8.DecodeRuneInString(part)
	switch {
	case strings.IndexFunc(part, func(r rune) bool { return !unicode.IsDigit(r) }) < 0:
		w.element("mn", part)
	case size == len(part) && first < utf8.RuneSelf:
		w.put(`<mi mathvariant="normal">` + part + `</mi>`)
	default:
		w.element("mi", part)
	}
}

// numeral writes a number as the plain text has it: true minus, parted thousands, power of ten.
func (w *writer) numeral(text string) {
	rest, negative := strings.CutPrefix(text, "−")
	mantissa, power := "", ""
	if at := strings.LastIndex(rest, "10"); at >= 0 && strings.ContainsAny(rest, "⁻⁰¹²³⁴⁵⁶⁷⁸⁹") {
		mantissa, power = strings.TrimSuffix(rest[:at], "×"), lowered(rest[at+2:])
	}
	if !negative && power == "" {
		w.number(rest)
		return
	}
	w.put("<mrow>")
	if negative {
		w.sign("−")
	}
	switch {
	case power == "":
		w.number(rest)
	default:
		w.tenTo(mantissa, power)
	}
	w.put("</mrow>")
}

func (w *writer) number(text string) {
	if text == "π" {
		w.element("mi", text)
		return
	}
	w.element("mn", text)
}

func (w *writer) tenTo(mantissa, power string) {
	if mantissa != "" {
		w.element("mn", mantissa)
		w.sign("×")
	}
	w.put("<msup><mn>10</mn>")
	if rest, negative := strings.CutPrefix(power, "−"); negative {
		w.put("<mrow><mo>−</mo>")
		w.element("mn", rest)
		w.put("</mrow>")
	} else {
		w.element("mn", power)
	}
	w.put("</msup>")
}

var plainDigits = strings.NewReplacer("⁻", "−", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9")

// lowered turns raised digits into common ones.
func lowered(raised string) string {
	return plainDigits.Replace(raised)
}
