package method

import (
	"bytes"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"hullfile/engine/finding"
)

// places knows where every key and value of one sheet stands. The decoder keeps no usable positions inside arrays of
// tables, so the text is scanned a second time.
type places struct {
	file  string
	text  []byte
	lines []int // offset of the first byte of each line
	at    map[string]spot

	partly bool           // only tables are in it so far; the rest is looked for when it is asked for
	keys   map[string]int // then the offsets of keys outside arrays of tables
}

// spot is where one key stands and where its value stands.
type spot struct {
	key, value int  // byte offsets
	plain      bool // the value is a string on one line without escapes, so that a column inside it can be told
}

// locate scans a sheet that the decoder has accepted. Where the two readers differ about what is allowed, the places
// found up to there are kept and the rest is told by its table.
func locate(file string, text []byte) *places {
	p := newPlaces(file, text)
	p.scan()
	return p
}

func newPlaces(file string, text []byte) *places {
	p := &places{file: file, text: text, lines: make([]int, 1, 1+bytes.Count(text, []byte("\n"))), at: map[string]spot{}}
	for i, c := range text {
		if c == '\n' {
			p.lines = append(p.lines, i+1)
		}
	}
	return p
}

func (p *places) scan() {
	p.partly = false
	parser := &unstable.Parser{}
	parser.Reset(p.text)
	scan := scanner{places: p, parser: parser, counts: map[string]int{}}
	for parser.NextExpression() {
		scan.expression(parser.Expression())
	}
}

type scanner struct {
	*places
	parser *unstable.Parser
	counts map[string]int // tables so far in each array of tables
	under  string         // path of the table that is open
}

func (s *scanner) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.KeyValue:
		s.pair(s.under, e)
	case unstable.Table:
		path, offset := s.header(e, false)
		s.under = path
		s.note(path, spot{key: offset, value: offset})
	case unstable.ArrayTable:
		path, offset := s.header(e, true)
		s.under = item(path, s.counts[path])
		s.counts[path]++
		s.note(path, spot{key: offset, value: offset})
		s.note(s.under, spot{key: offset, value: offset})
	}
}

// header gives the path of a table and the offset of its name. Arrays of tables on the way stand for their last table.
func (s *scanner) header(e *unstable.Node, array bool) (path string, offset int) {
	keys := e.Key()
	for keys.Next() {
		if n, ok := s.counts[path]; ok {
			path = item(path, n-1)
		}
		path = child(path, string(keys.Node().Data))
		offset = int(keys.Node().Raw.Offset)
		s.note(path, spot{key: offset, value: offset})
	}
	if n, ok := s.counts[path]; ok && !array {
		path = item(path, n-1)
	}
	return path, offset
}

func (s *scanner) pair(under string, e *unstable.Node) {
	path, offset, end := under, 0, 0
	keys := e.Key()
	for keys.Next() {
		raw := keys.Node().Raw
		path = child(path, string(keys.Node().Data))
		offset, end = int(raw.Offset), int(raw.Offset+raw.Length)
		s.note(path, spot{key: offset, value: offset})
	}
	s.value(path, spot{key: offset, value: s.after(end)}, e.Value())
}

// after skips the equals sign behind a key: where the value begins.
func (s *scanner) after(end int) int {
	rest := bytes.TrimLeft(s.text[end:], " \t=")
	return len(s.text) - len(rest)
}

// value notes a value and all that it holds. The parser gives no position for an array, so here has it.
func (s *scanner) value(path string, here spot, v *unstable.Node) {
	if v.Raw.Length > 0 {
		here.value = int(v.Raw.Offset)
		here.plain = v.Kind == unstable.String && plain(s.parser.Raw(v.Raw))
	}
	s.at[path] = here
	children := v.Children()
	for i := 0; children.Next(); i++ {
		if v.Kind == unstable.InlineTable {
			s.pair(path, children.Node())
			continue
		}
		s.value(item(path, i), spot{key: here.value, value: here.value}, children.Node())
	}
}

// note keeps the first place at which a path is named.
func (p *places) note(path string, at spot) {
	if _, ok := p.at[path]; !ok {
		p.at[path] = at
	}
}

func plain(raw []byte) bool {
	triple := bytes.HasPrefix(raw, []byte(`"""`)) || bytes.HasPrefix(raw, []byte(`'''`))
	return !triple && (raw[0] == '\'' || !bytes.ContainsRune(raw, '\\'))
}

// child is the path of a key inside a table.
func child(path, key string) string {
	if strings.ContainsAny(key, ".[]\"") {
		key = strconv.Quote(key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// item is the path of one element of an array, counted from zero.
func item(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

// spot finds a path, or else the nearest table or array around it.
func (p *places) spot(path string) (at spot, exact bool) {
	if _, known := p.at[path]; !known && p.partly {
		p.scan()
	}
	exact = true
	for path != "" {
		if at, ok := p.at[path]; ok {
			return at, exact
		}
		exact = false
		path = path[:max(0, strings.LastIndexAny(path, ".["))]
	}
	return spot{}, false
}

// begins is where a key begins, to put keys into order.
func (p *places) begins(path string) int {
	if p.partly {
		if at, ok := p.keys[path]; ok {
			return at
		}
	}
	at, _ := p.spot(path)
	return at.key
}

// ofKey is the place of a key.
func (p *places) ofKey(path string) finding.Place {
	at, _ := p.spot(path)
	return p.place(at.key)
}

// ofValue is the place of a value.
func (p *places) ofValue(path string) finding.Place {
	at, _ := p.spot(path)
	return p.place(at.value)
}

// inside is the place so many characters into a string; where that cannot be told it is the place of the string.
func (p *places) inside(path string, characters int) finding.Place {
	at, exact := p.spot(path)
	place := p.place(at.value)
	if exact && at.plain {
		place.Col += 1 + characters
	}
	return place
}

func (p *places) line(path string) int { return p.ofKey(path).Line }

func (p *places) place(offset int) finding.Place {
	n := sort.SearchInts(p.lines, offset+1) - 1
	col := utf8.RuneCount(p.text[p.lines[n]:offset]) + 1
	return finding.Place{File: p.file, Line: n + 1, Col: col}
}
