package site

import "strings"

// deepestQuote is how many quotes may stand within each other in a note: more than anybody writes. A line of quote marks
// alone, as long as a record may be, keeps the reader of Markdown busy for seconds.
const deepestQuote = 40

// shallow makes plain text of the quote marks of a line beyond the deepest.
func shallow(markdown string) string {
	if strings.Count(markdown, ">") <= deepestQuote {
		return markdown
	}
	var out strings.Builder
	for line := range strings.Lines(markdown) {
		if at := beyondQuotes(line); at >= 0 {
			line = line[:at] + `\` + line[at:]
		}
		out.WriteString(line)
	}
	return out.String()
}

// beyondQuotes gives where the first quote mark too many stands in a line, -1 where there is none.
func beyondQuotes(line string) int {
	marks := 0
	for i := range len(line) {
		switch line[i] {
		case ' ', '\t':
		case '>':
			if marks++; marks > deepestQuote {
				return i
			}
		default:
			return -1
		}
	}
	return -1
}
