package ride

import (
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestReadCSV(t *testing.T) {
	rows := []struct {
		what, text string
		col        Column
		values     []float64
		without    int
		step       float64
		fails      string
	}{
		{"one column", "a_g\n1\n-0.5\n", Column{G: 1}, []float64{1, -0.5}, 0, 0, ""},
		{"with a clock", "time_s,a_g\n0,1\n0.5,2\n1.0,3\n", Column{G: 1}, []float64{1, 2, 3}, 0, 0.5, ""},
		{"named, in m/s²", "x,az\n7,9.80665\n", Column{Name: "az", G: 1 / 9.80665}, []float64{1}, 0, 0, ""},
		{"decimal comma", "t;az\r\n0;1,5\r\n", Column{Name: "az", G: 1}, []float64{1.5}, 0, 0, ""},
		{"not a number", "az\n1\nNaN\nx\n\n2\n", Column{Name: "az", G: 1}, []float64{1, 2}, 2, 0, ""},
		{"cut off in a row", "t,az\n0,1\n1,", Column{Name: "az", G: 1}, []float64{1}, 1, 0, ""},
		{"byte order mark", "\xef\xbb\xbfaz\n1\n", Column{Name: "az", G: 1}, []float64{1}, 0, 0, ""},
		{"no such column", "x,y\n1,2\n", Column{Name: "az", G: 1}, nil, 0, 0, `no column "az"`},
		{"which column", "x,y\n1,2\n", Column{G: 1}, nil, 0, 0, "does not say which"},
		{"empty", "", Column{G: 1}, nil, 0, 0, "empty"},
		{"no number", "az\n-\n", Column{G: 1}, nil, 0, 0, "no row"},
		{"no table", "az\n" + strings.Repeat("9", longestLine+1), Column{G: 1}, nil, 0, 0, "longer than"},
	}
	for _, r := range rows {
		got, err := ReadCSV(strings.NewReader(r.text), r.col)
		if r.fails != "" {
			if err == nil || !strings.Contains(err.Error(), r.fails) {
				t.Errorf("%s: error %v, want %q", r.what, err, r.fails)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", r.what, err)
			continue
		}
		if len(got.Values) != len(r.values) || got.Without != r.without || math.Abs(got.Step-r.step) > 1e-12 {
			t.Errorf("%s: %d values, %d without, step %g", r.what, len(got.Values), got.Without, got.Step)
			continue
		}
		for i := range r.values {
			near(t, r.what, got.Values[i], r.values[i], 1e-12)
		}
	}
}

func TestClockThatJumpsIsCounted(t *testing.T) {
	got, err := ReadCSV(strings.NewReader("time_s,a\n0,1\n1,1\n0.5,1\n2,1\n"), Column{Name: "a", G: 1})
	if err != nil || got.Jumps != 1 {
		t.Errorf("%d jumps seen (%v), one was made", got.Jumps, err)
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add("time_s;a\n0;1,5\n")
	f.Add("a\n\n\x00\n")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ReadCSV(strings.NewReader(text), Column{Name: "a", G: 1})
		if err == nil && (len(got.Values) == 0 || len(got.Values)+got.Without != got.Rows) {
			t.Errorf("%d rows, %d values, %d without", got.Rows, len(got.Values), got.Without)
		}
	})
}

// endless is a log that goes on, row after row.
type endless struct{ rows int }

func (e *endless) Read(p []byte) (int, error) {
	const row = "1.5\n"
	n := 0
	for ; n+len(row) <= len(p); n += len(row) {
		copy(p[n:], row)
		e.rows++
	}
	return n, nil
}

// A log without end is an error, and is not read further than that.
func TestLogWithoutEnd(t *testing.T) {
	log := &endless{}
	_, err := readCSV(io.MultiReader(strings.NewReader("a\n"), log), Column{Name: "a", G: 1}, 1000)
	if err == nil || !strings.Contains(err.Error(), "line 1002: more than 1000 samples") {
		t.Errorf("%v", err)
	}
	if log.rows > 1000+2*longestLine/4 {
		t.Errorf("%d rows were read", log.rows)
	}
}

// The quick way of reading a number gives what strconv gives.
func TestPlainNumbers(t *testing.T) {
	for _, text := range []string{"0", "-0.5", "1.", ".5", "123456789.012345", "-0.000001", "999999999999999", "0.1", "17.35"} {
		got, ok := plain([]byte(text), '.')
		want, err := strconv.ParseFloat(text, 64)
		if !ok || err != nil || got != want {
			t.Errorf("%s: %v (%t), want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "-", ".", "1e3", "1.2.3", "1,5", "+1", "0x1", "1234567890123456"} {
		if v, ok := plain([]byte(text), '.'); ok {
			t.Errorf("%q was read as %v", text, v)
		}
	}
}

func BenchmarkReadCSV(b *testing.B) {
	text := "time_s,a_g\n" + strings.Repeat("12.345,-1.23\n", 1_000_000)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := ReadCSV(strings.NewReader(text), Column{G: 1}); err != nil {
			b.Fatal(err)
		}
	}
}
