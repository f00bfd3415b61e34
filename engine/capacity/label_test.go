package capacity

import (
	"slices"
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func fieldOf(t *testing.T, r *Result, label, name string) Field {
	t.Helper()
	for _, l := range r.Labels {
		if l.Key != label {
			continue
		}
		for _, f := range l.Fields {
			if f.Name == name {
				return f
			}
		}
	}
	t.Fatalf("%s has no field %s", label, name)
	return Field{}
}

func TestLabelsSayWhatTheLawNames(t *testing.T) {
	h, b, w := launch()
	r := Assess(h, b, sheets(t), w, nil)
	keys := []string{}
	for _, l := range r.Labels {
		keys = append(keys, l.Key)
		if l.OnBoat != (l.Key == "eu") || l.OnBoat == (l.Why != "") {
			t.Errorf("%s: on the boat %v, why %q", l.Key, l.OnBoat, l.Why)
		}
		for _, f := range l.Fields {
			if f.Name == "" || f.Source == "" || f.Basis == "" {
				t.Errorf("%s: %+v", l.Key, f)
			}
		}
	}
	if !slices.Equal(keys, []string{"eu", "us", "au"}) {
		t.Errorf("labels %v", keys)
	}
	rows := []struct{ label, name, stated, reckoned string }{
		{"eu", "maker", "", "Yard"}, {"eu", "contact address", "", "Lane 1, Port"}, {"eu", "greatest load", "492 kg", "492 kg"}, {"eu", "persons", "6", "6"},
		{"au", "greatest load", "", "858 kg"}, {"au", "all persons, mass", "", "450 kg"}, {"au", "outboards, greatest mass", "", "366 kg"},
		{"us", "persons", "", ""},
	}
	for _, row := range rows {
		if f := fieldOf(t, &r, row.label, row.name); f.Stated != row.stated || f.Reckoned != row.reckoned {
			t.Errorf("%s, %s: stated %q, reckoned %q", row.label, row.name, f.Stated, f.Reckoned)
		}
	}
}

// Under 6 m an Australian plate states the flotation; from 6 m on it does not (read on the states' pages).
func TestFlotationIsStatedUnderSixMetres(t *testing.T) {
	for length, want := range map[unit.M]bool{5.99: true, 6: false, 7.4: false} {
		h, b, w := launch()
		h.Boat.LengthHull, h.Plate.Law = put(length), put([]string{"Australia"})
		r := Assess(h, b, sheets(t), w, nil)
		got := slices.ContainsFunc(r.Labels[0].Fields, func(f Field) bool { return f.Name == "flotation" })
		asked := false
		for _, c := range r.Checks {
			asked = asked || c.Rule == "plate-buoyancy"
		}
		if got != want || asked != want || r.Labels[0].Key != "au" {
			t.Errorf("%v m: field %v, check %v", length, got, asked)
		}
	}
}

// A figure on a label is never rounded up.
func TestUnitedStatesLabelIsCutOff(t *testing.T) {
	h, b, w := tender()
	h.Capacity.Displacement = put(unit.KG(4504.9 * 0.45359237)) // W is 600.98 lb
	r := Assess(h, b, sheets(t), w, nil)
	if f := fieldOf(t, &r, "us", "persons, motors and gear"); f.Reckoned != "600 lb (273 kg)" {
		t.Errorf("%q", f.Reckoned)
	}
	if f := fieldOf(t, &r, "us", "motors, horsepower"); f.Reckoned != "125 hp (93 kW)" {
		t.Errorf("%q", f.Reckoned)
	}
}

func TestAHullWithoutRecordsStillHasItsFields(t *testing.T) {
	h, _, w := tender()
	r := Assess(&record.Hull{Number: "H1"}, &record.Builder{}, sheets(t), w, nil)
	_ = h
	for _, l := range r.Labels {
		if len(l.Fields) < 5 {
			t.Errorf("%s has %d fields", l.Key, len(l.Fields))
		}
		for _, f := range l.Fields {
			if f.Large && f.Text() != "" {
				t.Errorf("%s, %s says %q without any record", l.Key, f.Name, f.Text())
			}
		}
	}
}
