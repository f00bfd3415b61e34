package scantling_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// structureSheets are the shipped sheets by which a whole structure is judged.
var structureSheets = []string{"iso-12215-5-2008", "iso-12215-5-2019-frame", "light-craft-class-2011", "european-high-speed", "open-literature-planing"}

func allSheets(t testing.TB) *method.Library {
	t.Helper()
	lib, err := method.ReadShipped(os.DirFS("../../content/methods")).Library(nil)
	if err != nil {
		t.Fatalf("shipped sheets: %v", err)
	}
	return lib
}

// Every structure sheet answers under the names by which it is asked, in the units in which sizes are held against them.
func TestStructureSheetsGiveWhatIsAsked(t *testing.T) {
	lib := allSheets(t)
	member := map[string]string{"effective": "mm", "modulus": "cm³", "shear": "cm²", "moment": "kN·m", "force": "kN", "pressure": "kN/m²", "slender": ""}
	asked := map[string]map[string]string{
		"panel":     {"needed": "mm", "pressure": "kN/m²"},
		"stiffener": member,
		"primary":   member,
	}
	for _, name := range structureSheets {
		sheet, ok := lib.Sheet(name)
		if !ok {
			t.Errorf("no sheet %s", name)
			continue
		}
		for scope, gives := range asked {
			sc := scopeOf(sheet, scope)
			if sc == nil || sc.Above != "craft" {
				t.Errorf("%s has no scope %s under the craft", name, scope)
				continue
			}
			for what, sign := range gives {
				if len(sc.Gives[what]) == 0 {
					t.Errorf("%s, %s gives no %s", name, scope, what)
				}
				for _, symbol := range sc.Gives[what] {
					if got := unitOf(sc, symbol); got != sign {
						t.Errorf("%s, %s: %s is in %q, wanted %q", name, scope, symbol, got, sign)
					}
				}
			}
		}
	}
}

func scopeOf(s *method.Sheet, name string) *method.Scope {
	i := slices.IndexFunc(s.Scopes, func(sc *method.Scope) bool { return sc.Name == name })
	if i < 0 {
		return nil
	}
	return s.Scopes[i]
}

func unitOf(sc *method.Scope, symbol string) string {
	for _, st := range sc.Steps {
		if st.Symbol == symbol {
			return st.Unit
		}
	}
	return "no step"
}

// What the sheets ask of boat, panel, member, bracket and fitting is in the records under that name, or is reckoned and
// handed over; a mistyped name would leave everything not shown.
func TestStructureSheetsAskForWhatIsThere(t *testing.T) {
	lib := allSheets(t)
	reckoned := []string{"bracket.moment", "bracket.force", "renewal.needed_mm", "renewal.gauged_mm", "collision.depth_m",
		"section.web_height_mm", "section.web_thickness_mm", "section.flange_breadth_mm", "section.flange_thickness_mm", "section.outstand_mm", "section.modulus_cm3",
		"alloy.welded.yield_n_mm2", "alloy.welded.tensile_n_mm2", "alloy.parent.yield_n_mm2", "alloy.parent.tensile_n_mm2",
		"alloy.welded.factor_f1", "alloy.parent.factor_f1", "alloy.elastic_kn_mm2", "alloy.filler"}
	seen := 0
	for _, name := range append([]string{"local-loads", "brackets", "renewal"}, structureSheets...) {
		sheet, _ := lib.Sheet(name)
		for _, sc := range sheet.Scopes {
			for _, in := range sc.Inputs {
				seen++
				if strings.HasPrefix(in.From, "rules.") || slices.Contains(reckoned, in.From) || inRecords(in.From) {
					continue
				}
				t.Errorf("%s, %s: %s is neither in a record nor reckoned", name, sc.Name, in.From)
			}
		}
	}
	if seen < 250 {
		t.Errorf("only %d inputs were looked at", seen)
	}
}

func inRecords(from string) bool {
	kind, key, _ := strings.Cut(from, ".")
	entry, ok := map[string]any{"boat": &record.Boat{}, "panel": &record.Panel{}, "member": &record.Member{}, "bracket": &record.Bracket{}, "spot": &record.Fitting{}}[kind]
	if !ok {
		return false
	}
	_, known := record.Lookup(entry, key)
	return known
}

// The plate that counts is known before the section is, as the section is built with it.
func TestEffectivePlateNeedsNoSection(t *testing.T) {
	lib := allSheets(t)
	for _, name := range structureSheets {
		sheet, _ := lib.Sheet(name)
		craft, err := sheet.Evaluate("craft", choices(), nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, scope := range []string{"stiffener", "primary"} {
			w, err := sheet.Evaluate(scope, beam(200, 500), craft)
			if err != nil {
				t.Fatal(err)
			}
			for _, symbol := range w.Scope.Gives["effective"] {
				if v, ok := w.Value(symbol); !ok || !(v > 0) || v > 200 {
					t.Errorf("%s, %s: %s = %v, %v; wanted more than nought and no more than the spacing", name, scope, symbol, v, ok)
				}
			}
			if _, ok := w.Value(w.Scope.Gives["slender"][0]); ok {
				t.Errorf("%s, %s: slenderness without a section has a value", name, scope)
			}
		}
	}
}

// A member over a longer span, and one that carries more plate, never needs less; ends that turn need more than fixed ones.
func TestMembersNeedMoreOverLongerSpans(t *testing.T) {
	lib := allSheets(t)
	for _, name := range structureSheets {
		sheet, _ := lib.Sheet(name)
		craft, err := sheet.Evaluate("craft", choices(), nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, scope := range []string{"stiffener", "primary"} {
			modulus := func(g method.GivenMap) float64 {
				w, err := sheet.Evaluate(scope, g, craft)
				if err != nil {
					t.Fatal(err)
				}
				most := 0.0
				for _, symbol := range w.Scope.Gives["modulus"] {
					v, ok := w.Value(symbol)
					if !ok {
						s, _ := w.Get(symbol)
						t.Fatalf("%s, %s: %s: %s", name, scope, symbol, s.Why())
					}
					most = math.Max(most, v)
				}
				return most
			}
			last := 0.0
			for _, span := range []float64{300, 500, 700, 1000, 1500} {
				got := modulus(beam(200, span))
				if got <= last {
					t.Errorf("%s, %s: %v cm³ over %v mm, %v over the span before", name, scope, got, span, last)
				}
				last = got
			}
			if narrow, wide := modulus(beam(200, 500)), modulus(beam(300, 500)); wide <= narrow {
				t.Errorf("%s, %s: %v cm³ at 300 mm, %v at 200 mm", name, scope, wide, narrow)
			}
			turning := beam(200, 500)
			turning["member.ends"] = method.Quantity{Word: "simple", IsWord: true}
			if got, fixed := modulus(turning), modulus(beam(200, 500)); got <= fixed {
				t.Errorf("%s, %s: ends that turn need %v cm³, fixed ones %v", name, scope, got, fixed)
			}
		}
	}
}

// The wire decides what a class lets a welded plate carry: 0.60 with 5183 against 0.53 with 5356 (DNV, 2011, table B4), so
// the plate for one pressure is thicker by the root of their ratio.
func TestWireDecidesClassPlate(t *testing.T) {
	sheet, _ := allSheets(t).Sheet("light-craft-class-2011")
	craft, err := sheet.Evaluate("craft", choices(), nil)
	if err != nil {
		t.Fatal(err)
	}
	thickness := func(factor float64) float64 {
		g := method.GivenMap{"panel.zone": word("bottom"), "panel.edges": word("welded"), "panel.x_m": num(4.27, "m"), "panel.z_m": num(-0.2, "m"),
			"panel.short_side_mm": num(200, "mm"), "panel.long_side_mm": num(500, "mm"), "panel.deadrise_deg": num(19, "°"),
			"alloy.welded.factor_f1": num(factor, ""), "alloy.parent.factor_f1": num(0.89, "")}
		w, err := sheet.Evaluate("panel", g, craft)
		if err != nil {
			t.Fatal(err)
		}
		v, ok := w.Value("t_sl")
		if !ok {
			t.Fatal("no thickness for slamming")
		}
		return v
	}
	if got, want := thickness(0.53)/thickness(0.60), math.Sqrt(0.60/0.53); math.Abs(got-want) > 1e-9 {
		t.Errorf("plate with wire 5356 is %v times that with 5183, wanted %v", got, want)
	}
}

// Without the yard's choices nothing is shown by the sheets that need them: no kind of service is taken silently.
func TestChoicesAreNotTakenSilently(t *testing.T) {
	lib := allSheets(t)
	for _, name := range []string{"iso-12215-5-2019-frame", "light-craft-class-2011", "european-high-speed", "open-literature-planing"} {
		sheet, _ := lib.Sheet(name)
		g := choices()
		for from := range g {
			if strings.HasPrefix(from, "rules.") {
				delete(g, from)
			}
		}
		craft, err := sheet.Evaluate("craft", g, nil)
		if err != nil {
			t.Fatal(err)
		}
		w, err := sheet.Evaluate("stiffener", beam(200, 500), craft)
		if err != nil {
			t.Fatal(err)
		}
		s, _ := w.Get(w.Scope.Gives["modulus"][0])
		lacks := slices.ContainsFunc(s.Lacks(), func(from string) bool { return strings.HasPrefix(from, "rules.") })
		if s.State != method.Missing || !lacks {
			t.Errorf("%s: %s is %s and lacks %v", name, s.Symbol, s.State, s.Lacks())
		}
	}
}

func num(v float64, sign string) method.Quantity { return method.Quantity{Number: v, Unit: sign} }
func word(w string) method.Quantity              { return method.Quantity{Word: w, IsWord: true} }

// beam is a bottom member forward on 6 mm plate, without its section.
func beam(spacing, span float64) method.GivenMap {
	return method.GivenMap{"member.zone": word("bottom"), "member.ends": word("fixed"), "member.x_m": num(4.27, "m"), "member.z_m": num(-0.2, "m"),
		"member.hull_top_m": num(0.75, "m"), "member.spacing_mm": num(spacing, "mm"), "member.span_mm": num(span, "mm"), "member.curve_mm": num(0, "mm"),
		"member.deadrise_deg": num(19, "°"), "member.attached_mm": num(6, "mm"), "alloy.welded.yield_n_mm2": num(125, "N/mm²"),
		"alloy.welded.tensile_n_mm2": num(275, "N/mm²"), "alloy.welded.factor_f1": num(0.6, ""), "alloy.elastic_kn_mm2": num(70, "kN/mm²")}
}

// choices is the 7 m plate boat of common practice with every choice made that a sheet asks for; the figures that the frame
// of 2019 asks for are those of 2008.
func choices() method.GivenMap {
	g := method.GivenMap{"boat.length_hull_m": num(7, "m"), "boat.length_waterline_m": num(6.1, "m"), "boat.beam_chine_m": num(2, "m"),
		"boat.deadrise_deg": num(19, "°"), "boat.loaded_mass_kg": num(2400, "kg"), "boat.speed_kn": num(38, "kn"), "boat.draught_m": num(0.4, "m"),
		"boat.category": word("C"), "rules.service": word("passenger"), "rules.service_area": word("R3"), "rules.sea": word("moderate"),
		"rules.wave_height_m": num(0.6, "m"), "rules.trim_deg": num(4, "°")}
	for key, v := range map[string]float64{"one_of": 10, "kdyn_switch": 3, "kdyn_coefficient": .5, "kdyn_exponent": .17, "kdyn_least": 3, "kdyn_most": 7,
		"kl_least": 3, "kl_most": 6, "kl_aft": .167, "kl_whole_from": .6, "kar_coefficient": .1, "side_planing_part": .25, "kbb": 1, "kam": 1,
		"stress_of_tensile": .6, "stress_of_proof": .9, "member_bending": .7, "member_shear": .4, "plate_thicknesses": 60,
		"bottom_coefficient": 2.4, "bottom_exponent": .33, "bottom_constant": 20, "least_bottom_mass": .45, "least_bottom_length": .9} {
		g["rules."+key] = num(v, "")
	}
	return g
}

// Fitted sizes of common practice (practice, no published source): on a 7 m boat 6 mm with stringers at 200 mm and frames at
// 500 mm is met with room, 6 mm on fields of 500 × 1000 mm is short.
func TestBottomsOfPractice(t *testing.T) {
	rows := []struct {
		short, long unit.MM
		standing    finding.Standing
		least, most float64
	}{
		{200, 500, finding.Met, 1.7, 1.9},
		{500, 1000, finding.Short, 0.9, 0.95},
	}
	r := shipped(t)
	for _, row := range rows {
		p := bottom("B1", 6)
		p.Short, p.Long = put(row.short, 23), put(row.long, 24)
		got, _ := r.judgeOne(t, boat("C"), p)
		if got.Standing != row.standing || got.Margin < row.least || got.Margin > row.most {
			t.Errorf("6 mm on %v × %v mm: %s, %v times; wanted %s, %v to %v", row.short, row.long, got.Standing, got.Margin, row.standing, row.least, row.most)
		}
	}
}

// A sheet cannot lend steps from one scope to another beside it, so pressures stand three times in it. They must stay the same.
func TestPressuresAreTheSameInEveryScope(t *testing.T) {
	lib := allSheets(t)
	for _, name := range structureSheets {
		sheet, _ := lib.Sheet(name)
		panel := formulasOf(scopeOf(sheet, "panel"))
		stiffener, primary := formulasOf(scopeOf(sheet, "stiffener")), formulasOf(scopeOf(sheet, "primary"))
		held := 0
		for _, key := range []string{"k_LD", "k_LP", "k_ARD", "k_ARP", "P_BMD", "P_BMP", "k_Z", "P_SMD", "P_SMP", "P_BM", "P_SM", "P_DM",
			"k_l", "p_sl", "k_s", "p_sea", "p_h", "K_1", "K_A", "K_3", "K_D", "P", "part"} {
			for _, other := range []string{stiffener[key], primary[key]} {
				if panel[key] == "" && other == "" {
					continue
				}
				held++
				if panel[key] != other {
					t.Errorf("%s: %s is\n%s\nfor a panel and\n%s\nfor a member", name, key, panel[key], other)
				}
			}
		}
		if held < 4 {
			t.Errorf("%s: only %d formulas were held against each other", name, held)
		}
	}
}

// formulasOf gives all formulas of a scope by symbol, with their conditions, as they are written.
func formulasOf(sc *method.Scope) map[string]string {
	out := map[string]string{}
	for _, st := range sc.Steps {
		when := ""
		if st.When != nil {
			when = st.When.Text
		}
		out[st.Symbol] += when + ": " + st.Formula.Text + "\n"
	}
	return out
}
