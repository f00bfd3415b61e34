package site

import "strings"

// Walls before the reader of Markdown. It needs time that grows with the square of what is nested in one line, of the signs
// that may begin or end something in one run of text, and of the columns and rows of a table. Each is more than anybody
// writes; what lies beyond is left as the signs themselves.
const (
	deepestMarks = 40     // quotes and lists within each other on one line
	mostSigns    = 3000   // in lines without an empty one between them
	mostLooks    = 60e6   // signs times bytes of such lines: for each sign the rest of them may be looked through
	mostCells    = 50_000 // of one table
)

// signs are those that may begin or end words in another form, a link or a tag.
const signs = "*_~[`<"

// shallow makes plain text of what would keep the reader of Markdown busy.
func shallow(markdown string) string {
	var out strings.Builder
	var block []string
	for line := range strings.Lines(markdown) {
		block = append(block, line)
		if strings.TrimSpace(line) == "" {
			calm(&out, block)
			block = block[:0]
		}
	}
	calm(&out, block)
	return out.String()
}

// calm writes lines that no empty line parts.
func calm(out *strings.Builder, lines []string) {
	bytes := 0
	for _, line := range lines {
		bytes += len(line)
	}
	wide, left := tooWide(lines), min(mostSigns, mostLooks/max(1, bytes))
	for _, line := range lines {
		begins, beyond := marks(line)
		switch {
		case beyond >= 0:
			line = line[:beyond] + `\` + line[beyond:]
		case wide && rules(line):
			line = `\` + line
		}
		begins = min(begins, len(line))
		out.WriteString(line[:begins])
		left = plainBeyond(out, line[begins:], left)
	}
}

// plainBeyond writes a text with a backslash before every sign beyond those that are left, and gives how many are left.
func plainBeyond(out *strings.Builder, text string, left int) int {
	if !strings.ContainsAny(text, signs) {
		out.WriteString(text)
		return left
	}
	escaped := false
	for i := range len(text) {
		c := text[i]
		if strings.IndexByte(signs, c) >= 0 && !escaped {
			if left--; left < 0 {
				out.WriteByte('\\')
			}
		}
		escaped = c == '\\' && !escaped
		out.WriteByte(c)
	}
	return left
}

// marks gives where the words of a line begin behind its marks of quotes and lists, and where the first mark too many stands,
// -1 where there is none. A line of one mark alone is a rule across the page.
func marks(line string) (begins, beyond int) {
	for n, i := 0, 0; i < len(line); {
		size := markAt(line[i:])
		switch {
		case line[i] == ' ' || line[i] == '\t':
			i++
			continue
		case size == 0 || line[i] != '>' && strings.Trim(line[i:], line[i:i+1]+" \t\r\n") == "":
			return i, -1
		}
		if n++; n > deepestMarks {
			return i, i
		}
		i += size
	}
	return len(line), -1
}

// markAt gives the length of the mark of a quote or of a list that a text begins with, 0 where it begins with none.
func markAt(text string) int {
	if text[0] == '>' {
		return 1
	}
	digits := len(text) - len(strings.TrimLeft(text, "0123456789"))
	at := digits
	switch {
	case at == len(text) || digits > 9:
		return 0
	case digits == 0 && strings.IndexByte("-*+", text[0]) < 0, digits > 0 && text[at] != '.' && text[at] != ')':
		return 0
	case at+1 < len(text) && strings.IndexByte(" \t\r\n", text[at+1]) < 0:
		return 0
	}
	return at + 1
}

// tooWide reports whether lines could be a table of more cells than anybody reads: every row has as many as the head.
func tooWide(lines []string) bool {
	columns := 0
	for _, line := range lines {
		if rules(line) {
			columns = max(columns, strings.Count(line, "|")+1)
		}
	}
	return columns*len(lines) > mostCells
}

// rules reports whether a line may be the one below the head of a table, also within quotes and lists.
func rules(line string) bool {
	return strings.Contains(line, "-") && strings.Trim(line, " \t\r\n|:->*+0123456789.)") == ""
}
