package finding

import "testing"

func TestNearest(t *testing.T) {
	known := []string{"formula", "range", "clause", "basis", "symbol", "k_2", "k_C"}
	rows := []struct {
		word, want string
		ok         bool
	}{
		{"fromula", "formula", true},
		{"Formula", "formula", true},
		{"basiss", "basis", true},
		{"k_c", "k_C", true},
		{"k_3", "k_2", true},
		{"thickness", "", false},
		{"", "", false},
		{"σ_d", "", false},
		{"b", "", false},
	}
	for _, r := range rows {
		got, ok := Nearest(r.word, known)
		if got != r.want || ok != r.ok {
			t.Errorf("own arithmetic: Nearest(%q) = %q, %v, want %q, %v", r.word, got, ok, r.want, r.ok)
		}
	}
}
