package scantling

import "testing"

// Own examples.
func TestOpened(t *testing.T) {
	for _, c := range []struct{ note, want string }{
		{"above 3 g equation 2 takes over", "Above 3 g equation 2 takes over"},
		{"k_R is 1 in planing mode", "k_R is 1 in planing mode"},
		{"a panel", "a panel"},
		{"été", "Été"},
		{"", ""},
	} {
		if got := opened(c.note); got != c.want {
			t.Errorf("%q: %q, want %q", c.note, got, c.want)
		}
	}
}
