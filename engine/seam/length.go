package seam

import (
	"math"
	"slices"

	"hullfile/engine/record"
)

// Metres gives the length of a joint.
func (j *Joint) Metres() float64 { return float64(j.Record.Length.V) }

// Welded gives the length of the joint that weld records cover, in metres: the union of the stretches, and the whole
// joint where one names no stretch.
func (j *Joint) Welded() float64 {
	type stretch struct{ from, to float64 }
	var all []stretch
	for _, w := range j.Welds {
		from, to := Stretch(j, w)
		all = append(all, stretch{from, to})
	}
	slices.SortFunc(all, func(a, b stretch) int {
		if a.from < b.from {
			return -1
		}
		if a.from > b.from {
			return 1
		}
		return 0
	})
	sum, end := 0.0, 0.0
	for _, s := range all {
		from := math.Max(s.from, end)
		if s.to > from {
			sum += s.to - from
			end = s.to
		}
	}
	return math.Min(sum, j.Metres())
}

// Stretch gives where a weld begins and ends along its joint, in metres.
func Stretch(j *Joint, w *record.Weld) (from, to float64) {
	to = j.Metres()
	if w.From.Set {
		from = float64(w.From.V)
	}
	if w.To.Set {
		to = float64(w.To.V)
	}
	return from, to
}

// WeldLength gives the length of one weld record, metres; the whole joint where no stretch is written.
func (m *Map) WeldLength(w *record.Weld) float64 {
	j := m.ByKey[w.Joint.V]
	if j == nil {
		return 0
	}
	from, to := Stretch(j, w)
	return math.Max(0, to-from)
}

// Seen gives how much of the joint one inspection saw, metres: as written; else the stretch of the weld it names; else the
// whole joint.
func (m *Map) Seen(j *Joint, look *record.Inspection) float64 {
	if look.Seen.Set {
		return float64(look.Seen.V)
	}
	if w := m.Welds[look.Weld.V]; w != nil && look.Weld.Set {
		return m.WeldLength(w)
	}
	return j.Metres()
}

// SeenBy gives how much of a joint was seen by one method, at most its length. Looks in process, and looks that were
// followed by a repair, count as seen too; whether the seam is good is another question.
func (m *Map) SeenBy(j *Joint, method string) float64 {
	sum := 0.0
	for _, look := range j.Looks {
		if look.Method.V == method && look.Stage.V != "in process" && look.Stage.V != "after repair" {
			sum += m.Seen(j, look)
		}
	}
	return math.Min(sum, j.Metres())
}
