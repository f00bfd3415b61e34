package grid

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// planing draws a hull of own making with deadrise, flare, chine flat, rake and stringers that converge or run out.
func planing(t *rapid.T) *record.Hull {
	h := &record.Hull{Number: "R1"}
	h.Boat.Draught = w(unit.M(0.4))
	between := func(name string, a, b float64) float64 { return rapid.Float64Range(a, b).Draw(t, name) }
	length, beam, rise, flare := between("length", 4, 9), between("half beam", 0.6, 1.2), between("rise", 0.05, 0.5), between("flare", 0, 0.3)
	flat := between("flat", 0.02, 0.1)
	h.Lines.Rake = w(unit.Deg(between("rake", 0, 20)))
	n := rapid.IntRange(4, 9).Draw(t, "stations")
	for i := range n {
		s := float64(i) / float64(n-1)
		full := 1 - 0.9*math.Pow(s, 4)
		x, y, up := s*length, beam*full, 0.8*math.Pow(s, 4)
		h.Stations = append(h.Stations, record.Station{Entry: named(fmt.Sprint(i), 10+i), X: w(unit.M(x)), KeelZ: w(unit.M(up)),
			ChineY: w(unit.M(y)), ChineZ: w(unit.M(up + rise*full)), OuterY: w(unit.M(y + flat)), OuterZ: w(unit.M(up + rise*full + 0.001)),
			SheerY: w(unit.M(y + flat + flare*full)), SheerZ: w(unit.M(up + rise*full + 0.7))})
	}
	h.Sections = []record.Section{{Entry: named("FB", 20), Shape: w("flat bar"), Height: w(unit.MM(60)), Web: w(unit.MM(6)), Alloy: w("6082-T6")}}
	gap := between("frame spacing", 0.35, 0.8)
	for i := 1; float64(i)*gap < length-0.1; i++ {
		f := record.Frame{Entry: named(fmt.Sprint(i), 30+i), X: w(unit.M(float64(i) * gap)), Bottom: w("FB"), Side: w("FB")}
		if i%5 == 4 {
			f.Kind, f.Plate, f.Alloy = w("bulkhead"), w(unit.MM(4)), w("5083-H116")
		}
		h.Frames = append(h.Frames, f)
	}
	for i, zone := range []string{"bottom", "side", "transom", "chine flat"} {
		h.Platings = append(h.Platings, record.Plating{Entry: named(zone, 60+i), Zone: w(zone), Thickness: w(unit.MM(5)), Alloy: w("5083-H116")})
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "stringers") {
		s := record.Stringer{Entry: named(fmt.Sprintf("L%d", i), 70+i), Zone: w("bottom"), Offset: w(unit.M(0.15 * float64(i+1))), Section: w("FB")}
		if rapid.Bool().Draw(t, "ends early") {
			s.Fore = w(unit.M(length * 0.7))
		}
		if rapid.Bool().Draw(t, "converges") {
			s.ForeOff = w(unit.M(0.08 * float64(i+1)))
		}
		h.Stringers = append(h.Stringers, s)
	}
	h.Stringers = append(h.Stringers, record.Stringer{Entry: named("S", 80), Zone: w("side"), Offset: w(unit.M(0.35)), Section: w("FB")})
	return h
}

// The patches of a zone sum to its skin, whatever the stringers do: nothing is laid twice and nothing is left out.
// Tolerance: warped plate is cut into other triangles, own arithmetic.
func TestPatchesSumToTheSkin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := planing(t)
		l := lines.FromRecord(&h.HullFile)
		r := Derive(h, l)
		if !r.Derived {
			t.Fatalf("not derived: %s", r.Why)
		}
		sum := map[string]float64{}
		for _, p := range r.Patches {
			sum[p.Zone] += p.Area
		}
		for _, s := range l.Skins() {
			if s.Zone != "deck" && math.Abs(sum[s.Zone]-s.Area) > 0.01*s.Area+0.004 {
				t.Errorf("%s: %.4f m² of patches on %.4f m² of skin", s.Zone, sum[s.Zone], s.Area)
			}
		}
	})
}

// Every patch to starboard has its like to port, and counts say so.
func TestMirrored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := derive(planing(t))
		counted, drawn := 0, 0
		for i := range r.Panels {
			counted += r.Panels[i].Count.V
		}
		port := map[string]Patch{}
		for _, p := range r.Patches {
			drawn++
			if p.Port {
				port[p.ID] = p
			}
		}
		if counted != drawn {
			t.Errorf("%d panels counted, %d drawn", counted, drawn)
		}
		for _, p := range r.Patches {
			q, there := port[p.ID]
			if p.Port || !there {
				continue
			}
			for i := range p.Corners {
				if q.Corners[i] != mirrored(p.Corners[i]) || q.Area != p.Area {
					t.Fatalf("%s is not the same to port", p.ID)
				}
			}
		}
	})
}

// The frames' bottom limbs and the keel are as long as the lines say.
func TestSpansSumToLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := planing(t)
		h.Stringers = append(h.Stringers, record.Stringer{Entry: named("K", 90), Kind: w("keel bar"), Zone: w("bottom"), Offset: w(unit.M(0)), Section: w("FB")})
		l := lines.FromRecord(&h.HullFile)
		r := Derive(h, l)
		var keel float64
		for i := range r.Members {
			m := &r.Members[i]
			if m.Kind.V == "keel bar" {
				keel += float64(m.Span.V) / 1000
			}
			if id, is := strings.CutPrefix(m.ID, "bottom frame "); is {
				for _, f := range l.Frames {
					if s := l.Section(f.X); f.ID == id && math.Abs(float64(m.Span.V)/1000-math.Hypot(s.At[lines.Chine].Y, s.At[lines.Chine].Z-s.At[lines.Keel].Z)) > 1e-3 {
						t.Errorf("%s spans %v mm", m.ID, m.Span.V)
					}
				}
			}
		}
		want := 0.0
		for i := 1; i < len(l.Stations); i++ {
			p, q := l.Stations[i-1], l.Stations[i]
			want += math.Hypot(q.X-p.X, q.At[lines.Keel].Z-p.At[lines.Keel].Z)
		}
		if math.Abs(keel-want) > 0.003*float64(len(h.Frames)+1) {
			t.Errorf("keel of %.3f m, the lines have %.3f m", keel, want)
		}
	})
}
