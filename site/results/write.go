package results

import (
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"
)

// object is a JSON object in the making. It is written with sorted keys, so that the order here does not matter.
type object []member

// member is one key of an object with its value.
type member struct {
	key   string
	value any
}

func (o *object) add(key string, value any) { *o = append(*o, member{key, value}) }

// appendJSON writes a value as encoding/json does with an indent of one space: the same escapes, empty lists on one
// line. Measured, that library takes longer for the results of a hull than all of its pages take to print.
func appendJSON(out []byte, v any, depth int) ([]byte, error) {
	switch v := v.(type) {
	case object:
		return appendObject(out, v, depth)
	case []object:
		return appendList(out, v, depth)
	case []string:
		return appendList(out, v, depth)
	case [][2]full:
		return appendList(out, v, depth)
	case [2]full:
		out = append(appendFull(appendIndent(append(out, '['), depth+1), v[0]), ',')
		return append(appendIndent(appendFull(appendIndent(out, depth+1), v[1]), depth), ']'), nil
	case string:
		return appendQuoted(out, v), nil
	case full:
		return appendFull(out, v), nil
	case int:
		return strconv.AppendInt(out, int64(v), 10), nil
	case int64:
		return strconv.AppendInt(out, v, 10), nil
	case bool:
		return strconv.AppendBool(out, v), nil
	}
	_, own := v.(json.Marshaler)
	_, words := v.(encoding.TextMarshaler)
	if r := reflect.ValueOf(v); r.Kind() == reflect.String && !own && !words {
		return appendQuoted(out, r.String()), nil
	}
	text, err := json.MarshalIndent(v, strings.Repeat(" ", depth), " ")
	return append(out, text...), err
}

// appendObject writes the members in the order of their keys. Of two with one key the later holds; the reader lets no record
// have two.
func appendObject(out []byte, o object, depth int) ([]byte, error) {
	if len(o) == 0 {
		return append(out, "{}"...), nil
	}
	sortKeys(o)
	out = append(out, '{')
	first := true
	for i, m := range o {
		if i+1 < len(o) && m.key == o[i+1].key {
			continue
		}
		if !first {
			out = append(out, ',')
		}
		first = false
		out = append(appendQuoted(appendIndent(out, depth+1), m.key), ": "...)
		var err error
		if out, err = appendJSON(out, m.value, depth+1); err != nil {
			return out, err
		}
	}
	return append(appendIndent(out, depth), '}'), nil
}

// sortKeys sorts a few members by insertion, so that of two with one key the earlier stays before the later.
func sortKeys(o object) {
	for i := 1; i < len(o); i++ {
		m, at := o[i], i
		for ; at > 0 && m.key < o[at-1].key; at-- {
			o[at] = o[at-1]
		}
		if at < i {
			o[at] = m
		}
	}
}

func appendList[T any](out []byte, all []T, depth int) ([]byte, error) {
	if all == nil {
		return append(out, "null"...), nil
	}
	if len(all) == 0 {
		return append(out, "[]"...), nil
	}
	out = append(out, '[')
	for i := range all {
		if i > 0 {
			out = append(out, ',')
		}
		var err error
		if out, err = appendJSON(appendIndent(out, depth+1), all[i], depth+1); err != nil {
			return out, err
		}
	}
	return append(appendIndent(out, depth), ']'), nil
}

func appendIndent(out []byte, depth int) []byte {
	const newLine = "\n                "
	if depth < len(newLine) {
		return append(out, newLine[:1+depth]...)
	}
	return append(append(out, '\n'), strings.Repeat(" ", depth)...)
}

// appendQuoted writes a text in quotes, with what could end a script or a line there escaped.
func appendQuoted(out []byte, text string) []byte {
	out = append(out, '"')
	done := 0
	for i := 0; i < len(text); {
		size, escape := 1, ""
		switch c := text[i]; {
		case c >= utf8.RuneSelf:
			var r rune
			if r, size = utf8.DecodeRuneInString(text[i:]); r == utf8.RuneError && size == 1 {
				escape = `\ufffd`
			} else if r == 0x2028 || r == 0x2029 {
				escape = fmt.Sprintf(`\u%04x`, r)
			}
		case c == '"', c == '\\':
			escape = `\` + string(c)
		case c < ' ', c == '<', c == '>', c == '&':
			escape = controls(c)
		}
		if escape != "" {
			out = append(append(out, text[done:i]...), escape...)
			done = i + size
		}
		i += size
	}
	return append(append(out, text[done:]...), '"')
}

func controls(c byte) string {
	if at := strings.IndexByte("\b\f\n\r\t", c); at >= 0 {
		return `\` + "bfnrt"[at:at+1]
	}
	return fmt.Sprintf(`\u%04x`, c)
}

// appendFull writes a number of ten significant figures, and null for one that is not finite. Of so few figures the
// shortest text that is read back as the same number is the figures themselves, without noughts at their end.
func appendFull(out []byte, f full) []byte {
	v := float64(f)
	switch size := math.Abs(v); {
	case math.IsNaN(v), math.IsInf(v, 0):
		return append(out, "null"...)
	case size == 0 && !math.Signbit(v):
		return append(out, '0')
	case size < 1e-5, size >= 1e20: // near where it is written with a power of ten
		text, _ := f.MarshalJSON() // a number always has a text
		return append(out, text...)
	}
	var room [24]byte
	digits := strconv.AppendFloat(room[:0], v, 'e', 9, 64) // -d.dddddddddE+xx
	if digits[0] == '-' {
		out, digits = append(out, '-'), digits[1:]
	}
	power, err := strconv.Atoi(string(digits[12:]))
	if err != nil {
		panic(err) // it was formatted just now
	}
	digits[1] = digits[0]
	return appendPlain(out, strings.TrimRight(string(digits[1:11]), "0"), power)
}

// AppendShort writes a number that is finite with ten significant figures, in its shortest form.
func AppendShort(out []byte, v float64) []byte {
	f := full(v)
	if size := math.Abs(v); size > 1e-3 && size < 1e5 {
		return appendFull(out, f) // which is the shortest form where it has no power of ten
	}
	return strconv.AppendFloat(out, f.value(), 'g', -1, 64)
}

// appendPlain writes figures, the first of which stands for so many powers of ten, without a power of ten.
func appendPlain(out []byte, figures string, power int) []byte {
	if power < 0 {
		out = append(append(out, "0."...), strings.Repeat("0", -power-1)...)
		return append(out, figures...)
	}
	if missing := power + 1 - len(figures); missing >= 0 {
		return append(append(out, figures...), strings.Repeat("0", missing)...)
	}
	return append(append(append(out, figures[:power+1]...), '.'), figures[power+1:]...)
}
