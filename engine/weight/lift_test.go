package weight

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Own arithmetic: 2 000 kg stated, 200 l of fuel at 740 kg/m³ are 148 kg; fresh water is not counted.
func TestLiftingPointsCarryFullTanks(t *testing.T) {
	at := finding.Place{File: "hull.toml", Line: 1}
	h := &record.Hull{}
	h.Tanks = []record.Tank{
		{Contents: record.Written("fuel", at), Volume: record.Written(unit.Litre(200), at), Density: record.Written(unit.KGPerM3(740), at)},
		{Contents: record.Written("fresh water", at), Volume: record.Written(unit.Litre(50), at), Density: record.Written(unit.KGPerM3(1000), at)},
	}
	h.Boat.LightMass = record.Written(unit.KG(2000), at)
	l := lift(h, &Total{Mass: 1950, Items: 3})
	if l.Light != 2000 || l.Full != 2148 || !l.HasFull {
		t.Fatalf("own arithmetic: %+v", l)
	}
	for _, row := range []struct {
		kind string
		mass unit.KG
		says string
	}{
		{"lifting point", 2000, "full fuel tanks it weighs " + unit.Text(2148.0, 0) + " kg"},
		{"lifting point", 2148, ""},
		{"cleat", 2000, ""},
	} {
		h.Fittings = []record.Fitting{{Entry: record.Entry{ID: "eye"}, Kind: record.Written(row.kind, at), Mass: record.Written(row.mass, at)}}
		got := liftFindings(h, &l)
		if (row.says != "") != (len(got) == 1) || len(got) == 1 && !strings.Contains(got[0].Says, row.says) {
			t.Errorf("%s for %v kg: %v, want %q", row.kind, row.mass, got, row.says)
		}
	}
}
