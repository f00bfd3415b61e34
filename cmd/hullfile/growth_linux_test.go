package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"text/tabwriter"
	"time"
)

var growthSizes = flag.String("growth", "", "numbers of records, such as 100,1000,10000, for which TestGrowth prints what each kind of them costs")

// TestGrowth: four times the records of one boat take no more than some four times the work, and no page is longer than a
// browser takes. All kinds grow at once, so that also what is looked for in others is counted. What counts is the program's
// own time on all processors, which other work on the machine changes little; nested loops over records take sixteen times as
// long and pass no margin. -growth 100,1000,10000 -v prints each kind by itself.
func TestGrowth(t *testing.T) {
	b := &bench{t: t, dir: t.TempDir(), program: filepath.Join(t.TempDir(), "hullfile")}
	if said, err := exec.Command("go", "build", "-trimpath", "-o", b.program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	b.growthOfEach(sizes(t, *growthSizes))
	const few = 400
	var took [3]time.Duration
	for i, n := range []int{0, few, 4 * few} {
		m, longest := b.grown("all kinds", n, growths...)
		took[i] = m.user
		if i > 0 && longest > 2*longPage {
			t.Errorf("%d of each kind: a page has %d bytes", n, longest)
		}
		t.Logf("%d of each kind: %d ms, %d MB, %d pages, the longest of %.1f MB", n, m.user.Milliseconds(), m.peak>>20, m.pages, float64(longest)/1e6)
	}
	if one, four := took[1]-took[0], took[2]-took[0]; one <= 0 || four > 8*one {
		t.Errorf("%d records of each kind take %v, %d of them %v, %.1f times", few, one, 4*few, four, float64(four)/float64(one))
	}
}

// longPage is what a page may have before it is written in parts, as site has it.
const longPage = 2 << 20

// grown measures a rendering with n more records of some kinds, and the longest page of the technical file; of the owner's book,
// which is for paper too, it looks at none.
func (b *bench) grown(what string, n int, kinds ...growth) (m measured, longest int64) {
	b.t.Helper()
	yard, out := grownYard(b.t, n, kinds...), filepath.Join(b.t.TempDir(), "out")
	m = b.ran(what, "render", yard, "-o", out)
	for name, size := range filesIn(b.t, out) {
		m.files++
		m.bytes += size
		if filepath.Ext(name) == ".html" && !strings.Contains(name, "/owner/") {
			m.pages++
			longest = max(longest, size)
		}
	}
	for _, dir := range []string{yard, out} {
		if err := os.RemoveAll(dir); err != nil {
			b.t.Fatal(err)
		}
	}
	return m, longest
}

func (b *bench) growthOfEach(numbers []int) {
	if len(numbers) == 0 {
		return
	}
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "kind\trecords\tuser\tsystem\tmost memory\tpages\tsize\tlongest page\t")
	for _, g := range growths {
		for _, n := range numbers {
			m, longest := b.grown(g.what, n, g)
			fmt.Fprintf(w, "%s\t%d\t%d ms\t%d ms\t%d MB\t%d\t%.1f MB\t%.1f MB\t\n", g.what, n, m.user.Milliseconds(), m.system.Milliseconds(), m.peak>>20, m.pages, float64(m.bytes)/1e6, float64(longest)/1e6)
		}
	}
	w.Flush()
	b.t.Logf("%s\n%s", machine(b.t, b.dir), text.String())
}
