package main

import (
	"os"
	"runtime"

	"runtime/debug"
	"runtime/metrics"
)

// roomForGarbage is how many bytes of memory that is no longer used may gather before it is looked for, beside what is
// used. It is a number of bytes and not a share, so that a small yard is not looked through again and again, and a fleet
// does not need twice its own memory more for it. Measured on the demo yard: with more room the system takes as long to
// hand the memory out as looking takes.
const roomForGarbage = 128 << 20

// spareLooking sets how much garbage may gather by what the program uses now, and again after every look, because what is
// used grows. Where the person who runs it has said so by GOGC, that holds.
func spareLooking() {
	if os.Getenv("GOGC") != "" {
		return
	}
	used := []metrics.Sample{{Name: "/gc/heap/live:bytes"}} // at the last look, nought before the first
	metrics.Read(used)
	debug.SetGCPercent(garbagePercent(used[0].Value.Uint64()))
	runtime.AddCleanup(new(*int), func(struct{}) { spareLooking() }, struct{}{})
}

// leastUsed is what counts as used where it is less, also before the first look: the language's own least, bytes.
const leastUsed = 4 << 20

// garbagePercent is that room as a share of the memory used, in percent, never less than the language's own 100.
func garbagePercent(used uint64) int {
	return int(max(100, 100*roomForGarbage/max(used, leastUsed)))
}
