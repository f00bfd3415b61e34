package record

import "testing"

// TestStockAndProceduresAreReadWhole: every file of both folders is one record, and a number keeps its decimals
// whether it came from TOML, from a table with points or from one with commas.
func TestStockAndProceduresAreReadWhole(t *testing.T) {
	y := yardOf(t, "build")
	var lots []string
	for _, l := range y.Stock.Lots {
		lots = append(lots, l.ID+" "+l.Thickness.Text+" "+l.Mg.Text)
	}
	for i, want := range []string{"P2 4.0 4.60", "P1 6.00 4.50"} {
		if i >= len(lots) || lots[i] != want {
			t.Errorf("lots are %q, expected %q as number %d", lots, want, i+1)
		}
	}
	if c := y.Stock.Consumables; len(c) != 1 || c[0].Diameter.Text != "1.20" || c[0].Diameter.At.String() != "stock/consumables.csv:2:11" {
		t.Errorf("consumables: %+v", c)
	}
	if p := y.Welding; len(p.Procedures) != 1 || len(p.Tests) != 1 || p.Procedures[0].Tests.V[0] != "T1" {
		t.Errorf("procedures: %+v", p)
	}
	q := y.Builder.Qualifications
	if len(q) != 2 || len(q[0].Confirmations) != 1 || len(q[1].Confirmations) != 1 || q[1].Confirmations[0].Date.V.ISO() != "2026-03-01" {
		t.Errorf("qualifications: %+v", q)
	}
	if h := y.Hulls[0]; len(h.Parts) != 1 || len(h.Joints) != 1 || h.Joints[0].Length.Text != "2.40" {
		t.Errorf("hull: %+v", h.Joints)
	}
	if len(y.Doubts) != 0 {
		t.Errorf("doubts: %+v", y.Doubts)
	}
}
