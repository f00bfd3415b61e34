package tracklog

import (
	"strings"
	"testing"

	"hullfile/engine/record"
)

// whole is what must hold for any bytes at all: no panic, time only forward, no value that is infinite, counts that fit.
func whole(t *testing.T, rec *record.Log, text string) {
	last, any := 0.0, false
	c := newCollector(nil)
	tl := &told{}
	o := &order{told: tl, gap: usualGap, out: func(s *Sample) {
		if any && s.Time <= last || s.Speed < 0 || s.Speed > mostSpeed || s.Lat > 90 || s.Lon > 180 || s.Line < 1 {
			t.Fatalf("%+v after %v", s, last)
		}
		last, any = s.Time, true
		c.take(s)
	}}
	count, used, _ := read(source{strings.NewReader(text), rec, trialDay, tl, o.take})
	o.end()
	c.find.stop()
	if used > count+strings.Count(text, "<") || c.Samples > used || len(tl.notes) > 24 {
		t.Fatalf("%d lines, %d used, %d samples, %d notes", count, used, c.Samples, len(tl.notes))
	}
}

func FuzzNMEA(f *testing.F) {
	f.Add("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\n$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48\n")
	f.Add("12 $GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47")
	f.Fuzz(func(t *testing.T, text string) { whole(t, logOf("nmea"), text) })
}

func FuzzCSV(f *testing.F) {
	f.Add("t;sog;lat;lon\n0;\"1,5\";47;-20\n1;2;;\n")
	f.Add("x\nt,sog,lat,lon,\"a\"\"b\"\n1e3,NaN,91,0,\"\n")
	rec := logOf("csv", col("t", "time", "s"), col("sog", "speed", "kn"), col("lat", "latitude", "deg"), col("lon", "longitude", "deg"))
	rec.Begins = put("2026-03-03T00:00:00")
	f.Fuzz(func(t *testing.T, text string) { whole(t, rec, text) })
}

func FuzzGPX(f *testing.F) {
	f.Add(gpx11)
	f.Add(`<gpx><trk><trkseg><trkpt lat="1" lon="1"><time>2026-03-03T09:14:00Z</time><speed>1</speed></trkpt></trkseg>`)
	f.Fuzz(func(t *testing.T, text string) { whole(t, logOf("gpx"), text) })
}
