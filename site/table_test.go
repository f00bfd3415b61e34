package site

import (
	"encoding/csv"
	"math"
	"strings"
	"testing"
)

func TestCellsAreDefused(t *testing.T) {
	rows := map[string]string{
		"plain": "plain", "6.0 mm fitted": "6.0 mm fitted", "": "", "-0.5": "-0.5", "+3": "+3", "1e-05": "1e-05", "-1e+06": "-1e+06",
		"=1+1": "'=1+1", "+cmd": "'+cmd", "-cmd|' /C calc'!A0": "'-cmd|' /C calc'!A0", "@SUM(A1)": "'@SUM(A1)", "\t=1": "' =1", "\r\n=1": "'  =1", "  =1": "'  =1",
		"\u00a0=1": "'\u00a0=1", "\uff1d1": "'\uff1d1", "-": "'-", "--1": "'--1", "-1+1": "'-1+1", "|x": "'|x", "a\x00b\x1b": "ab", "two\nlines": "two lines", "0x1": "0x1", "-Inf": "'-Inf",
	}
	for cell, want := range rows {
		if got := defused(cell); got != want {
			t.Errorf("%q becomes %q, want %q", cell, got, want)
		}
	}
}

func TestTableIsWritten(t *testing.T) {
	table := &csvTable{name: "t", head: []string{"key", "value_mm", "count", "holds"}}
	table.add("a, \"b\"", 1.0/3, 2, true)
	table.add("=x", math.NaN(), 0, false)
	text := table.text()
	want := "key,value_mm,count,holds\n\"a, \"\"b\"\"\",0.3333333333,2,true\n'=x,,0,false\n"
	if string(text) != want {
		t.Errorf("%q, want %q", text, want)
	}
}

// Whatever stands in a record, a table has its rows and columns, and no cell begins a formula.
func FuzzTableCell(f *testing.F) {
	for _, cell := range []string{"=1", "a,b", "\"", "\r\n@x", "-1", "\u202e=", "+\u00a0"} {
		f.Add(cell)
	}
	f.Fuzz(func(t *testing.T, cell string) {
		table := &csvTable{head: []string{"a", "b"}}
		table.add(cell, cell)
		text := table.text()
		var want strings.Builder
		w := csv.NewWriter(&want)
		if err := w.WriteAll([][]string{{"a", "b"}, {defused(cell), defused(cell)}}); err != nil || want.String() != string(text) {
			t.Fatalf("%q gives %q, the library %q, %v", cell, text, want.String(), err)
		}
		rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
		if err != nil || len(rows) != 2 && !(len(rows) == 1 && cell == "") || strings.Count(string(text), "\n") != 2 {
			t.Fatalf("%q gives %q, %v", cell, text, err)
		}
		for _, got := range rows[len(rows)-1] {
			if got != "" && strings.ContainsRune("=+-@\t\r", rune(got[0])) && !isPlainNumber(got) {
				t.Errorf("%q gives the cell %q", cell, got)
			}
		}
	})
}

// The machine copies of one whole hull: its tables, and how it is made again.
func BenchmarkTables(b *testing.B) {
	job := demoJob(b)
	press, err := newPress(job)
	if err != nil {
		b.Fatal(err)
	}
	h := job.Yard.Hulls[0]
	book := newBook(press, job.open(h, newShelf(job.Yard)), nil)
	for b.Loop() {
		size := 0
		for _, t := range book.tables() {
			size += len(t.text())
		}
		b.ReportMetric(float64(size)/1e6, "MB-tables")
	}
}
