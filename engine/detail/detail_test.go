package detail

import (
	"math"
	"os"
	"testing"
	"testing/fstest"

	"hullfile/engine/fatigue"
	"hullfile/engine/record"
	"hullfile/engine/ride"
	"hullfile/engine/unit"
)

func table(t testing.TB) *Table {
	t.Helper()
	got, err := Load(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.All()) < 15 {
		t.Fatalf("only %d classes", len(got.All()))
	}
	return got
}

func spot(id, detail string, transfer float64) record.Spot {
	return record.Spot{Entry: record.Entry{ID: id}, Place: record.Val[string]{V: id, Set: true}, Detail: record.Val[string]{V: detail, Set: true},
		Transfer: record.Val[unit.MPaPerG]{V: unit.MPaPerG(transfer), Set: true}}
}

// Blocks of the ASTM E1049 example at 10 N/mm² for one unit on class 22, slope 3: 5.137e-5 a block, reckoned independently.
func TestRanking(t *testing.T) {
	cycles, err := fatigue.Count([]float64{-2, 1, -3, 5, -1, 3, -4, 4, -2})
	if err != nil {
		t.Fatal(err)
	}
	rides := []ride.Ride{{Record: &record.Ride{Entry: record.Entry{ID: "R1"}}, Cycles: cycles, Peaks: ride.Peaks{Seconds: 36}}}
	h := &record.Hull{}
	h.Spots = []record.Spot{spot("mild", "butt-flush", 10), spot("toe", "cross-fillet-toe", 10), spot("odd", "cross-filet-toe", 10)}
	r := Assess(h, rides, table(t))
	if len(r.Spots) != 2 || r.Spots[0].Record.ID != "toe" || r.Spots[0].Relative != 1 {
		t.Fatalf("ranking %+v", r.Spots)
	}
	if want := 5.137e-5 * 100 * 100; math.Abs(r.Spots[0].Damage-want) > 1e-3*want {
		t.Errorf("damage in 100 h of such blocks, one each 36 s: %g, want %g", r.Spots[0].Damage, want)
	}
	if want := math.Pow(22.0/45, 3); math.Abs(r.Spots[1].Relative-want) > 1e-9 {
		t.Errorf("relative damage %g, want %g", r.Spots[1].Relative, want)
	}
	if len(r.Findings) != 1 || r.Findings[0].Settle != "did you mean cross-fillet-toe?" {
		t.Errorf("unknown class: %+v", r.Findings)
	}
	if r := Assess(h, nil, table(t)); r.Why == "" || len(r.Spots) > 0 {
		t.Error("a ranking without a record")
	}
}

// Lognormal with mean 1.0 and coefficient of variation 0.3: five in a hundred lie under 0.591 and over 1.552 (own arithmetic).
func TestScatter(t *testing.T) {
	s := MinerScatter()
	if math.Abs(s.Low-0.591) > 5e-4 || math.Abs(s.High-1.552) > 5e-4 {
		t.Errorf("scatter %+v", s)
	}
}

func TestTableIsRefused(t *testing.T) {
	for what, text := range map[string]string{
		"unknown key": "title=\"t\"\nwork=\"w\"\nbasis=\"recalled\"\ncolour=1\n[detail.a]\nname=\"n\"\nclass_n_mm2=20\nslope=3\n",
		"no class":    "title=\"t\"\nwork=\"w\"\nbasis=\"recalled\"\n[detail.a]\nname=\"n\"\nslope=3\n",
		"no basis":    "title=\"t\"\nwork=\"w\"\n[detail.a]\nname=\"n\"\nclass_n_mm2=20\nslope=3\n",
		"no toml":     "title=",
	} {
		if _, err := Load(fstest.MapFS{"details/x.toml": {Data: []byte(text)}}); err == nil {
			t.Errorf("%s was taken", what)
		}
	}
	var none *Table
	if _, ok := none.Find("butt"); ok || none.All() != nil {
		t.Error("classes without a table")
	}
}
