package record

import (
	"sync"
	"sync/atomic"
	"testing"
)

type (
	numbers []string
	folders []string
)

func TestASettledYardGathersOnce(t *testing.T) {
	open := &Yard{Hulls: []*Hull{{Number: "H1", Folder: "one"}, {Number: "H2", Folder: "two"}}}
	settled := open.Settled()
	var asked atomic.Int32
	gather := func(hulls []*Hull) (all numbers) {
		asked.Add(1)
		for _, h := range hulls {
			all = append(all, h.Number)
		}
		return all
	}
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			if got := Once(settled, gather); len(got) != 2 || got[1] != "H2" {
				t.Errorf("gathered %q, want H1 and H2", got)
			}
		})
	}
	all.Wait()
	if n := asked.Load(); n != 1 {
		t.Errorf("a settled yard was looked through %d times, want once", n)
	}
	if got := Once(settled, func(hulls []*Hull) folders { return folders{hulls[0].Folder} }); got[0] != "one" {
		t.Errorf("another thing gathered from the same yard is %q, want one", got)
	}
	Once(open, gather)
	open.Hulls[1].Number = "H3"
	if got := Once(open, gather); got[1] != "H3" {
		t.Errorf("a yard that may change gave %q, want the number as it now is", got[1])
	}
}

func TestACopyOfASettledYardWithOtherHullsIsLookedThroughAnew(t *testing.T) {
	settled := (&Yard{Hulls: []*Hull{{Number: "H1"}}}).Settled()
	gather := func(hulls []*Hull) numbers { return numbers{hulls[0].Number} }
	Once(settled, gather)
	other := *settled
	other.Hulls = []*Hull{{Number: "H9"}}
	if got := Once(&other, gather); got[0] != "H9" {
		t.Errorf("gathered %q from a copy with other hulls, want H9", got[0])
	}
}
