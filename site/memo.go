package site

import (
	"bufio"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"hash"
	"io"
	"math"
	"os"
)

// The state is kept as plain bytes: numbers of changing length, texts with their length before them, and at the end a hash
// of all before it. For a fleet of thousands that is several times as quick as a text form, and what was cut or changed is
// never half believed.

var errMemo = errors.New("not as this program wrote it")

// mostText is more than any text of the state.
const mostText = 1 << 16

// memoWriter writes a state. The first failure stays.
type memoWriter struct {
	to  *bufio.Writer
	sum hash.Hash
	buf []byte
	err error
}

func newMemoWriter(to io.Writer) *memoWriter {
	sum := sha256.New()
	return &memoWriter{to: bufio.NewWriterSize(io.MultiWriter(to, sum), 1<<16), sum: sum}
}

func (w *memoWriter) put(b []byte) {
	if w.err == nil {
		_, w.err = w.to.Write(b)
	}
}

func (w *memoWriter) num(n int64) {
	w.buf = binary.AppendVarint(w.buf[:0], n)
	w.put(w.buf)
}

func (w *memoWriter) text(s string) {
	if len(s) > mostText {
		s = "" // remembered as nothing, which never fits
	}
	w.num(int64(len(s)))
	if w.err == nil {
		_, w.err = w.to.WriteString(s)
	}
}

func (w *memoWriter) flag(b bool) {
	n := int64(0)
	if b {
		n = 1
	}
	w.num(n)
}

// end writes the hash. It goes behind the buffer, because it is not part of itself.
func (w *memoWriter) end(to io.Writer) error {
	if w.err == nil {
		w.err = w.to.Flush()
	}
	if w.err == nil {
		_, w.err = to.Write(w.sum.Sum(nil))
	}
	return w.err
}

// memoReader reads what a memoWriter wrote. The first failure stays, and everything is empty from then on.
type memoReader struct {
	from *bufio.Reader
	err  error
}

// openMemo gives the reader of a file whose hash is true.
func openMemo(f *os.File) (*memoReader, error) {
	info, err := f.Stat()
	if err != nil || info.Size() < sha256.Size {
		return nil, errors.Join(err, errMemo)
	}
	sum, long := sha256.New(), info.Size()-sha256.Size
	if _, err := io.CopyN(sum, f, long); err != nil {
		return nil, err
	}
	var is [sha256.Size]byte
	if _, err := io.ReadFull(f, is[:]); err != nil || is != [sha256.Size]byte(sum.Sum(nil)) {
		return nil, errors.Join(err, errMemo)
	}
	return &memoReader{from: bufio.NewReaderSize(io.NewSectionReader(f, 0, long), 1<<16)}, nil
}

func (r *memoReader) num() int64 {
	if r.err != nil {
		return 0
	}
	var n int64
	n, r.err = binary.ReadVarint(r.from)
	return n
}

// count is a number of things that follow.
func (r *memoReader) count() int {
	n := r.num()
	if n < 0 || n > 1<<24 {
		r.err = errors.Join(r.err, errMemo)
		return 0
	}
	return int(n)
}

func (r *memoReader) flag() bool { return r.num() == 1 }

func (r *memoReader) fill(b []byte) {
	if r.err == nil {
		_, r.err = io.ReadFull(r.from, b)
	}
}

func (r *memoReader) text() string {
	n := r.num()
	if n < 0 || n > mostText {
		r.err = errors.Join(r.err, errMemo)
	}
	if r.err != nil || n == 0 {
		return ""
	}
	b := make([]byte, n)
	r.fill(b)
	return string(b)
}

func (w *memoWriter) float(v float64) {
	w.put(binary.LittleEndian.AppendUint64(nil, math.Float64bits(v)))
}

func (r *memoReader) float() float64 {
	var b [8]byte
	r.fill(b[:])
	return math.Float64frombits(binary.LittleEndian.Uint64(b[:]))
}
