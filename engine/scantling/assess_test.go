package scantling_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// The thickness decides: a millionth of a millimetre under what is needed is short, exactly as much is met.
func TestBoundary(t *testing.T) {
	r := shipped(t)
	p, _ := r.judgeOne(t, boat("C"), bottom("B3", 6))
	needed := p.Needed
	if math.Abs(float64(needed)-3.3214) > 0.0001 {
		t.Fatalf("own arithmetic: needed %v, want 3.3214", needed)
	}
	rows := []struct {
		fitted unit.MM
		want   finding.Standing
	}{{needed - 1e-6, finding.Short}, {needed, finding.Met}, {needed + 1e-6, finding.Met}}
	for _, row := range rows {
		p, c := r.judgeOne(t, boat("C"), bottom("B3", row.fitted))
		if p.Standing != row.want || c.Standing != row.want {
			t.Errorf("fitted %v of %v: %s, check %s, want %s", row.fitted, needed, p.Standing, c.Standing, row.want)
		}
	}
}

// Category B takes the greater side pressure, category C that of the mode which governs the bottom.
func TestSideFollowsItsCategory(t *testing.T) {
	r := shipped(t)
	b, _ := r.judgeOne(t, boat("B"), side("S1", 4))
	c, _ := r.judgeOne(t, boat("C"), side("S1", 4))
	if v, _ := b.Working.Value("P_SMD"); b.Pressure != v {
		t.Errorf("category B: %v, want the displacement pressure %v, which is the greater", b.Pressure, v)
	}
	if v, _ := c.Working.Value("P_SMP"); c.Pressure != v || math.Abs(v-8.16) > 0.005 {
		t.Errorf("category C: %v, want the planing pressure %v; common practice craft, own arithmetic 8.16", c.Pressure, v)
	}
}

func TestCheckSaysTheFigures(t *testing.T) {
	r := shipped(t)
	_, c := r.judgeOne(t, boat("C"), bottom("B3", 6))
	if c.Rule != "plating-thickness" || c.Subject != "panel B3" || c.Basis != finding.Recalled {
		t.Errorf("check %+v", c)
	}
	if want := "6.0 mm fitted, 3.33 mm needed (thickness for pressure, 62.1 kN/m²); 1.80 times"; c.Says != want {
		t.Errorf("says %q, want %q", c.Says, want)
	}
	if c.Needed != "3.33 mm" || c.Has != "6.0 mm" || !strings.HasPrefix(c.Source, "ISO 12215-5:2008, ") {
		t.Errorf("needed %q, has %q, source %q", c.Needed, c.Has, c.Source)
	}
	if len(c.Places) < 5 || c.Places[0] != at(20) || slices.Contains(c.Places, finding.Place{}) {
		t.Errorf("places %v, want the line of the thickness first", c.Places)
	}
	_, c = r.judgeOne(t, boat("C"), bottom("B3", 3))
	if c.Standing != finding.Short || !strings.Contains(c.Says, "3.0 mm fitted, 3.33 mm needed") || c.Settle == "" {
		t.Errorf("short: %+v", c)
	}
}

// What is missing is never filled in and never met; the check names the record key.
func TestMissingIsNotShown(t *testing.T) {
	rows := []struct {
		key  string
		lose func(*record.Hull, *record.Panel)
	}{
		{"boat.length_waterline_m", func(h *record.Hull, _ *record.Panel) { h.Boat.LengthWL.Set = false }},
		{"boat.beam_chine_m", func(h *record.Hull, _ *record.Panel) { h.Boat.BeamChine.Set = false }},
		{"boat.deadrise_deg", func(h *record.Hull, _ *record.Panel) { h.Boat.Deadrise.Set = false }},
		{"boat.loaded_mass_kg", func(h *record.Hull, _ *record.Panel) { h.Boat.LoadedMass.Set = false }},
		{"boat.speed_kn", func(h *record.Hull, _ *record.Panel) { h.Boat.Speed.Set = false }},
		{"boat.category", func(h *record.Hull, _ *record.Panel) { h.Boat.Category.Set = false }},
		{"panel.S1.zone", func(_ *record.Hull, p *record.Panel) { p.Zone.Set = false }},
		{"panel.S1.x_m", func(_ *record.Hull, p *record.Panel) { p.X.Set = false }},
		{"panel.S1.z_m", func(_ *record.Hull, p *record.Panel) { p.Z.Set = false }},
		{"panel.S1.hull_top_m", func(_ *record.Hull, p *record.Panel) { p.HullTop.Set = false }},
		{"panel.S1.short_side_mm", func(_ *record.Hull, p *record.Panel) { p.Short.Set = false }},
		{"panel.S1.long_side_mm", func(_ *record.Hull, p *record.Panel) { p.Long.Set = false }},
		{"panel.S1.edges", func(_ *record.Hull, p *record.Panel) { p.Edges.Set = false }},
		{"panel.S1.alloy", func(_ *record.Hull, p *record.Panel) { p.Alloy.Set = false }},
		{"panel.S1.thickness_mm", func(_ *record.Hull, p *record.Panel) { p.Thickness.Set = false }},
	}
	r := shipped(t)
	for _, row := range rows {
		t.Run(row.key, func(t *testing.T) {
			h, p := boat("C"), side("S1", 40)
			row.lose(h, &p)
			got, c := r.judgeOne(t, h, p)
			if got.Standing != finding.NotShown || c.Standing != finding.NotShown || got.Needed != 0 || got.Margin != 0 {
				t.Fatalf("%s, needed %v, margin %v", got.Standing, got.Needed, got.Margin)
			}
			if !slices.Contains(c.Missing, row.key) || got.Why == "" || !strings.Contains(c.Settle, row.key) {
				t.Errorf("missing %v, why %q, settle %q, want %s", c.Missing, got.Why, c.Settle, row.key)
			}
		})
	}
}

func TestSuperstructureNeedsFaceAndTread(t *testing.T) {
	r := shipped(t)
	_, c := r.judgeOne(t, boat("C"), house("H1", "front", ""))
	if c.Standing != finding.NotShown || !slices.Contains(c.Missing, "panel.H1.walked_on") {
		t.Errorf("not said whether it is walked on: %s, missing %v", c.Standing, c.Missing)
	}
	p := house("H1", "front", "false")
	p.Face.Set = false
	_, c = r.judgeOne(t, boat("C"), p)
	if c.Standing != finding.NotShown || !slices.Contains(c.Missing, "panel.H1.face") {
		t.Errorf("no face: %s, missing %v", c.Standing, c.Missing)
	}
}

// One thickness that is known and not reached is a shortfall, whatever else is missing.
func TestShortWithPartMissing(t *testing.T) {
	h, p := boat("C"), side("S1", 2)
	p.Z.Set = false
	got, c := shipped(t).judgeOne(t, h, p)
	if got.Standing != finding.Short || got.Governs != "t_min" || !slices.Contains(c.Missing, "panel.S1.z_m") {
		t.Errorf("%s by %s, missing %v: %s", got.Standing, got.Governs, c.Missing, c.Says)
	}
	if !strings.Contains(c.Says, "more may be needed") {
		t.Errorf("says %q, and not that more may be needed", c.Says)
	}
}

// A displacement craft needs neither beam between chines nor deadrise: no formula that it uses asks for them.
func TestRoundBilgeNeedsNoChine(t *testing.T) {
	h := boat("C")
	h.Boat.Speed = put(unit.Knot(7), 7)
	h.Boat.BeamChine.Set, h.Boat.Deadrise.Set = false, false
	p, _ := shipped(t).judgeOne(t, h, bottom("B1", 6))
	if p.Standing != finding.Met {
		t.Errorf("%s: %s", p.Standing, p.Why)
	}
}

func TestAlloys(t *testing.T) {
	r := shipped(t)
	p := bottom("B3", 6)
	p.Alloy = put("5059-H999", 25)
	got, c := r.judgeOne(t, boat("C"), p)
	if got.Standing != finding.NotShown || !strings.Contains(c.Says, "5059-H999") {
		t.Errorf("unknown alloy: %s %q", got.Standing, c.Says)
	}
	p.Alloy = put("5086-O", 25)
	got, c = r.judgeOne(t, boat("C"), p)
	if got.Standing != finding.NotShown || !strings.Contains(c.Says, "as-welded") || strings.Contains(c.Settle, "write") {
		t.Errorf("alloy without an as-welded value in the method: %s %q, settle %q", got.Standing, c.Says, c.Settle)
	}
	p = bottom("B3", 6)
	p.Edges = put("not welded", 26)
	riveted, _ := r.judgeOne(t, boat("C"), p)
	if v, _ := riveted.Working.Value("sigma_d"); v != 183 {
		t.Errorf("design stress without weld %v, own arithmetic min(0.6 × 305, 0.9 × 215) = 183", v)
	}
}

func TestSheetIsNamedOrAssumed(t *testing.T) {
	r := shipped(t)
	h := boat("C")
	h.Panels = []record.Panel{bottom("B3", 6)}
	h.Rules.Structure = record.Val[string]{}
	out := r.assess(h)
	if !out.Assumed || out.Sheet == nil || len(out.Assumptions) != 1 || !strings.Contains(out.Assumptions[0].Says, "iso-12215-5-2008") {
		t.Errorf("no sheet is named: assumed %v, %+v", out.Assumed, out.Assumptions)
	}
	if out.Panels[0].Standing != finding.Met {
		t.Errorf("panel by the assumed sheet: %s", out.Panels[0].Why)
	}
	h.Rules.Structure = put("no-such-sheet", 9)
	out = r.assess(h)
	if out.Sheet != nil || out.Assumed || out.Checks[0].Standing != finding.NotShown || !strings.Contains(out.Checks[0].Says, `"no-such-sheet"`) {
		t.Errorf("unknown sheet: %+v", out.Checks[0])
	}
}

func TestNoPanelsIsAGap(t *testing.T) {
	out := shipped(t).assess(boat("C"))
	if len(out.Checks) != 1 || out.Checks[0].Standing != finding.NotShown || !slices.Contains(out.Checks[0].Missing, "panel") {
		t.Errorf("a hull without panels: %+v", out.Checks)
	}
}

// A sheet of the yard's own that asks for nothing, or takes its values from a source without strengths, shows nothing.
func TestYardSheets(t *testing.T) {
	const head = "title = \"Own\"\nwork = \"Own rule\"\nstanding = \"own\"\n" +
		"[[craft.input]]\nsymbol = \"m\"\nname = \"mass\"\nunit = \"kg\"\nfrom = \"boat.loaded_mass_kg\"\n" +
		"[panel]\nabove = \"craft\"\n"
	const asks = "[panel.gives]\nneeded = [\"t\"]\n"
	const input = "[[panel.input]]\nsymbol = \"s\"\nname = \"proof strength\"\nunit = \"N/mm²\"\nfrom = \"alloy.welded.yield_n_mm2\"\n"
	const step = "[[panel.step]]\nsymbol = \"t\"\nname = \"thickness\"\nunit = \"mm\"\nformula = \"m / s / 10\"\nclause = \"1\"\nbasis = \"yard\"\n"
	rows := []struct{ name, text, says string }{
		{"asks for no thickness", head + input + step, "asks for no thickness"},
		{"no such source of strengths", head + asks + input + step, `"Own rule" gives no as-welded strength`},
		{"no panel scope", "title = \"Own\"\nwork = \"Own rule\"\nstanding = \"own\"\n[[craft.input]]\nsymbol = \"m\"\nname = \"mass\"\nunit = \"kg\"\nfrom = \"boat.loaded_mass_kg\"\n", "no scope"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			lib, err := method.ReadShipped(fstest.MapFS{}).Library([]method.Source{{Name: "own.toml", Path: "methods/own.toml", Text: []byte(row.text)}})
			if err != nil {
				t.Fatal(err)
			}
			h := boat("C")
			h.Rules.Structure = put("own", 9)
			p, c := rig{lib, shipped(t).alloys}.judgeOne(t, h, bottom("B3", 6))
			if p.Standing != finding.NotShown || !strings.Contains(c.Says, row.says) {
				t.Errorf("%s: %q, want %q", p.Standing, c.Says, row.says)
			}
		})
	}
}

// Where both modes ask the same of the bottom, neither governs, and the side takes the greater pressure. Own arithmetic:
// a light boat, a panel so large that both bottom pressures are the least pressure.
func TestSideWhereNoModeGoverns(t *testing.T) {
	h := hand{lwl: 4, bc: 1.2, deadrise: 17, mass: 600, speed: 12, category: "D", zone: "side", z: 0.2, top: 0.6, short: 1500, long: 3000}
	p, _ := shipped(t).judgeOne(t, first(h.record()), second(h.record()))
	slow, _ := p.Working.Value("P_BMD")
	fast, _ := p.Working.Value("P_BMP")
	sideSlow, _ := p.Working.Value("P_SMD")
	sideFast, _ := p.Working.Value("P_SMP")
	if slow != fast || p.Pressure != max(sideSlow, sideFast) {
		t.Errorf("bottom %v and %v, side %v and %v, taken %v", slow, fast, sideSlow, sideFast, p.Pressure)
	}
	near(t, "pressure", p.Pressure, h.pressure())
}
