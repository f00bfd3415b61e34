package tracklog

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"os"
	"path"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/record"
)

// mostBytes is the greatest length of a log; a longer one is refused whole and says so.
const mostBytes = 16 << 30

const (
	logsFolder      = "logs"
	documentsFolder = "documents"
)

// open finds a log beside the record that names it: in the folder logs, or among the documents.
func (l *Log) open(root *os.Root) *os.File {
	beside := path.Dir(namedIn(l.Record))
	file, at, why := document.Open(root, path.Join(beside, logsFolder), l.Record.File.V)
	if file == nil {
		var second string
		file, at, second = document.Open(root, path.Join(beside, documentsFolder), l.Record.File.V)
		if why == "it is not there" {
			why = second
		}
	}
	if file == nil {
		l.Why = why
		return nil
	}
	l.Path, l.Present = at, true
	if info, err := file.Stat(); err != nil || info.Size() > mostBytes {
		l.Why = "it is longer than a log may be"
		file.Close()
		return nil
	}
	return file
}

// namedIn gives the record file that names the log.
func namedIn(rec *record.Log) string {
	if rec.File.At.Known() {
		return rec.File.At.File
	}
	return rec.At.File
}

// scan reads the log once: hash, length and samples come from the same bytes.
func (l *Log) scan(root *os.Root, windows []*Window) {
	file := l.open(root)
	if file == nil {
		return
	}
	defer file.Close()
	sum, count := sha256.New(), new(counter)
	in := io.TeeReader(io.LimitReader(file, mostBytes), io.MultiWriter(sum, count))
	report, err := Scan(in, l.Record, l.Trial.Date.V, windows)
	if err != nil {
		l.Why = reason(err)
	}
	// A reader may stop before the end; the hash is of the whole file.
	if _, err := io.Copy(io.Discard, in); err != nil {
		l.Why = reason(err)
	}
	l.Report, l.Bytes, l.SHA256 = report, int64(*count), hex.EncodeToString(sum.Sum(nil))
	l.Matches = !l.Record.SHA256.Set || strings.EqualFold(l.Record.SHA256.V, l.SHA256)
}

// reason gives an error without the path of the machine.
func reason(err error) string {
	var p *os.PathError
	if errors.As(err, &p) {
		return "it cannot be read"
	}
	return err.Error()
}

// counter counts what goes through.
type counter int64

func (c *counter) Write(p []byte) (int, error) {
	*c += counter(len(p))
	return len(p), nil
}
