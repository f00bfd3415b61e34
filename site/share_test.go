package site

import (
	"fmt"
	"testing"
)

// Every hull belongs to one part, whatever other hulls there are, and parts are of about one size.
func TestShare(t *testing.T) {
	var hulls []string
	for i := range 3000 {
		hulls = append(hulls, fmt.Sprintf("HL74-%03d", i))
	}
	part := map[string]int{}
	for i := 1; i <= 3; i++ {
		some := Share(hulls, i, 3)
		if len(some) < 900 || len(some) > 1100 {
			t.Errorf("part %d has %d of %d hulls", i, len(some), len(hulls))
		}
		for _, h := range some {
			if part[h] != 0 {
				t.Errorf("%s is in parts %d and %d", h, part[h], i)
			}
			part[h] = i
		}
	}
	if len(part) != len(hulls) {
		t.Errorf("%d of %d hulls are in a part", len(part), len(hulls))
	}
	for i := 1; i <= 3; i++ {
		for _, h := range Share(hulls[:7], i, 3) {
			if part[h] != i {
				t.Errorf("%s moves from part %d to %d when hulls go", h, part[h], i)
			}
		}
	}
}
