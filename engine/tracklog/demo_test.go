package tracklog

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the invented logs of the demo yard anew; their hashes then stand wrong in the demo's hull.toml")

const demoHull = "../../content/demo/hulls/HL74-012"

// TestDemoLogsAreTheGenerators holds the logs of the demo yard against their generator: they are invented, and made here.
func TestDemoLogsAreTheGenerators(t *testing.T) {
	for name, made := range inventedLogs(t) {
		at := filepath.Join(demoHull, "logs", name)
		if *update {
			if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(at, made, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(at)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(kept, made) {
			t.Errorf("%s is not what the generator makes; run the test with -update and put the new hash on record", name)
		}
	}
}

// A voyage is the boat of the demo on its invented day: where it is, and the dice.
type voyage struct {
	dice       *rand.Rand
	lat, lon   float64
	receiver   bytes.Buffer // NMEA
	engines    bytes.Buffer // CSV
	tracker    bytes.Buffer // GPX
	wander     float64      // slow stray of the speed, knots
	streamTo   float64
	streamKnot float64
}

// inventedLogs makes the logs of the runs that stand in runs.csv, so that they agree with them, and of three manoeuvres.
// The place is in the middle of an ocean, where there is no harbour.
func inventedLogs(t *testing.T) map[string][]byte {
	t.Helper()
	v := &voyage{dice: rand.New(rand.NewPCG(74, 12)), lat: 47.0, lon: -20.0, streamTo: 64, streamKnot: 0.35}
	v.engines.WriteString("# engine log of an invented boat, clock one hour ahead of UTC\nZeit;Motor bb;Motor stb;Verbrauch bb;Verbrauch stb;Trimm\n")
	v.tracker.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<gpx version="1.1" creator="invented for demonstration" xmlns="http://www.topografix.com/GPX/1/1" xmlns:t="urn:invented:track">` + "\n<trk><name>manoeuvres</name>\n")
	for _, r := range runRows(t) {
		v.run(r)
	}
	v.burst(at2("12:05:00"))
	v.circle(at2("12:12:00"))
	v.halt(at2("12:18:00"))
	v.tracker.WriteString("</trk></gpx>\n")
	return map[string][]byte{"receiver-T1.nmea": v.receiver.Bytes(), "engines-T1.csv": v.engines.Bytes(), "manoeuvres-T1.gpx": v.tracker.Bytes()}
}

// runRow is one row of runs.csv.
type runRow struct {
	rpm, heading, speed, fuel, trim float64
	from, to                        float64
	rough                           bool
}

func runRows(t *testing.T) []runRow {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(demoHull, "runs.csv"))
	if err != nil {
		t.Fatal(err)
	}
	cells, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	col := map[string]int{}
	for i, head := range cells[0] {
		col[head] = i
	}
	num := func(row []string, head string) float64 {
		n, err := strconv.ParseFloat(row[col[head]], 64)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	var all []runRow
	for _, row := range cells[1:] {
		all = append(all, runRow{
			rpm: num(row, "engine_rpm"), heading: num(row, "heading_deg"), speed: num(row, "speed_kn"), fuel: num(row, "fuel_l_h"), trim: num(row, "trim_deg"),
			from: at2(row[col["from"]]), to: at2(row[col["to"]]), rough: strings.Contains(row[col["left_out"]], "wash"),
		})
	}
	return all
}

// at2 gives a time of day of the trial.
func at2(clock string) float64 {
	s, _ := at(clock, trialDay)
	return s
}

// run writes one steady run, with a few seconds before and behind it, every other second as the receiver does.
func (v *voyage) run(r runRow) {
	for s := r.from - 4; s <= r.to+4; s += 2 {
		v.wander = 0.8*v.wander + 0.06*v.dice.NormFloat64()
		speed := r.speed + v.wander
		if r.rough { // the wash takes the speed off twice
			speed -= 4 * math.Exp(-math.Pow((s-r.from-12)/5, 2))
			speed += 1.2 * math.Exp(-math.Pow((s-r.from-26)/6, 2))
			speed += 1.0
		}
		course := r.heading + 0.9*v.dice.NormFloat64()
		v.rmc(s, speed, course)
		v.move(speed, course, 2)
		if i := int(s - r.from); i >= 0 && i%6 == 0 && s <= r.to {
			v.engine(s, r.rpm, r.fuel, r.trim)
		}
	}
	// The turn to the next leg is not logged: the receiver wrote only while its key was held.
	v.move(6, r.heading+90, 12)
	v.wander = 0
}

// move takes the boat on.
func (v *voyage) move(kn, course, seconds float64) {
	way := kn * metresPerSecond * seconds
	v.lat += way * math.Cos(course*radian) / (earthRadius * radian)
	v.lon += way * math.Sin(course*radian) / (earthRadius * radian * math.Cos(v.lat*radian))
}

// rmc writes a sentence.
func (v *voyage) rmc(s, kn, course float64) {
	when := stamp(s)
	lat, lon := v.lat, -v.lon
	body := fmt.Sprintf("GPRMC,%s,A,%02d%07.4f,N,%03d%07.4f,W,%.1f,%.1f,%s,,,A", when.Format("150405"), int(lat), (lat-math.Floor(lat))*60, int(lon), (lon-math.Floor(lon))*60,
		kn, round360(course), when.Format("020106"))
	fmt.Fprintf(&v.receiver, "$%s*%02X\r\n", body, checksum([]byte(body)))
}

// engine writes a row of the engine log: two engines, decimal comma, local time.
func (v *voyage) engine(s, rpm, fuel, trim float64) {
	comma := func(x float64, places int) string {
		return strings.Replace(strconv.FormatFloat(x, 'f', places, 64), ".", ",", 1)
	}
	stray := func(by float64) float64 { return by * v.dice.NormFloat64() }
	apart := stray(6)
	fmt.Fprintf(&v.engines, "%s;%s;%s;%s;%s;%s\n", stamp(s+hourSeconds).Format("2006-01-02 15:04:05"),
		comma(rpm+apart+stray(2), 0), comma(rpm-apart+stray(2), 0), comma(fuel/2*(1+stray(0.006)), 2), comma(fuel/2*(1+stray(0.006)), 2), comma(trim+stray(0.08), 1))
}

// point writes a point of the tracker; its speed stands in an extension, as GPX 1.1 has no place for it.
func (v *voyage) point(s, kn, course float64) {
	when := stamp(math.Floor(s)).Format("2006-01-02T15:04:05")
	fmt.Fprintf(&v.tracker, `<trkpt lat="%.6f" lon="%.6f"><time>%s.%dZ</time><extensions><t:speed>%.2f</t:speed><t:course>%.1f</t:course></extensions></trkpt>`+"\n",
		v.lat, v.lon, when, int(math.Floor((s-math.Floor(s))*10+0.5)), kn*metresPerSecond, round360(course))
}

const tick = 0.5 // seconds between two points of the tracker

// burst is the run from rest: slow at first, a wait on the hump, then up to full speed.
func (v *voyage) burst(from float64) {
	v.tracker.WriteString("<trkseg>\n")
	for s := 0.0; s <= 32; s += tick {
		since := math.Max(0, s-4)
		kn := 33.4 * (1 - math.Exp(-math.Pow(since/8.2, 1.35)))
		kn -= 1.1 * math.Exp(-math.Pow((since-3.6)/1.2, 2)) * min(1, since)
		kn = math.Max(0, kn+0.05*v.dice.NormFloat64())
		v.point(from+s, kn, 64)
		v.move(kn, 64, tick)
		if s == math.Floor(s) {
			v.engine(from+s, 700+5200*(1-math.Exp(-since/2.5)), 2+62*(1-math.Exp(-since/3)), 0.8+5.6*math.Exp(-math.Pow((kn-10.8)/5.5, 2))+2.2*(1-math.Exp(-kn/20)))
		}
	}
	v.tracker.WriteString("</trkseg>\n")
}

// circle is a turn to port with the engines hard over: the boat loses a third of its speed, and the stream takes it along.
func (v *voyage) circle(from float64) {
	v.tracker.WriteString("<trkseg>\n")
	heading := 64.0
	for s := 0.0; s <= 30; s += tick {
		kn := 18.0
		if over := s - 5; over >= 0 {
			kn = 12.4 + 5.6*math.Exp(-over/1.6)
			radius := 17.2 + 9*math.Exp(-over/0.9)
			heading -= kn * metresPerSecond / radius * tick / radian
		}
		east := kn*math.Sin(heading*radian) + v.streamKnot*math.Sin(v.streamTo*radian)
		north := kn*math.Cos(heading*radian) + v.streamKnot*math.Cos(v.streamTo*radian)
		course, over := math.Atan2(east, north)/radian, math.Hypot(east, north)
		v.point(from+s, over+0.04*v.dice.NormFloat64(), course)
		v.move(over, course, tick)
	}
	v.tracker.WriteString("</trkseg>\n")
}

// halt is a stop from 25 kn with the engines put astern after a breath.
func (v *voyage) halt(from float64) {
	v.tracker.WriteString("<trkseg>\n")
	kn := 25.2
	for s := 0.0; s <= 16; s += tick {
		v.point(from+s, math.Max(0, kn), 244)
		v.move(math.Max(0, kn), 244, tick)
		switch {
		case s < 3:
		case s < 4.5:
			kn -= 2.6 * tick
		default:
			kn -= (1.7 + 0.09*math.Max(0, kn)) * tick * 1.6
		}
	}
	v.tracker.WriteString("</trkseg>\n")
}
