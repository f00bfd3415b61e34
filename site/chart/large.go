package chart

// largeSize is the size of a figure that is read from a distance.
const largeSize = 22.0

// large sets a figure in a size of its own, from its left end; y is the base line. It shrinks to fit a width, down to the
// size of all other text, and is then shortened.
func (s *sheet) large(class string, x, y, most float64, body string) {
	size := largeSize
	if width := theFace().advance(body, size); width > most {
		size = max(textSize, size*most/width)
	}
	if size == textSize {
		body = fit(body, most)
	}
	s.words = append(s.words, box{x, y - ascent*size/textSize, x + theFace().advance(body, size), y + descent*size/textSize})
	s.begin("text", class)
	s.attribute("x", x)
	s.attribute("y", y)
	s.attribute("font-size", size)
	s.raw(">")
	s.out = appendText(s.out, body)
	s.raw("</text>")
}
