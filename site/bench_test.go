package site

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"hullfile/engine"
	"hullfile/engine/record"
)

// BenchmarkHull writes the file of the demo's complete hull, with its register, from records that are already read. The
// reckoning is part of it.
func BenchmarkHull(b *testing.B) {
	job := completeHull(b)
	b.ReportAllocs()
	for b.Loop() {
		rendered(b, job)
	}
	reportSize(b, job.Out)
}

// BenchmarkBook writes the same file from what was reckoned before, so that it is the site alone. Files are made anew in
// a folder of their own, as in a run.
func BenchmarkBook(b *testing.B) {
	job := completeHull(b)
	dossier := job.Assess(job.Hulls[0])
	job.Assess = func(*record.Hull) *engine.Dossier { return dossier }
	p, err := newPress(job)
	if err != nil {
		b.Fatal(err)
	}
	stage := &stage{dir: b.TempDir()}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.book(b.Context(), job.open(job.Hulls[0], newShelf(job.Yard)), stage); err != nil {
			b.Fatal(err)
		}
		b.StopTimer()
		if err := os.RemoveAll(stage.fresh("")); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
	}
}

// completeHull is the job of the demo hull with the most pages, without what would keep a file that lies there already.
func completeHull(b *testing.B) Job {
	job := demoJob(b)
	job.Neighbours = nil
	job.Hulls = slices.DeleteFunc(slices.Clone(job.Hulls), func(h *record.Hull) bool { return h.Number != "HL74-012" })
	return job
}

// reportSize says how many files there are in a folder, and how long they are together.
func reportSize(b *testing.B, dir string) {
	files, bytes := 0, int64(0)
	err := filepath.WalkDir(dir, func(_ string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		info, err := e.Info()
		files++
		bytes += info.Size()
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(files), "files")
	b.ReportMetric(float64(bytes)/1e6, "MB")
}

var fleetSizes = flag.String("fleet", "10,100", "sizes of the fleets that are measured")

// BenchmarkFleet writes fleets of copies of a demo hull and says beside each how long it takes to copy and to hash what
// was written, on the same disk in the same run, and what the most memory was. Then one hull changes.
func BenchmarkFleet(b *testing.B) {
	for size := range strings.SplitSeq(*fleetSizes, ",") {
		n, err := strconv.Atoi(size)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(size, func(b *testing.B) { measureFleet(b, n) })
	}
}

func measureFleet(b *testing.B, n int) {
	job := fleetOf(demoJob(b), n)
	changed := byte(0)
	job.Neighbours = func(h *record.Hull) []byte {
		if h == job.Hulls[0] {
			return []byte{changed}
		}
		return []byte{}
	}
	for b.Loop() {
		job.Out = filepath.Join(b.TempDir(), "out")
		most := peak(func() { b.ReportMetric(seconds(func() { rendered(b, job) }), "s-fresh") })
		b.ReportMetric(float64(most)/1e6, "MB-memory")
		copied := filepath.Join(b.TempDir(), "copy")
		var files int
		var bytes int64
		b.ReportMetric(seconds(func() { files, bytes = copyTree(b, job.Out, copied) }), "s-copy")
		b.ReportMetric(seconds(func() { hashTree(b, job.Out) }), "s-hash")
		b.ReportMetric(float64(files), "files")
		b.ReportMetric(float64(bytes)/1e6, "MB")
		changed++
		b.ReportMetric(seconds(func() { rendered(b, job) }), "s-one-changed")
		b.ReportMetric(seconds(func() { rendered(b, job) }), "s-none-changed")
		os.RemoveAll(job.Out)
		os.RemoveAll(copied)
	}
}

func seconds(do func()) float64 {
	begun := time.Now()
	do()
	return time.Since(begun).Seconds()
}

// peak gives the most memory that the program held while something was done, looked at every few milliseconds.
func peak(do func()) uint64 {
	runtime.GC()
	debug.FreeOSMemory()
	end, most := make(chan bool), make(chan uint64)
	go func() {
		var high uint64
		for {
			held := []metrics.Sample{{Name: "/memory/classes/total:bytes"}, {Name: "/memory/classes/heap/released:bytes"}}
			metrics.Read(held)
			high = max(high, held[0].Value.Uint64()-held[1].Value.Uint64())
			select {
			case <-end:
				most <- high
				return
			case <-time.After(5 * time.Millisecond):
			}
		}
	}()
	do()
	end <- true
	return <-most
}

func hashTree(b *testing.B, dir string) {
	err := filepath.WalkDir(dir, func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		f, err := os.Open(p)
		if err != nil {
			return err
		}
		defer f.Close()
		_, err = io.Copy(sha256.New(), f)
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
}

// fleetOf gives a yard of so many hulls that differ only in their number.
func fleetOf(job Job, n int) Job {
	first := job.Hulls[0]
	assess := job.Assess
	yard := *job.Yard
	yard.Hulls = nil
	for i := range n {
		h := *first
		h.Number = fmt.Sprintf("F-%03d", i+1)
		yard.Hulls = append(yard.Hulls, &h)
	}
	job.Yard, job.Hulls = &yard, yard.Hulls
	job.Assess = func(h *record.Hull) *engine.Dossier { return assess(h) }
	return job
}

func copyTree(b *testing.B, from, to string) (files int, bytes int64) {
	err := filepath.WalkDir(from, func(p string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, p)
		if err != nil {
			return err
		}
		if e.IsDir() {
			return os.MkdirAll(filepath.Join(to, rel), 0o755)
		}
		n, err := copyFile(p, filepath.Join(to, rel))
		files++
		bytes += n
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return files, bytes
}

func copyFile(from, to string) (int64, error) {
	in, err := os.Open(from)
	if err != nil {
		return 0, err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return 0, err
	}
	n, err := io.Copy(out, in)
	if closing := out.Close(); err == nil {
		err = closing
	}
	return n, err
}
