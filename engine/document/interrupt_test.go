package document

import (
	"context"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// A run that is interrupted gets what was read until then, and no more.
func TestInterruptibleStops(t *testing.T) {
	ctx, interrupt := context.WithCancel(context.Background())
	r := Interruptible(ctx, iotest.OneByteReader(strings.NewReader("plate")))
	var room [3]byte
	if _, err := io.ReadFull(r, room[:]); err != nil || string(room[:]) != "pla" {
		t.Fatalf("%q, %v", room, err)
	}
	interrupt()
	if rest, err := io.ReadAll(r); !errors.Is(err, context.Canceled) || len(rest) != 0 {
		t.Errorf("after the interruption: %q, %v", rest, err)
	}
	whole := Interruptible(context.Background(), strings.NewReader("plate"))
	if _, more := whole.(io.WriterTo); more {
		t.Error("it has a way of reading that passes the context by")
	}
	if text, err := io.ReadAll(whole); err != nil || string(text) != "plate" {
		t.Errorf("%q, %v", text, err)
	}
}
