package tracklog

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// deepest is how far elements of a GPX file may lie in each other; the schema needs five, extensions a few more.
const deepest = 64

// longestValue is how much of the text of an element is kept.
const longestValue = 64

// longestPiece is how many bytes one tag, text or remark may have. The reader of XML keeps each of them whole, so that a
// file of one remark would take all memory there is.
const longestPiece = 256 << 10

// gpx reads the tracks of a GPX file, 1.0 or 1.1, by the local names of its elements. Speed is an element of a point in
// 1.0, in metres a second; 1.1 has none, and programs write it into extensions of their own, most of them by that name.
// Source: the schemas gpx.xsd 1.1 (read) and 1.0 (a file by it read).
type gpx struct {
	*told
	out    func(*Sample)
	in     *xml.Decoder
	way    []string // local names of the open elements
	s      Sample
	inside int // depth of the open track point, nought outside
	text   []byte
	first  bool // the next point begins a segment
	used   int
	root   bool
	others int // waypoints and points of routes
}

// readGPX hands every point of every track to out and gives the number of lines and of points that were used.
func readGPX(r io.Reader, t *told, out func(*Sample)) (count, used int, err error) {
	piece := &wall{in: r}
	g := &gpx{told: t, out: out, in: xml.NewDecoder(piece)}
	g.in.CharsetReader = latin
	for {
		piece.left = longestPiece
		token, err := g.in.RawToken()
		line, _ := g.in.InputPos()
		if errors.Is(err, io.EOF) {
			if len(g.way) > 0 {
				g.add(BadMarkup, line, []byte(strings.Join(g.way, "/")))
			}
			return line, g.used, nil
		}
		var syntax *xml.SyntaxError
		if errors.As(err, &syntax) {
			g.add(BadMarkup, line, []byte(syntax.Msg))
			return line, g.used, g.nothing()
		}
		if err != nil {
			return line, g.used, err
		}
		if err := g.token(token, line); err != nil {
			return line, g.used, err
		}
	}
}

// wall lets through so many bytes, and then no more until it is set anew.
type wall struct {
	in   io.Reader
	left int
}

func (w *wall) Read(p []byte) (int, error) {
	if w.left <= 0 {
		return 0, fmt.Errorf("a tag, a text or a remark in it is longer than %d KiB", longestPiece>>10)
	}
	n, err := w.in.Read(p[:min(len(p), w.left)])
	w.left -= n
	return n, err
}

// nothing is the error of a file of which nothing could be read.
func (g *gpx) nothing() error {
	if g.root {
		return nil
	}
	return errors.New("it is not written in XML")
}

func (g *gpx) token(token xml.Token, line int) error {
	switch one := token.(type) {
	case xml.StartElement:
		return g.begin(one, line)
	case xml.EndElement:
		g.end(one.Name.Local, line)
	case xml.CharData:
		if g.inside > 0 && len(g.text) < longestValue {
			g.text = append(g.text, one[:min(len(one), longestValue)]...)
		}
	}
	return nil
}

func (g *gpx) begin(e xml.StartElement, line int) error {
	name := strings.ToLower(e.Name.Local)
	if !g.root && name != "gpx" {
		return fmt.Errorf("the outermost element is %q, not gpx", plain([]byte(name[:min(len(name), longestWord)])))
	}
	g.root = true
	if len(g.way) == deepest {
		return fmt.Errorf("elements lie more than %d deep in each other at line %d", deepest, line)
	}
	g.way = append(g.way, name[:min(len(name), longestWord)])
	g.text = g.text[:0]
	switch name {
	case "trkseg":
		g.first = true
	case "trkpt":
		g.point(e, line)
	case "rtept", "wpt":
		g.others++
	}
	return nil
}

// point opens a track point with the position in its attributes.
func (g *gpx) point(e xml.StartElement, line int) {
	g.s = blank()
	g.s.Line, g.inside = line, len(g.way)
	for _, a := range e.Attr {
		v, ok := number([]byte(strings.TrimSpace(a.Value)), false)
		if !ok {
			continue
		}
		switch strings.ToLower(a.Name.Local) {
		case "lat":
			g.s.Lat = v
		case "lon":
			g.s.Lon = v
		}
	}
}

// end closes an element. RawToken leaves it to us to see that elements close in order.
func (g *gpx) end(local string, line int) {
	name := strings.ToLower(local)
	if len(g.way) == 0 || g.way[len(g.way)-1] != name[:min(len(name), longestWord)] {
		g.add(BadMarkup, line, []byte(local))
		return
	}
	if g.inside > 0 && len(g.way) > g.inside {
		g.value(name, line)
	}
	if len(g.way) == g.inside {
		g.close(line)
	}
	g.way = g.way[:len(g.way)-1]
	g.text = g.text[:0]
}

// value takes the text of an element inside a point; the time stands directly in it, speed and course may lie deeper.
func (g *gpx) value(name string, line int) {
	b := []byte(strings.TrimSpace(string(g.text)))
	switch {
	case name == "time" && len(g.way) == g.inside+1:
		at, zoned, ok := moment(b)
		if !ok {
			g.add(BadTimes, line, b)
			return
		}
		if !zoned {
			g.add(NoZone, line, b)
		}
		g.s.Time = at
	case name == "speed":
		if v, ok := number(b, false); ok {
			g.s.Speed = v / metresPerSecond
		} else {
			g.add(NotNumbers, line, b)
		}
	case name == "course":
		if v, ok := number(b, false); ok {
			g.s.Course = round360(v)
		} else {
			g.add(NotNumbers, line, b)
		}
	}
}

// close hands a point on.
func (g *gpx) close(line int) {
	g.inside = 0
	switch {
	case !g.s.placed():
		g.add(Unplaced, g.s.Line, nil)
	case !known(g.s.Time):
		g.add(NoTime, g.s.Line, nil)
	default:
		g.s.Break, g.first = g.first, false
		g.used++
		g.out(&g.s)
	}
}

// latin reads files that say that they are written in a single-byte set of western letters.
func latin(charset string, in io.Reader) (io.Reader, error) {
	switch strings.ToLower(charset) {
	case "iso-8859-1", "latin1", "windows-1252", "us-ascii", "ascii":
		return &latinReader{in: in}, nil
	}
	return nil, fmt.Errorf("letters in %q cannot be read; save it as UTF-8", plain([]byte(charset[:min(len(charset), longestWord)])))
}

// latinReader turns bytes into UTF-8; a byte may become two, so half of what is asked is read.
type latinReader struct {
	in   io.Reader
	half [512]byte
}

func (l *latinReader) Read(p []byte) (int, error) {
	if len(p) < 2 {
		return 0, io.ErrShortBuffer
	}
	n, err := l.in.Read(l.half[:min(len(l.half), len(p)/2)])
	out := p[:0]
	for _, c := range l.half[:n] {
		if c < 0x80 {
			out = append(out, c)
			continue
		}
		out = append(out, 0xc0|c>>6, 0x80|c&0x3f)
	}
	return len(out), err
}
