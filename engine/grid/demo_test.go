package grid

import (
	"os"
	"testing"

	"hullfile/engine/lines"
	"hullfile/engine/record"
)

func demo(t testing.TB) map[string]*record.Hull {
	t.Helper()
	root, err := os.OpenRoot("../../content/demo")
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	y, err := record.Read(root, record.Known{Alloys: []string{"5083-H116", "6082-T6", "5754-H34"}})
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*record.Hull{}
	for _, h := range y.Hulls {
		out[h.Number] = h
	}
	return out
}

// TestDemoIsPlatedWhole: bottom, side and transom of every demo hull are covered, and the grid has no contradiction or gap.
func TestDemoIsPlatedWhole(t *testing.T) {
	for number, h := range demo(t) {
		l := lines.FromRecord(&h.HullFile)
		r := Derive(h, l)
		for _, f := range r.Findings {
			t.Errorf("%s: %s %s: %s", number, f.Kind, f.Rule, f.Says)
		}
		sum := map[string]float64{}
		for _, p := range r.Patches {
			sum[p.Zone] += p.Area
		}
		for _, s := range l.Skins() {
			if s.Zone != "deck" {
				near1(t, number+" "+s.Zone, sum[s.Zone], s.Area, 0.005*s.Area)
			}
		}
		if len(r.Panels) < 100 || len(r.Members) < 100 || len(r.Rings) < 10 || len(r.Grillages) < 2 {
			t.Errorf("%s: %d panels, %d members, %d rings, %d grillages", number, len(r.Panels), len(r.Members), len(r.Rings), len(r.Grillages))
		}
		for _, g := range r.Grillages {
			for _, s := range append(g.Frames, g.Lengths...) {
				if s.Member == "" || s.Section == "" {
					t.Errorf("%s: a stretch of %s is no member: %+v", number, g.Name, s)
				}
			}
		}
		names := map[string]bool{}
		for i := range r.Panels {
			if names[r.Panels[i].ID] {
				t.Errorf("%s: two panels %q", number, r.Panels[i].ID)
			}
			names[r.Panels[i].ID] = true
		}
		clear(names)
		for i := range r.Members {
			if names[r.Members[i].ID] {
				t.Errorf("%s: two members %q", number, r.Members[i].ID)
			}
			names[r.Members[i].ID] = true
		}
	}
}

// BenchmarkDerive lays the whole grid of the harbour launch.
func BenchmarkDerive(b *testing.B) {
	h := demo(b)["HL74-012"]
	l := lines.FromRecord(&h.HullFile)
	r := Derive(h, l)
	b.ReportMetric(float64(len(r.Patches)+len(r.Lines)), "patches+lines")
	b.ReportMetric(float64(len(r.Panels)+len(r.Members)), "records")
	for b.Loop() {
		Derive(h, l)
	}
}
