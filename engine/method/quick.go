package method

import (
	"math"
	"path"
	"strconv"

	"github.com/pelletier/go-toml/v2/unstable"
)

// loadShipped is Load for a sheet that comes with the program, which tests have held to be sound TOML: it is read once, and
// where its keys stand is looked for only when something is wrong after all. What it does not know it leaves to Load.
func loadShipped(name string, text []byte) (*Sheet, error) {
	rows, at, ok := quick(name, text)
	if !ok {
		return Load(name, text)
	}
	p := &page{places: at}
	s := p.sheet(path.Base(name), rows)
	if len(p.faults) > 0 {
		p.faults.Sort()
		return nil, p.faults
	}
	return s, nil
}

// quick reads sound TOML into rows as decode does, with the places of its tables. ok is false where it meets what no sheet of
// ours has, such as a date.
func quick(file string, text []byte) (rows map[string]any, at *places, ok bool) {
	at = newPlaces(file, text)
	at.partly, at.keys = true, map[string]int{}
	q := quickly{places: at, top: map[string]any{}, counts: map[string]int{}, sound: true}
	q.here = q.top
	parser := &unstable.Parser{}
	parser.Reset(text)
	for q.sound && parser.NextExpression() {
		q.expression(parser.Expression(), parser)
	}
	return q.top, at, q.sound && parser.Error() == nil
}

// Rows reads TOML that is known to be sound into rows, as the decoder gives them; ok is false where it meets what it does not
// know, or what is none.
func Rows(text []byte) (rows map[string]any, ok bool) {
	rows, _, ok = quick("", text)
	return rows, ok
}

type quickly struct {
	*places
	top, here map[string]any
	under     string         // path of the table that is open
	array     bool           // it is part of one
	counts    map[string]int // tables so far in each array of tables
	sound     bool
}

func (q *quickly) expression(e *unstable.Node, parser *unstable.Parser) {
	switch e.Kind {
	case unstable.KeyValue:
		q.first(e, parser)
		q.pair(q.here, e)
	case unstable.Table, unstable.ArrayTable:
		q.table(e, e.Kind == unstable.ArrayTable)
	default:
		q.sound = false
	}
}

// first notes where a key begins that stands outside arrays of tables; of an input, where it says what it asks for, which
// every input keeps.
func (q *quickly) first(e *unstable.Node, parser *unstable.Parser) {
	keys := e.Key()
	keys.Next()
	key, offset := string(keys.Node().Data), int(keys.Node().Raw.Offset)
	switch v := e.Value(); {
	case !q.array:
		q.keys[child(q.under, key)] = offset
	case key == "from" && v.Kind == unstable.String:
		q.note(child(q.under, key), spot{key: offset, value: int(v.Raw.Offset), plain: plain(parser.Raw(v.Raw))})
	}
}

// table opens a table, or the next of an array of tables.
func (q *quickly) table(e *unstable.Node, array bool) {
	in, path := q.top, ""
	q.array = array
	for keys := e.Key(); keys.Next(); {
		key := string(keys.Node().Data)
		path = child(path, key)
		offset := int(keys.Node().Raw.Offset)
		q.note(path, spot{key: offset, value: offset})
		if array && keys.IsLast() {
			all, _ := in[key].([]map[string]any)
			in[key] = append(all, map[string]any{})
			q.note(item(path, len(all)), spot{key: offset, value: offset})
			q.counts[path] = len(all) + 1
		}
		in = q.below(in, key)
		if n := q.counts[path]; n > 0 {
			path, q.array = item(path, n-1), true
		}
	}
	q.here, q.under = in, path
}

// below is the table of a key; of an array the last one.
func (q *quickly) below(in map[string]any, key string) map[string]any {
	switch v := in[key].(type) {
	case nil:
		made := map[string]any{}
		in[key] = made
		return made
	case map[string]any:
		return v
	case []map[string]any:
		return v[len(v)-1]
	}
	q.sound = false
	return in
}

func (q *quickly) pair(in map[string]any, e *unstable.Node) {
	for keys := e.Key(); keys.Next(); {
		key := string(keys.Node().Data)
		if keys.IsLast() {
			in[key] = q.value(e.Value())
			return
		}
		in = q.below(in, key)
	}
}

func (q *quickly) value(v *unstable.Node) any {
	switch v.Kind {
	case unstable.String:
		return string(v.Data)
	case unstable.Bool:
		return v.Data[0] == 't'
	case unstable.Integer:
		n, err := strconv.ParseInt(string(v.Data), 10, 64)
		q.sound = q.sound && err == nil
		return n
	case unstable.Float:
		x, err := strconv.ParseFloat(string(v.Data), 64)
		q.sound = q.sound && err == nil && !math.IsNaN(x) && !math.IsInf(x, 0)
		return x
	case unstable.Array:
		return q.list(v)
	case unstable.InlineTable:
		made := map[string]any{}
		for all := v.Children(); all.Next(); {
			q.pair(made, all.Node())
		}
		return made
	}
	q.sound = false
	return nil
}

// list is an array. The decoder gives one of tables its own type, and so does this.
func (q *quickly) list(v *unstable.Node) any {
	out := []any{}
	tables := []map[string]any{}
	for all := v.Children(); all.Next(); {
		one := q.value(all.Node())
		out = append(out, one)
		if rows, ok := one.(map[string]any); ok {
			tables = append(tables, rows)
		}
	}
	if len(tables) > 0 && len(tables) == len(out) {
		return tables
	}
	return out
}
