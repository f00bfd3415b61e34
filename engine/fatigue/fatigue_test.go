package fatigue

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// ASTM E1049-85, worked example of rainflow counting: the history and the cycles it counts.
var astm = []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}

func TestASTMExample(t *testing.T) {
	got, err := Count(astm)
	if err != nil {
		t.Fatal(err)
	}
	counts, total := map[float64]float64{}, 0.0
	for _, c := range got {
		counts[c.Range] += c.Count
		total += c.Count
	}
	for size, want := range map[float64]float64{1: 0, 2: 0, 3: 0.5, 4: 1.5, 5: 0, 6: 0.5, 7: 0, 8: 1.0, 9: 0.5, 10: 0} {
		if counts[size] != want {
			t.Errorf("range %g: %g cycles, the standard counts %g", size, counts[size], want)
		}
	}
	if total != 4 {
		t.Errorf("%g cycles in all, the standard counts 4", total)
	}
	wants := []Cycle{{3, -.5, .5}, {4, -1, .5}, {4, 1, 1}, {6, 1, .5}, {8, 1, .5}, {8, 0, .5}, {9, .5, .5}}
	for _, w := range wants {
		found := false
		for _, c := range got {
			found = found || c == w
		}
		if !found {
			t.Errorf("no cycle %+v among %+v", w, got)
		}
	}
}

// One unit 10 N/mm², class 22, slope 3, reckoned independently: 5.137e-5 a block, 19 466 blocks to failure, equivalent 64.9.
func TestDamageOfTheExample(t *testing.T) {
	cycles, _ := Count(astm)
	d, err := Damage(cycles, 10, Detail{22, 3})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "damage of one block", d, 5.137e-5, 5e-9)
	near(t, "blocks to a sum of one", 1/d, 19466, 2)
	near(t, "equivalent range", Equivalent(cycles, 10, 3), 64.9, 0.05)
}

// Lives at constant range, reckoned independently from N = 2e6 (class/range)^3.
func TestLives(t *testing.T) {
	rows := []struct{ class, stress, n float64 }{{12, 20, 4.3e5}, {28, 20, 5.5e6}, {36, 30, 3.5e6}}
	for _, r := range rows {
		n, err := Detail{r.class, 3}.Cycles(r.stress)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "cycles", n, r.n, 0.05*r.n)
	}
}

// Counting a history piece by piece is counting it whole; scaling scales every range; the number of reversals is used up.
func TestCountingHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.SliceOfN(rapid.Float64Range(-50, 50), 2, 200).Draw(t, "history")
		k := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		a, err := Count(h)
		if err != nil {
			t.Fatal(err)
		}
		scaled := make([]float64, len(h))
		for i, v := range h {
			scaled[i] = v * k
		}
		b, _ := Count(scaled)
		da, _ := Damage(a, k, Detail{30, 3})
		db, _ := Damage(b, 1, Detail{30, 3})
		if math.Abs(da-db) > 1e-9*(da+db)+1e-300 {
			t.Fatalf("damage %g of the scaled count, %g of the count of the scaled history", da, db)
		}
		most, low, high := 0.0, math.Inf(1), math.Inf(-1)
		for _, c := range a {
			most = math.Max(most, c.Range)
		}
		for _, v := range h {
			low, high = math.Min(low, v), math.Max(high, v)
		}
		if math.Abs(most-(high-low)) > 1e-12 {
			t.Fatalf("greatest range %g, history spans %g", most, high-low)
		}
	})
}

func TestRefusesNoNumber(t *testing.T) {
	if _, err := Count([]float64{1, math.NaN(), 2}); err == nil {
		t.Error("a value that is no number was counted")
	}
	if _, err := (Detail{0, 3}).Cycles(10); err == nil {
		t.Error("a detail without class was used")
	}
}

func BenchmarkCount(b *testing.B) {
	h := make([]float64, 1_000_000)
	s := uint64(1)
	for i := range h {
		s = s*6364136223846793005 + 1442695040888963407
		h[i] = float64(s>>40) / (1 << 24)
	}
	b.SetBytes(int64(8 * len(h)))
	for b.Loop() {
		c := NewCounter(func(Cycle) {})
		for _, v := range h {
			_ = c.Add(v)
		}
		c.End()
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tol)
	}
}
