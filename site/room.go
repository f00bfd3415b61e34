package site

import "sync"

// rooms are slices in which a text was made, to be written over by the next: what a book is made of takes several times the
// room of the book. It may be used from many goroutines.
type rooms struct{ pool sync.Pool }

// take gives an empty slice, most of them with room.
func (r *rooms) take() []byte {
	if b, ok := r.pool.Get().(*[]byte); ok {
		return (*b)[:0]
	}
	return nil
}

// back takes a slice that nobody needs any more.
func (r *rooms) back(b []byte) { r.pool.Put(&b) }
