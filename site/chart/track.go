package chart

import (
	"fmt"
	"math"

	"hullfile/engine/tracklog"
	"hullfile/engine/unit"
)

// Leg is one stretch of a track.
type Leg struct {
	Name   string
	Points []tracklog.Point
	Main   bool // drawn heavy; the others are there for comparison
}

// Stream is the stream that the legs ask for.
type Stream struct {
	Knots, Toward float64
	Has           bool
}

// TrackSpec is a track to be drawn to scale, north up.
type TrackSpec struct {
	ID, Title string
	Legs      []Leg
	Stream    Stream
	Note, Why string
}

// mostNames is how many legs are named in the picture; more are named in the table only.
const mostNames = 8

// Track draws a track with one scale both ways, north up, with a bar of length and an arrow for the stream. A gap in the
// log is a gap in the line.
func Track(t TrackSpec) Figure {
	id := identifier(t.ID)
	table := t.table()
	d := newTrack(t)
	if d.places < 2 {
		why := t.Why
		if why == "" {
			why = "The log has no positions to draw."
		}
		return blank(id, t.Title, why, table)
	}
	p := plate{id: id, title: t.Title, alt: d.said(), paint: d.draw}
	return p.finished(sentence(t.Note, "North is up; one scale both ways.", d.streamSaid()), table)
}

// trackDrawing is a track on a flat chart, in metres east and north of its first place.
type trackDrawing struct {
	TrackSpec
	east, north extent
	legs        [][][]point // by leg and piece; y is north
	places      int
}

func newTrack(t TrackSpec) *trackDrawing {
	d := &trackDrawing{TrackSpec: t}
	var plane tracklog.Plane
	for _, leg := range t.Legs {
		var pieces [][]point
		piece := make([]point, 0, len(leg.Points))
		for i := range leg.Points {
			p := &leg.Points[i]
			if (p.Break || !p.Placed()) && len(piece) > 0 {
				pieces, piece = append(pieces, piece), nil
			}
			if !p.Placed() {
				continue
			}
			if d.places == 0 {
				plane = tracklog.PlaneAt(p.Lat, p.Lon)
			}
			d.places++
			e, n := plane.At(p.Lat, p.Lon)
			d.east.take(e)
			d.north.take(n)
			piece = append(piece, point{e, n})
		}
		d.legs = append(d.legs, append(pieces, piece))
	}
	return d
}

// field is where the track lies on a sheet.
type trackField struct {
	perMetre   float64
	left, foot float64 // of the least east and the least north
	box        box
}

func (d *trackDrawing) field(s *sheet) trackField {
	const side, head, least = 22.0, 52.0, 90.0
	most := 430.0
	if s.slim() {
		most = 330
	}
	wideM, tallM := max(d.east.hi-d.east.lo, 10), max(d.north.hi-d.north.lo, 10)
	f := trackField{perMetre: min((s.w-2*side)/wideM, most/tallM)}
	tall := max(tallM*f.perMetre, least)
	f.box = box{side, head, s.w - side, head + tall}
	f.left = s.w/2 - (d.east.lo+d.east.hi)/2*f.perMetre
	f.foot = head + tall/2 + (d.north.lo+d.north.hi)/2*f.perMetre
	return f
}

func (f trackField) at(p point) point {
	return point{f.left + float64(p.x*f.perMetre), f.foot - float64(p.y*f.perMetre)}
}

// draw paints the legs for comparison under those that matter, and the names over all.
func (d *trackDrawing) draw(s *sheet) {
	f := d.field(s)
	s.h = f.box.bottom + 44
	for _, heavy := range []bool{false, true} {
		for i, leg := range d.Legs {
			if leg.Main == heavy {
				d.leg(s, f, i)
			}
		}
	}
	s.north(s.w-16, 8)
	d.arrow(s)
	s.lengthBar(f.perMetre, 22, s.h-14)
	d.names(s, f)
}

// leg draws the pieces of a leg, with a disc where it begins and a tip where it ends.
func (d *trackDrawing) leg(s *sheet, f trackField, i int) {
	class := "g-station"
	if d.Legs[i].Main {
		class = "g-edge"
	}
	var last []point
	for _, piece := range d.legs[i] {
		line := make([]point, len(piece))
		for k, p := range piece {
			line[k] = f.at(p)
		}
		s.curve(class, line...)
		if len(line) > 1 {
			last = line
		}
	}
	if len(last) < 2 || len(d.Legs) > mostNames {
		return
	}
	mark := "g-pc"
	if d.Legs[i].Main {
		mark = "g-pa"
		first := d.legs[i][0]
		if len(first) > 0 {
			at := f.at(first[0])
			s.circle("g-open", at.x, at.y, 3.2)
		}
	}
	end, back := last[len(last)-1], last[max(0, len(last)-6)]
	s.tipOf(mark, end, math.Atan2(end.y-back.y, end.x-back.x), 9)
}

// tipOf draws the tip of an arrow; the angle is that of the sheet, clockwise from the right.
func (s *sheet) tipOf(class string, at point, angle, length float64) {
	corner := func(turn float64) point {
		sin, cos := math.Sincos(angle + turn)
		return point{at.x - float64(length*cos), at.y - float64(length*sin)}
	}
	s.shape(class, at, corner(0.38), corner(-0.38))
}

// north draws the arrow that points up.
func (s *sheet) north(x, y float64) {
	s.line("g-axis", x, y+30, x, y+6)
	s.tipOf("g-pa", point{x, y}, -math.Pi/2, 10)
	s.text("g-text", x-8, y+24, end, "N")
}

// arrow draws which way the stream sets.
func (d *trackDrawing) arrow(s *sheet) {
	if !d.Stream.Has {
		return
	}
	sin, cos := math.Sincos(d.Stream.Toward * math.Pi / 180)
	const half = 16.0
	middle := point{24, 24}
	from, to := point{middle.x - half*sin, middle.y + half*cos}, point{middle.x + half*sin, middle.y - half*cos}
	s.line("g-b", from.x, from.y, to.x, to.y)
	s.tipOf("g-pb", to, math.Atan2(to.y-from.y, to.x-from.x), 10)
	s.text("g-text g-b-name", 50, 28, start, fit(d.streamWords(), s.w-90))
}

func (d *trackDrawing) streamWords() string {
	return fmt.Sprintf("stream %s kn towards %03d°", unit.Text(d.Stream.Knots, 2), int(math.Round(d.Stream.Toward))%360)
}

func (d *trackDrawing) streamSaid() string {
	if !d.Stream.Has {
		return ""
	}
	return "The arrow is the " + d.streamWords() + "."
}

// lengthBar draws a bar of a round length, no longer than a third of the sheet.
func (s *sheet) lengthBar(perMetre, x, y float64) {
	room := s.w / 3 / perMetre
	length := math.Pow(10, math.Floor(math.Log10(room)))
	for _, times := range []float64{5, 2} {
		if length*times <= room {
			length *= times
			break
		}
	}
	to := x + length*perMetre
	s.line("g-dim", x, y, to, y)
	s.line("g-dim", x, y-5, x, y+3)
	s.line("g-dim", to, y-5, to, y+3)
	s.text("g-text", to+8, y+4, start, unit.Text(length, 0)+" m")
}

// names names the legs where they begin.
func (d *trackDrawing) names(s *sheet, f trackField) {
	if len(d.Legs) > mostNames {
		return
	}
	place := placer{bounds: box{2, 44, s.w - 2, s.h - 26}, taken: append([]box{}, s.words...), lines: s.lines[:0]}
	for _, pieces := range d.legs {
		for _, piece := range pieces {
			for k := 1; k < len(piece); k += 4 {
				place.lines = append(place.lines, segment{f.at(piece[k-1]), f.at(piece[k])})
			}
		}
	}
	s.lines = place.lines
	for i, leg := range d.Legs {
		for _, piece := range d.legs[i] {
			if len(piece) > 0 && leg.Name != "" {
				place.set(s, "g-label", f.at(piece[0]), fit(leg.Name, s.w/3))
				break
			}
		}
	}
}

// said tells the picture in a sentence.
func (d *trackDrawing) said() string {
	words := fmt.Sprintf("Track of %d legs over %s by %s m.", len(d.Legs), unit.Text(d.east.hi-d.east.lo, 0), unit.Text(d.north.hi-d.north.lo, 0))
	return sentence(words, d.streamSaid())
}

// table gives every leg with its ends.
func (t TrackSpec) table() [][]string {
	rows := [][]string{{"Leg", "From", "To", "Begins at", "Ends at", "Straight way, m", "Towards, °"}}
	for _, leg := range t.Legs {
		first, last := ends(leg.Points)
		if first == nil || first == last {
			rows = append(rows, []string{leg.Name, "no positions", "", "", "", "", ""})
			continue
		}
		rows = append(rows, []string{
			leg.Name, tracklog.Clock(first.Time), tracklog.Clock(last.Time), position(first), position(last),
			unit.Text(tracklog.Distance(first.Lat, first.Lon, last.Lat, last.Lon), 0), fmt.Sprintf("%03.0f", tracklog.Bearing(first.Lat, first.Lon, last.Lat, last.Lon)),
		})
	}
	return cut(rows)
}

// ends gives the first and the last place of a leg, nil where it has none.
func ends(all []tracklog.Point) (first, last *tracklog.Point) {
	for i := range all {
		if p := &all[i]; p.Placed() {
			if first == nil {
				first = p
			}
			last = p
		}
	}
	return first, last
}

// position gives degrees and minutes as a navigator writes them.
func position(p *tracklog.Point) string {
	return degrees(p.Lat, 2, "N", "S") + " " + degrees(p.Lon, 3, "E", "W")
}

func degrees(v float64, digits int, plus, minus string) string {
	sign := plus
	if v < 0 {
		v, sign = -v, minus
	}
	minutes := math.Round(v*60*1000) / 1000
	whole := math.Floor(minutes / 60)
	return fmt.Sprintf("%0*.0f°%06.3f′%s", digits, whole, minutes-60*whole, sign)
}
