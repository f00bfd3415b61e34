package tracklog

import (
	"fmt"
	"io"

	"hullfile/engine/record"
)

// format is one way in which a log may be written.
type format struct {
	ending string // of the name of its copy, so that a browser shows it as text
	read   func(source) (lines, used int, err error)
}

// source is a log that is being read: its text, what the record says of it, and where troubles and samples go.
type source struct {
	text io.Reader
	rec  *record.Log
	day  record.Date // of the trial
	told *told
	out  func(*Sample)
}

// formatOf gives the format by the word that the record writes for it; ok is false for a word that nobody reads.
func formatOf(kind string) (f format, ok bool) {
	switch kind {
	case "nmea":
		return format{".nmea.txt", func(s source) (int, int, error) { return readNMEA(s.text, s.told, s.shifted()) }}, true
	case "gpx":
		return format{".gpx.txt", func(s source) (int, int, error) { return readGPX(s.text, s.told, s.shifted()) }}, true
	case "csv":
		return format{".csv", source.columns}, true
	}
	return format{".txt", func(s source) (int, int, error) {
		return 0, 0, fmt.Errorf("nobody reads logs of the kind %q", s.rec.Kind.V)
	}}, false
}

// read reads a log in its format; lines and used count what it has and what could be used of it.
func read(s source) (lines, used int, err error) {
	f, _ := formatOf(s.rec.Kind.V)
	return f.read(s)
}

// columns reads a table whose columns the record tells.
func (s source) columns() (lines, used int, err error) {
	lay, wrong := layoutOf(s.rec, s.day)
	if len(wrong) > 0 {
		return 0, 0, columnsError(wrong)
	}
	return readCSV(s.text, lay, s.told, s.out)
}

// shifted gives out, which puts the clock of a log right that by its kind should be in UTC and that the record says is not.
func (s source) shifted() func(*Sample) {
	offset := float64(s.rec.Offset.V) * hourSeconds
	if offset == 0 {
		return s.out
	}
	return func(one *Sample) {
		one.Time -= offset
		s.out(one)
	}
}
