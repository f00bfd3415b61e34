package stability

import (
	"math"

	"hullfile/engine/finding"
)

// inboard is how far a person is inside the edge of the place, metres (recalled: ISO 12217).
const inboard = 0.2

// crew is everybody to one side.
type crew struct {
	known   bool
	persons int
	breadth float64 // of the widest place
	sum     float64 // of persons times distance off the centre line
	places  []finding.Place
	why     string
}

// crewSums puts everybody to one side: the places fill from the widest inwards, each to its number.
func (j *judge) crewSums() crew {
	c := crew{}
	n, ok := j.hull.Boat.Persons.Get()
	if !ok {
		c.why = "boat.persons is not written"
		return c
	}
	c.persons = n
	if len(j.hull.CrewAreas) == 0 {
		c.why = "no place where people can be is written"
		return c
	}
	c.places = finding.Places(j.hull.Boat.Persons.At)
	c.known = true
	for i := range j.hull.CrewAreas {
		a := &j.hull.CrewAreas[i]
		c.breadth = math.Max(c.breadth, 2*float64(a.Y.V))
		c.places = append(c.places, a.At)
	}
	c.sum = j.toOneSide(float64(n))
	return c
}

// toOneSide is the sum of n persons times their distance off the centre line. Those for whom the places have no room stand
// at the widest of them.
func (j *judge) toOneSide(n float64) float64 {
	left, sum := n, 0.0
	done := make([]bool, len(j.hull.CrewAreas))
	widest := 0.0
	for range done {
		best := -1
		for i := range done {
			if !done[i] && (best < 0 || j.hull.CrewAreas[i].Y.V > j.hull.CrewAreas[best].Y.V) {
				best = i
			}
		}
		done[best] = true
		off := math.Max(float64(j.hull.CrewAreas[best].Y.V)-inboard, 0)
		widest = math.Max(widest, off)
		k := math.Min(left, float64(j.hull.CrewAreas[best].Persons.V))
		sum += k * off
		left -= k
	}
	return sum + left*widest
}
