package record

import (
	"iter"
	"strings"
)

// tagged takes one tag of the struct field up.
func (f *field) tagged(key, text string) {
	switch key {
	case "toml":
		f.key = text
	case "must":
		f.must = text == "yes"
	case "above":
		f.above = boundOf(text)
	case "least":
		f.least = boundOf(text)
	case "most":
		f.most = boundOf(text)
	case "entries":
		f.entries = boundOf(text)
	case "likely":
		low, high, _ := strings.Cut(text, "..")
		f.low, f.high = boundOf(low), boundOf(high)
	case "oneof":
		f.oneof = strings.Split(text, "|")
	case "ref":
		f.ref = text
	case "csv":
		f.csv = text
	case "form":
		f.form = text
	case "in":
		f.in = text
	case "rows":
		f.rows = text == "yes"
	case "lines":
		f.lines = text == "yes"
	case "unless":
		f.unless = text
	case "after":
		f.after = strings.Split(text, ",")
	case "upto":
		f.upto = text
	case "eg":
		f.eg = text
	case "doc":
		f.doc = text
	default:
		panic("record: no field has a tag " + key)
	}
}

// tags goes through the tags of a struct field in one pass: twelve hundred fields have five each, and the language's own
// look-up begins anew for every key.
func tags(all string) iter.Seq2[string, string] {
	return func(yield func(key, text string) bool) {
		for all != "" {
			key, rest, _ := strings.Cut(all, `:"`)
			text, after, closed := strings.Cut(rest, `"`)
			if strings.Contains(text, `\`) || !closed {
				panic("record: a tag that this does not read: " + all)
			}
			if all = strings.TrimLeft(after, " "); !yield(key, text) {
				return
			}
		}
	}
}
