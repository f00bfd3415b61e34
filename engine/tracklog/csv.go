package tracklog

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
)

const (
	mostCells  = 400 // columns of a logger's table
	searchHead = 60  // lines in which the head is looked for: loggers put words about themselves first
)

// table reads the CSV table of a logger.
type table struct {
	*told
	layout
	out   func(*Sample)
	sep   byte
	comma bool  // decimals may be written with a comma
	uses  []int // by cell: index into columns, -1 for a cell that is not used
	need  int   // cells that a row must have
	used  int
	cells [][]byte
	s     Sample // the row being read; kept here so that a row needs no memory of its own
}

// readCSV hands every row to out and gives the number of lines and of rows that were used. The head may stand behind some
// lines of words; a column is found by the head that the record names. It gives an error that says what the heads are
// where one is missing.
func readCSV(r io.Reader, lay layout, t *told, out func(*Sample)) (count, used int, err error) {
	c := &table{told: t, layout: lay, out: out, cells: make([][]byte, 0, 64)}
	in := newLines(r, t)
	if err := c.head(in); err != nil {
		return in.at, 0, err
	}
	for {
		line, err := in.next()
		if errors.Is(err, io.EOF) {
			return in.at - 1, c.used, nil
		}
		if err != nil {
			return in.at, c.used, err
		}
		if len(line) > 0 {
			c.row(line, in)
		}
	}
}

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

// cut cuts a line into cells. A cell in quotes loses them; a quote inside is written twice.
func cut(into [][]byte, line []byte, sep byte) [][]byte {
	for len(into) < mostCells {
		if len(line) > 0 && line[0] == '"' {
			cell, rest := unquoted(line[1:])
			into = append(into, cell)
			at := bytes.IndexByte(rest, sep)
			if at < 0 {
				return into
			}
			line = rest[at+1:]
			continue
		}
		at := bytes.IndexByte(line, sep)
		if at < 0 {
			return append(into, line)
		}
		into, line = append(into, line[:at]), line[at+1:]
	}
	return into
}

// unquoted gives the text up to the closing quote and what follows.
func unquoted(b []byte) (cell, rest []byte) {
	at := bytes.IndexByte(b, '"')
	if at < 0 {
		return b, nil
	}
	if at+1 == len(b) || b[at+1] != '"' {
		return b[:at], b[at+1:]
	}
	cell = append([]byte{}, b[:at+1]...)
	more, rest := unquoted(b[at+2:])
	return append(cell, more...), rest
}

// row takes one row.
func (c *table) row(line []byte, in *lines) {
	c.cells = cut(c.cells[:0], line, c.sep)
	if len(c.cells) < c.need {
		what := BadRows
		if in.cut {
			what = CutOff
		}
		c.add(what, in.at, line)
		return
	}
	s := &c.s
	*s = blank()
	s.Line = in.at
	engines := 0
	for i, col := range c.uses {
		if col < 0 {
			continue
		}
		if !c.cell(s, &c.columns[col], trimmed(c.cells[i]), in.at, &engines) {
			return
		}
	}
	if engines > 1 {
		s.RPM /= float64(engines)
	}
	c.used++
	c.out(s)
}

// cell puts one value into the sample; false where the row cannot be used because its time cannot be read.
func (c *table) cell(s *Sample, col *column, b []byte, line int, engines *int) bool {
	if col.holds == qTime {
		return c.time(s, col, b, line)
	}
	if nothing(b) {
		return true
	}
	v, ok := number(b, c.comma)
	if !ok {
		c.add(NotNumbers, line, b)
		return true
	}
	v *= col.by
	switch col.holds {
	case qLat:
		s.Lat = v
	case qLon:
		s.Lon = v
	case qSpeed:
		s.Speed = v
	case qCourse:
		s.Course = round360(v)
	case qHeading:
		s.Heading = round360(v)
	case qRPM:
		s.RPM = sum(s.RPM, v)
		*engines++
	case qFuel:
		s.Fuel = sum(s.Fuel, v)
	case qTrim:
		s.Trim = v
	default:
		s.Acc[col.holds-qAccX] = v
	}
	return true
}

// trimmed takes blanks away, which most cells do not have.
func trimmed(b []byte) []byte {
	if len(b) == 0 || b[0] > ' ' && b[len(b)-1] > ' ' {
		return b
	}
	return bytes.TrimSpace(b)
}

// sum adds to what may not be there yet.
func sum(v, more float64) float64 {
	if !known(v) {
		return more
	}
	return v + more
}

// nothing reports a cell that says that there is no value.
func nothing(b []byte) bool { return len(b) == 0 || len(b) == 1 && b[0] == '-' }

// time reads the time of a row.
func (c *table) time(s *Sample, col *column, b []byte, line int) bool {
	if nothing(b) {
		c.add(NoTime, line, b)
		return false
	}
	if !col.moment {
		v, ok := number(b, c.comma)
		if !ok {
			c.add(BadTimes, line, b)
			return false
		}
		s.Time = c.begins + v*col.by
		return true
	}
	at, zoned, ok := moment(b)
	if !ok {
		c.add(BadTimes, line, b)
		return false
	}
	if col.local && !zoned {
		at -= c.offset
	}
	s.Time = at
	return !math.IsNaN(at)
}
