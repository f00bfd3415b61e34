package main

import "testing"

func TestGarbagePercent(t *testing.T) {
	rows := []struct {
		where string
		used  uint64
		want  int
	}{
		{"own arithmetic: 128 MiB beside 32 MiB, also where less is used yet", 1 << 20, 400},
		{"own arithmetic: 128 MiB beside 64 MiB", 64 << 20, 200},
		{"own arithmetic: a fleet has the language's own share", 1 << 30, 100},
	}
	for _, r := range rows {
		if got := garbagePercent(r.used); got != r.want {
			t.Errorf("%s: %d percent, want %d", r.where, got, r.want)
		}
	}
}
