package unit

import (
	"math"
	"testing"
)

func TestFigures(t *testing.T) {
	rows := []struct {
		where string
		v     float64
		n     int
		want  string
	}{
		{"own arithmetic: nought", 0, 3, "0"},
		{"own arithmetic: nought below nought", math.Copysign(0, -1), 3, "0"},
		{"own arithmetic: one", 1, 3, "1.00"},
		{"own arithmetic: three figures of a pressure", 62.1349, 3, "62.1"},
		{"own arithmetic: whole digits stay", 2753.4, 3, "2\u00a0753"},
		{"own arithmetic: below one", 0.49666, 3, "0.497"},
		{"own arithmetic: small", 0.00123456, 3, "0.00123"},
		{"own arithmetic: carry to the next ten", 9.9996, 3, "10.0"},
		{"own arithmetic: power of ten", 1.2345e-7, 3, "1.23×10⁻⁷"},
		{"own arithmetic: great and below nought", -4.5678e12, 3, "−4.57×10¹²"},
		{"own arithmetic: not a number", math.NaN(), 3, "–"},
	}
	for _, r := range rows {
		if got := Figures(r.v, r.n); got != r.want {
			t.Errorf("%s: Figures(%v, %d) = %q, want %q", r.where, r.v, r.n, got, r.want)
		}
	}
}

func TestPlain(t *testing.T) {
	rows := []struct {
		v    float64
		want string
	}{
		{34, "34"}, {34.5, "34.5"}, {2750, "2\u00a0750"}, {0.0625, "0.0625"}, {-3, "−3"}, {0, "0"},
		{1.0 / 3, "0.333333"}, {1e-6, "1×10⁻⁶"}, {100, "100"}, {1250000, "1\u00a0250\u00a0000"},
	}
	for _, r := range rows {
		if got := Plain(r.v); got != r.want {
			t.Errorf("own arithmetic: Plain(%v) = %q, want %q", r.v, got, r.want)
		}
	}
}
