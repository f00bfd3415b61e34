package typeset

import (
	"fmt"
	"html/template"
	"reflect"
	"strconv"
	"strings"
	"text/template/parse"
)

// What html/template has put behind a value says how it must be escaped. These are the ways that pages use; the names
// are those of html/template, whose functions cannot be called from outside.
const (
	asText    = "_html_template_htmlescaper"
	asAttr    = "_html_template_attrescaper"
	asTitle   = "_html_template_rcdataescaper"
	asAddress = "_html_template_urlfilter _html_template_urlnormalizer _html_template_attrescaper"
	asQuery   = "_html_template_urlescaper _html_template_attrescaper"
)

// printed makes a step that prints a value as its place asks.
func (c *compiler) printed(p *parse.PipeNode, dot reflect.Type) (step, error) {
	e, err := c.command(p.Cmds[0], dot)
	if err != nil {
		return nil, err
	}
	var ways []string
	for _, cmd := range p.Cmds[1:] {
		ways = append(ways, cmd.String())
	}
	way := strings.Join(ways, " ")
	write, err := c.writing(p, e.typ, way)
	return func(r *run, dot reflect.Value) { r.out = write(r.out, e.get(r, dot)) }, err
}

// writing says how a value of a type is written in a place.
func (c *compiler) writing(at parse.Node, t reflect.Type, way string) (func([]byte, reflect.Value) []byte, error) {
	plain := way == asText || way == asAttr || way == asTitle
	switch {
	case t == reflect.TypeFor[template.HTML]():
		if way == asText {
			return func(out []byte, v reflect.Value) []byte { return append(out, v.String()...) }, nil
		}
	case isText(t) && ownText(t):
		switch {
		case plain:
			return func(out []byte, v reflect.Value) []byte { return appendText(out, v.String()) }, nil
		case way == asAddress:
			return func(out []byte, v reflect.Value) []byte { return appendAddress(out, v.String()) }, nil
		case way == asQuery:
			return func(out []byte, v reflect.Value) []byte { return appendURL(out, v.String(), false) }, nil
		}
	case isInt(t) && ownText(t) && plain:
		return func(out []byte, v reflect.Value) []byte { return strconv.AppendInt(out, v.Int(), 10) }, nil
	}
	return nil, c.refuse(at, "a %v escaped by %q is not taken over", t, way)
}

// ownText reports whether a text or number is printed as it is: it has no words of its own, and it is none of the texts
// that html/template trusts.
func ownText(t reflect.Type) bool {
	return t.PkgPath() != "html/template" && !t.Implements(reflect.TypeFor[fmt.Stringer]()) && !t.Implements(reflect.TypeFor[error]())
}

// appendText writes text in which nothing is markup.
func appendText(out []byte, text string) []byte {
	done := 0
	for i := range len(text) {
		if as := escapes[text[i]]; as != "" {
			out = append(append(out, text[done:i]...), as...)
			done = i + 1
		}
	}
	return append(out, text[done:]...)
}

// escapes are what is written for a byte that could be markup.
var escapes = [256]string{0: "\uFFFD", '"': "&#34;", '&': "&amp;", '\'': "&#39;", '+': "&#43;", '<': "&lt;", '>': "&gt;"}

// refused stands for an address that a page may not lead to.
const refused = "#ZgotmplZ"

// appendAddress writes where a link leads: to a file beside, or to the web.
func appendAddress(out []byte, to string) []byte {
	if scheme, _, ok := strings.Cut(to, ":"); ok && !strings.Contains(scheme, "/") &&
		!strings.EqualFold(scheme, "http") && !strings.EqualFold(scheme, "https") && !strings.EqualFold(scheme, "mailto") {
		to = refused
	}
	return appendURL(out, to, true)
}

// appendURL writes an address, in which signs with a meaning stay, or a part of one, in which they do not.
func appendURL(out []byte, text string, whole bool) []byte {
	for i := range len(text) {
		c := text[i]
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', strings.IndexByte("-._~", c) >= 0:
			out = append(out, c)
		case whole && c == '&':
			out = append(out, "&amp;"...)
		case whole && c == '+':
			out = append(out, "&#43;"...)
		case whole && strings.IndexByte("!#$*,/:;=?@[]", c) >= 0, whole && c == '%' && i+2 < len(text) && isHex(text[i+1]) && isHex(text[i+2]):
			out = append(out, c)
		default:
			const digits = "0123456789abcdef"
			out = append(out, '%', digits[c>>4], digits[c&15])
		}
	}
	return out
}

func isHex(c byte) bool { return c >= '0' && c <= '9' || c >= 'a' && c <= 'f' || c >= 'A' && c <= 'F' }
