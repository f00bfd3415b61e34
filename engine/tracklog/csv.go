package tracklog

import (
	"bytes"
	"errors"
	"io"
	"math"
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
