package main

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/site"
)

// fleetOf is the demo hull that fleets are copied from: the one whose file is complete.
const fleetOf = "HL74-012"

// fleetMark is the part of its hull identification number that is its own.
const fleetMark = "XZX74012"

// fleetYard writes a yard with the demo's designs and n copies of its complete hull, numbered F001 and up.
func fleetYard(tb testing.TB, n int) string {
	tb.Helper()
	dir := tb.TempDir()
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
			number := fmt.Sprintf("F%03d", i)
			own := text
			if ext := path.Ext(rest); ext == ".toml" || ext == ".csv" {
				own = bytes.ReplaceAll(text, []byte(fleetOf), []byte(number))
				own = bytes.ReplaceAll(own, []byte(fleetMark), fmt.Appendf(nil, "%s%03d", fleetMark[:len(fleetMark)-3], i))
			}
			err = put(filepath.Join(dir, "hulls", number, filepath.FromSlash(rest)), own)
		}
		return err
	})
	if err != nil {
		tb.Fatal(err)
	}
	return dir
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
			if n == 1 && h.Standing != finding.Met {
				b.Fatalf("hull %s is %s; a copy must be as sound as the hull it is copied from", h.Number, h.Standing)
			}
			// Copies draw on the same lots and the same welders' days, so a fleet of them is rightly found short: but all alike.
			if h.Standing != report.Hulls[0].Standing {
				b.Fatalf("hull %s is %s, hull %s is %s; copies must stand alike", h.Number, h.Standing, report.Hulls[0].Number, report.Hulls[0].Standing)
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
