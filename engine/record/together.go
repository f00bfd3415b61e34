package record

import (
	"runtime"
	"sync/atomic"

	"hullfile/engine/crew"
)

// together does a piece of work for every number below n, as many at a time as there are processors.
func together(n int, do func(i int)) {
	var next atomic.Int64
	var workers crew.Crew
	for range min(runtime.GOMAXPROCS(0), n) {
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	workers.Wait()
}

// alone gives a reading of its own for one hull. It shares with the others what is only read by now: what the yard knows
// and its designs.
func (r *reading) alone() *reading {
	one := &reading{known: r.known, names: r.names, lone: r.lone, designs: r.designs, faulty: len(r.faults.all) > 0}
	one.disk = &disk{root: r.disk.root, fs: &one.faults}
	return one
}

// join takes over what the reading of one hull found, as if it had been read after all before it.
func (r *reading) join(one *reading) {
	r.faults.join(&one.faults)
	r.disk.files = append(r.disk.files, one.disk.files...)
	r.disk.later = append(r.disk.later, one.disk.later...)
	r.hulls = append(r.hulls, one.hulls...)
	r.doubts = append(r.doubts, one.doubts...)
}

// join takes over the faults of another reading, and counts those that it left out.
func (fs *faults) join(other *faults) {
	kept := map[string]int{}
	for _, f := range other.all {
		kept[f.Place.File]++
		fs.keep(f)
	}
	for file, n := range other.count {
		if left := n - kept[file]; left > 0 {
			fs.count[file] += left
		}
	}
}
