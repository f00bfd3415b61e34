package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/site"
)

// fleetOf is the demo hull that fleets are copied from: the one whose file is complete. fleetHIN begins its hull
// identification number, as far as the part that is its own.
const (
	fleetOf  = "HL74-012"
	fleetHIN = "XZX74012"
)

// fleetYard writes a yard with the demo's designs and n copies of its complete hull, numbered F001 and up. Each copy has
// a number, lots, casts and certificates of its own, because one lot is not enough for two boats.
func fleetYard(tb testing.TB, n int) string {
	tb.Helper()
	dir := tb.TempDir()
	lots := fleetLots(tb)
	err := fs.WalkDir(content.Files, "demo", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || e.Name() == ".keep" {
			return err
		}
		text, err := fs.ReadFile(content.Files, name)
		if err != nil {
			return err
		}
		below := strings.TrimPrefix(name, "demo/")
		if !strings.HasPrefix(below, "hulls/") {
			return put(filepath.Join(dir, filepath.FromSlash(below)), text)
		}
		rest, ours := strings.CutPrefix(below, "hulls/"+fleetOf+"/")
		for i := 1; ours && i <= n && err == nil; i++ {
			own := text
			if ext := path.Ext(rest); ext == ".toml" || ext == ".csv" {
				own = fleetText(rest, text, lots, i)
			}
			err = put(filepath.Join(dir, "hulls", fleetNumber(i), filepath.FromSlash(rest)), own)
		}
		return err
	})
	for i := 1; i <= n && err == nil; i++ {
		err = put(filepath.Join(dir, "stock", fleetNumber(i)+".toml"), fleetStock(lots, i))
	}
	if err != nil {
		tb.Fatal(err)
	}
	return dir
}

func fleetNumber(i int) string { return fmt.Sprintf("F%03d", i) }

// fleetText makes a record of the demo hull one of a copy. The copies leave the hours out of their welds: two welders
// cannot have welded all of them in the same minutes, and the day alone is a whole record too.
func fleetText(name string, text []byte, lots []fleetLot, i int) []byte {
	own := strings.NewReplacer(append(fleetMarks(lots, i), fleetOf, fleetNumber(i), fleetHIN, fmt.Sprintf("%s%05d", fleetHIN[:3], i))...).Replace(string(text))
	if name == "welds.csv" {
		own = fleetHours.ReplaceAllString(own, ",,,")
	}
	return []byte(own)
}

var fleetHours = regexp.MustCompile(`,\d\d:\d\d:\d\d,\d\d:\d\d:\d\d,`)

// fleetLot is one lot of the demo as the lines of a record, with the texts that tell it from others.
type fleetLot struct {
	lines []string
	marks []string
}

// fleetMarks pairs what tells a lot from others with what a copy has in its place.
func fleetMarks(lots []fleetLot, i int) []string {
	var pairs []string
	for _, l := range lots {
		for _, mark := range l.marks {
			pairs = append(pairs, mark, mark+"-"+fleetNumber(i))
		}
	}
	return pairs
}

// fleetLots reads the lots that the demo hull was cut from.
func fleetLots(tb testing.TB) []fleetLot {
	tb.Helper()
	text, err := fs.ReadFile(content.Files, "demo/stock/lots.csv")
	parts, err2 := fs.ReadFile(content.Files, "demo/hulls/"+fleetOf+"/parts.csv")
	rows, err3 := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err := errors.Join(err, err2, err3); err != nil {
		tb.Fatal(err)
	}
	var lots []fleetLot
	for _, row := range rows[1:] {
		if !bytes.Contains(parts, []byte(","+row[0]+",")) {
			continue
		}
		l := fleetLot{lines: []string{"[lot." + row[0] + "]"}, marks: []string{row[0]}}
		for k, value := range row[1:] {
			switch key := rows[0][k+1]; {
			case value == "":
				continue
			case key == "cast":
				l.marks = append(l.marks, value)
				fallthrough
			case !fleetBare[key] && !strings.Contains(key, "_mm") && !strings.HasSuffix(key, "_percent") && !strings.HasSuffix(key, "_mm2"):
				value = strconv.Quote(value)
				fallthrough
			default:
				l.lines = append(l.lines, key+" = "+value)
			}
		}
		lots = append(lots, l)
	}
	if len(lots) == 0 {
		tb.Fatal("the demo hull is cut from no lot")
	}
	return lots
}

// fleetBare are the columns of lots, beside those of sizes and shares, whose values stand without quotes in a record.
var fleetBare = map[string]bool{"pieces": true, "remnant_m2": true, "certificate_date": true, "received": true, "mass_loss_mg_cm2": true}

func fleetStock(lots []fleetLot, i int) []byte {
	var out bytes.Buffer
	marks := strings.NewReplacer(fleetMarks(lots, i)...)
	for _, l := range lots {
		marks.WriteString(&out, strings.Join(l.lines, "\n")+"\n\n")
	}
	return out.Bytes()
}

func put(name string, text []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		return err
	}
	return os.WriteFile(name, text, 0o644)
}

// job is a rendering of the whole yard.
func (r *reading) job(out string) site.Job {
	return site.Job{
		Yard: r.yard, Hulls: r.yard.Hulls, Root: r.root, Out: out, Version: "test",
		Assess: func(h *record.Hull) *engine.Dossier { return engine.Assess(r.yard, h, r.ref, r.root) },
	}
}

// BenchmarkDemo is the whole command: the demo yard written, read, reckoned and rendered. The aim is 400 ms on two processors.
func BenchmarkDemo(b *testing.B) {
	out := filepath.Join(b.TempDir(), "demo")
	b.ReportAllocs()
	for b.Loop() {
		if status := run(b.Context(), []string{"demo", "-o", out}, io.Discard, os.Stderr); status == statusFailed {
			b.Fatal("the demo failed")
		}
		b.StopTimer()
		if err := os.RemoveAll(out); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
	}
}

func BenchmarkYardRead(b *testing.B) {
	for _, n := range []int{1, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dir := fleetYard(b, n)
			b.ReportAllocs()
			for b.Loop() {
				r, err := openYard(dir)
				if err != nil {
					b.Fatal(err)
				}
				r.close()
			}
		})
	}
}

func BenchmarkHullReckoned(b *testing.B) {
	r := opened(b, fleetYard(b, 1))
	b.ReportAllocs()
	for b.Loop() {
		if d := engine.Assess(r.yard, r.yard.Hulls[0], r.ref, r.root); len(d.Checks) == 0 {
			b.Fatal("nothing was checked")
		}
	}
}

// BenchmarkHullRendered is one hull from records that are already read to files on disk. The aim is 150 ms.
func BenchmarkHullRendered(b *testing.B) { rendered(b, 1) }

// BenchmarkFleet200 is 200 hulls. Beside its time it reports how many times as long it took as copying the same
// output; the aim is 4.
func BenchmarkFleet200(b *testing.B) { rendered(b, 200) }

func rendered(b *testing.B, n int) {
	r := opened(b, fleetYard(b, n))
	out := filepath.Join(b.TempDir(), "files")
	var bytesOut int64
	b.ReportAllocs()
	for b.Loop() {
		report, err := site.Render(context.Background(), r.job(out))
		if err != nil {
			b.Fatal(err)
		}
		bytesOut = 0
		for _, h := range report.Hulls {
			bytesOut += h.Bytes
			if h.Standing != finding.Met {
				b.Fatalf("hull %s is %s; a copy must be as sound as the hull it is copied from", h.Number, h.Standing)
			}
		}
	}
	each := b.Elapsed() / time.Duration(b.N)
	copied := copyTime(b, out)
	b.ReportMetric(float64(bytesOut)/1e6, "MB")
	b.ReportMetric(float64(n)/each.Seconds(), "hulls/s")
	b.ReportMetric(float64(each)/float64(copied), "x-copy")
}

// copyTime is how long it takes to copy a folder file by file, the best of three.
func copyTime(b *testing.B, from string) time.Duration {
	b.Helper()
	best := time.Duration(0)
	for range 3 {
		to := filepath.Join(b.TempDir(), "copy")
		begun := time.Now()
		if err := os.CopyFS(to, os.DirFS(from)); err != nil {
			b.Fatal(err)
		}
		if took := time.Since(begun); best == 0 || took < best {
			best = took
		}
		os.RemoveAll(to)
	}
	return best
}

func opened(tb testing.TB, dir string) *reading {
	tb.Helper()
	r, err := openYard(dir)
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(r.close)
	return r
}
