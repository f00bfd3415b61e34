package grid

import (
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// TestListedByHandStandsInPlace: by its own name, by the names it replaces, or on one side only.
func TestListedByHandStandsInPlace(t *testing.T) {
	h := box6()
	h.Panels = []record.Panel{
		{Entry: named("bottom frames 1-2 strake 1", 70)},
		{Entry: named("insert", 71), Replaces: w([]string{"bottom frames 3-4 strake 2 starboard"})},
		{Entry: named("B7", 72), Replaces: w([]string{"bottom frames 4-5 strakes 1-2"})},
	}
	h.Members = []record.Member{{Entry: named("F3", 73), Replaces: w([]string{"bottom frame 3 port"})}}
	r := derive(h)
	if len(r.Findings) > 0 {
		t.Fatal(r.Findings)
	}
	if n := panel(t, &r, "bottom frames 1-2 strakes 1-2").Count.V; n != 2 {
		t.Errorf("%d left of the bay whose inner strake is listed, expected the outer one on both sides", n)
	}
	if n := panel(t, &r, "bottom frames 3-4 strakes 1-2").Count.V; n != 3 {
		t.Errorf("%d left of the bay with an insert to starboard, expected 3", n)
	}
	for i := range r.Panels {
		if r.Panels[i].ID == "bottom frames 4-5 strakes 1-2" {
			t.Error("a group that is listed by hand is still there")
		}
	}
	if n := member(t, &r, "bottom frame 3").Count.V; n != 1 {
		t.Errorf("frame 3 counts %d", n)
	}
	owners := map[string]int{}
	for _, p := range r.Patches {
		owners[p.Panel]++
	}
	if owners["insert"] != 1 || owners["B7"] != 4 || owners["bottom frames 1-2 strake 1"] != 2 || len(r.Replaced) != 1+4+2+1 {
		t.Errorf("patches %v, replaced %v", owners, r.Replaced)
	}
}

// TestPlaces: a place on the unrolled skin leads to its panel.
func TestPlaces(t *testing.T) {
	h := box6()
	r := derive(h)
	for _, c := range []struct {
		zone     string
		x, girth float64
		want     string
	}{
		{"bottom", 3.5, 0.3, "bottom frames 3-4 strakes 1-2"},
		{"bottom", 3.5, -0.8, "bottom frames 3-4 strakes 1-2"},
		{"side", 0.5, 1.3, "side transom to frame 1 strake 1"},
		{"side", 0.5, -1.8, "side transom to frame 1 strake 2"},
		{"bottom", 3.5, 1.3, ""},
		{"deck", 3.5, 0.3, ""},
	} {
		if got, _ := r.At(c.zone, c.x, c.girth); got != c.want {
			t.Errorf("%s at %g, %g: %q, expected %q", c.zone, c.x, c.girth, got, c.want)
		}
	}
	if cut := r.Cut("transom"); len(cut) != 1 || cut[0] != "transom" {
		t.Errorf("cut from the transom plate: %v", cut)
	}
	if names := r.Names("bottom frames 3-4 strakes 1-2"); len(names) != 2 {
		t.Errorf("names %v", names)
	}
}

// TestTheLowestOfAGroupGivesItsHeight; own arithmetic: bottom with a rise of 0.4 m over 1 m.
func TestTheLowestOfAGroupGivesItsHeight(t *testing.T) {
	h := box6()
	for i := range h.Stations {
		h.Stations[i].ChineZ = w(unit.M(0.4))
		h.Stations[i].SheerZ = w(unit.M(1.4))
	}
	r := derive(h)
	p := panel(t, &r, "bottom frames 3-4 strake 1")
	near1(t, "z", float64(p.Z.V), 0.25/1.0770329614269008*0.4-0.4, 1e-4)
	near1(t, "deadrise", float64(p.Deadrise.V), 21.80, 0.005)
}
