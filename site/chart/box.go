package chart

// point is a place on the drawing, x to the right and y downward.
type point struct{ x, y float64 }

// box is an upright rectangle on the drawing.
type box struct{ left, top, right, bottom float64 }

// around gives the box with the given centre and half side.
func around(x, y, half float64) box { return box{x - half, y - half, x + half, y + half} }

// grown gives the box with a margin on all sides.
func (b box) grown(by float64) box {
	return box{b.left - by, b.top - by, b.right + by, b.bottom + by}
}

// meets reports whether two boxes overlap; boxes that only touch do not.
func (b box) meets(c box) bool {
	return b.left < c.right && c.left < b.right && b.top < c.bottom && c.top < b.bottom
}

// within reports whether b lies wholly in c.
func (b box) within(c box) bool {
	return b.left >= c.left && b.right <= c.right && b.top >= c.top && b.bottom <= c.bottom
}

// segment is a straight stretch of a line.
type segment struct{ from, to point }

// beside reports whether the whole segment lies to one side of the box. Most do, and this is quicker to see.
func (s *segment) beside(b box) bool {
	return max(s.from.x, s.to.x) < b.left || min(s.from.x, s.to.x) > b.right || max(s.from.y, s.to.y) < b.top || min(s.from.y, s.to.y) > b.bottom
}

// crosses reports whether any part of the segment lies in the box: the segment is cut by the four sides in turn.
func (s segment) crosses(b box) bool {
	dx, dy := s.to.x-s.from.x, s.to.y-s.from.y
	enter, leave := 0.0, 1.0
	sides := [4][2]float64{
		{-dx, s.from.x - b.left}, {dx, b.right - s.from.x},
		{-dy, s.from.y - b.top}, {dy, b.bottom - s.from.y},
	}
	for _, side := range sides {
		into, room := side[0], side[1]
		switch {
		case into == 0 && room < 0:
			return false
		case into < 0:
			enter = max(enter, room/into)
		case into > 0:
			leave = min(leave, room/into)
		}
	}
	return enter <= leave
}
