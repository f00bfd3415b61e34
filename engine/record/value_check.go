package record

import (
	"fmt"
	"math"
	"strings"
	"time"

	"hullfile/engine/finding"
)

// value checks one value and turns it into the Go type of its field, so that filling a struct cannot fail any more.
func (c *checker) value(f *field, n *node, way *trail) {
	if n.shape == broken {
		return
	}
	if f.kind == words {
		c.words(f, n, way)
		return
	}
	if n.shape != leaf {
		c.mistyped(f, n, way)
		return
	}
	switch f.kind {
	case number:
		c.number(f, n, way)
	case whole:
		c.whole(f, n, way)
	case word:
		c.word(f, n, way)
	case yesNo:
		if _, is := n.value.(bool); !is {
			c.mistyped(f, n, way)
		}
	case day:
		c.day(f, n, way)
	}
}

func (c *checker) number(f *field, n *node, way *trail) {
	v, is := n.value.(float64)
	if i, whole := n.value.(int64); whole {
		v, is = float64(i), true
	}
	switch {
	case !is:
		c.mistyped(f, n, way)
	case math.IsNaN(v) || math.IsInf(v, 0):
		c.spoil(n, n.at, way, f.expects(), "%s is not a number that can be used", strings.ToLower(figure(v)))
	default:
		n.value = v
		c.within(f, v, n, way)
	}
}

// whole takes a count. 2.0 is a whole number, 2.5 is not.
func (c *checker) whole(f *field, n *node, way *trail) {
	const most = 1e9
	v, is := n.value.(float64)
	if i, whole := n.value.(int64); whole {
		v, is = float64(i), true
	}
	switch {
	case !is:
		c.mistyped(f, n, way)
	case v != math.Trunc(v) || math.IsInf(v, 0):
		c.spoil(n, n.at, way, f.expects(), "%s is not a whole number", figure(v))
	case math.Abs(v) > most:
		c.spoil(n, n.at, way, f.expects(), "%s is too large for a count", figure(v))
	default:
		n.value = int(v)
		c.within(f, v, n, way)
	}
}

// within holds a number against what is possible.
func (c *checker) within(f *field, v float64, n *node, way *trail) {
	switch {
	case f.above.set && v <= f.above.v:
		c.spoil(n, n.at, way, f.expects(), "%s is not above %s", figure(v), f.above.text)
	case f.least.set && v < f.least.v:
		c.spoil(n, n.at, way, f.expects(), "%s is less than %s", figure(v), f.least.text)
	case f.most.set && v > f.most.v:
		c.spoil(n, n.at, way, lengthHint(f, v)+f.expects(), "%s is more than %s", figure(v), f.most.text)
	}
}

// The first and last year that a record of a boat can hold; outside it a digit is missing.
const (
	firstYear = 1900
	lastYear  = 2199
)

func (c *checker) day(f *field, n *node, way *trail) {
	d, is := n.value.(Date)
	switch {
	case !is:
		c.mistyped(f, n, way)
	case d.Year < firstYear || d.Year > lastYear:
		c.spoil(n, n.at, way, "write the year with four digits: 2026-03-14", "the year %04d cannot be right", d.Year)
	}
}

// words takes a list of texts.
func (c *checker) words(f *field, n *node, way *trail) {
	if n.shape != list {
		c.mistyped(f, n, way)
		return
	}
	one := *f
	one.kind = word
	all, seen := make([]string, 0, len(n.items)), map[string]bool{}
	for i, item := range n.items {
		to := way.to(ordinal(i + 1))
		if item.shape != leaf {
			c.mistyped(&one, item, to)
		} else {
			c.word(&one, item, to)
		}
		if item.shape == broken {
			n.shape = broken
			continue
		}
		s := item.value.(string)
		if seen[s] {
			c.spoil(n, item.at, to, "name it once", "%s is in the list twice", quoted(s))
		}
		seen[s] = true
		all = append(all, s)
	}
	n.value = all
}

// mistyped tells that a value is of another kind than its key asks for, and how to write the right one.
func (c *checker) mistyped(f *field, n *node, way *trail) {
	is, hint := described(n)
	wants := [...]string{number: "a number", whole: "a whole number", word: "text", yesNo: "true or false", day: "a date", words: "a list of texts"}[f.kind]
	switch _, text := n.value.(string); {
	case f.kind == words && text:
		hint = `write it as a list: ["` + shown(n.value.(string)) + `"]`
	case f.kind == word && n.shape == leaf:
		hint = "put it in quotes"
	case f.kind == yesNo:
		hint = "write true or false, small and without quotes"
	case f.kind == day:
		hint = "write the day without quotes and without a time: 2026-03-14"
	case n.shape == leaf:
		hint = f.expects()
	}
	if s, text := n.value.(string); text {
		switch iso, likely := likelyDay(s); {
		case f.kind == number || f.kind == whole:
			hint = numberHint(s, f)
		case f.kind == day && likely:
			hint = "write the day without quotes: " + iso
		}
	}
	c.spoil(n, placeOf(n), way, hint, "%s, not %s", is, wants)
}

// placeOf is where a value stands; a table is found by its heading.
func placeOf(n *node) finding.Place {
	if n.shape == branch && n.key.Known() {
		return n.key
	}
	return n.at
}

// described says what a value is.
func described(n *node) (is, hint string) {
	switch n.shape {
	case list:
		return "this is a list", "write one value"
	case branch:
		return "this is a table", "write one value"
	}
	switch v := n.value.(type) {
	case string:
		return quoted(v) + " is text", ""
	case int64:
		return fmt.Sprintf("%d is a number", v), ""
	case float64:
		return figure(v) + " is a number", ""
	case bool:
		return fmt.Sprintf("%t is true or false", v), ""
	case Date:
		return v.ISO() + " is a date", ""
	case time.Time:
		return "this is a time of day", ""
	}
	return "this value is of another kind", ""
}

// expects is the hint that says what belongs under a key.
func (f *field) expects() string { return "expected: " + f.inShort() }

// inShort says what belongs under a key, with its unit and an example, or the words that are allowed.
func (f *field) inShort() string {
	s := f.short()
	if len(f.oneof) > 0 {
		return s + ": " + said(f.oneof, "or")
	}
	if f.unit.Sign != "" {
		s += ", in " + f.unit.Sign
	}
	if f.eg != "" {
		s += ", e.g. " + f.eg
	}
	return s
}

// short is the first part of what the key is.
func (f *field) short() string {
	doc, _, _ := strings.Cut(f.doc, ";")
	return doc
}
