package document

import (
	"context"
	"io"
)

// Interruptible reads what from gives and stops with the error of the context when a run is interrupted, so that a long paper
// does not hold it up. It has no other way of reading, so that a copy uses the buffer that it was given.
func Interruptible(ctx context.Context, from io.Reader) io.Reader { return interruptible{ctx, from} }

type interruptible struct {
	ctx  context.Context
	from io.Reader
}

func (r interruptible) Read(b []byte) (int, error) {
	if err := r.ctx.Err(); err != nil {
		return 0, err
	}
	return r.from.Read(b)
}
