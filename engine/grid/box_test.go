package grid

import (
	"strings"
	"testing"
)

// TestBox holds panels and members of a pontoon against its measures; own arithmetic.
func TestBox(t *testing.T) {
	r := derive(box6())
	if !r.Derived || len(r.Findings) > 0 {
		t.Fatalf("derived %t, %s, findings %v", r.Derived, r.Why, r.Findings)
	}
	p := panel(t, &r, "bottom frames 3-4 strakes 1-2")
	near1(t, "short side", float64(p.Short.V), 500, 1e-9)
	near1(t, "long side", float64(p.Long.V), 1000, 1e-9)
	near1(t, "x", float64(p.X.V), 3.5, 1e-9)
	near1(t, "z", float64(p.Z.V), -0.4, 1e-9)
	near1(t, "hull top", float64(p.HullTop.V), 0.6, 1e-9)
	if p.Count.V != 4 || p.Thickness.V != 6 || p.Camber.Set || p.Deadrise.V != 0 || p.Zone.V != "bottom" || p.Edges.V != "welded" {
		t.Errorf("panel %+v", p)
	}
	s := panel(t, &r, "side transom to frame 1 strake 2")
	near1(t, "side z", float64(s.Z.V), 0.35, 1e-9)
	near1(t, "side", float64(s.Short.V), 500, 1e-9)
	if s.Count.V != 2 || s.Deadrise.Set {
		t.Errorf("side panel %+v", s)
	}
	x := panel(t, &r, "transom")
	near1(t, "transom across", float64(x.Long.V), 2000, 1e-9)
	near1(t, "transom high", float64(x.Short.V), 1000, 1e-9)
	if x.Count.V != 1 {
		t.Errorf("transom counts %d", x.Count.V)
	}
}

// TestBoxMembers holds spans and spacings; own arithmetic.
func TestBoxMembers(t *testing.T) {
	r := derive(box6())
	for _, c := range []struct {
		id                string
		span, spacing     float64
		kind, role, ends  string
		attached, deadEnd float64
		count             int
	}{
		{"bottom stringer 1 frames 2-3", 1000, 500, "bottom stringer", "secondary", "fixed", 6, 0, 2},
		{"keel bar K frames 2-3", 1000, 500, "keel bar", "secondary", "fixed", 6, 0, 1},
		{"side stringer 1 frames 2-3", 1000, 500, "side stringer", "secondary", "simple", 4, 0, 2},
		{"bottom frame 3", 1000, 1000, "bottom frame", "primary", "fixed", 6, 0, 2},
		{"side frame 3", 1000, 1000, "side frame", "primary", "simple", 4, 0, 2},
	} {
		m := member(t, &r, c.id)
		near1(t, c.id+" span", float64(m.Span.V), c.span, 1e-9)
		near1(t, c.id+" spacing", float64(m.Spacing.V), c.spacing, 1e-9)
		near1(t, c.id+" attached", float64(m.Attached.V), c.attached, 1e-9)
		if m.Kind.V != c.kind || m.Role.V != c.role || m.Ends.V != c.ends || m.Count.V != c.count || m.Curve.V != 0 || m.Section.V != "FB" {
			t.Errorf("%s: %s %s %s count %d", c.id, m.Kind.V, m.Role.V, m.Ends.V, m.Count.V)
		}
	}
	if n := len(r.Brackets); n != 10 {
		t.Errorf("%d brackets, expected one at keel and chine of five frames", n)
	}
	if b := r.Brackets[0]; b.Member != "bottom frame 1" || b.Count != 2 {
		t.Errorf("bracket %+v", b)
	}
}

// TestSumsToTheWhole: patches of a zone sum to its skin, spans to lengths, and both sides mirror each other.
func TestSumsToTheWhole(t *testing.T) {
	r := derive(box6())
	sum := map[string]float64{}
	for _, p := range r.Patches {
		sum[p.Zone] += p.Area
	}
	for zone, want := range map[string]float64{"bottom": 12, "side": 12, "transom": 2} {
		near1(t, zone, sum[zone], want, 1e-9)
	}
	spans := map[string]float64{}
	for i := range r.Members {
		m := &r.Members[i]
		spans[strings.Fields(m.ID)[0]] += float64(m.Span.V) / 1000 * float64(m.Count.V)
	}
	near1(t, "keel", spans["keel"], 6, 1e-9)
	near1(t, "bottom stringers and frames", spans["bottom"], 2*6+2*5, 1e-9)
}
