package tracklog

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// yard writes files into a yard folder of its own.
func yard(t *testing.T, files map[string]string) *os.Root {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		at := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root
}

// receiverText is a log of a boat at 20 kn from 09:14:00 on, a sentence a second.
func receiverText(seconds int, day string) string {
	var b strings.Builder
	for i := range seconds {
		b.WriteString(sentence(fmt.Sprintf("GPRMC,09%02d%02d,A,47%07.4f,N,02000.0000,W,20.%d,0.0,%s,,,A", 14+i/60, i%60, float64(i)/180, i%2, day)) + "\n")
	}
	return b.String()
}

// engineText is an engine log of the same minutes.
func engineText(seconds int, rpm float64) string {
	var b strings.Builder
	b.WriteString("time,rpm,fuel\n")
	for i := range seconds {
		fmt.Fprintf(&b, "2026-03-03T09:%02d:%02dZ,%g,40.0\n", 14+i/60, i%60, rpm+float64(i%3))
	}
	return b.String()
}

// hullWith is a hull with one trial, two logs and one run in them.
func hullWith(change func(*record.Trial)) *record.Hull {
	l1 := logOf("nmea")
	l1.File = put("r.nmea")
	l2 := logOf("csv", col("time", "time", "utc"), col("rpm", "engine_rpm", "rpm"), col("fuel", "fuel", "l/h"))
	l2.ID, l2.File = "L2", put("e.csv")
	t := record.Trial{Entry: record.Entry{ID: "T1", At: finding.Place{File: "hulls/H1/hull.toml", Line: 3}}, Date: put(trialDay), Logs: []record.Log{*l1, *l2}}
	t.Runs = []record.Run{{Entry: record.Entry{ID: "1", At: finding.Place{File: "hulls/H1/runs.csv", Line: 2}}, Setting: put("full"), Log: put("L1"), From: put("09:14:10"), To: put("09:15:10")}}
	if change != nil {
		change(&t)
	}
	h := &record.Hull{Number: "H1", Folder: "hulls/H1"}
	h.Trials = []record.Trial{t}
	return h
}

func filesWith(receiver, engines string) map[string]string {
	return map[string]string{"hulls/H1/logs/r.nmea": receiver, "hulls/H1/documents/e.csv": engines}
}

func rules(all []finding.Finding) string {
	var words []string
	for _, f := range all {
		words = append(words, string(f.Kind)+" "+f.Rule)
	}
	return strings.Join(words, ", ")
}

// What nobody wrote is taken from the log that is named, and what that has not from the other log of the trial.
func TestARunIsCompletedFromItsLogs(t *testing.T) {
	h := hullWith(nil)
	r := Assess(yard(t, filesWith(receiverText(90, "030326"), engineText(90, 4000))), h)
	if len(r.Findings) != 0 {
		t.Errorf("%s", rules(r.Findings))
	}
	run := r.Filled(h).Trials[0].Runs[0]
	near := func(what string, v record.Val[float64], want, tol float64, file string) {
		if !v.Set || math.Abs(v.V-want) > tol || v.At.File != file || v.At.Line == 0 {
			t.Errorf("%s: %+v, want %v of %s", what, v, want, file)
		}
	}
	near("speed", record.Val[float64]{V: float64(run.Speed.V), Set: run.Speed.Set, At: run.Speed.At}, 20.05, 0.01, "hulls/H1/logs/r.nmea")
	near("rpm", record.Val[float64]{V: float64(run.RPM.V), Set: run.RPM.Set, At: run.RPM.At}, 4001, 0.1, "hulls/H1/documents/e.csv")
	near("fuel", record.Val[float64]{V: float64(run.Fuel.V), Set: run.Fuel.Set, At: run.Fuel.At}, 40, 0, "hulls/H1/documents/e.csv")
	near("length", record.Val[float64]{V: float64(run.Seconds.V), Set: run.Seconds.Set, At: run.Seconds.At}, 60, 0, "hulls/H1/logs/r.nmea")
	if h.Trials[0].Runs[0].Speed.Set {
		t.Error("the record itself was changed")
	}
	for i, want := range []string{"logs/log-T1-L1.nmea.txt", "logs/log-T1-L2.csv"} {
		if r.Logs[i].Out != want || !r.Logs[i].Present || r.Logs[i].Bytes == 0 {
			t.Errorf("%+v", r.Logs[i])
		}
	}
}

func TestFindingsOfLogs(t *testing.T) {
	good, engines := receiverText(90, "030326"), engineText(90, 4000)
	sum := sha256.Sum256([]byte(good))
	lines := strings.SplitAfter(good, "\n")
	rows := []struct {
		where    string
		receiver string
		engines  string
		change   func(*record.Trial)
		rules    string
		says     string
	}{
		{"written within what the log shows", good, engines, func(t *record.Trial) { t.Runs[0].Speed = put(unit.Knot(20.1)) }, "", ""},
		{"written beyond it", good, engines, func(t *record.Trial) { t.Runs[0].Speed = put(unit.Knot(21)) }, "contradiction run-and-log", "speed 21.0 kn is written; between 09:14:10 and 09:15:10 the log has 20.0 to 20.1 kn"},
		{"the other way", good, engines, func(t *record.Trial) { t.Runs[0].Heading = put(unit.Deg(180)) }, "contradiction run-and-log", "heading"},
		{"engine speed in hundreds", good, engineText(90, 40), nil, "doubt log-rpm-hundreds", "none is taken"},
		{"hundreds against a written figure", good, engineText(90, 40), func(t *record.Trial) { t.Runs[0].RPM = put(unit.RPM(4100)) }, "doubt log-rpm-hundreds, contradiction run-and-log", ""},
		{"a log of another day", receiverText(90, "050326"), engines, nil, "contradiction log-day, doubt run-not-in-log", "the trial was on 3 March 2026"},
		{"one second", good, engines, func(t *record.Trial) { t.Runs[0].To = put("09:14:11") }, "doubt run-not-in-log", "only 1 s of it"},
		{"backwards", good, engines, func(t *record.Trial) { t.Runs[0].To = put("09:14:09") }, "doubt run-not-in-log", "ends before it begins"},
		{"no such log", good, engines, func(t *record.Trial) { t.Runs[0].Log = put("L9") }, "contradiction run-not-in-log", "not on record"},
		{"no times", good, engines, func(t *record.Trial) { t.Runs[0].From = record.Val[string]{} }, "doubt run-not-in-log", "both from and to"},
		{"truncated", good[:len(good)*2/3+9], engines, nil, "doubt log-damaged, doubt run-unsteady", "last lines that break off"},
		{"a sentence altered", strings.Replace(good, "20.1", "90.1", 1), engines, nil, "doubt log-damaged", "checksum is wrong (first at line 2)"},
		{"clock goes back", lines[0] + lines[1] + lines[0] + strings.Join(lines[2:], ""), engines, nil, "doubt log-clock", "first at line 3"},
		{"a gap in the run", strings.Join(lines[:30], "") + strings.Join(lines[45:], ""), engines, nil, "doubt run-unsteady", "1 gaps"},
		{"not the log on record", good, engines, func(t *record.Trial) { t.Logs[0].SHA256 = put(strings.Repeat("0", 64)) }, "contradiction log-unchanged", "hash begins"},
		{"the log on record", good, engines, func(t *record.Trial) { t.Logs[0].SHA256 = put(strings.ToUpper(hex.EncodeToString(sum[:]))) }, "", ""},
	}
	for _, r := range rows {
		got := Assess(yard(t, filesWith(r.receiver, r.engines)), hullWith(r.change))
		if rules(got.Findings) != r.rules {
			t.Errorf("%s: %s, want %s", r.where, rules(got.Findings), r.rules)
			continue
		}
		all := ""
		for _, f := range got.Findings {
			all += f.Says + "\n"
			if f.Settle == "" || len(f.Places) == 0 {
				t.Errorf("%s: %+v", r.where, f)
			}
		}
		if !strings.Contains(all, r.says) {
			t.Errorf("%s: %q does not say %q", r.where, all, r.says)
		}
	}
}

func TestChecksOfLogs(t *testing.T) {
	rows := []struct {
		where string
		files map[string]string
		says  string
	}{
		{"not there", map[string]string{"hulls/H1/documents/e.csv": engineText(9, 4000)}, `"r.nmea": it is not there`},
		{"empty", filesWith("", engineText(9, 4000)), "nothing in the log can be used as nmea"},
		{"another kind", filesWith("time,rpm\n1,2\n", engineText(9, 4000)), "holds no line of that kind"},
		{"outside the yard", filesWith("x", engineText(9, 4000)), ""},
	}
	for _, r := range rows {
		h := hullWith(nil)
		if r.where == "outside the yard" {
			h.Trials[0].Logs[0].File = put("../../../etc/passwd")
			r.says = "leaves the documents folder"
		}
		c := Assess(yard(t, r.files), h).Checks[0]
		if c.Standing != finding.NotShown || !strings.Contains(c.Says, r.says) || c.Settle == "" {
			t.Errorf("%s: %+v", r.where, c)
		}
	}
	if c := Assess(nil, hullWith(nil)).Checks[0]; c.Standing != finding.NotShown {
		t.Errorf("without a yard folder: %+v", c)
	}
	bad := Assess(yard(t, filesWith(receiverText(9, "030326"), "time;drehzahl\n")), hullWith(nil)).Checks[1]
	if bad.Standing != finding.NotShown || !strings.Contains(bad.Says, `has a column "rpm"`) {
		t.Errorf("%+v", bad)
	}
}

func TestLinksAreNotFollowed(t *testing.T) {
	root := yard(t, map[string]string{"hulls/H1/logs/other.nmea": receiverText(9, "030326"), "hulls/H1/documents/e.csv": engineText(9, 4000)})
	if err := root.Symlink("other.nmea", "hulls/H1/logs/r.nmea"); err != nil {
		t.Skipf("links cannot be made here: %v", err)
	}
	if l := Assess(root, hullWith(nil)).Logs[0]; l.Present || !strings.Contains(l.Why, "link") {
		t.Errorf("%+v", l)
	}
}

func TestStrays(t *testing.T) {
	files := filesWith(receiverText(90, "030326"), engineText(90, 4000))
	files["hulls/H1/logs/x\u202e.nmea"] = ""
	r := Assess(yard(t, files), hullWith(nil))
	if rules(r.Findings) != "doubt log-stray" || strings.Contains(r.Findings[0].Says, "\u202e") || len(r.Strays) != 1 {
		t.Errorf("%s %v", rules(r.Findings), r.Strays)
	}
}

// A log without a receiver's speed gives a run the straight way over its time.
func TestSpeedFromPositions(t *testing.T) {
	var b strings.Builder
	b.WriteString("<gpx><trk><trkseg>")
	for i := range 90 {
		stray := 2e-5 * float64(i%2) // two metres to and fro
		fmt.Fprintf(&b, `<trkpt lat="%.7f" lon="-20"><time>2026-03-03T09:%02d:%02dZ</time></trkpt>`, 47+float64(i)*1e-4+stray, 14+i/60, i%60)
	}
	b.WriteString("</trkseg></trk></gpx>")
	h := hullWith(func(t *record.Trial) { t.Logs[0].Kind = put("gpx") })
	r := Assess(yard(t, filesWith(b.String(), engineText(90, 4000))), h)
	run := r.Filled(h).Trials[0].Runs[0]
	if want := 11.1195 / metresPerSecond; math.Abs(float64(run.Speed.V)-want) > 0.02 || run.Speed.At.Line == 0 {
		t.Errorf("%+v, want %v kn; %s", run.Speed, want, rules(r.Findings))
	}
}
