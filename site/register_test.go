package site

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/finding"
)

// fleetLines are lines of a fleet, without the files that they speak of.
func fleetLines(n int) []line {
	lines := make([]line, n)
	for i := range lines {
		lines[i] = line{
			Number: fmt.Sprintf("F-%06d", i+1), Title: "launch", Design: "HL74", Standing: finding.Met, Sums: strings.Repeat("a", 64),
			Weighed: &weighed{"W1", 2000 + float64(i%3), 2000}, Least: &least{"B1", 0.1},
		}
	}
	return lines
}

// A long register has pages by number, an index in pieces, and a first page that stays small.
func TestLongRegister(t *testing.T) {
	const n = 2*shardful + 1
	lines := fleetLines(n)
	lines[7].Sums, lines[7].Standing = "", ""
	press, err := newPress(emptyJob(t))
	if err != nil {
		t.Fatal(err)
	}
	s, err := openStage(place{out: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	defer s.discard()
	if err := press.register(context.Background(), s, Block{Builder: "B"}, lines, nil); err != nil {
		t.Fatal(err)
	}
	files := tree(t, s.fresh(""))
	pages, pieces, linked, indexed := 0, 0, 0, 0
	for name, text := range files {
		switch {
		case strings.HasPrefix(name, registerDir+"/hulls-"):
			pieces++
			indexed += strings.Count(text, `["F-`)
		case strings.HasPrefix(name, registerDir+"/0"):
			pages++
			linked += strings.Count(text, `<a href="../F-`)
			if !strings.Contains(files[coverName], `href="`+name+`"`) {
				t.Errorf("the first page does not lead to %s", name)
			}
		}
	}
	if pages != (n+pageful-1)/pageful || pieces != 3 || indexed != n || linked != n-1 {
		t.Errorf("%d pages with %d links, %d pieces with %d hulls", pages, linked, pieces, indexed)
	}
	if size := len(files[coverName]); size > 20000 {
		t.Errorf("the first page has %d bytes", size)
	}
	if !strings.Contains(files["assets/book.js"], "HULLFILE_HULLS") || files[registerDir+"/design-HL74.html"] == "" {
		t.Error("no search, or no page of the design")
	}
}

func TestDesignPage(t *testing.T) {
	lines := fleetLines(7)
	for i := range lines {
		lines[i].Weighed = &weighed{"W1", 2040, 2000}
	}
	lines[6].Weighed.Mass = 2180
	p := designPage("HL74", lines)
	// own arithmetic: mean of six times 2 % and once 9 % is 3 %; ranges 0, 0, 0, 0, 0, 7, so limits 3 ± 2.66 * 7/6 %
	want := "7 weighed. On average the weighed mass differs from the reckoned one by +3.0 %."
	if says := strings.Join(p.Says, " "); !strings.Contains(says, want) || !strings.Contains(says, "\u22120.1 % and +6.1 %") || !strings.Contains(says, "Outside: F-000007.") {
		t.Errorf("says %q", says)
	}
	if !p.Rows[6].Outside || p.Rows[0].Outside || p.Rows[0].Difference != "+2.0" || p.Rows[0].Margin != "+10.0" {
		t.Errorf("rows %+v", p.Rows)
	}
}

// The page of a design with many hulls stays readable and still names the hull that lies outside.
func TestLongDesignPage(t *testing.T) {
	lines := fleetLines(3 * pageful)
	lines[4].Weighed.Mass = 2500
	p := designPage("HL74", lines)
	if len(p.Rows) != pageful+1 || p.Rows[0].Link.Text != "F-000005" || p.Written != len(lines) || !strings.Contains(strings.Join(p.Says, " "), "the last 300 hulls and those outside") {
		t.Errorf("%d rows, the first %+v, says %v", len(p.Rows), p.Rows[0], p.Says)
	}
}

// What the register says of a hull is the same whether its book was just made, remembered, or read again.
func TestLinesOfABookAndOfItsResults(t *testing.T) {
	job := demoJob(t)
	rendered(t, job)
	for number, was := range readState(job.Out).books {
		read, ok := earlier(filepath.Join(job.Out, number), number)
		made := was.Line
		made.Root, made.Pages, made.Files, made.Bytes = "", 0, 0, 0
		if a, b := fmt.Sprintf("%+v %+v %+v", made, made.Weighed, made.Least), fmt.Sprintf("%+v %+v %+v", read, read.Weighed, read.Least); !ok || strip(a) != strip(b) {
			t.Errorf("%s: made  %s\nread %s", number, a, b)
		}
	}
	os.RemoveAll(job.Out)
}

// strip leaves out the addresses of pointers.
func strip(text string) string {
	var out []string
	for _, word := range strings.Fields(text) {
		if !strings.Contains(word, ":0x") {
			out = append(out, word)
		}
	}
	return strings.Join(out, " ")
}
