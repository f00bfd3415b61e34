package ride

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// Column says which column of a log holds the acceleration.
type Column struct {
	Name string  // empty where the log has one column only
	G    float64 // one unit of the column in g
}

// Log is an acceleration log as it was read. Rows without a number are left out and counted; nothing is put in their place.
type Log struct {
	Values  []float64 // g
	Rows    int
	Without int     // rows without a number
	First   int     // line of the first of them
	Step    float64 // seconds between rows by the log's own clock, where it has a column time_s; 0 without
	Jumps   int     // rows at which that clock goes back or stands still
}

// standardGravity is in m/s² (by definition).
const standardGravity = 9.80665

// longestLine keeps a file that is no table from being taken for one.
const longestLine = 1 << 16

// mostSamples is how many samples one log may have: four and a half hours at 1 kHz, in 128 MiB of memory.
const mostSamples = 1 << 24

// timeColumn is the head of the column with the log's own clock, in seconds.
const timeColumn = "time_s"

// ReadCSV reads a log: a head row, then one sample a row. A semicolon between the columns means a comma in the numbers.
// Errors: no head, no such column, a line longer than 64 KiB, no number at all, more samples than one log may have.
func ReadCSV(in io.Reader, col Column) (Log, error) { return readCSV(in, col, mostSamples) }

func readCSV(in io.Reader, col Column, most int) (Log, error) {
	r := bufio.NewReaderSize(in, longestLine)
	head, err := line(r)
	if err != nil && len(head) == 0 {
		return Log{}, errors.New("the log is empty")
	}
	head = bytes.TrimPrefix(head, []byte("\xef\xbb\xbf"))
	p, err := parserOf(string(head), col)
	if err != nil {
		return Log{}, err
	}
	for n := 2; ; n++ {
		row, err := line(r)
		if len(bytes.TrimSpace(row)) > 0 {
			p.row(row, n)
		}
		if len(p.log.Values) > most {
			return Log{}, fmt.Errorf("line %d: more than %d samples; cut the log into one for each ride", n, most)
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return Log{}, fmt.Errorf("line %d: %w", n, err)
		}
	}
	if len(p.log.Values) == 0 {
		return Log{}, errors.New("no row holds a number")
	}
	if p.steps > 0 {
		p.log.Step = (p.last - p.first) / float64(p.steps)
	}
	return p.log, nil
}

func line(r *bufio.Reader) ([]byte, error) {
	row, err := r.ReadSlice('\n')
	if errors.Is(err, bufio.ErrBufferFull) {
		return nil, errors.New("a line is longer than 64 KiB: this is no log")
	}
	return bytes.TrimRight(row, "\r\n"), err
}

// rowParser takes the value and the clock out of each row.
type rowParser struct {
	sep         byte
	comma       bool
	value, time int
	g           float64
	log         Log
	first, last float64
	clock       bool
	steps       int
}

func parserOf(head string, col Column) (*rowParser, error) {
	p := &rowParser{sep: ',', value: -1, time: -1, g: col.G}
	if strings.Count(head, ";") > strings.Count(head, ",") {
		p.sep, p.comma = ';', true
	}
	names := strings.Split(head, string(rune(p.sep)))
	for i, name := range names {
		switch name = strings.Trim(strings.TrimSpace(name), `"`); {
		case name == timeColumn && col.Name != timeColumn:
			p.time = i
		case name == col.Name, col.Name == "" && (len(names) == 1 || p.time >= 0 && len(names) == 2):
			p.value = i
		}
	}
	if p.value < 0 && col.Name == "" {
		return nil, fmt.Errorf("the log has %d columns and the record does not say which", len(names))
	}
	if p.value < 0 {
		return nil, fmt.Errorf("the log has no column %q", col.Name)
	}
	return p, nil
}

func (p *rowParser) row(row []byte, n int) {
	p.log.Rows++
	v, ok := p.number(cellOf(row, p.sep, p.value))
	if !ok {
		if p.log.Without == 0 {
			p.log.First = n
		}
		p.log.Without++
		return
	}
	p.log.Values = append(p.log.Values, v*p.g)
	if p.time < 0 {
		return
	}
	t, ok := p.number(cellOf(row, p.sep, p.time))
	switch {
	case !ok:
	case !p.clock:
		p.clock, p.first, p.last = true, t, t
	case t <= p.last:
		p.log.Jumps++
	default:
		p.last = t
		p.steps++
	}
}

// cellOf gives one cell; empty where the row is too short.
func cellOf(row []byte, sep byte, i int) []byte {
	for ; i > 0; i-- {
		at := bytes.IndexByte(row, sep)
		if at < 0 {
			return nil
		}
		row = row[at+1:]
	}
	if at := bytes.IndexByte(row, sep); at >= 0 {
		row = row[:at]
	}
	return bytes.TrimSpace(row)
}

func (p *rowParser) number(cell []byte) (float64, bool) {
	mark := byte('.')
	if p.comma {
		mark = ','
	}
	if v, ok := plain(cell, mark); ok {
		return v, true
	}
	text := string(cell)
	if p.comma {
		text = strings.Replace(text, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

// plain reads digits with at most one mark between them. With no more than fifteen digits both the whole number and the
// power of ten are exact, so the quotient is the nearest number there is, as of strconv.
func plain(cell []byte, mark byte) (float64, bool) {
	neg := len(cell) > 0 && cell[0] == '-'
	if neg {
		cell = cell[1:]
	}
	if len(cell) == 0 || len(cell) > 16 {
		return 0, false
	}
	whole, digits, places := int64(0), 0, -1
	for _, c := range cell {
		switch {
		case c >= '0' && c <= '9':
			whole = whole*10 + int64(c-'0')
			digits++
			if places >= 0 {
				places++
			}
		case c == mark && places < 0:
			places = 0
		default:
			return 0, false
		}
	}
	if digits == 0 || digits > 15 {
		return 0, false
	}
	v := float64(whole) / tens[max(places, 0)]
	if neg {
		v = -v
	}
	return v, true
}

// tens are the powers of ten up to the fifteenth, all exact.
var tens = [16]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}
