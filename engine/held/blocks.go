package held

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/unit"
)

// Block is a part of a table of limits as a page shows it: rows of one kind below each other, or the values of one entry.
type Block struct {
	Name  string     // key of the table, and of an entry its standard and edition; empty for the values above all tables
	Notes string     // the comment above it
	Heads []string   // keys of the columns; none where each row is a key and its value
	Rows  [][]string // texts; empty where a row does not have the key
	Bases []string   // the word beside each row by which it is known; of values one word for all
}

// Blocks gives the rows in use in the order of the file, with the comment at its head.
// The error is one of TOML, which a table that was read does not have.
func (t Table) Blocks() (about string, blocks []Block, err error) {
	raw := map[string]any{}
	meta, err := toml.Decode(string(t.text), &raw)
	if err != nil {
		return "", nil, fmt.Errorf("%s: %w", t.File, err)
	}
	order := keyOrder{}
	for _, key := range meta.Keys() {
		order.add(key)
	}
	about, notes := comments(string(t.text))
	single := Block{}
	for _, key := range order.sorted("", raw) {
		switch v := raw[key].(type) {
		case []map[string]any:
			blocks = append(blocks, order.list(key, v, notes[key])...)
		case map[string]any:
			blocks = append(blocks, order.values(key, key, v, notes)...)
		default:
			if !strings.HasPrefix(key, "confirmed_") {
				single.Rows = append(single.Rows, []string{key, text(v)})
			}
		}
	}
	if len(single.Rows) > 0 {
		blocks = slices.Insert(blocks, 0, single)
	}
	return about, blocks, nil
}

// keyOrder numbers keys as they first appear.
type keyOrder map[string]int

func (o keyOrder) add(key toml.Key) {
	name := strings.Join(key, ".")
	if _, known := o[name]; !known {
		o[name] = len(o)
	}
}

func (o keyOrder) sorted(under string, table map[string]any) []string {
	keys := slices.Sorted(maps.Keys(table))
	slices.SortStableFunc(keys, func(a, b string) int { return o[under+a] - o[under+b] })
	return keys
}

// list lays entries of one kind out as rows, or one by one where they hold tables of their own.
func (o keyOrder) list(key string, entries []map[string]any, note string) []Block {
	if slices.ContainsFunc(entries, deep) {
		var out []Block
		for i, e := range entries {
			one := o.values(key, named(key, i, e), e, nil)
			if i == 0 {
				one[0].Notes = note
			}
			out = append(out, one...)
		}
		return out
	}
	all := map[string]any{}
	for _, e := range entries {
		maps.Copy(all, e)
	}
	b := Block{Name: key, Notes: note, Heads: basisLast(o.sorted(key+".", all))}
	for _, e := range entries {
		row := make([]string, len(b.Heads))
		for i, head := range b.Heads {
			if v, there := e[head]; there {
				row[i] = text(v)
			}
		}
		b.Rows, b.Bases = append(b.Rows, row), append(b.Bases, text(e["basis"]))
	}
	return []Block{b}
}

// basisLast puts how a row is known, and what is remarked about it, behind what it says.
func basisLast(heads []string) []string {
	last := func(key string) bool { return key == "basis" || key == "note" }
	behind := slices.DeleteFunc(slices.Clone(heads), func(key string) bool { return !last(key) })
	return append(slices.DeleteFunc(heads, last), behind...)
}

// values lays one table out as keys and values, and the tables in it behind it.
func (o keyOrder) values(key, name string, table map[string]any, notes map[string]string) []Block {
	b := Block{Name: name, Notes: notes[key]}
	var below []Block
	for _, k := range o.sorted(key+".", table) {
		if inner, is := table[k].(map[string]any); is && (len(inner) > 3 || deep(inner)) {
			below = append(below, o.values(key+"."+k, name+", "+k, inner, notes)...)
			continue
		}
		b.Rows = append(b.Rows, []string{k, text(table[k])})
	}
	if basis, is := table["basis"].(string); is {
		b.Bases = []string{basis}
	}
	if len(b.Rows) == 0 {
		return below
	}
	return append([]Block{b}, below...)
}

// deep reports whether an entry holds more than words, numbers and short lists of them.
func deep(entry map[string]any) bool {
	for _, v := range entry {
		switch v := v.(type) {
		case []map[string]any:
			return true
		case map[string]any:
			for _, inner := range v {
				switch inner.(type) {
				case map[string]any, []any, []map[string]any:
					return true
				}
			}
		}
	}
	return false
}

func named(key string, i int, entry map[string]any) string {
	var parts []string
	for _, k := range []string{"standard", "edition"} {
		if s, is := entry[k].(string); is && s != "" {
			parts = append(parts, s)
		}
	}
	if len(parts) == 0 {
		return key + " " + strconv.Itoa(i+1)
	}
	return strings.Join(parts, " ")
}

// text gives a value as a reader takes it: lists with commas, a table as its keys and values, true as its key alone.
func text(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case bool:
		if v {
			return "yes"
		}
		return "no"
	case int64:
		return strconv.FormatInt(v, 10) // a year or an alloy has no thousands
	case float64:
		return unit.Plain(v)
	case []any:
		parts := make([]string, len(v))
		between := ", "
		for i := range v {
			switch v[i].(type) {
			case map[string]any, []any:
				between = "; "
			}
			parts[i] = text(v[i])
		}
		return strings.Join(parts, between)
	case []map[string]any:
		parts := make([]string, len(v))
		for i := range v {
			parts[i] = pairs(v[i])
		}
		return strings.Join(parts, "; ")
	case map[string]any:
		return pairs(v)
	case nil:
		return ""
	}
	return fmt.Sprint(v)
}

func pairs(table map[string]any) string {
	var parts []string
	for _, k := range slices.Sorted(maps.Keys(table)) {
		key := strings.ReplaceAll(k, "_", " ")
		switch v := table[k].(type) {
		case bool:
			switch {
			case v && key == "no":
				parts = append(parts, "not permitted")
			case v:
				parts = append(parts, key)
			}
		case []any, map[string]any:
			parts = append(parts, key+": "+text(v))
		default:
			parts = append(parts, key+" "+text(v))
		}
	}
	return strings.Join(parts, separator(table))
}

func separator(table map[string]any) string {
	for _, v := range table {
		switch v.(type) {
		case []any, map[string]any:
			return "; "
		}
	}
	return ", "
}

// comments gives the comment at the head of a file, and those that stand above the first table of each name.
func comments(file string) (about string, above map[string]string) {
	above = map[string]string{}
	var now []string
	first := true
	for line := range strings.SplitSeq(file, "\n") {
		bare := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(bare, "#"):
			now = append(now, strings.TrimPrefix(strings.TrimPrefix(bare, "#"), " "))
			continue
		case first && len(now) > 0:
			about, first = strings.Join(now, "\n"), false
		case bare == "":
			continue
		case strings.HasPrefix(bare, "["):
			name, _, _ := strings.Cut(strings.TrimLeft(bare, "["), "]")
			if name = strings.TrimSpace(name); above[name] == "" {
				above[name] = strings.Join(now, "\n")
			}
		}
		now = nil
	}
	return about, above
}
