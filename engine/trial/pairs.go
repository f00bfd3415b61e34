package trial

import (
	"fmt"
	"math"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// reciprocalWithin is how far from opposite two headings may be, in degrees, and still count as reciprocal (practice).
// At 15° the part of the stream along the course differs by 3 % between the two (own arithmetic, 1 - cos 15°).
const reciprocalWithin = 15.0

// whyNotBothWays says why the runs used cannot be shown to lie alternately on opposite headings, or nothing if they can.
func whyNotBothWays(s *Setting, used []int) string {
	switch len(used) {
	case 0:
		return "no run was used"
	case 1:
		return "one run only"
	}
	for _, i := range used {
		if !s.Runs[i].Record.Heading.Set {
			return fmt.Sprintf("the heading of run %s is not written", s.Runs[i].Record.ID)
		}
	}
	for k := 1; k < len(used); k++ {
		a, b := s.Runs[used[k-1]].Record, s.Runs[used[k]].Record
		if !reciprocal(a.Heading.V, b.Heading.V) {
			return fmt.Sprintf("runs %s and %s are not on opposite headings (%s and %s)", a.ID, b.ID, heading(a.Heading.V), heading(b.Heading.V))
		}
	}
	return ""
}

// reciprocal reports whether two headings in degrees are opposite within reciprocalWithin.
func reciprocal(a, b unit.Deg) bool {
	apart := math.Abs(math.Remainder(float64(a)-float64(b), 360))
	return 180-apart <= reciprocalWithin
}

// heading gives a heading as three figures.
func heading(d unit.Deg) string {
	return fmt.Sprintf("%03d°", int(math.Round(float64(d)))%360)
}

// pairs gives the overlapping pairs of successive runs.
func pairs(s *Setting, used []int) []Pair {
	all := make([]Pair, 0, len(used))
	for k := 1; k < len(used); k++ {
		a, b := s.speed(used[k-1]), s.speed(used[k])
		all = append(all, Pair{
			First: used[k-1], Second: used[k],
			Mean: unit.Knot((a + b) / 2), Half: unit.Knot((a - b) / 2),
		})
	}
	return all
}

// doubleRuns gives the means of the pairs that share no run: runs 1 and 2, runs 3 and 4, and so on.
func doubleRuns(all []Pair) []float64 {
	var means []float64
	for k := 0; k < len(all); k += 2 {
		means = append(means, float64(all[k].Mean))
	}
	return means
}

// stream estimates the stream along the course from the pairs: half of what the second leg loses on the first, turned
// about for every other pair so that it always counts along the heading of the first run.
func (s *Setting) stream() {
	mean := plainMean(s.streams()).Value
	along := s.Runs[s.Pairs[0].First].Record.Heading.V
	if mean < 0 {
		along = unit.Deg(math.Mod(float64(along)+180, 360))
	}
	s.Current, s.SetsTo, s.HasStream = unit.Knot(math.Abs(mean)), along, true
}

// streams gives the stream from each pair in knots, along the heading of the first run.
func (s *Setting) streams() []float64 {
	all := make([]float64, len(s.Pairs))
	for k, p := range s.Pairs {
		all[k] = float64(p.Half)
		if k%2 == 1 {
			all[k] = -all[k]
		}
	}
	return all
}

func (s *Setting) speed(run int) float64 { return float64(s.Runs[run].Record.Speed.V) }

// record of the first run that was used, to point at.
func (s *Setting) first() *record.Run {
	for _, r := range s.Runs {
		if r.Used {
			return r.Record
		}
	}
	return s.Runs[0].Record
}
