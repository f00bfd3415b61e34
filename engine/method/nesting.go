package method

import "bytes"

// deepestTOML is how many brackets or key parts a sheet may have inside each other. The decoder needs time that grows
// with the square of the nesting, so a few kilobytes of brackets would hold it for minutes.
const deepestTOML = 12

// nested finds the first place at which a sheet is nested deeper than that.
func nested(text []byte) (offset int, found bool) {
	depth, parts := 0, 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '"', '\'':
			i = quoteEnd(text, i)
		case '#':
			i = indexFrom(text, i, "\n") - 1
		case '[', '{':
			depth, parts = depth+1, 0
		case ']', '}':
			depth--
		case '.':
			parts++
		case '=', ',', '\n':
			parts = 0
		}
		if depth > deepestTOML || parts > deepestTOML {
			return i, true
		}
	}
	return 0, false
}

// quoteEnd gives the offset of the last quote of the string that begins at start. A string that is not closed ends with
// its line, where the decoder refuses it.
func quoteEnd(text []byte, start int) int {
	mark := text[start : start+1]
	if triple := bytes.Repeat(mark, 3); bytes.HasPrefix(text[start:], triple) {
		return closing(text, start+3, triple, mark[0] == '"')
	}
	line := indexFrom(text, start, "\n")
	return min(line, closing(text[:line], start+1, mark, mark[0] == '"'))
}

// closing finds the end of the next mark that no backslash stands before.
func closing(text []byte, from int, mark []byte, escapes bool) int {
	for i := from; i < len(text); i++ {
		switch {
		case escapes && text[i] == '\\':
			i++
		case bytes.HasPrefix(text[i:], mark):
			return i + len(mark) - 1
		}
	}
	return len(text)
}

func indexFrom(text []byte, from int, what string) int {
	if i := bytes.Index(text[from:], []byte(what)); i >= 0 {
		return from + i
	}
	return len(text)
}
