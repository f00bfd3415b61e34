package record

import (
	"bytes"
	"errors"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// notRead goes with every fault behind which nothing of the file could be read: there may be more of them.
const notRead = "the rest of this file is not read until this is mended"

// misread is one place at which text stops being TOML, in plain words.
type misread struct {
	at              finding.Place
	key, says, hint string
	message         string // of the decoder
}

// syntaxFault tells in plain words where text stops being TOML.
func syntaxFault(file string, text []byte, err error) misread {
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return misread{at: finding.Place{File: file}, says: "cannot be read as TOML: " + err.Error()}
	}
	offset := min(max(0, parse.Position.Start), len(text))
	m := misread{at: newRuler(file, text).at(offset), key: lastKey(parse, text, offset), message: parse.Message}
	if m.says, m.hint = slip(parse.Message, text, offset, m.key); m.says != "" {
		return m
	}
	for _, s := range sayings {
		if strings.Contains(parse.Message, s.message) && strings.Contains(parse.Message, s.and) {
			m.says, m.hint = s.says, s.hint
			return m
		}
	}
	m.says = "not TOML: " + clean(parse.Message)
	return m
}

// mostMisread is after how many lines that are no TOML a file is given up.
const mostMisread = 20

// decode reads TOML. Where a line is no TOML and ends by itself, it is told, and the lines behind it are looked at as if it were not
// there, so that a file that somebody wrote by hand is mended in one go. ok is false where anything was told.
func decode(file string, text []byte, fs *faults) (values map[string]any, ok bool) {
	var told []misread
	for len(told) < mostMisread {
		values = map[string]any{}
		_, err := toml.Decode(string(text), &values)
		if err == nil {
			break
		}
		m := syntaxFault(file, text, err)
		told = append(told, m)
		if text, ok = without(text, m); !ok {
			break
		}
	}
	for i, m := range told {
		if i == len(told)-1 {
			m.hint = strings.TrimPrefix(m.hint+"; "+notRead, "; ")
		}
		fs.add(m.at, m.key, m.hint, "%s", m.says)
	}
	return values, len(told) == 0
}

// without blanks the line of a fault; ok is false where more than that line may be wrong: a heading, to which other lines belong, or
// text and lists that go over several lines.
func without(text []byte, m misread) (rest []byte, ok bool) {
	lines := bytes.SplitAfter(bytes.Clone(text), []byte("\n"))
	if m.at.Line < 1 || m.at.Line > len(lines) {
		return text, false
	}
	line := lines[m.at.Line-1]
	is := bytes.TrimSpace(line)
	if len(is) == 0 || is[0] == '[' || !bytes.Contains(is, []byte("=")) || bytes.Contains(is, []byte(`"""`)) || bytes.Contains(is, []byte("'''")) {
		return text, false
	}
	if strings.Contains(m.message, "terminator") || strings.Contains(m.message, "unexpected EOF") {
		return text, false
	}
	for i := range line {
		if line[i] != '\n' {
			line[i] = ' '
		}
	}
	return bytes.Join(lines, nil), true
}

// slip tells what was written where a value stands, or behind it, and what to write instead.
func slip(message string, text []byte, offset int, key string) (says, hint string) {
	word := clean(bareWord(text, offset))
	switch {
	case strings.Contains(message, "top-level item to end with a newline"):
		return restHint(word)
	case strings.Contains(message, "expected value but found") && word != "":
		return valueHint(word, key[strings.LastIndexByte(key, '.')+1:])
	}
	return "", ""
}

// lastKey is the key that the decoder read last, if it stands on the line where reading stopped.
func lastKey(parse toml.ParseError, text []byte, offset int) string {
	start := bytes.LastIndexByte(text[:offset], '\n') + 1
	last := parse.LastKey[strings.LastIndexByte(parse.LastKey, '.')+1:]
	if last == "" || !bytes.HasPrefix(bytes.TrimSpace(text[start:offset]), []byte(last)) {
		return ""
	}
	return shown(parse.LastKey)
}

// clean keeps a decoder's message, which repeats what was written, on one line and free of control characters.
func clean(s string) string {
	const most = 200
	if len(s) > most {
		s = strings.ToValidUTF8(s[:most], "") + "…"
	}
	return strings.Map(func(r rune) rune {
		if Unwanted(r) {
			return '?'
		}
		return r
	}, s)
}

// sayings are the mistakes people make, by words of the decoder's message. The first that fits is told.
var sayings = []struct{ message, and, says, hint string }{
	{"have already been defined", "", "this key is written twice in its table", "keep one of the two"},
	{"has already been defined", "", "this table or key is written twice in this file", "keep one of the two"},
	{"already created as a hash", "", "this key is a table and a value at once", "keep one of the two"},
	{"already created and cannot be used as an array", "", "this is one table in one place and a list of tables in another", "use [name] for one table, [[name]] for a list, not both"},
	{"is not a table", "", "this key is a value in one place and a table in another", "keep one of the two"},
	{"expected '.' or '='", "", "after a key there must be an equals sign", "write key = value; a line of words alone begins with #; a key with spaces or letters outside a to z needs quotes"},
	{"expected key separator", "", "after a key there must be an equals sign", "write key = value"},
	{"unexpected '='", "", "there is no key before the equals sign", "write key = value"},
	{"floats must start with a digit", "", "a number begins with a point", "write the zero before the point: 0.6"},
	{"must be followed by one or more digits", "", "a number ends with a point", "write a digit after the point: 6.0"},
	{"leading zero", "", "a number begins with a zero too many", "write it without the zeros, or in quotes if it is a mark and not a number"},
	{"invalid datetime", "", "this is not a day of the calendar", "write a date as year-month-day: 2026-03-14"},
	{"Invalid float", "", "this is not a number", "write one decimal point and nothing between thousands: 1180.5; write a day as year-month-day: 2026-03-14"},
	{"out of range", "", "the number is too large", "check the digits"},
	{"invalid escape", "", "a backslash in text stands for a special character, and this is none", "use forward slashes in file names, or single quotes around the text"},
	{"strings cannot contain newlines", "", "text in quotes does not end on its line", `close the quotes, or use """ around text of several lines`},
	{`unexpected EOF; expected '"`, "", "text in quotes does not end", "close the quotes"},
	{`unexpected EOF; expected "'`, "", "text in quotes does not end", "close the quotes"},
	{"control characters", "", "there is a control character in the text", "take it out; it is most likely left over from copying"},
	{"NULL bytes", "", "the file holds null bytes; it is most likely UTF-16", "save the file as UTF-8"},
	{"expected value but found", `found '\n'`, "there is no value after the equals sign", "write the value, or take the line out if it is not known"},
	{"expected value but found", "", "this is not a value", "put text in quotes; true and false are written small; numbers with a decimal point"},
	{"expected value", "", "there is no value after the equals sign", "write the value, or take the line out if it is not known"},
	{"array terminator", "", "a list is not closed, or a comma is missing in it", `write a list as ["a", "b"]`},
	{"inline table terminator", "", "a table in curly brackets is not closed, or a comma is missing in it", "write it as a [table] of its own"},
	{"end table name", "", "a heading is not closed", `write it as [panel.B3]; a key with spaces or letters outside a to z stands in quotes: [panel."B 3"]`},
	{"end of table array name", "", "a heading is not closed", "write it as [[name]]"},
	{"table names cannot be empty", "", "a heading has no name", "write it as [panel.B3]"},
}
