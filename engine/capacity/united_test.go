package capacity

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Own arithmetic by the sections named in the sheet.
func TestCapacityRuleBySecondHand(t *testing.T) {
	h, b, w := tender()
	r := Assess(h, b, sheets(t), w, nil)
	rows := []struct {
		working *method.Working
		symbol  string
		want    float64
		tol     float64
	}{
		{r.Loading, "W", 600, 1e-6},                                   // (4500 - 1500) / 5
		{r.Loading, "w_E", 345, 1e-6},                                 // 286 + 14 + 45
		{r.Loading, "P_1", 255, 1e-6},                                 // 600 - 345
		{r.Loading, "P_h", 141, 1e-6},                                 // 600 - 459
		{r.Loading, "P_2", 100 / 0.45359237 / 0.6, 1e-6},              // the lesser of both list tests
		{r.Loading, "P", 255, 1e-6},                                   // 255 against 367
		{r.Loading, "n_P", 2, 0},                                      // 287 / 141 = 2.035
		{r.Loading, "m_L", 255 * 0.45359237, 1e-6},                    //
		{r.Power, "F", 5.2 * 1.9 / 0.3048 / 0.3048, 1e-6},             // 106.35
		{r.Power, "H", 2*5.2*1.9/0.3048/0.3048 - 90, 1e-6},            // 122.69
		{r.Power, "H_max", 125, 0},                                    //
		{r.Flotation, "K", 1 - 1000.0/2660, 1e-12},                    //
		{r.Flotation, "G", 255 + 14 + 25, 1e-9},                       //
		{r.Flotation, "C_lev", 141, 1e-6},                             //
		{r.Flotation, "F_c", 0.5 * 255 / (62.4 - 35/16.018463), 1e-6}, // the handbook's capacity leaves no gear beside the persons
	}
	for _, row := range rows {
		got, ok := row.working.Value(row.symbol)
		if !ok || math.Abs(got-row.want) > row.tol {
			s, _ := row.working.Get(row.symbol)
			t.Errorf("%s is %v, want %v (%+v)", row.symbol, got, row.want, s)
		}
	}
}

// Every row of the table of outboards adds up: running weight, controls, battery and tank are the total (own arithmetic on
// the printed rows), and running is dry and a twentieth more, to the pound (note of the table).
func TestOutboardTableAddsUp(t *testing.T) {
	sheet, ok := sheets(t).Sheet(sheetUnited)
	if !ok {
		t.Fatal("no sheet")
	}
	tables := map[string]*method.Table{}
	for _, table := range sheet.Tables {
		tables[table.Name] = table
	}
	at := func(name string, hp float64) float64 {
		table := tables[name]
		for i := len(table.X) - 1; i >= 0; i-- {
			if table.X[i] <= hp {
				return table.Y[i]
			}
		}
		t.Fatalf("%s has no row for %v", name, hp)
		return 0
	}
	rows := tables["outboard_total"].X
	if len(rows) != 14 {
		t.Fatalf("%d rows, the table has 14", len(rows))
	}
	for _, hp := range rows {
		sum := at("outboard_running", hp) + at("outboard_controls", hp) + at("battery_dry", hp) + at("portable_tank", hp)
		if total := at("outboard_total", hp); sum != total {
			t.Errorf("from %v hp: %v, total %v", hp, sum, total)
		}
		if dry := at("outboard_dry", hp); math.Abs(1.05*dry-at("outboard_running", hp)) > 1 {
			t.Errorf("from %v hp: dry %v, running %v", hp, dry, at("outboard_running", hp))
		}
		if run := at("outboard_running", hp); math.Abs(0.85*run-at("outboard_swamped", hp)) > 1 {
			t.Errorf("from %v hp: running %v, swamped %v", hp, run, at("outboard_swamped", hp))
		}
	}
}

// The rounding of persons, and where the list test is asked: bounds of the rule itself.
func TestBoundsOfTheRule(t *testing.T) {
	persons := func(pounds float64) float64 {
		h, b, w := tender()
		h.ListTests = nil
		// left of the weight: five times (pounds + 345) and the boat
		h.Capacity.Displacement = put(unit.KG((5*(pounds+345) + 1500) * 0.45359237))
		r := Assess(h, b, sheets(t), w, nil)
		v, _ := r.Loading.Value("n_P")
		return v
	}
	for pounds, want := range map[float64]float64{602.4: 4, 602.5: 5, 602.6: 5, 743.4: 5, 743.5: 6} { // (602.5 + 32) / 141 = 4.5
		if got := persons(pounds); got != want {
			t.Errorf("%v lb are %v persons, want %v", pounds, got, want)
		}
	}
	h, b, w := tender()
	h.ListTests = nil
	r := Assess(h, b, sheets(t), w, nil)
	if s, _ := r.Loading.Get("P"); s.State != method.Missing || !strings.Contains(strings.Join(s.Lacks(), " "), "list_test.weight_kg") {
		t.Errorf("under 550 lb without a list test: %+v", s)
	}
}

func TestPowerRows(t *testing.T) {
	power := func(factor float64, flat bool) (float64, bool) {
		h, b, w := tender()
		h.Capacity.Length, h.Capacity.Transom = put(unit.M(10*0.3048)), put(unit.M(factor/10*0.3048))
		h.Capacity.Remote, h.Capacity.Flat = put(false), put(flat)
		r := Assess(h, b, sheets(t), w, nil)
		return r.Power.Value("H_max")
	}
	rows := []struct {
		factor float64
		flat   bool
		want   float64
		none   bool
	}{
		{35.4, false, 3, false}, {35.5, false, 5, false}, {39.4, false, 5, false}, {39.5, false, 7.5, false}, {42.5, false, 10, false}, {45.5, false, 15, false}, {52.4, false, 15, false},
		{36, true, 3, false}, {46, true, 10, false}, {35, true, 0, true},
		{60, true, 15, false},  // 0.5 × 60 - 15
		{60, false, 25, false}, // 0.8 × 60 - 25 = 23, raised
		{62.5, false, 25, false},
	}
	for _, row := range rows {
		got, ok := power(row.factor, row.flat)
		if ok == row.none || got != row.want {
			t.Errorf("factor %v, flat %v: %v, want %v", row.factor, row.flat, got, row.want)
		}
	}
}

func TestTheRuleBindsOnlyWhereItReaches(t *testing.T) {
	rows := []struct {
		where string
		alter func(h *record.Hull)
		binds bool
		why   string
	}{
		{"5.2 m, for the United States", func(h *record.Hull) {}, true, ""},
		{"20 feet to the hair", func(h *record.Hull) { h.Capacity.Length = put(unit.M(6.096)) }, false, "20.0 ft; it is for boats under 20 ft"},
		{"just under", func(h *record.Hull) { h.Capacity.Length = put(unit.M(6.095)) }, true, ""},
		{"for another country", func(h *record.Hull) { h.Plate.Law = put([]string{"EU"}) }, false, "does not say that the boat's plates stand under the law of the United States"},
		{"no length", func(h *record.Hull) { h.Boat.LengthHull = record.Val[unit.M]{} }, false, "no length is written"},
	}
	for _, row := range rows {
		h, b, w := tender()
		row.alter(h)
		r := Assess(h, b, sheets(t), w, nil)
		if beyond := r.American.Beyond; beyond != strings.Contains(row.why, "under 20 ft") || beyond && r.American.Length {
			t.Errorf("%s: %+v", row.where, r.American)
		}
		if r.American.Binds != row.binds || !strings.Contains(r.American.Why, row.why) {
			t.Errorf("%s: %+v", row.where, r.American)
		}
		for _, l := range r.Limits {
			if l.Name == LimitUnited && (l.Info == row.binds || l.HasLoad && !row.binds && !strings.Contains(l.Why, row.why)) {
				t.Errorf("%s: %+v", row.where, l)
			}
		}
	}
}

func TestUnitedStatesChecks(t *testing.T) {
	h, b, w := tender()
	h.Buoyancy = []record.Buoyancy{{Kind: put("foam"), Volume: put(unit.Litre(100)), Both: put(true)}, {Kind: put("chamber"), Volume: put(unit.Litre(40))}}
	h.Plate.WithEngine, h.Plate.Power = put(unit.KG(300)), put(unit.KW(100))
	r := Assess(h, b, sheets(t), w, nil)
	for rule, says := range map[string]string{
		"plate-load-us":  "the label permits 300 kg with the outboards, the rule 272 kg",
		"plate-power-us": "the plate permits 100.0 kW, the rule 93.2 kW",
		"flotation-us":   "200 l of foam fitted",
	} {
		if c := checkOf(t, &r, rule); c.Standing != finding.Short || !strings.Contains(c.Says, says) || c.Settle == "" {
			t.Errorf("%+v", c)
		}
	}
	if r.Foam.Litres != 200 || r.Foam.Chambers != 0 || r.Foam.Pieces != 3 {
		t.Errorf("foam %+v", r.Foam)
	}
}

func TestInboardAndOars(t *testing.T) {
	for drive, want := range map[string]float64{
		"inboard":        3000.0 / 7,        // greater than (3000 - 4 × 500) / 5 = 200
		"oars":           0.3 * 3000 * 0.9,  //
		"small outboard": 0.3*3000*0.9 - 25, //
	} {
		h, b, w := tender()
		h.Capacity.Drive, h.Capacity.Machinery = put(drive), put(unit.KG(500*0.45359237))
		r := Assess(h, b, sheets(t), w, nil)
		if got, ok := r.Loading.Value("P_1"); !ok || math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %v, want %v", drive, got, want)
		}
	}
}
