package method

import (
	"sort"
	"strconv"
	"strings"
)

// block is one TOML table of the sheet. Keys are asked for one by one; close faults those that nobody asked for.
type block struct {
	page  *page
	path  string // where it stands
	shown string // how messages name it
	rows  map[string]any
	asked []string
}

func (t *block) key(name string) string {
	if t.shown == "" {
		return name
	}
	return t.shown + "." + name
}

// wrong faults the value of a key.
func (t *block) wrong(name, says, hint string) {
	t.page.fault(t.page.ofValue(child(t.path, name)), t.key(name), says, hint)
}

func (t *block) ask(name string) (any, bool) {
	if t.asked == nil {
		t.asked = make([]string, 0, 12) // no table has many more keys
	}
	t.asked = append(t.asked, name)
	v, ok := t.rows[name]
	return v, ok
}

// text reads a string; ok is false when it is not written or is no string.
func (t *block) text(name string) (s string, ok bool) {
	v, written := t.ask(name)
	if !written {
		return "", false
	}
	s, ok = v.(string)
	if !ok {
		t.wrong(name, "is "+kindOf(v)+", must be text", "write it in quotes")
	}
	if !clean(s) {
		t.wrong(name, "holds a character that cannot be seen", "take out control characters")
		return "", false
	}
	return strings.TrimSpace(s), ok
}

// must reads a string that may not be left out or empty.
func (t *block) must(name, hint string) string {
	s, ok := t.text(name)
	_, written := t.rows[name]
	switch {
	case !written:
		t.page.fault(t.page.ofKey(t.path), t.key(name), "is missing", hint)
	case ok && s == "":
		t.wrong(name, "is empty", hint)
	}
	return s
}

// number reads a finite number, nil when it is not written.
func (t *block) number(name string) *float64 {
	v, written := t.ask(name)
	if !written {
		return nil
	}
	x, ok := toNumber(v)
	if !ok {
		t.wrong(name, "is "+kindOf(v)+", must be a finite number", "")
		return nil
	}
	return &x
}

func (t *block) flag(name string) bool {
	v, written := t.ask(name)
	b, ok := v.(bool)
	if written && !ok {
		t.wrong(name, "is "+kindOf(v)+", must be true or false", "")
	}
	return b
}

// list reads an array; nil when it is not written.
func (t *block) list(name string) []any {
	v, written := t.ask(name)
	all, ok := v.([]any)
	if written && !ok {
		t.wrong(name, "is "+kindOf(v)+", must be a list in brackets", "")
	}
	return all
}

func (t *block) words(name string) []string {
	var out []string
	for _, v := range t.list(name) {
		s, ok := v.(string)
		if !ok || s == "" {
			t.wrong(name, "has "+kindOf(v)+" in it, must hold words", "write each word in quotes")
			return nil
		}
		if !clean(s) {
			t.wrong(name, "holds a character that cannot be seen", "take out control characters")
			return nil
		}
		out = append(out, s)
	}
	return out
}

func (t *block) numbers(name string) []float64 {
	var out []float64
	for _, v := range t.list(name) {
		x, ok := toNumber(v)
		if !ok {
			t.wrong(name, "has "+kindOf(v)+" in it, must hold finite numbers", "")
			return nil
		}
		out = append(out, x)
	}
	return out
}

// tables reads an array of tables.
func (t *block) tables(name string) []*block {
	v, written := t.ask(name)
	if !written {
		return nil
	}
	path := child(t.path, name)
	var out []*block
	switch all := v.(type) {
	case []map[string]any:
		for i, rows := range all {
			out = append(out, &block{page: t.page, path: item(path, i), shown: t.key(name) + "." + strconv.Itoa(i+1), rows: rows})
		}
	case []any:
		for i, one := range all {
			rows, ok := one.(map[string]any)
			if !ok {
				t.wrong(name, "has "+kindOf(one)+" in it, must hold tables", "write [["+t.key(name)+"]]")
				return nil
			}
			out = append(out, &block{page: t.page, path: item(path, i), shown: t.key(name) + "." + strconv.Itoa(i+1), rows: rows})
		}
	default:
		t.wrong(name, "is "+kindOf(v)+", must be an array of tables", "write [["+t.key(name)+"]]")
	}
	return out
}

// sub reads a table; nil when it is not written.
func (t *block) sub(name string) *block {
	v, written := t.ask(name)
	if !written {
		return nil
	}
	rows, ok := v.(map[string]any)
	if !ok {
		t.page.fault(t.page.ofKey(child(t.path, name)), t.key(name), "is "+kindOf(v)+", must be a table", "write ["+t.key(name)+"]")
		return nil
	}
	return &block{page: t.page, path: child(t.path, name), shown: t.key(name), rows: rows}
}

// names gives the keys of the table in the order in which they stand in the sheet.
func (t *block) names() []string {
	var out []string
	for name := range t.rows {
		out = append(out, name)
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := t.page.begins(child(t.path, out[i])), t.page.begins(child(t.path, out[j]))
		if a != b {
			return a < b
		}
		return out[i] < out[j]
	})
	return out
}

// close faults every key that was not asked for.
func (t *block) close() {
	if t.allAsked() {
		return
	}
	for _, name := range t.names() {
		if t.has(name) {
			continue
		}
		t.page.fault(t.page.ofKey(child(t.path, name)), t.key(name), "is not a key of a method sheet", didYouMean(name, t.asked))
	}
}

func (t *block) allAsked() bool {
	for name := range t.rows {
		if !t.has(name) {
			return false
		}
	}
	return true
}

func (t *block) has(name string) bool {
	for _, a := range t.asked {
		if a == name {
			return true
		}
	}
	return false
}
