package lines

import (
	"math"
	"sort"

	"hullfile/engine/finding"
)

// Fair is how one ordinate of an edge lies among its neighbours.
type Fair struct {
	Edge    Edge
	Height  bool // of the heights; else of the half breadths
	Station string
	Value   float64 // metres
	Second  float64 // second divided difference, 1/m
	Off     float64 // metres off the smooth curve through its neighbours; zero where there are too few
	HasOff  bool
	Stands  bool // stands out among the others of its edge
	Place   finding.Place
}

// Fairness holds every ordinate against the cubic through the two neighbours on either side. An ordinate stands out when
// it is off by more than eight millimetres and by more than six times the median of its edge: common practice of lofting,
// no published limit.
func (h *Hull) Fairness() []Fair {
	var out []Fair
	for e := Keel; e < edges; e++ {
		if e == Outer && !h.HasOuter || e == Knuckle && !h.HasSide {
			continue
		}
		out = append(out, h.fair(e, true)...)
		if e != Keel {
			out = append(out, h.fair(e, false)...)
		}
	}
	return out
}

func (h *Hull) fair(e Edge, height bool) []Fair {
	n := len(h.Stations)
	at := func(i int) (x, v float64) {
		p := h.Stations[i].At[e]
		if height {
			return h.Stations[i].X, p.Z
		}
		return h.Stations[i].X, p.Y
	}
	rows := make([]Fair, n)
	var offs []float64
	for i := range rows {
		_, v := at(i)
		rows[i] = Fair{Edge: e, Height: height, Station: h.Stations[i].ID, Value: v, Place: h.Stations[i].Place}
		if i > 0 && i+1 < n {
			rows[i].Second = second(at, i)
		}
		if i > 1 && i+2 < n {
			rows[i].Off, rows[i].HasOff = v-smooth(at, i), true
			offs = append(offs, math.Abs(rows[i].Off))
		}
	}
	sort.Float64s(offs)
	for i := range rows {
		if r := &rows[i]; r.HasOff {
			r.Stands = math.Abs(r.Off) > 0.008 && math.Abs(r.Off) > 6*offs[len(offs)/2]
		}
	}
	return worstOfRun(rows)
}

func second(at func(int) (float64, float64), i int) float64 {
	x0, v0 := at(i - 1)
	x1, v1 := at(i)
	x2, v2 := at(i + 1)
	return 2 * ((v2-v1)/(x2-x1) - (v1-v0)/(x1-x0)) / (x2 - x0)
}

// smooth is the cubic of Lagrange through the two neighbours on either side, at the place of ordinate i.
func smooth(at func(int) (float64, float64), i int) float64 {
	x, _ := at(i)
	sum := 0.0
	near := []int{i - 2, i - 1, i + 1, i + 2}
	for _, j := range near {
		xj, vj := at(j)
		w := vj
		for _, k := range near {
			if k != j {
				xk, _ := at(k)
				w *= (x - xk) / (xj - xk)
			}
		}
		sum += w
	}
	return sum
}

// worstOfRun keeps only the worst of neighbouring ordinates that stand out: one bad ordinate pulls those beside it.
func worstOfRun(rows []Fair) []Fair {
	for i := range rows {
		if !rows[i].Stands {
			continue
		}
		for j := max(0, i-2); j <= min(len(rows)-1, i+2); j++ {
			if math.Abs(rows[j].Off) > math.Abs(rows[i].Off) {
				rows[i].Stands = false
			}
		}
	}
	return rows
}
