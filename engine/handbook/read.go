package handbook

import (
	"strings"
	"unicode/utf8"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// mostNames is how many names one part may hold: as many as the private range of Unicode has runes before Opens.
const mostNames = int(Opens - First)

// read parts a chapter. The first line is its title: # Title.
func read(s Source) (Chapter, finding.Faults) {
	c := Chapter{Name: strings.TrimSuffix(s.Name, ".md")}
	text := strings.ReplaceAll(strings.TrimPrefix(string(s.Text), "\ufeff"), "\r\n", "\n")
	if !utf8.ValidString(text) {
		return c, finding.Faults{fault(s, 1, 0, "save the file as UTF-8", "the text is not UTF-8")}
	}
	lines := strings.Split(text, "\n")
	title, titled := strings.CutPrefix(lines[0], "# ")
	if !titled || strings.TrimSpace(title) == "" || strings.ContainsAny(title, "{}") {
		return c, finding.Faults{fault(s, 1, 1, "begin with a line such as: # Loading", "a chapter begins with its title, and no value goes into it")}
	}
	c.Title = strings.TrimSpace(title)
	r := &reader{source: s}
	r.seen(1, lines[0])
	for n, line := range lines[1:] {
		r.seen(n+2, line)
		r.line(n+2, line)
	}
	r.close()
	c.Parts = r.parts
	return c, r.faults
}

// reader collects the parts of one chapter.
type reader struct {
	source Source
	parts  []Part
	now    Part
	text   strings.Builder
	code   bool // inside a fence, where braces mean themselves
	faults finding.Faults
}

func (r *reader) close() {
	r.now.Markdown = r.text.String()
	if strings.TrimSpace(r.now.Markdown) != "" {
		r.parts = append(r.parts, r.now)
	}
	r.now, r.text = Part{}, strings.Builder{}
}

func (r *reader) line(no int, line string) {
	bare := strings.TrimSpace(line)
	if strings.HasPrefix(bare, "```") || strings.HasPrefix(bare, "~~~") {
		r.code = !r.code
	}
	if name, alone := alone(bare); alone && !r.code {
		if n, known := Find(name); known && n.Block {
			r.close()
			r.parts = append(r.parts, Part{Block: name})
			return
		}
	}
	if r.code {
		r.text.WriteString(line)
	} else {
		r.sentence(no, line)
	}
	r.text.WriteByte('\n')
}

// seen refuses characters that have no place in a record, as those that turn the order of reading; the first of a line is told.
func (r *reader) seen(no int, line string) {
	col := 0
	for _, c := range line {
		col++
		if c != '\t' && record.Unwanted(c) {
			r.fault(no, col, "take it out; it is most likely left over from copying", "the text holds the character U+%04X", c)
			return
		}
	}
}

// alone gives the name of a line that holds nothing but one.
func alone(line string) (name string, ok bool) {
	inner, opens := strings.CutPrefix(line, "{")
	inner, closes := strings.CutSuffix(inner, "}")
	return inner, opens && closes && !strings.ContainsAny(inner, "{}")
}

// sentence takes a line over, each name replaced by its rune.
func (r *reader) sentence(no int, line string) {
	col, opened := 0, 0 // column of [[ that is open
	defer func() {
		if opened > 0 {
			r.fault(no, opened, "close it with ]] in the same line", "[[ is opened and not closed")
		}
	}()
	for i := 0; i < len(line); {
		c, size := utf8.DecodeRuneInString(line[i:])
		col++
		switch {
		case c == '\\' && i+1 < len(line) && (line[i+1] == '{' || line[i+1] == '}'):
			r.text.WriteByte(line[i+1])
			i, col = i+2, col+1
			continue
		case c >= First && c <= '\uf8ff':
			r.fault(no, col, "take the sign out; it belongs to no alphabet", "a sign of the private range of Unicode cannot stand in a chapter")
		case strings.HasPrefix(line[i:], "[[") && opened == 0:
			r.text.WriteRune(Opens)
			opened = col
			i, col = i+2, col+1
			continue
		case strings.HasPrefix(line[i:], "]]") && opened > 0:
			r.text.WriteRune(Closes)
			opened = 0
			i, col = i+2, col+1
			continue
		case c == '{':
			end := strings.IndexByte(line[i:], '}')
			if end < 0 {
				r.fault(no, col, `write \{ for a brace that means itself`, "a brace is opened and not closed")
				return
			}
			name := line[i+1 : i+end]
			r.name(no, col, name)
			col += utf8.RuneCountInString(name) + 1
			i += end + 1
			continue
		case c == '}':
			r.fault(no, col, `write \} for a brace that means itself`, "a brace is closed that was not opened")
		default:
			r.text.WriteRune(c)
		}
		i += size
	}
}

// name puts the rune of a value into the text.
func (r *reader) name(no, col int, name string) {
	n, known := Find(name)
	switch {
	case !known:
		hint := "hullfile's own chapters show the names that there are"
		if near, ok := finding.Nearest(name, keys()); ok {
			hint = "did you mean {" + near + "}?"
		}
		r.fault(no, col, hint, "{%s} is no value, picture or table of the owner's book", name)
	case n.Block:
		r.fault(no, col, "put it on a line of its own", "{%s} is a %s and cannot stand in a sentence", name, strings.Fields(name)[0])
	case len(r.now.Names) == mostNames:
		r.fault(no, col, "put a picture or a table between", "more than %d values in one run of text", mostNames)
	default:
		r.text.WriteRune(First + rune(len(r.now.Names)))
		r.now.Names = append(r.now.Names, name)
	}
}

// mostFaults is the number of faults of one chapter that are told.
const mostFaults = 1000

func (r *reader) fault(no, col int, hint, format string, args ...any) {
	switch {
	case len(r.faults) > mostFaults:
		return
	case len(r.faults) == mostFaults:
		hint, format, args = "", "from here on faults of this chapter are not told", nil
	}
	r.faults = append(r.faults, fault(r.source, no, col, hint, format, args...))
}
