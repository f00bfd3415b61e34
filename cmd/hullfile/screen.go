package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/term"

	"hullfile/engine/finding"
)

// The widths between which text is wrapped. A pipe or a file is 80 wide, so that what is saved reads the same everywhere.
const (
	narrowest    = 40
	paperWidth   = 80
	widestToRead = 120
)

// screen takes the results of a verb: how wide it is, and whether it shows colour. Colour never carries meaning alone.
type screen struct {
	to     *bufio.Writer
	width  int
	colour bool
}

func newScreen(out io.Writer) *screen {
	s := &screen{to: bufio.NewWriter(out), width: paperWidth}
	f, isFile := out.(*os.File)
	if !isFile || !term.IsTerminal(int(f.Fd())) {
		return s
	}
	if w, _, err := term.GetSize(int(f.Fd())); err == nil {
		s.width = min(max(w, narrowest), widestToRead)
	}
	s.colour = os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	return s
}

func (s *screen) flush() error { return s.to.Flush() }

// raw writes bytes that are a result as they stand: JSON, a schema.
func (s *screen) raw(text []byte) { s.to.Write(text) }

// line writes one line of our own words, not wrapped.
func (s *screen) line(format string, args ...any) {
	fmt.Fprintln(s.to, clean(fmt.Sprintf(format, args...)))
}

// head writes a line that opens a part of the text.
func (s *screen) head(format string, args ...any) {
	text := clean(fmt.Sprintf(format, args...))
	if s.colour {
		text = "\x1b[1m" + text + "\x1b[0m"
	}
	fmt.Fprintln(s.to, text)
}

// paragraph writes text wrapped to the width: the first line after first, the others indented by as much.
func (s *screen) paragraph(first, text string) {
	rest := strings.Repeat(" ", utf8.RuneCountInString(first))
	for i, line := range wrap(clean(text), s.width-len(rest)) {
		if i > 0 {
			first = rest
		}
		fmt.Fprintln(s.to, strings.TrimRight(first+line, " "))
	}
}

// verdict writes a line with an outcome in it, coloured on a terminal.
func (s *screen) verdict(before string, of finding.Standing, after string) {
	word := string(of)
	if s.colour {
		code := map[finding.Standing]string{finding.Met: "32", finding.Short: "31", finding.NotShown: "33"}[of]
		word = "\x1b[" + code + "m" + word + "\x1b[0m"
	}
	fmt.Fprintln(s.to, clean(before)+word+clean(after))
}

// wrap breaks text at plain spaces into lines of at most width characters. A longer word stands on a line of its own;
// a no-break space holds a number and its unit together.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' }) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}

// clean keeps record text from driving the terminal: escape sequences, control and direction characters become a mark.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || unicode.IsGraphic(r) {
			return r
		}
		return unicode.ReplacementChar
	}, text)
}
