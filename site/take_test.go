package site

import (
	"context"
	"io"
	"runtime"
	"testing"
)

// noughts is a reader of noughts.
type noughts struct{}

func (noughts) Read(b []byte) (int, error) {
	clear(b)
	return len(b), nil
}

// A document goes into the book as it is read: what is allocated does not grow with it.
func TestLongDocumentIsCopiedAsItIsRead(t *testing.T) {
	f, err := newFolder(context.Background(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer f.close()
	const long = 96 << 20
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	if _, err := f.take("documents/film.mov", io.LimitReader(noughts{}, long)); err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	if got := after.TotalAlloc - before.TotalAlloc; got > 4<<20 || f.bytes != long {
		t.Errorf("%d MB allocated for %d bytes", got>>20, f.bytes)
	}
}
