package tracklog

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func put[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: 9})
}

// logOf is the record of a log of a kind.
func logOf(kind string, columns ...record.Column) *record.Log {
	return &record.Log{Entry: record.Entry{ID: "L1", At: finding.Place{File: "hulls/H1/hull.toml", Line: 8}}, Kind: put(kind), File: put("a." + kind), Columns: columns}
}

func col(head, holds, sign string) record.Column {
	return record.Column{Head: put(head), Holds: put(holds), Unit: put(sign)}
}

var trialDay = record.Date{Year: 2026, Month: time.March, Day: 3}

// samplesOf reads a text as a log and gives every sample that got through, and the report.
func samplesOf(t *testing.T, rec *record.Log, text string) ([]Sample, Report, error) {
	t.Helper()
	var all []Sample
	c := newCollector(nil)
	told := &told{}
	o := &order{told: told, gap: usualGap, out: func(s *Sample) { all = append(all, *s); c.take(s) }}
	var err error
	c.Lines, c.Used, err = read(source{strings.NewReader(text), rec, trialDay, told, o.take})
	o.end()
	c.Notes = told.notes
	return all, *c.Report, err
}

func near9(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// sentence puts a checksum behind a body, for logs of our own making.
func sentence(body string) string { return fmt.Sprintf("$%s*%02X", body, checksum([]byte(body))) }

// Published sentences with their checksums. The first two and the last are the examples of common field lists of NMEA
// 0183; the third is of a receiver's manual. Every checksum was recomputed.
func TestChecksumsOfPublishedSentences(t *testing.T) {
	rows := []string{
		"$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A",
		"$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48",
		"$GPRMC,030000,A,4740.36415,N,12225.35953,W,000.02,059.5,160612,016.6,E*52",
		"$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47",
	}
	for _, r := range rows {
		body, sum, _ := strings.Cut(r[1:], "*")
		if want, ok := hexByte([]byte(sum)); !ok || checksum([]byte(body)) != want {
			t.Errorf("%s: reckoned %02X", r, checksum([]byte(body)))
		}
	}
}

func TestPublishedSentencesRead(t *testing.T) {
	rows := []struct {
		where, text                string
		at                         string
		lat, lon, speed, course, d float64
	}{
		{"RMC of 1994", "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\r\n", "1994-03-23 12:35:19 UTC", 48.1173, 11.516667, 22.4, 84.4, 1e-6},
		{"RMC of 2012, west", "$GPRMC,030000,A,4740.36415,N,12225.35953,W,000.02,059.5,160612,016.6,E*52\r\n", "2012-06-16 03:00:00 UTC", 47.672736, -122.422659, 0.02, 59.5, 1e-6},
	}
	for _, r := range rows {
		all, rep, err := samplesOf(t, logOf("nmea"), r.text)
		if err != nil || len(all) != 1 || len(rep.Notes) != 0 {
			t.Fatalf("%s: %v, %d samples, %v", r.where, err, len(all), rep.Notes)
		}
		s := all[0]
		if Moment(s.Time) != r.at || !near9(s.Lat, r.lat, r.d) || !near9(s.Lon, r.lon, r.d) || s.Speed != r.speed || s.Course != r.course {
			t.Errorf("%s: %+v at %s", r.where, s, Moment(s.Time))
		}
	}
}

// A ship's recorder writes a counter before every sentence and a head above all; one moment is one sample whatever sentences
// tell of it. The lines have the form of public recordings of research ships; the figures are own values.
func TestCountersBeforeTheDollar(t *testing.T) {
	text := "% recording begun, receiver 1\n" +
		"0000012 " + sentence("GPGGA,091400.00,4700.0000,N,02000.0000,W,2,09,0.9,12.1,M,46.9,M,,") + "\r\n" +
		"0000013 " + sentence("GPRMC,091400.00,A,4700.0000,N,02000.0000,W,17.2,066.0,030326,,,A") + "\r\n" +
		"0000014 " + sentence("GPVTG,066.0,T,,M,17.2,N,31.9,K,A") + "\r\n" +
		"0001012 " + sentence("GPGGA,091401.00,4700.0020,N,01959.9930,W,2,09,0.9,12.1,M,46.9,M,,") + "\r\n" +
		"0001013 " + sentence("GPRMC,091401.00,A,,,,,,,030326,,,A") + "\r\n" +
		"0001014 " + sentence("GPVTG,066.4,T,,M,17.4,N,32.2,K,A") + "\r\n" +
		"0002014 " + sentence("GPGSV,3,1,11,03,03,111,00") + "\r\n"
	all, rep, err := samplesOf(t, logOf("nmea"), text)
	if err != nil || len(all) != 2 {
		t.Fatalf("%v, %d samples, %v", err, len(all), rep.Notes)
	}
	if s := all[0]; Moment(s.Time) != "2026-03-03 09:14:00 UTC" || s.Line != 3 || s.Lat != 47 || s.Lon != -20 || s.Speed != 17.2 {
		t.Errorf("%+v", s)
	}
	if rep.Has(NoDay) != 1 {
		t.Errorf("the sentence before the first day is not told: %v", rep.Notes)
	}
}

func TestNMEATroubles(t *testing.T) {
	good := sentence("GNRMC,091400,A,4700.0000,N,02000.0000,W,17.2,66.0,030326,,,A")
	later := sentence("GNRMC,091401,A,4700.0000,N,01959.9900,W,17.2,66.0,030326,,,A")
	rows := []struct {
		where, text string
		trouble     Trouble
		count       int
		line        int
		samples     int
	}{
		{"one figure altered", good + "\n" + strings.Replace(later, "17.2", "77.2", 1) + "\n", BadChecksum, 1, 2, 1},
		{"cut, and the checksum made anew", good + "\n" + sentence("GNRMC,091401,A,4700.0000,N,01959") + "\n", ShortFields, 1, 2, 1},
		{"a field cut out", good + "\n" + sentence("GNRMC,091401,A,4700.0000,N,02000.0000,W,1x.2,66.0,030326,,,A") + "\n", BadFields, 1, 2, 1},
		{"the 31st of February", good + "\n" + sentence("GNRMC,091401,A,4700.0000,N,02000.0000,W,17.2,66.0,310226,,,A") + "\n", BadFields, 1, 2, 1},
		{"status V", good + "\n" + sentence("GNRMC,091401,V,4700.0000,N,02000.0000,W,17.2,66.0,030326,,,N") + "\n", NoFix, 1, 2, 1},
		{"mode N", good + "\n" + sentence("GNRMC,091401,A,4700.0000,N,02000.0000,W,17.2,66.0,030326,,,N") + "\n", NoFix, 1, 2, 1},
		{"no checksum", good + "\n" + later[:len(later)-3] + "\n", NoChecksum, 1, 2, 1},
		{"breaks off", good + "\n" + later[:30], CutOff, 1, 2, 1},
		{"breaks off in the checksum", good + "\n" + later[:len(later)-1], CutOff, 1, 2, 1},
		{"a line without end", good + "\n" + strings.Repeat("x", 3*longestLine) + "\n" + later + "\n", OverLong, 1, 2, 2},
		{"two sentences run together", good + "\n" + good[:20] + later + "\n", "", 0, 0, 2},
	}
	for _, r := range rows {
		all, rep, err := samplesOf(t, logOf("nmea"), r.text)
		if err != nil || len(all) != r.samples {
			t.Errorf("%s: %v, %d samples, want %d", r.where, err, len(all), r.samples)
		}
		if r.trouble == "" {
			if len(rep.Notes) > 0 {
				t.Errorf("%s: %v", r.where, rep.Notes)
			}
			continue
		}
		if len(rep.Notes) != 1 || rep.Notes[0].Trouble != r.trouble || rep.Notes[0].Count != r.count || rep.Notes[0].Line != r.line {
			t.Errorf("%s: %+v", r.where, rep.Notes)
		}
	}
}

// Only RMC carries a day; a GGA past midnight comes before the RMC that says so.
func TestMidnight(t *testing.T) {
	text := sentence("GPRMC,235959,A,4700.0000,N,02000.0000,W,9.0,66.0,030326,,,A") + "\n" +
		sentence("GPGGA,000000,4700.0010,N,02000.0000,W,1,09,0.9,12.1,M,46.9,M,,") + "\n" +
		sentence("GPRMC,000000,A,4700.0010,N,02000.0000,W,9.0,66.0,040326,,,A") + "\n"
	all, rep, err := samplesOf(t, logOf("nmea"), text)
	if err != nil || len(all) != 2 || len(rep.Notes) != 0 || Moment(all[1].Time) != "2026-03-04 00:00:00 UTC" || all[1].Speed != 9 {
		t.Errorf("%v %v %+v", err, rep.Notes, all)
	}
}

func TestCSV(t *testing.T) {
	english := logOf("csv", col("Time", "time", "utc"), col("SOG (km/h)", "speed", "km/h"), col("RPM port", "engine_rpm", "rpm"), col("RPM stbd", "engine_rpm", "rpm"),
		col("Fuel P", "fuel", "l/min"), col("Fuel S", "fuel", "l/min"), col("az", "acceleration_z", "g"))
	german := logOf("csv", col("Zeit", "time", "local"), col("Fahrt [m/s]", "speed", "m/s"), col("Drehzahl", "engine_rpm", "100 rpm"), col("Trimm °", "trim", "deg"))
	german.Offset = put(unit.Hour(1))
	seconds := logOf("csv", col("t", "time", "ms"), col("lat", "latitude", "deg"), col("lon", "longitude", "deg"), col("hdg", "heading", "rad"))
	seconds.Begins = put("2026-03-03T09:14:00")
	rows := []struct {
		where string
		rec   *record.Log
		text  string
		want  Sample
	}{
		{"two engines, km/h, words above the head, quotes", english,
			"Logger 7, firmware 2\n\nRPM stbd,\"SOG (km/h)\",Time,RPM port,Fuel P,Fuel S,az\n4010,\"37.04\",2026-03-03T09:14:00Z,3990,0.4,0.5,1.02\n",
			Sample{Speed: 20, RPM: 4000, Fuel: 54, Acc: [3]float64{math.NaN(), math.NaN(), 1.02 * 9.80665}}},
		{"decimal comma, semicolons, local clock, Latin-1, hundreds", german,
			"Zeit;Drehzahl;Fahrt [m/s];Trimm \xb0\r\n2026-03-03 10:14:00,0;40,5;10,2889;-0,5\r\n", Sample{Speed: 20.0001, RPM: 4050, Trim: -0.5}},
		{"milliseconds, tabs, radians", seconds, "t\thdg\tlon\tlat\n0\t3,1416\t-20.5\t47,25\n", Sample{Lat: 47.25, Lon: -20.5, Heading: 180}},
		{"UTF-8 mark at the beginning", seconds, "\xef\xbb\xbft,hdg,lon,lat\n0,0,1e1,2E1\n", Sample{Lat: 20, Lon: 10}},
	}
	for _, r := range rows {
		all, rep, err := samplesOf(t, r.rec, r.text)
		if err != nil || len(all) != 1 || len(rep.Notes) != 0 {
			t.Errorf("%s: %v, %d samples, %v", r.where, err, len(all), rep.Notes)
			continue
		}
		s := all[0]
		if Moment(s.Time) != "2026-03-03 09:14:00 UTC" {
			t.Errorf("%s: at %s", r.where, Moment(s.Time))
		}
		for i, pair := range [][2]float64{{s.Speed, r.want.Speed}, {s.RPM, r.want.RPM}, {s.Fuel, r.want.Fuel}, {s.Trim, r.want.Trim}, {s.Lat, r.want.Lat}, {s.Lon, r.want.Lon}, {s.Heading, r.want.Heading}} {
			if known(pair[0]) && !near9(pair[0], pair[1], 1e-3) || !known(pair[0]) && pair[1] != 0 {
				t.Errorf("%s: value %d is %v, want %v", r.where, i, pair[0], pair[1])
			}
		}
	}
}

func TestCSVTroubles(t *testing.T) {
	rec := logOf("csv", col("time", "time", "utc"), col("sog", "speed", "kn"))
	const head = "time,sog,note\n2026-03-03T09:14:00Z,10.0,a\n"
	rows := []struct {
		where, more string
		trouble     Trouble
		line        int
		samples     int
	}{
		{"NaN", "2026-03-03T09:14:01Z,NaN,\n", NotNumbers, 3, 2},
		{"infinite", "2026-03-03T09:14:01Z,1e999,\n", NotNumbers, 3, 2},
		{"hexadecimal", "2026-03-03T09:14:01Z,0x10,\n", NotNumbers, 3, 2},
		{"a decimal comma between commas", "2026-03-03T09:14:01Z,\"10,5\",\n", NotNumbers, 3, 2},
		{"no time", ",10.5,\n", NoTime, 3, 1},
		{"a day that does not exist", "2026-02-30T09:14:01Z,10.5,\n", BadTimes, 3, 1},
		{"half a row", "2026-03-03T09:14:01Z", CutOff, 3, 1},
		{"half a row inside", "2026-03-03T09:14:01Z\n2026-03-03T09:14:02Z,10.0,\n", BadRows, 3, 2},
		{"time goes back", "2026-03-03T09:13:59Z,10.0,\n2026-03-03T09:14:02Z,10.0,\n", Backwards, 3, 2},
		{"time stands", "2026-03-03T09:14:00Z,10.0,\n", Repeated, 3, 1},
		{"one clock far ahead", "2026-03-03T09:14:01Z,10.0,\n2126-03-03T09:14:01Z,10.0,\n2026-03-03T09:14:02Z,10.0,\n", Spikes, 4, 3},
		{"a gap", "2026-03-03T09:15:00Z,10.0,\n", Gaps, 3, 2},
		{"no boat", "2026-03-03T09:14:01Z,1000.0,\n", TooFast, 3, 2},
	}
	for _, r := range rows {
		all, rep, err := samplesOf(t, rec, head+r.more)
		if err != nil || len(all) != r.samples || len(rep.Notes) != 1 || rep.Notes[0].Trouble != r.trouble || rep.Notes[0].Line != r.line {
			t.Errorf("%s: %v, %d samples, %+v", r.where, err, len(all), rep.Notes)
		}
	}
}

func TestWhatKeepsACSVFromBeingRead(t *testing.T) {
	lacking := logOf("csv", col("time", "time", "utc"), col("speed over ground", "speed", "kn"))
	rows := []struct {
		where string
		rec   *record.Log
		text  string
		says  string
	}{
		{"a column that is not there", lacking, "time,sog\n", `no line among the first 60 has a column "speed over ground"; line 1 has the heads "time", "sog"`},
		{"UTF-16", lacking, "\xff\xfet\x00i\x00", "UTF-16"},
		{"a unit that does not fit", logOf("csv", col("t", "time", "utc"), col("a", "speed", "rpm")), "", "cannot be in rpm"},
		{"no time", logOf("csv", col("a", "speed", "kn")), "", "no column holds the time"},
		{"seconds of nowhere", logOf("csv", col("t", "time", "s")), "", "begins is not written"},
		{"local, and nobody says how far off", logOf("csv", col("t", "time", "local")), "", "utc_offset_h is not written"},
		{"half a position", logOf("csv", col("t", "time", "utc"), col("a", "latitude", "deg")), "", "only together"},
		{"twice the same", logOf("csv", col("t", "time", "utc"), col("a", "speed", "kn"), col("b", "speed", "kn")), "", "two columns hold speed"},
	}
	for _, r := range rows {
		if _, _, err := samplesOf(t, r.rec, r.text); err == nil || !strings.Contains(err.Error(), r.says) {
			t.Errorf("%s: %v", r.where, err)
		}
	}
}
