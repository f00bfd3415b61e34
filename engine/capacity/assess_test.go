package capacity

import (
	"slices"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

func checkOf(t *testing.T, r *Result, rule string) finding.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Rule == rule {
			return c
		}
	}
	t.Fatalf("no check %s among %v", rule, r.Checks)
	return finding.Check{}
}

func TestAPlateThatAgrees(t *testing.T) {
	h, b, w := launch()
	r := Assess(h, b, sheets(t), w, nil)
	if len(r.Findings) > 0 {
		t.Errorf("findings %v", r.Findings)
	}
	for _, c := range r.Checks {
		if c.Standing != finding.Met {
			t.Errorf("%s is %s: %s", c.Rule, c.Standing, c.Says)
		}
	}
	if len(r.Checks) != 8 {
		t.Errorf("%d checks, want 8", len(r.Checks))
	}
	// own arithmetic: 2760 - 2120 - 148 = 492 kg, which is six persons of 75 kg
	load, ok := r.Governing(r.Load)
	if !ok || load.Name != LimitMass || load.Load != 492 || load.Persons != 6 {
		t.Errorf("governing load %+v", load)
	}
	if v, _ := r.Figures.Value("m_MTL"); v != 640 {
		t.Errorf("load with the contents of tanks %v, want 640", v)
	}
	if v, _ := r.Figures.Value("m_AU"); v != 492+366 {
		t.Errorf("load with the outboards %v, want 858", v)
	}
	if len(r.Assumptions) != 1 || !strings.Contains(r.Assumptions[0].Says, "148 kg, are taken as the contents of full fixed tanks") {
		t.Errorf("assumptions %v", r.Assumptions)
	}
}

func TestPlatesThatDisagree(t *testing.T) {
	rows := []struct {
		where string
		alter func(h *record.Hull)
		rule  string
		says  string
	}{
		{"load above what is left", func(h *record.Hull) { h.Plate.MaxLoad = put(unit.KG(500)) }, "plate-load", "the plate permits 500 kg; what the loaded mass leaves is 492 kg"},
		{"persons above those meant", func(h *record.Hull) { h.Plate.Persons = put(7) }, "plate-persons", "the plate permits 7 persons; what the loaded mass leaves: 6 persons"},
		{"engines above the plate", func(h *record.Hull) { h.Plate.Power = put(unit.KW(150)) }, "plate-power", "engines of 170 kW, the plate permits 150 kW"},
		{"another category", func(h *record.Hull) { h.Plate.Category = put("B") }, "plate-category", "the plate states category B, the record C"},
	}
	for _, row := range rows {
		h, b, w := launch()
		row.alter(h)
		r := Assess(h, b, sheets(t), w, nil)
		at := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Rule == row.rule })
		if at < 0 || r.Findings[at].Kind != finding.Contradiction || !strings.Contains(r.Findings[at].Says, row.says) || r.Findings[at].Settle == "" || len(r.Findings[at].Places) == 0 {
			t.Errorf("%s: findings %v", row.where, r.Findings)
		}
		if c := checkOf(t, &r, row.rule); c.Standing != finding.Short {
			t.Errorf("%s: %+v", row.where, c)
		}
	}
}

// Half a kilogram is the rounding of the plate; a whole one is not.
func TestAPlateIsRoundedToKilograms(t *testing.T) {
	for load, want := range map[unit.KG]finding.Standing{492: finding.Met, 492.5: finding.Met, 493: finding.Short} {
		h, b, w := launch()
		h.Plate.MaxLoad = put(load)
		r := Assess(h, b, sheets(t), w, nil)
		if c := checkOf(t, &r, "plate-load"); c.Standing != want {
			t.Errorf("%v kg is %s, want %s", load, c.Standing, want)
		}
	}
}

func TestTheBreakdownMustFitThePlate(t *testing.T) {
	h, b, _ := launch()
	h.Plate.MaxLoad = put(unit.KG(400))
	r := Assess(h, b, sheets(t), items(h, 148, 492), nil)
	if c := checkOf(t, &r, "plate-carried"); c.Standing != finding.Short || !strings.Contains(c.Says, "add up to 492 kg, without the contents of tanks; the plate permits 400 kg") {
		t.Errorf("%+v", c)
	}
}

// Each of the three questions that audits found unanswered is a gap of its own.
func TestWhatAuditsFoundWanting(t *testing.T) {
	rows := []struct {
		where   string
		alter   func(p *record.Plate)
		rule    string
		missing []string
	}{
		{"who approved", func(p *record.Plate) { p.By = record.Val[string]{} }, "plate-approved", []string{"plate.approved_by"}},
		{"in what capacity", func(p *record.Plate) { p.As = record.Val[string]{} }, "plate-approved", []string{"plate.approved_as"}},
		{"masses and standard", func(p *record.Plate) {
			p.PersonMass, p.EngineMass, p.Standard = record.Val[unit.KG]{}, record.Val[unit.KG]{}, record.Val[string]{}
		}, "plate-assumed", []string{"plate.person_mass_kg", "plate.engine_mass_kg", "plate.standard"}},
		{"seen from where", func(p *record.Plate) { p.Seen = record.Val[string]{} }, "plate-seen", []string{"plate.seen_from"}},
	}
	for _, row := range rows {
		h, b, w := launch()
		row.alter(&h.Plate)
		r := Assess(h, b, sheets(t), w, nil)
		if c := checkOf(t, &r, row.rule); c.Standing != finding.NotShown || !slices.Equal(c.Missing, row.missing) || c.Settle == "" {
			t.Errorf("%s: %+v", row.where, c)
		}
	}
}

func TestWithoutAPlate(t *testing.T) {
	h, b, w := launch()
	h.Plate = record.Plate{}
	r := Assess(h, b, sheets(t), w, nil)
	if c := checkOf(t, &r, "plate-recorded"); c.Standing != finding.NotShown || len(r.Checks) != 1 {
		t.Errorf("a finished boat: %v", r.Checks)
	}
	h.Identity.State = put("in build")
	if r = Assess(h, b, sheets(t), w, nil); len(r.Checks) != 0 {
		t.Errorf("a boat in build: %v", r.Checks)
	}
	// A plate that is there is judged whatever the state.
	h.Plate.MaxLoad = put(unit.KG(600))
	r = Assess(h, b, sheets(t), w, nil)
	if c := checkOf(t, &r, "plate-load"); c.Standing != finding.Short {
		t.Errorf("a plate in build: %+v", c)
	}
}

func TestNothingRecordedIsNotShown(t *testing.T) {
	h := &record.Hull{Number: "H1"}
	h.Plate.MaxLoad = put(unit.KG(490))
	r := Assess(h, &record.Builder{}, sheets(t), &weight.Result{}, nil)
	for _, c := range r.Checks {
		if c.Standing == finding.Met {
			t.Errorf("%s is met without any record: %s", c.Rule, c.Says)
		}
	}
	c := checkOf(t, &r, "plate-load")
	for _, key := range []string{"boat.loaded_mass_kg", "boat.light_mass_kg", "tank"} {
		if !slices.Contains(c.Missing, key) {
			t.Errorf("%s is not named among %v", key, c.Missing)
		}
	}
}

func TestLimitsOfOtherTradesGovern(t *testing.T) {
	h, b, w := launch()
	others := []Limit{
		{Name: "heel with people to one side", Persons: 5, HasPersons: true, Load: 480, HasLoad: true, Basis: finding.Read, Source: "TP 14619"},
		{Name: "information", Persons: 1, HasPersons: true, Load: 10, HasLoad: true, Info: true},
		{Name: "not shown", Why: "no lines"},
	}
	r := Assess(h, b, sheets(t), w, others)
	if l, _ := r.Governing(r.Load); l.Name != others[0].Name {
		t.Errorf("load governed by %q", l.Name)
	}
	if l, _ := r.Governing(r.Persons); l.Persons != 5 {
		t.Errorf("persons governed by %q", l.Name)
	}
	if c := checkOf(t, &r, "plate-load"); c.Standing != finding.Short || !strings.Contains(c.Says, "TP 14619") {
		t.Errorf("%+v", c)
	}
}

func TestLightCraftOfTheLastWeighing(t *testing.T) {
	h, b, w := launch()
	w.Weighings = []weight.Weighing{{Record: &record.Weighing{Entry: record.Entry{ID: "W1"}}, HasMass: true, DiffMass: 30, Reckoned: weight.Total{Items: 1}}}
	r := Assess(h, b, sheets(t), w, nil)
	// own arithmetic: 2120 + 30 weighed more; 2760 - 2150 - 148 = 462
	if l, _ := r.Governing(r.Load); l.Load != 462 || !strings.Contains(r.Light.How, "W1") {
		t.Errorf("%+v of %+v", l, r.Light)
	}
}

func TestFixedTanksAloneAreLeftOut(t *testing.T) {
	h, b, w := launch()
	h.Tanks = []record.Tank{
		{Entry: record.Entry{ID: "main"}, Volume: put(unit.Litre(200)), Density: put(unit.KGPerM3(740)), Fixed: put(true)},
		{Entry: record.Entry{ID: "can"}, Volume: put(unit.Litre(25)), Density: put(unit.KGPerM3(740)), Fixed: put(false)},
	}
	r := Assess(h, b, sheets(t), w, nil)
	// own arithmetic: 200 l at 740 kg/m³ are 148 kg
	if r.Fixed.KG != 148 || r.Fixed.Assumed || len(r.Fixed.Parts) != 2 || len(r.Assumptions) != 0 {
		t.Errorf("%+v, assumptions %v", r.Fixed, r.Assumptions)
	}
}

func BenchmarkAssess(b *testing.B) {
	h, builder, w := launch()
	lib := sheets(b)
	for b.Loop() {
		Assess(h, builder, lib, w, nil)
	}
}
