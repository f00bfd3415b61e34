package tracklog

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
)

// head looks for the line that holds every head the record names.
func (c *table) head(in *lines) error {
	best, bestLine := []string(nil), 0
	for in.at < searchHead {
		line, err := in.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		if in.at == 1 && (bytes.HasPrefix(line, []byte{0xff, 0xfe}) || bytes.HasPrefix(line, []byte{0xfe, 0xff})) {
			return errors.New("the log is written in UTF-16; save it as UTF-8")
		}
		heads, sep := headsOf(line)
		if c.find(heads) {
			c.sep, c.comma = sep, sep != ','
			return nil
		}
		if len(heads) > len(best) {
			best, bestLine = heads, in.at
		}
	}
	return fmt.Errorf("%s; line %d has the heads %s", c.missing(best), bestLine, quotedList(best))
}

// headsOf cuts a line at whatever separates most cells, and gives them as text.
func headsOf(line []byte) (heads []string, sep byte) {
	line = bytes.TrimPrefix(line, []byte("\xef\xbb\xbf"))
	sep = ','
	for _, other := range []byte{';', '\t'} {
		if bytes.Count(line, []byte{other}) > bytes.Count(line, []byte{sep}) {
			sep = other
		}
	}
	for _, cell := range cut(nil, line, sep) {
		heads = append(heads, strings.TrimSpace(text(cell)))
	}
	return heads, sep
}

// text gives bytes as UTF-8; what is not UTF-8 is taken as Latin-1, which loggers still write for a degree sign.
func text(b []byte) string {
	if strings.ToValidUTF8(string(b), "") == string(b) {
		return string(b)
	}
	runes := make([]rune, len(b))
	for i, c := range b {
		runes[i] = rune(c)
	}
	return string(runes)
}

// find notes where the columns stand; false where one is missing.
func (c *table) find(heads []string) bool {
	c.uses, c.need = make([]int, len(heads)), 0
	for i := range c.uses {
		c.uses[i] = -1
	}
	for i := range c.columns {
		at := indexOf(heads, c.columns[i].head)
		if at < 0 {
			return false
		}
		c.uses[at] = i
		c.need = max(c.need, at+1)
	}
	return len(c.columns) > 0
}

func (c *table) missing(heads []string) string {
	for i := range c.columns {
		if indexOf(heads, c.columns[i].head) < 0 {
			return fmt.Sprintf("no line among the first %d has a column %q", searchHead, c.columns[i].head)
		}
	}
	return "the columns named are nowhere together"
}

func indexOf(heads []string, head string) int {
	for i, h := range heads {
		if h == head {
			return i
		}
	}
	return -1
}

func quotedList(heads []string) string {
	words := make([]string, 0, 8)
	for _, h := range heads[:min(len(heads), 8)] {
		words = append(words, fmt.Sprintf("%.30q", h))
	}
	if len(heads) > 8 {
		words = append(words, fmt.Sprintf("and %d more", len(heads)-8))
	}
	return strings.Join(words, ", ")
}
