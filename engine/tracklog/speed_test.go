package tracklog

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"strconv"
	"testing"
	"time"

	"hullfile/engine/record"
)

func parse(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// endless gives a log of a given length, made line by line as it is read: a boat that runs for ever at 20 kn.
type endless struct {
	line func(buf []byte, second int) []byte
	head string
	left int
	n    int
	buf  []byte
	rest []byte
}

func (e *endless) Read(p []byte) (int, error) {
	if len(e.rest) == 0 {
		if e.left <= 0 {
			return 0, io.EOF
		}
		e.buf = e.buf[:0]
		if e.n == 0 {
			e.buf = append(e.buf, e.head...)
		}
		for len(e.buf) < 32<<10 {
			e.buf = e.line(e.buf, e.n)
			e.n++
		}
		e.rest = e.buf
		e.left -= len(e.buf)
	}
	n := copy(p, e.rest)
	e.rest = e.rest[n:]
	return n, nil
}

func rmcLine(buf []byte, second int) []byte {
	from := len(buf)
	at := time.Unix(int64(dayStart(trialDay))+int64(second), 0).UTC()
	buf = at.AppendFormat(buf, "$GPRMC,150405.00,A,")
	buf = fmt.Appendf(buf, "4700.%04d,N,02000.0000,W,20.%d,066.0,", second%3, second%3)
	buf = at.AppendFormat(buf, "020106,,,A")
	return fmt.Appendf(buf, "*%02X\r\n", checksum(buf[from+1:]))
}

func csvLine(buf []byte, second int) []byte {
	return fmt.Appendf(buf, "%d.5,20.%d,40%02d,28.%d,3.%d,66.%d,,ok\n", second, second%10, second%40, second%7, second%5, second%9)
}

func csvRecord() *record.Log {
	rec := logOf("csv", col("t", "time", "s"), col("sog", "speed", "kn"), col("rpm", "engine_rpm", "rpm"), col("ff", "fuel", "l/h"), col("trim", "trim", "deg"), col("hdg", "heading", "deg"))
	rec.Begins = put("2026-03-03T00:00:00")
	return rec
}

// longLogs are the two kinds that may be gigabytes long.
func longLogs(bytes int) map[string]func() (*record.Log, io.Reader) {
	return map[string]func() (*record.Log, io.Reader){
		"nmea": func() (*record.Log, io.Reader) { return logOf("nmea"), &endless{line: rmcLine, left: bytes} },
		"csv": func() (*record.Log, io.Reader) {
			return csvRecord(), &endless{line: csvLine, head: "t,sog,rpm,ff,trim,hdg,empty,note\n", left: bytes}
		},
	}
}

// Two hundred megabytes need no more memory than two: what is allocated in all may grow only by what a steady stretch or a
// thinned track asks for, far below a byte for every hundred read.
func TestMemoryDoesNotGrowWithTheLog(t *testing.T) {
	if testing.Short() {
		t.Skip("reads 200 MB")
	}
	for name := range longLogs(0) {
		small := allocated(t, longLogs(2 << 20)[name])
		large := allocated(t, longLogs(200 << 20)[name])
		if large > small+1<<20 {
			t.Errorf("%s: %d bytes allocated for 2 MB, %d for 200 MB", name, small, large)
		}
	}
}

// allocated gives the bytes allocated while a log is read, without those of the maker of the log.
func allocated(t *testing.T, log func() (*record.Log, io.Reader)) uint64 {
	t.Helper()
	rec, in := log()
	window := newWindow(dayStart(trialDay)+60, dayStart(trialDay)+1e7)
	var before, between, after runtime.MemStats
	runtime.ReadMemStats(&before)
	rep, err := Scan(in, rec, trialDay, []*Window{window})
	runtime.ReadMemStats(&after)
	if err != nil || rep.Samples < 20000 || len(rep.Notes) > 0 {
		t.Fatalf("%v, %d samples, %v", err, rep.Samples, rep.Notes)
	}
	// The maker formats into a buffer of its own; what it allocates is measured by draining it alone.
	_, again := log()
	runtime.ReadMemStats(&between)
	if _, err := io.Copy(io.Discard, again); err != nil {
		t.Fatal(err)
	}
	var end runtime.MemStats
	runtime.ReadMemStats(&end)
	made, read := end.TotalAlloc-between.TotalAlloc, after.TotalAlloc-before.TotalAlloc
	return read - min(made, read)
}

func benchmarkScan(b *testing.B, rec *record.Log, text []byte) {
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Scan(bytes.NewReader(text), rec, trialDay, nil); err != nil {
			b.Fatal(err)
		}
	}
}

func made(b *testing.B, kind string) []byte {
	_, in := longLogs(16 << 20)[kind]()
	text, err := io.ReadAll(in)
	if err != nil {
		b.Fatal(err)
	}
	return text
}

func BenchmarkNMEA(b *testing.B) { benchmarkScan(b, logOf("nmea"), made(b, "nmea")) }
func BenchmarkCSV(b *testing.B)  { benchmarkScan(b, csvRecord(), made(b, "csv")) }

func BenchmarkGPX(b *testing.B) {
	var text bytes.Buffer
	text.WriteString(`<gpx version="1.1"><trk><trkseg>`)
	for i := range 20000 {
		fmt.Fprintf(&text, "<trkpt lat=\"47.%06d\" lon=\"-20.0\"><time>2026-03-03T%02d:%02d:%02dZ</time></trkpt>\n", i*90, i/3600, i/60%60, i%60)
	}
	text.WriteString(`</trkseg></trk></gpx>`)
	benchmarkScan(b, logOf("gpx"), text.Bytes())
}
