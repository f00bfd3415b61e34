package inspection

import (
	"errors"
	"math"
	"path"
	"strings"
	"testing"

	"hullfile/content"
	"hullfile/engine/finding"
	"hullfile/engine/held"
)

func shipped(t *testing.T) *Limits {
	t.Helper()
	l, err := LoadLimits(content.Files)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// nan stands for what nobody measured.
var nan = math.NaN()

func TestJudge(t *testing.T) {
	plate := func(mm float64) Weld { return Weld{T: mm, S: mm, A: nan, B: nan} }
	fillet := func(mm, a float64) Weld { return Weld{Fillet: true, T: mm, S: nan, A: a, B: 8} }
	rows := []struct {
		where string
		flaw  Flaw
		level string
		weld  Weld
		want  finding.Standing
		most  float64
	}{
		// ISO 10042:2018, limits recalled; the sizes are our own, just inside and just outside.
		{"row 100: no crack at any level", Flaw{"101", "surface", 0.1, 1}, "D", plate(6), finding.Short, nan},
		{"row 100: a branching crack too", Flaw{"1061", "surface", 0.1, 1}, "D", plate(6), finding.Short, nan},
		{"row 104 at D, inside", Flaw{"104", "surface", 1.6, 1.6}, "D", fillet(6, 4), finding.Met, 1.6},
		{"row 104 at D, too long", Flaw{"104", "surface", 1.6, 1.7}, "D", fillet(6, 4), finding.Short, 1.6},
		{"row 104 at C", Flaw{"104", "surface", 0.1, 0.1}, "C", fillet(6, 4), finding.Short, nan},
		{"row 2017 up to 3 mm: 0.2 s", Flaw{"2017", "surface", 0.6, nan}, "C", plate(3), finding.Met, 0.6},
		{"row 2017 up to 3 mm, outside", Flaw{"2017", "surface", 0.61, nan}, "C", plate(3), finding.Short, 0.6},
		{"row 2017 above 3 mm: 0.3 s", Flaw{"2017", "surface", 0.93, nan}, "C", plate(3.1), finding.Met, 0.93},
		{"row 2017 above 3 mm: at most 1.5", Flaw{"2017", "surface", 1.51, nan}, "C", plate(8), finding.Short, 1.5},
		{"row 2017 in a fillet is a part of the throat", Flaw{"2017", "surface", 1.2, nan}, "C", fillet(6, 4), finding.Met, 1.2},
		{"row 5011: 0.1 t", Flaw{"5011", "surface", 0.4, 60}, "C", plate(4), finding.Met, 0.4},
		{"row 5011: 0.1 t at most 0.5", Flaw{"5011", "surface", 0.55, 60}, "C", plate(8), finding.Short, 0.5},
		{"row 5012: short", Flaw{"5012", "surface", 0.5, 25}, "C", plate(6), finding.Met, 0.6},
		{"row 5012: not short", Flaw{"5012", "surface", 0.5, 26}, "C", plate(6), finding.Short, 0.6},
		{"row 5012: length not known", Flaw{"5012", "surface", 0.5, nan}, "C", plate(6), finding.NotShown, 0.6},
		{"row 502: 1.5 + 0.15 b", Flaw{"502", "surface", 3.0, nan}, "C", Weld{T: 6, S: 6, A: nan, B: 10}, finding.Met, 3},
		{"row 502: width not known", Flaw{"502", "surface", 3.0, nan}, "C", plate(6), finding.NotShown, nan},
		{"row 507: 0.3 t", Flaw{"507", "surface", 1.2, nan}, "C", plate(4), finding.Met, 1.2},
		{"row 507: its kind 5071", Flaw{"5071", "surface", 1.3, nan}, "C", plate(4), finding.Short, 1.2},
		{"row 2012 inside, 3 to 12 mm", Flaw{"2012", "inside", 4, nan}, "C", plate(6), finding.Met, 4},
		{"row 2012 inside, up to 3 mm", Flaw{"2012", "inside", 4, nan}, "C", plate(3), finding.Short, 2},
		{"row 2012 at the surface", Flaw{"2012", "surface", 1.1, nan}, "C", plate(6), finding.Short, 1},
		{"row 4011 is a kind of 401", Flaw{"4011", "inside", 0.1, 5}, "C", plate(6), finding.Short, nan},
		{"row 5213: 0.2 a", Flaw{"5213", "surface", 0.8, 20}, "C", fillet(6, 4), finding.Met, 0.8},
		{"size not known", Flaw{"5011", "surface", nan, nan}, "C", plate(6), finding.NotShown, 0.5},
		{"no row", Flaw{"602", "surface", 1, nan}, "C", plate(6), finding.NotShown, nan},
		{"no such level", Flaw{"5011", "surface", 0.1, nan}, "A", plate(6), finding.NotShown, nan},
	}
	l := shipped(t)
	for _, r := range rows {
		v := l.Judge(r.flaw, r.level, r.weld)
		if v.Standing != r.want {
			t.Errorf("%s: %s, want %s: %s", r.where, v.Standing, r.want, v.Says)
		}
		if math.IsNaN(v.Allowed) != math.IsNaN(r.most) || math.Abs(v.Allowed-r.most) > 1e-9 {
			t.Errorf("%s: leaves %v, want %v", r.where, v.Allowed, r.most)
		}
		if v.Says == "" {
			t.Errorf("%s: says nothing", r.where)
		}
	}
}

// A sharper level never leaves more.
func TestLevelsAreInOrder(t *testing.T) {
	for _, r := range shipped(t).Rows {
		for _, of := range []float64{0.5, 2, 4, 6, 12, 40} {
			left := func(l Level) float64 {
				if l.No {
					return 0
				}
				return l.leaves(of)
			}
			if d, c, b := left(r.D), left(r.C), left(r.B); d < c || c < b {
				t.Errorf("%s %s at %v: D %v, C %v, B %v", r.Imperfection, r.Name, of, d, c, b)
			}
		}
	}
}

func TestLimitsThatJudgeByNothing(t *testing.T) {
	rows := []struct{ where, text, says string }{
		{"unknown key", "work='w'\nedition='1'\n[[limit]]\nimperfection='1'\nname='n'\nbasis='read'\ndepth=1\nD={no=true}\nC={no=true}\nB={no=true}", "unknown key"},
		{"no level", "work='w'\nedition='1'\n[[limit]]\nimperfection='1'\nname='n'\nbasis='read'\nD={no=true}\nC={no=true}", "level leaves nothing"},
		{"part of nothing", "work='w'\nedition='1'\n[[limit]]\nimperfection='1'\nname='n'\nbasis='read'\nD={times=0.1}\nC={no=true}\nB={no=true}", "times of what"},
		{"no edition", "work='w'\n[[limit]]\nimperfection='1'\nname='n'\nbasis='read'\nD={no=true}\nC={no=true}\nB={no=true}", "need a work and an edition"},
		{"no basis", "work='w'\nedition='1'\n[[limit]]\nimperfection='1'\nname='n'\nD={no=true}\nC={no=true}\nB={no=true}", "basis"},
		{"not a number", "work='w'\nedition='1'\n[[limit]]\nimperfection='1'\nname='n'\nbasis='read'\nD={plus=nan}\nC={no=true}\nB={no=true}", "impossible"},
		{"no TOML", "work = ", "expected value"},
	}
	for _, r := range rows {
		_, err := LoadLimits(content.Files, held.Source{Name: path.Base(LimitsFile), Path: LimitsFile, Text: []byte(r.text)})
		var faults finding.Faults
		if !errors.As(err, &faults) || !strings.Contains(err.Error(), r.says) {
			t.Errorf("%s: %v, want %q", r.where, err, r.says)
		}
	}
}

func TestPressureOfATightChamber(t *testing.T) {
	rows := []struct {
		where                string
		start, air, from, to float64
		want, tol            float64
	}{
		// Law of ideal gas. 15 kPa at 20 °C: one kelvin changes (15 + 101.325) / 293.15 = 0.397 kPa. Own arithmetic.
		{"nothing changes", 15, 101.325, 20, 20, 15, 1e-9},
		{"one kelvin warmer", 15, 101.325, 20, 21, 15.397, 0.0005},
		{"one kelvin colder", 15, 101.325, 20, 19, 14.603, 0.0005},
		{"a cold night", 20, 100, 18, 6, 15.054, 0.001},
		{"low pressure", 3, 98.7, 10, 12, 3.718, 0.001},
	}
	for _, r := range rows {
		if got := Expected(r.start, r.air, r.from, r.to); math.Abs(got-r.want) > r.tol {
			t.Errorf("%s: %v, want %v", r.where, got, r.want)
		}
	}
	if !math.IsNaN(Expected(15, 101.325, -300, 20)) {
		t.Error("below absolute zero there is a pressure")
	}
	// U-tube, own arithmetic: 15 kPa / (1000 x 9.80665) = 1.530 m; 20 kPa 2.039 m.
	for kPa, want := range map[float64]float64{15: 1.530, 20: 2.039, 7: 0.714} {
		if got := Head(kPa); math.Abs(got-want) > 0.0005 {
			t.Errorf("head of %v kPa: %v m, want %v", kPa, got, want)
		}
	}
}
