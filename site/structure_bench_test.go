package site

import "testing"

// The pages of the structure of a hull with its whole grid, made and printed.
func BenchmarkStructurePages(b *testing.B) {
	job := demoJob(b)
	p, err := newPress(job)
	if err != nil {
		b.Fatal(err)
	}
	for _, h := range job.Hulls {
		if h.Number != "HL74-012" {
			continue
		}
		o := job.open(h, newShelf(job.Yard))
		f, err := newFolder(b.Context(), b.TempDir()+"/f")
		if err != nil {
			b.Fatal(err)
		}
		defer f.close()
		size := 0
		var out []byte
		for b.Loop() {
			size = 0
			book := newBook(p, o, f)
			for _, s := range book.order {
				if !s.under(book.sectionOf(structurePath)) {
					continue
				}
				page, err := book.page(s)
				if err != nil {
					b.Fatal(err)
				}
				if out, err = p.print(out, s.kind, page); err != nil {
					b.Fatal(err)
				}
				size += len(out)
			}
			if err := book.printer.close(); err != nil {
				b.Fatal(err)
			}
		}
		b.ReportMetric(float64(size)/1e6, "MB")
	}
}
