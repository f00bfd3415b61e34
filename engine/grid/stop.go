package grid

import (
	"strings"

	"hullfile/engine/record"
)

// near is how close two ends must be to count as one place, metres: what a builder takes for the same line.
const near = 0.03

// stop is where plating and stringers are held across the boat: a frame, an end of the hull, or the end of a deck.
type stop struct {
	name  string
	x     float64
	frame *record.Frame // nil at an end
	lean  bool          // at a transom, which may be raked
	reach float64       // girth to which it holds the zone; beyond it the zone runs on
}

// phrase names a stop in a sentence.
func (s stop) phrase() string {
	switch {
	case s.frame == nil:
		return s.name
	case s.frame.Kind.V == "bulkhead":
		return "bulkhead " + s.name
	}
	return "frame " + s.name
}

// bay names the stretch between two stops: "frames 3-4", "transom to frame 1".
func bay(a, b stop) string {
	if a.frame == nil || b.frame == nil || strings.Contains(a.name+b.name, "-") {
		return frameless(a) + " to " + frameless(b)
	}
	return "frames " + a.name + "-" + b.name
}

func frameless(s stop) string {
	if s.frame == nil {
		return s.name
	}
	return "frame " + s.name
}
