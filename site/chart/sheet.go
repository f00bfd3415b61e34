package chart

import (
	"math"
	"strconv"
)

// The sizes of figures in drawing units. A drawing for a page is shown about as wide as it is; one for a phone likewise.
const (
	wide     = 720.0
	narrow   = 360.0
	textSize = 12.0
	rise     = 8.6  // height of capitals and figures above the base line
	ascent   = 11.0 // highest part of a letter above the base line
	descent  = 3.0  // lowest part below it
	line     = 16.0 // from one base line to the next
)

// anchor says which part of a text stands at its place.
type anchor string

const (
	start  anchor = "start"
	middle anchor = "middle"
	end    anchor = "end"
)

// sheet is one drawing being made: its markup, and where text already stands. It is the only place that writes markup.
type sheet struct {
	w, h  float64
	out   []byte
	words []box
	lines []segment // room for those that labels keep off
}

func newSheet(w, h float64) *sheet { return &sheet{w: w, h: h, out: make([]byte, 0, 16<<10)} }

// slim reports whether the drawing is for a phone.
func (s *sheet) slim() bool { return s.w < 500 }

// num writes a coordinate to one decimal, which is a fifteenth of the width of the thinnest curve.
func (s *sheet) num(v float64) {
	tenths := int64(math.Round(v * 10))
	if tenths < 0 {
		s.out = append(s.out, '-')
		tenths = -tenths
	}
	s.out = appendWhole(s.out, tenths/10)
	if rest := tenths % 10; rest != 0 {
		s.out = append(s.out, '.', byte('0'+rest))
	}
}

// appendWhole writes a whole number that is not below nought; most have three digits, and a figure has thousands of them.
func appendWhole(out []byte, n int64) []byte {
	switch {
	case n >= 1000:
		return strconv.AppendInt(out, n, 10)
	case n >= 100:
		return append(out, byte('0'+n/100), byte('0'+n/10%10), byte('0'+n%10))
	case n >= 10:
		return append(out, byte('0'+n/10), byte('0'+n%10))
	}
	return append(out, byte('0'+n))
}

func (s *sheet) raw(markup string) { s.out = append(s.out, markup...) }

func (s *sheet) attribute(name string, v float64) {
	s.out = append(s.out, ' ')
	s.raw(name)
	s.raw(`="`)
	s.num(v)
	s.raw(`"`)
}

// begin opens an element with a class. Both are names of this package, never of a record.
func (s *sheet) begin(element, class string) {
	s.raw("<")
	s.raw(element)
	if class != "" {
		s.raw(` class="`)
		s.raw(class)
		s.raw(`"`)
	}
}

func (s *sheet) line(class string, x0, y0, x1, y1 float64) {
	s.begin("line", class)
	s.attribute("x1", x0)
	s.attribute("y1", y0)
	s.attribute("x2", x1)
	s.attribute("y2", y1)
	s.raw("/>")
}

func (s *sheet) rect(class string, b box) {
	s.begin("rect", class)
	s.attribute("x", b.left)
	s.attribute("y", b.top)
	s.attribute("width", max(0, b.right-b.left))
	s.attribute("height", max(0, b.bottom-b.top))
	s.raw("/>")
}

func (s *sheet) circle(class string, x, y, r float64) {
	s.begin("circle", class)
	s.attribute("cx", x)
	s.attribute("cy", y)
	s.attribute("r", r)
	s.raw("/>")
}

// curve draws an open line through the points.
func (s *sheet) curve(class string, points ...point) { s.path(class, "", points) }

// shape draws a closed outline through the points.
func (s *sheet) shape(class string, points ...point) { s.path(class, "Z", points) }

func (s *sheet) path(class, ending string, points []point) {
	if len(points) < 2 {
		return
	}
	s.begin("path", class)
	s.raw(` d="`)
	for i, p := range points {
		if i == 0 {
			s.move("M", p.x, p.y)
			continue
		}
		s.move("L", p.x, p.y)
	}
	s.raw(ending)
	s.raw(`"/>`)
}

// strokes draws many short straight strokes as one path.
func (s *sheet) strokes(class string, all []segment) {
	if len(all) == 0 {
		return
	}
	s.begin("path", class)
	s.raw(` d="`)
	for _, one := range all {
		s.move("M", one.from.x, one.from.y)
		s.move("L", one.to.x, one.to.y)
	}
	s.raw(`"/>`)
}

// move writes one step of a path.
func (s *sheet) move(command string, x, y float64) {
	s.raw(command)
	s.num(x)
	s.raw(" ")
	s.num(y)
}

// text sets a text and notes where it stands; y is the base line. The box of the text is given back.
func (s *sheet) text(class string, x, y float64, at anchor, body string) box {
	b := textBox(x, y, at, body)
	s.words = append(s.words, b)
	s.begin("text", class)
	s.attribute("x", x)
	s.attribute("y", y)
	if at != start {
		s.raw(` text-anchor="`)
		s.raw(string(at))
		s.raw(`"`)
	}
	s.raw(">")
	s.out = appendText(s.out, body)
	s.raw("</text>")
	return b
}

// turned sets a text that reads upward, its middle at x, y.
func (s *sheet) turned(class string, x, y float64, body string) {
	half := advance(body) / 2
	s.words = append(s.words, box{x - ascent + rise/2, y - half, x + descent + rise/2, y + half})
	s.begin("text", class)
	s.raw(` transform="translate(`)
	s.num(x + rise/2)
	s.raw(" ")
	s.num(y)
	s.raw(`) rotate(-90)" text-anchor="middle">`)
	s.out = appendText(s.out, body)
	s.raw("</text>")
}

// textBox is the room that a text takes.
func textBox(x, y float64, at anchor, body string) box {
	width := advance(body)
	switch at {
	case middle:
		x -= width / 2
	case end:
		x -= width
	}
	return box{x, y - ascent, x + width, y + descent}
}
