package main

import (
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
)

// roomForGarbage is how many bytes of memory that is no longer used may gather before it is looked for, beside what is
// used. It is a number of bytes and not a share, so that a small yard is not looked through again and again, and a fleet
// does not need twice its own memory more for it. Measured on the demo yard: one hull is made without a look, and with more
// room the system takes as long to hand the memory out as looking takes.
const roomForGarbage = 160 << 20

// spareLooking sets how much garbage may gather by what the program uses now, and again after every look, because what is
// used goes up and down as books are begun and let go. Where the person who runs it has said so by GOGC, that holds.
func spareLooking() {
	if os.Getenv("GOGC") == "" {
		roomAfterLook(0)
	}
}

// roomAfterLook goes by the most that was used of late. It is called some time after a look, up to the next one; until then
// the share that was right for less would let far too much gather, and the limit stops that. It counts everything that was
// taken from the system, the room in large pages among it.
func roomAfterLook(before uint64) {
	used := []metrics.Sample{{Name: "/gc/heap/live:bytes"}} // at the last look, nought before the first
	metrics.Read(used)
	most := max(used[0].Value.Uint64(), before-before/8)
	debug.SetGCPercent(garbagePercent(most))
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(int64(most + 5*roomForGarbage/2))
	}
	runtime.AddCleanup(new(*int), roomAfterLook, most)
}

// leastUsed is what counts as used where it is less, also before the first look: the language's own least, bytes.
const leastUsed = 4 << 20

// leastPercent keeps a fleet that uses much from being looked through without end.
const leastPercent = 50

// garbagePercent is that room as a share of the memory used, in percent.
func garbagePercent(used uint64) int {
	return int(max(leastPercent, 100*roomForGarbage/max(used, leastUsed)))
}
