package tracklog

import (
	"io"
	"runtime"
	"strings"
	"testing"
	"time"

	"hullfile/engine/record"
)

// stream is a log that nobody stores: a head, and then a part again and again.
type stream struct {
	head, part string
	left       int64 // bytes that are still to come
	rest       []byte
	most       uint64 // the greatest heap seen while it was read
	since      int
}

// length is long enough that memory which grows with the log would be seen, and short enough for every run.
const length = 40 << 20

func (s *stream) Read(p []byte) (int, error) {
	if s.left <= 0 {
		return 0, io.EOF
	}
	if len(s.rest) == 0 {
		s.rest = []byte(s.head)
		for len(s.rest) < 64<<10 {
			s.rest = append(s.rest, s.part...)
		}
		s.head = ""
	}
	n := copy(p, s.rest)
	s.rest = s.rest[n:]
	s.left -= int64(n)
	if s.since += n; s.since > 4<<20 {
		s.since = 0
		s.most = max(s.most, heap())
	}
	return n, nil
}

func heap() uint64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// TestEndlessLogsNeedNoMemory reads logs without end, of rows, of one line, of one word, and of depth. Each comes to an
// end with a report or an error, in memory that does not grow with it (own bound).
func TestEndlessLogsNeedNoMemory(t *testing.T) {
	csv := logOf("csv", col("t", "time", "s"), col("sog", "speed", "kn"))
	csv.Begins = put("2026-03-03T00:00:00")
	point := `<trkpt lat="1" lon="1"><time>2026-03-03T09:14:00Z</time></trkpt>`
	for _, row := range []struct {
		name       string
		rec        *record.Log
		head, part string
		refused    bool
	}{
		{"rows of a table", csv, "t,sog\n", "1,2\n", false},
		{"a table of one line", csv, "t,sog\n", "1,", false},
		{"a head without end", csv, "", "t,sog,", true},
		{"a quote that never closes", csv, "t,sog\n\"", "1,2\n", false},
		{"sentences", logOf("nmea"), "", "$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48\n", false},
		{"sentences in one line", logOf("nmea"), "", "$GPVTG,054.7,T,034.4,M,", false},
		{"points", logOf("gpx"), "<gpx><trk><trkseg>", point, false},
		{"elements in each other", logOf("gpx"), "<gpx>", "<a>", true},
		{"a text without end", logOf("gpx"), "<gpx><trk><trkseg><trkpt lat='1' lon='1'><time>", "2026", true},
		{"a remark without end", logOf("gpx"), "<gpx><!--", "remark ", true},
		{"a section without end", logOf("gpx"), "<gpx><![CDATA[", "x", true},
		{"a value without end", logOf("gpx"), "<gpx a='", "x", true},
		{"attributes without end", logOf("gpx"), "<gpx ", "a='1' ", true},
		{"a name without end", logOf("gpx"), "<", "gpx", true},
		{"a declaration without end", logOf("gpx"), "<!DOCTYPE gpx [", "<!ENTITY a 'b'>", true},
	} {
		t.Run(row.name, func(t *testing.T) {
			runtime.GC()
			before, begun := heap(), time.Now()
			in := &stream{head: row.head, part: row.part, left: length}
			report, err := Scan(in, row.rec, trialDay, nil)
			if (err != nil) != row.refused {
				t.Errorf("error %v", err)
			}
			if err != nil && (len(err.Error()) > 300 || strings.ContainsAny(err.Error(), "\n\x1b")) {
				t.Errorf("a message that cannot be shown: %.400q", err)
			}
			if err == nil && len(report.Notes) == 0 && report.Used == 0 {
				t.Error("nothing was used, and nobody says why")
			}
			if grown := int64(in.most) - int64(before); grown > 32<<20 {
				t.Errorf("the log needed %d MiB", grown>>20)
			}
			if took := time.Since(begun); took > 20*time.Second {
				t.Errorf("the log took %v", took)
			}
		})
	}
}
