package weld

import (
	"os"
	"testing"
)

// How far heat softens the plate: Dwight 1999, 6.5.3, one inch; 25 mm or three thicknesses as the Aluminum Association is
// reported; EN 1999-1-1:2007 by thickness (recalled). Which row gives the most is own arithmetic.
func TestSoftened(t *testing.T) {
	r, err := LoadRanges(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		process string
		t, want float64
		by      string
		beside  int
	}{
		{"131", 4, 25, "one inch", 2},
		{"131", 6, 25, "one inch", 2},
		{"131", 8, 30, "by thickness, gas-shielded wire, no warmer than 60 °C between runs", 2},
		{"131", 12, 36, "one inch or three thicknesses", 2},
		{"141", 4, 30, "by thickness, tungsten arc", 2},
		{"141", 8, 25, "one inch", 1},
		{"43", 5, 25, "one inch", 1},
	} {
		got := r.Fillets.Softened(c.process, c.t)
		if !got.Known || got.MM != c.want || got.By.Name != c.by || len(got.Beside) != c.beside {
			t.Errorf("process %s, %v mm: %+v, want %v by %s with %d beside", c.process, c.t, got, c.want, c.by, c.beside)
		}
		for _, other := range got.Beside {
			if other.Reach(c.t) > got.MM {
				t.Errorf("process %s, %v mm: %s gives more", c.process, c.t, other.Name)
			}
		}
	}
	if (&Fillets{}).Softened("131", 4).Known {
		t.Error("without rows a reach is known")
	}
}
