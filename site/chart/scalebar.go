package chart

import "hullfile/engine/unit"

// roundLengths are the lengths in metres that a scale bar may have, long first.
var roundLengths = [...]float64{100, 50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01}

// scaleBar draws a bar of a round length, in four parts filled and open by turns, and gives the lower edge of its words.
// It is no longer than room.
func (s *sheet) scaleBar(x, y, perMetre, room float64) float64 {
	length := roundLengths[len(roundLengths)-1]
	for _, l := range roundLengths {
		if float64(l*perMetre) <= room {
			length = l
			break
		}
	}
	part := float64(length*perMetre) / 4
	for k := range 4 {
		class := "g-need"
		if k%2 == 1 {
			class = "g-gap"
		}
		s.rect(class, box{x + part*float64(k), y, x + part*float64(k+1), y + 5})
	}
	s.text("g-text", x, y+18, start, "0")
	s.text("g-text", x+4*part, y+18, start, unit.Plain(length)+" m")
	return y + 22
}
