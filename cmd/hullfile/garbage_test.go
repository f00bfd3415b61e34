package main

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
)

func TestGarbagePercent(t *testing.T) {
	rows := []struct {
		where string
		used  uint64
		want  int
	}{
		{"own arithmetic: 160 MiB beside 4 MiB, also where less is used yet", 1 << 20, 4000},
		{"own arithmetic: 160 MiB beside 64 MiB", 64 << 20, 250},
		{"own arithmetic: never less than half of what is used", 1 << 30, 50},
	}
	for _, r := range rows {
		if got := garbagePercent(r.used); got != r.want {
			t.Errorf("%s: %d percent, want %d", r.where, got, r.want)
		}
	}
}

func TestRoomFollowsWhatIsUsed(t *testing.T) {
	t.Setenv("GOGC", "")
	before := debug.SetGCPercent(100)
	defer debug.SetGCPercent(before)
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(-1))
	spareLooking()
	used := make([]byte, 96<<20)
	defer runtime.KeepAlive(used)
	runtime.GC()
	now := []metrics.Sample{{Name: "/gc/heap/live:bytes"}, {Name: "/gc/gogc:percent"}}
	for range 1_000_000 {
		metrics.Read(now)
		if at := now[0].Value.Uint64(); at >= uint64(len(used)) && int(now[1].Value.Uint64()) == garbagePercent(at) {
			return
		}
		runtime.Gosched()
	}
	t.Errorf("%d bytes are used, and the share is still %d percent", now[0].Value.Uint64(), now[1].Value.Uint64())
}
