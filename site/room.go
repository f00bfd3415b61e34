package site

import "sync"

// rooms are slices in which a text was made, to be written over by the next: what a book is made of takes several times the
// room of the book. It may be used from many goroutines. What lies here stays, so that the memory that it takes is what was once
// needed at the same time.
type rooms struct {
	mu   sync.Mutex
	free [][]byte
}

// About how long texts are, bytes.
const (
	usualLook    = 8 << 10
	usualRows    = 16 << 10
	usualPage    = 64 << 10
	usualTable   = 768 << 10
	usualResults = 3 << 19
)

// take gives an empty slice: the smallest that has room for a text of the usual length.
func (r *rooms) take(usual int) []byte {
	r.mu.Lock()
	defer r.mu.Unlock()
	best := -1
	for i, b := range r.free {
		if cap(b) >= usual && (best < 0 || cap(b) < cap(r.free[best])) {
			best = i
		}
	}
	if best < 0 {
		return make([]byte, 0, usual)
	}
	b, last := r.free[best], len(r.free)-1
	r.free[best] = r.free[last]
	r.free = r.free[:last]
	return b[:0]
}

// back takes a slice that nobody needs any more.
func (r *rooms) back(b []byte) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.free = append(r.free, b)
}
