package crew

import (
	"strings"
	"sync/atomic"
	"testing"
)

// A panic in one hand, also of a crew within a crew, is told once all are done, with its place; the others do their work.
func TestAFaultIsToldAndEndsNothingElse(t *testing.T) {
	var done atomic.Int32
	fault := Caught(func() {
		var outer Crew
		for range 5 {
			outer.Go(func() { done.Add(1) })
		}
		outer.Go(func() {
			var inner Crew
			inner.Go(func() { stumbles(nil) })
			inner.Wait()
			t.Error("what waits goes on after a fault")
		})
		outer.Wait()
	})
	if fault == nil || !strings.Contains(fault.Error(), "nil pointer") || !strings.Contains(fault.Where, "stumbles") {
		t.Errorf("the fault is %v", fault)
	}
	if done.Load() != 5 {
		t.Errorf("%d of 5 others did their work", done.Load())
	}
	var sound Crew
	sound.Go(func() {})
	if f := Caught(sound.Wait); f != nil {
		t.Errorf("sound work gives %v", f)
	}
}

func stumbles(n *int) { *n++ }
