package record

import "bytes"

// Walls before the text goes to a TOML decoder: both decoders call themselves for what is nested, and a file of nothing
// but opening brackets would exhaust the stack, which no program survives.
const (
	mostNested = 16
	mostParts  = 16     // of a dotted key
	mostLine   = 200000 // bytes
)

// tooDeep finds the first place where TOML text is nested deeper, or a key has more parts, or a line is longer, than a
// record needs. It reads only as much of the grammar as tells text in quotes and remarks from the rest.
func tooDeep(text []byte) (offset int, says string, found bool) {
	s := depthScan{text: text}
	for s.i < len(text) {
		if says := s.step(); says != "" {
			return min(s.i, len(text)-1), says, true
		}
	}
	return 0, "", false
}

type depthScan struct {
	text         []byte
	i            int
	depth, parts int
	line         int // offset at which the line begins
}

// step passes one character, or one text in quotes, or one remark.
func (s *depthScan) step() string {
	switch c := s.text[s.i]; c {
	case '"', '\'':
		s.pass(c)
	case '#':
		s.to(s.i+1, []byte("\n"), false)
		s.i--
	case '[', '{':
		s.depth++
		s.parts = 0
	case ']', '}':
		s.depth = max(0, s.depth-1)
	case '.':
		s.parts++
	case '\n':
		s.line, s.parts = s.i+1, 0
	case '=', ',':
		s.parts = 0
	}
	s.i++
	switch {
	case s.depth > mostNested:
		return "values are nested deeper than a record needs"
	case s.parts > mostParts:
		return "the key has more parts than a record needs"
	case s.i-s.line > mostLine:
		return "the line is longer than a record needs"
	}
	return ""
}

// pass goes to the last character of a text in quotes, over several lines if it has three of them.
func (s *depthScan) pass(quote byte) {
	three := bytes.Repeat([]byte{quote}, 3)
	if bytes.HasPrefix(s.text[s.i:], three) {
		s.to(s.i+3, three, quote == '"')
		return
	}
	s.to(s.i+1, three[:1], quote == '"')
}

// to goes to the last character of the next end mark; a text in single marks ends with its line at the latest.
func (s *depthScan) to(from int, end []byte, escapes bool) {
	for i := from; i < len(s.text); i++ {
		switch {
		case escapes && s.text[i] == '\\':
			i++
		case bytes.HasPrefix(s.text[i:], end):
			s.i = i + len(end) - 1
			return
		case s.text[i] == '\n' && len(end) == 1:
			s.i = i - 1
			return
		case s.text[i] == '\n':
			s.line = i + 1
		}
	}
	s.i = len(s.text)
}
