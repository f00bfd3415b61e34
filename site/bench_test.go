package site

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"hullfile/engine"
	"hullfile/engine/record"
)

// BenchmarkHull writes the file of one demo hull, with its register, from records that are already read.
func BenchmarkHull(b *testing.B) {
	job := demoJob(b)
	job.Hulls = job.Hulls[:1]
	b.ReportAllocs()
	for b.Loop() {
		rendered(b, job)
	}
}

// BenchmarkFleet writes 200 copies of a demo hull and says how many times longer that takes than copying what was
// written, file by file, on the same disk.
func BenchmarkFleet(b *testing.B) {
	job := fleetOf(demoJob(b), 200)
	b.ReportAllocs()
	for b.Loop() {
		job.Out = filepath.Join(b.TempDir(), "out")
		begun := time.Now()
		rendered(b, job)
		wrote := time.Since(begun)
		begun = time.Now()
		files, bytes := copyTree(b, job.Out, filepath.Join(b.TempDir(), "copy"))
		b.ReportMetric(float64(wrote)/float64(time.Since(begun)), "times-copying")
		b.ReportMetric(float64(files), "files")
		b.ReportMetric(float64(bytes)/1e6, "MB")
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
