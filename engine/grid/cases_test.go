package grid

import (
	"math"
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// What a builder does besides plain frames and stringers; measures of the pontoon by own arithmetic.

// TestFrameThatStops: outside the stringer at which frame 3 stops the plate goes on to the next frame.
func TestFrameThatStops(t *testing.T) {
	h := box6()
	h.Frames[2].BottomTo = w(unit.M(0.5))
	r := derive(h)
	p := panel(t, &r, "bottom frames 2-4 strake 2")
	near1(t, "long side", float64(p.Long.V), 2000, 1e-9)
	near1(t, "inner strake", float64(panel(t, &r, "bottom frames 2-3 strake 1").Long.V), 1000, 1e-9)
	near1(t, "span of the frame", float64(member(t, &r, "bottom frame 3").Span.V), 500, 1e-9)
	if f := found(&r, "frame-ends"); f != nil {
		t.Errorf("a frame that ends on a stringer is told: %s", f.Says)
	}
}

// TestGirder: frames end on it, and it spans from bulkhead to bulkhead and to its own end.
func TestGirder(t *testing.T) {
	h := box6()
	h.Frames[2].Kind, h.Frames[2].Plate, h.Frames[2].Alloy = w("bulkhead"), w(unit.MM(4)), w("5083-H116")
	h.Stringers = append(h.Stringers, record.Stringer{Entry: named("G", 55), Kind: w("girder"), Zone: w("bottom"), Offset: w(unit.M(0.4)), Fore: w(unit.M(4)), Section: w("FB")})
	r := derive(h)
	near1(t, "frame inside", float64(member(t, &r, "bottom frame 2 keel to girder").Span.V), 400, 1e-9)
	near1(t, "frame outside", float64(member(t, &r, "bottom frame 2 girder to chine").Span.V), 600, 1e-9)
	near1(t, "frame forward of it", float64(member(t, &r, "bottom frame 5").Span.V), 1000, 1e-9)
	aft, fore := member(t, &r, "girder G transom to frame 3"), member(t, &r, "girder G frames 3-4")
	near1(t, "girder aft", float64(aft.Span.V), 3000, 1e-9)
	near1(t, "girder fore", float64(fore.Span.V), 1000, 1e-9)
	near1(t, "its plate, half way to keel and chine", float64(aft.Spacing.V), 500, 1e-9)
	if aft.Role.V != "primary" {
		t.Error("a girder is not primary")
	}
}

// TestConvergingStringer: it runs out at the chine, which is drawn in, and holds the plate up to there; the greater breadth of
// what tapers counts.
func TestConvergingStringer(t *testing.T) {
	h := box6()
	for i := range h.Stations {
		h.Stations[i].ChineY = w(unit.M(1 - 0.1*float64(i)*2)) // 1.0, 0.8, 0.6, 0.4 m at x 0, 2, 4, 6
		h.Stations[i].SheerY = h.Stations[i].ChineY
	}
	h.Stringers[0].Fore = w(unit.M(4.9)) // the chine is drawn in to 0.5 m at x 5
	r := derive(h)
	p := panel(t, &r, "bottom frames 4-5 strake 2")
	near1(t, "breadth at its aft end", float64(p.Short.V), 100, 0.06)
	if q := panel(t, &r, "bottom frame 5 to stem"); math.Abs(float64(q.Short.V)-500) > 0.06 {
		t.Errorf("beyond the stringer the whole breadth counts: %v", q.Short.V)
	}
	if f := found(&r, "stringer-ends"); f != nil {
		t.Errorf("a stringer that runs out at the chine is told: %s", f.Says)
	}
	near1(t, "span to where it runs out", float64(member(t, &r, "bottom stringer 1 frames 4-5").Span.V), 900, 1)
}

// TestBulgedBottom: a bulge of 40 mm over the whole bottom rises 10 mm over half of it, since a parabola does.
func TestBulgedBottom(t *testing.T) {
	h := box6()
	for i := range h.Stations {
		h.Stations[i].Round = w(unit.MM(40))
	}
	r := derive(h)
	near1(t, "camber", float64(panel(t, &r, "bottom frames 3-4 strake 1").Camber.V), 10, 0.6)
}

// TestDeckAndSole: a deck plate across the boat, one beside an opening, and a sole on a bearer.
func TestDeckAndSole(t *testing.T) {
	h := box6()
	for i := range h.Frames {
		h.Frames[i].Deck, h.Frames[i].Sole = w("FB"), w("FB")
	}
	plate := func(id, zone string, aft, fore, inner float64) record.Plating {
		return record.Plating{Entry: named(id, 46), Zone: w(zone), Aft: w(unit.M(aft)), Fore: w(unit.M(fore)), Inner: w(unit.M(inner)), Thickness: w(unit.MM(4)), Alloy: w("5083-H116")}
	}
	sole := plate("sole", "sole", 1, 4, 0)
	sole.Z = w(unit.M(0.3))
	h.Platings = append(h.Platings, plate("fore", "deck", 4, 6, 0), plate("side", "deck", 1, 4, 0.7), sole)
	h.Stringers = append(h.Stringers, record.Stringer{Entry: named("D", 56), Zone: w("deck"), Offset: w(unit.M(0.4)), Aft: w(unit.M(4)), Section: w("FB")})
	h.Supports = []record.Support{{Entry: named("B", 57), Under: w("sole"), Kind: w("plate"), Aft: w(unit.M(1)), Fore: w(unit.M(4)), Y: w(unit.M(0.3))}}
	r := derive(h)
	across := panel(t, &r, "deck fore frames 4-5 strake 1")
	near1(t, "between the deck stringers, across the centre line", float64(across.Short.V), 800, 1e-9)
	near1(t, "side deck", float64(panel(t, &r, "deck side frames 2-3").Short.V), 300, 1e-9)
	near1(t, "sole between bearers", float64(panel(t, &r, "sole sole frames 2-3 strake 1").Short.V), 600, 1e-9)
	near1(t, "sole outside", float64(panel(t, &r, "sole sole frames 2-3 strake 2").Short.V), 700, 1e-9)
	near1(t, "sole beam between bearers", float64(member(t, &r, "sole beam 2 sole inner part").Span.V), 600, 1e-9)
	near1(t, "sole beam outside", float64(member(t, &r, "sole beam 2 sole second part").Span.V), 700, 1e-9)
	near1(t, "deck beam", float64(member(t, &r, "deck beam 5 fore").Span.V), 2000, 1e-9)
	near1(t, "deck stringer", float64(member(t, &r, "deck stringer 1 fore frames 4-5").Spacing.V), 700, 1e-9)
	if across.Count.V != 1 || across.Zone.V != "deck" {
		t.Errorf("%+v", across)
	}
}

// TestPillars: one under the middle of a deck beam halves its span; one under no beam is told.
func TestPillars(t *testing.T) {
	h := box6()
	h.Frames[3].Deck = w("FB")
	h.Platings = append(h.Platings, record.Plating{Entry: named("main", 46), Zone: w("deck"), Thickness: w(unit.MM(4)), Alloy: w("5083-H116")})
	h.Supports = []record.Support{{Entry: named("P1", 57), Under: w("deck"), Kind: w("pillar"), X: w(unit.M(4.05)), Y: w(unit.M(0)), Section: w("FB")}}
	r := derive(h)
	m := member(t, &r, "deck beam 4 main")
	near1(t, "half of 2 m", float64(m.Span.V), 1000, 1e-9)
	if m.Count.V != 2 || found(&r, "pillar-nowhere") != nil {
		t.Errorf("%+v, %v", m, r.Findings)
	}
	h.Supports[0].X = w(unit.M(4.5))
	r = derive(h)
	if f := found(&r, "pillar-nowhere"); f == nil || float64(member(t, &r, "deck beam 4 main").Span.V) != 2000 {
		t.Errorf("%v", r.Findings)
	}
}

// TestBulkhead: upright stiffeners at 0.4 m cut it into fields; the head is that of water up to its top.
func TestBulkhead(t *testing.T) {
	h := box6()
	f := &h.Frames[2]
	f.Kind, f.Plate, f.Alloy, f.Stiffener, f.StiffenGap, f.Top = w("bulkhead"), w(unit.MM(4)), w("5083-H116"), w("FB"), w(unit.MM(400)), w(unit.M(0.9))
	r := derive(h)
	p := panel(t, &r, "bulkhead 3 panel 1")
	near1(t, "between the first two, across the centre line", float64(p.Short.V), 400, 1e-9)
	near1(t, "high", float64(p.Long.V), 900, 1e-9)
	near1(t, "head, from a third above its foot", float64(p.Head.V), 0.6, 1e-9)
	m := member(t, &r, "bulkhead 3 upright 1")
	near1(t, "stiffener", float64(m.Span.V), 900, 1e-9)
	near1(t, "its plate", float64(m.Spacing.V), 400, 1e-9)
	near1(t, "its head", float64(m.Head.V), 0.45, 1e-9)
	if p.Count.V != 1 || m.Zone.V != "bulkhead" || m.Kind.V != "bulkhead stiffener" {
		t.Errorf("%+v %+v", p, m)
	}
	total := 0.0
	for _, q := range r.Patches {
		if q.Zone == "bulkhead" {
			total += q.Area
		}
	}
	near1(t, "area", total, 1.8, 1e-9)
}

// TestTransom: an upright at 0.3 m and a level bar at 0.5 m above the base line.
func TestTransom(t *testing.T) {
	h := box6()
	h.Stiffeners = []record.Stiffener{
		{Entry: named("U", 80), On: w("transom"), Runs: w("upright"), Offset: w(unit.M(0.3)), Section: w("FB"), Role: w("primary")},
		{Entry: named("V", 81), On: w("transom"), Runs: w("level"), Offset: w(unit.M(0.5)), Section: w("FB")},
	}
	r := derive(h)
	near1(t, "lower middle", float64(panel(t, &r, "transom panel 1").Long.V), 600, 1e-9)
	near1(t, "upper outer", float64(panel(t, &r, "transom panel 4").Long.V), 700, 1e-9)
	near1(t, "level bar in the middle", float64(member(t, &r, "transom V first span").Span.V), 600, 1e-9)
	near1(t, "level bar outside", float64(member(t, &r, "transom V second span").Span.V), 700, 1e-9)
	near1(t, "upright", float64(member(t, &r, "transom U").Span.V), 1000, 1e-9)
	near1(t, "what the upright carries: half of 0.6 and of 0.7 m", float64(member(t, &r, "transom U").Spacing.V), 650, 1e-9)
}

// TestTank: 200 litres under a surface of 1.0 x 0.8 m stand 250 mm high.
func TestTank(t *testing.T) {
	h := box6()
	h.Tanks = []record.Tank{{Entry: named("T", 90), Volume: w(unit.Litre(200)), X: w(unit.M(2)), Y: w(unit.M(0)), Z: w(unit.M(0.3)), Length: w(unit.M(1)), Breadth: w(unit.M(0.8)),
		Plate: w(unit.MM(4)), Alloy: w("5083-H116"), Baffles: w(unit.MM(500)), Overflow: w(unit.M(1.175))}}
	r := derive(h)
	side, bottom := panel(t, &r, "tank T sides"), panel(t, &r, "tank T bottom")
	near1(t, "side", float64(side.Short.V), 250, 1e-9)
	near1(t, "side between baffles", float64(side.Long.V), 500, 1e-9)
	near1(t, "head at the bottom", float64(bottom.Head.V), 1, 1e-9)
	if side.Count.V != 2 || len(r.Assumptions) == 0 {
		t.Errorf("%+v, %v", side, r.Assumptions)
	}
}

// TestModels: rings have their corners as joints, made as the record says, and grillages their crossings.
func TestModels(t *testing.T) {
	h := box6()
	r := derive(h)
	if len(r.Rings) != 5 || len(r.Grillages) != 1 {
		t.Fatalf("%d rings, %d grillages", len(r.Rings), len(r.Grillages))
	}
	ring := r.Rings[2]
	if len(ring.Spans) != 2 || ring.Joints[0].Name != "keel" || !ring.Joints[0].Fixed || ring.Joints[1].Name != "chine" || ring.Joints[2].Name != "sheer" || ring.Joints[2].Fixed {
		t.Errorf("ring %+v", ring)
	}
	g := r.Grillages[0]
	held := map[string]int{}
	for _, j := range g.Joints {
		held[j.Held]++
	}
	// Five frames of two stretches, one stringer of six; crossings free, ends held.
	if len(g.Frames) != 10 || len(g.Lengths) != 6 || held[""] != 5 || held["keel"] != 5 || held["chine"] != 5 || held["transom"] != 1 || held["stem"] != 1 {
		t.Errorf("grillage %s: %d frames, %d lengths, held %v", g.Name, len(g.Frames), len(g.Lengths), held)
	}
	for _, s := range g.Lengths {
		near1(t, "breadth at "+s.Member, s.Width, 0.5, 1e-9)
	}
}
