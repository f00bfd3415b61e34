package record

import (
	"fmt"
	"strconv"
	"time"

	"hullfile/engine/finding"
)

// Val is one value of a record: what it says, whether it was written at all, and where.
// A value that was not written is never used as if it were zero: ask Set, or take it through Get.
type Val[T any] struct {
	V    T
	Set  bool
	At   finding.Place
	Text string // of a number as it was written, so that 0.10 keeps its decimals; empty for all else
}

// Get gives the value and whether it was written.
func (v Val[T]) Get() (T, bool) { return v.V, v.Set }

// Written makes a value by hand, for tests and for values derived from others.
func Written[T any](v T, at finding.Place) Val[T] { return Val[T]{V: v, Set: true, At: at} }

// Entry is what every keyed table has: its key, and where its heading (or CSV row) stands.
type Entry struct {
	ID string
	At finding.Place
}

// Date is a day without a clock or a zone.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// ISO gives the day as 2026-03-14: in columns of tables, in records and in data, where it is sorted and read by programs.
func (d Date) ISO() string {
	if d.Year < 0 || d.Year > 9999 || d.Month < 0 || d.Month > 99 || d.Day < 0 || d.Day > 99 {
		return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
	}
	y, m := d.Year, int(d.Month)
	return string([]byte{'0' + byte(y/1000), '0' + byte(y/100%10), '0' + byte(y/10%10), '0' + byte(y%10), '-', '0' + byte(m/10), '0' + byte(m%10), '-', '0' + byte(d.Day/10), '0' + byte(d.Day%10)})
}

// String gives the day as 14 March 2026: in sentences, headings and facts, where 03/04 or 2026-04-03 would make one think.
func (d Date) String() string {
	return strconv.Itoa(d.Day) + " " + d.Month.String() + " " + strconv.Itoa(d.Year)
}

// Before reports whether d is an earlier day than e.
func (d Date) Before(e Date) bool {
	if d.Year != e.Year {
		return d.Year < e.Year
	}
	if d.Month != e.Month {
		return d.Month < e.Month
	}
	return d.Day < e.Day
}

// MarshalText gives the day as 2026-03-14.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.ISO()), nil }
