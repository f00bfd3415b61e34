package unit

import "testing"

// Own arithmetic.
func TestUp(t *testing.T) {
	for _, c := range []struct {
		v    float64
		n    int
		want string
	}{{3.071, 2, "3.08"}, {3.07, 2, "3.07"}, {3.070000001, 2, "3.07"}, {4.181, 1, "4.2"}, {0, 2, "0.00"}} {
		if got := Up(c.v, c.n); got != c.want {
			t.Errorf("Up(%v, %d) = %s, must be %s", c.v, c.n, got, c.want)
		}
	}
}
