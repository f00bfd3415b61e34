package tracklog

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// longestLine is the greatest length of a line in bytes; a file with longer ones is no log.
const longestLine = 64 << 10

// lines reads a log line by line in a buffer that does not grow.
type lines struct {
	in   *bufio.Reader
	told *told
	at   int // number of the line read last
	cut  bool
}

func newLines(r io.Reader, t *told) *lines {
	return &lines{in: bufio.NewReaderSize(r, longestLine), told: t}
}

// next gives the next line without its end; it holds only until the next call. At the end of the log it gives io.EOF.
// A line that is too long is told and passed over.
func (l *lines) next() ([]byte, error) {
	for {
		line, err := l.in.ReadSlice('\n')
		l.at++
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			l.told.add(OverLong, l.at, line)
			if err := l.skip(); err != nil {
				return nil, err
			}
			continue
		case errors.Is(err, io.EOF) && len(line) > 0:
			l.cut = true
			return bytes.TrimSuffix(line, []byte("\r")), nil
		case err != nil:
			return nil, err
		}
		line = line[:len(line)-1]
		if n := len(line); n > 0 && line[n-1] == '\r' {
			line = line[:n-1]
		}
		return line, nil
	}
}

// skip passes over the rest of a line.
func (l *lines) skip() error {
	for {
		_, err := l.in.ReadSlice('\n')
		if err == nil || !errors.Is(err, bufio.ErrBufferFull) {
			return err
		}
	}
}
