package tracklog

import (
	"strings"
	"testing"
)

// A file in the order of the schema of GPX 1.1: metadata, wpt, rte, trk with its children in order. The positions are own
// values; speed stands in an extension under a namespace of its own, as programs write it.
const gpx11 = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="another program" xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:example:extension">
<metadata><name>trial</name><time>2026-03-03T09:00:00Z</time></metadata>
<wpt lat="47.1" lon="-20.1"><name>mark</name></wpt>
<rte><rtept lat="47.2" lon="-20.2"/></rte>
<trk><name>run</name><number>1</number>
<trkseg>
<trkpt lat="47.0000" lon="-20.0000"><ele>2.0</ele><time>2026-03-03T09:14:00Z</time><magvar>3</magvar><fix>3d</fix><sat>9</sat><hdop>0.9</hdop><extensions><x:more><x:speed>10.0</x:speed><x:course>66.5</x:course></x:more></extensions></trkpt>
<trkpt lat="47.0001" lon="-20.0000"><ele>2.0</ele><time>2026-03-03T09:14:01.500Z</time></trkpt>
</trkseg>
<trkseg>
<trkpt lat="47.0002" lon="-20.0000"><time>2026-03-03T09:14:03Z</time></trkpt>
<trkpt lat="47.0003" lon="-20.0000"/>
</trkseg>
</trk></gpx>`

func TestGPX11(t *testing.T) {
	all, rep, err := samplesOf(t, logOf("gpx"), gpx11)
	if err != nil || len(all) != 3 || rep.Used != 3 {
		t.Fatalf("%v, %d samples, %v", err, len(all), rep.Notes)
	}
	if s := all[0]; !near9(s.Speed, 10*3600/1852.0, 1e-12) || s.Course != 66.5 || s.Line != 8 || s.Derived {
		t.Errorf("the speed of an extension: %+v", s)
	}
	// 0.0001° of latitude is 11.12 m on the mean sphere, in 1.5 s: 14.41 kn (own arithmetic).
	if s := all[1]; !near9(s.Speed, 14.41, 0.01) || !s.Derived || !near9(s.Time-all[0].Time, 1.5, 1e-6) {
		t.Errorf("the speed between positions: %+v", s)
	}
	if s := all[2]; !s.Break || known(s.Speed) {
		t.Errorf("the break between segments is bridged: %+v", s)
	}
	if rep.Has(NoTime) != 1 || rep.Has(Segments) != 1 {
		t.Errorf("%+v", rep.Notes)
	}
}

// GPX 1.0 has speed and course as elements of a point (example file of that schema; own values).
func TestGPX10(t *testing.T) {
	text := `<?xml version="1.0" encoding="ISO-8859-1"?><gpx version="1.0" creator="r` + "\xe9" + `cepteur" xmlns="http://www.topografix.com/GPX/1/0"><trk><trkseg>
<trkpt lat="47.0" lon="-20.0"><ele>1</ele><time>2026-03-03T09:14:00Z</time><course>245.0</course><speed>5.5</speed></trkpt>
</trkseg></trk></gpx>`
	all, rep, err := samplesOf(t, logOf("gpx"), text)
	if err != nil || len(all) != 1 || len(rep.Notes) != 0 {
		t.Fatalf("%v, %d samples, %v", err, len(all), rep.Notes)
	}
	if s := all[0]; !near9(s.Speed, 10.691, 0.001) || s.Course != 245 {
		t.Errorf("%+v", s)
	}
}

func TestGPXTroubles(t *testing.T) {
	cut := gpx11[:strings.Index(gpx11, "2026-03-03T09:14:03Z")]
	all, rep, err := samplesOf(t, logOf("gpx"), cut)
	if err != nil || len(all) != 2 || rep.Has(BadMarkup) != 1 {
		t.Errorf("what came before the break is used: %v, %d samples, %v", err, len(all), rep.Notes)
	}
	rows := []struct{ where, text, says string }{
		{"another kind of XML", "<kml></kml>", "not gpx"},
		{"no XML", "$GPRMC,<<<", "not written in XML"},
		{"too deep", "<gpx>" + strings.Repeat("<a>", 100), "deep in each other"},
		{"letters nobody reads", `<?xml version="1.0" encoding="utf-32"?><gpx/>`, "cannot be read"},
	}
	for _, r := range rows {
		if _, _, err := samplesOf(t, logOf("gpx"), r.text); err == nil || !strings.Contains(err.Error(), r.says) {
			t.Errorf("%s: %v", r.where, err)
		}
	}
	entity := `<!DOCTYPE gpx [<!ENTITY a SYSTEM "file:///etc/passwd">]><gpx><trk><trkseg><trkpt lat="1" lon="1"><time>&a;</time></trkpt></trkseg></trk></gpx>`
	if all, rep, err := samplesOf(t, logOf("gpx"), entity); len(all) != 0 || err != nil && rep.Samples > 0 {
		t.Errorf("an entity from outside: %v %v %v", all, rep.Notes, err)
	}
}
