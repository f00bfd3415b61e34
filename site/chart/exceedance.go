package chart

import (
	"fmt"
	"math"

	"hullfile/engine/ride"
	"hullfile/engine/unit"
)

// Exceedance draws the part of the impacts above each size on a logarithmic scale, where the exponential law is a straight
// line, with the means of the highest and the design acceleration.
func Exceedance(r *ride.Ride) Figure {
	key := ""
	if r.Record != nil {
		key = r.Record.ID
	}
	id, title := "fig-exceedance-"+slug(key), "Impacts above each size, record "+key
	e := exceedance{r}
	if !e.sound() {
		return blank(id, title, "No impacts to draw.", nil)
	}
	p := plate{id: id, title: title, alt: e.words(), paint: e.draw}
	return p.finished("Discs: impacts of the record, the k-th of N at (k − ½)/N. Line: exponential law fitted to their mean above the RMS. The scale up is logarithmic.", e.table())
}

// sound reports whether there are impacts that can be drawn.
func (e exceedance) sound() bool {
	for _, size := range e.Peaks.Sizes {
		if !usable(size) || size < 0 {
			return false
		}
	}
	return len(e.Peaks.Sizes) >= 2 && e.Peaks.Sizes[0] > 0 && usable(e.Peaks.RMS)
}

type exceedance struct{ *ride.Ride }

// part is the part of the impacts at or above the k-th, counted from nought.
func (e exceedance) part(k int) float64 { return (float64(k) + 0.5) / float64(len(e.Peaks.Sizes)) }

// law is the size that so large a part lies above.
func (e exceedance) law(part float64) float64 {
	return e.Peaks.RMS - float64((e.Peaks.Average()-e.Peaks.RMS)*math.Log(part))
}

func (e exceedance) decades() float64 {
	return math.Max(1, math.Ceil(-math.Log10(e.part(0))-1e-9))
}

func (e exceedance) words() string {
	words := fmt.Sprintf("%d impacts, the greatest %s g.", len(e.Peaks.Sizes), unit.Text(e.Peaks.Sizes[0], 2))
	if e.Tenth.Has {
		words += fmt.Sprintf(" Mean of the highest tenth %s g, by the exponential law %s g.", unit.Text(e.Tenth.G, 2), unit.Text(e.Tenth.G/(1+e.Departs), 2))
	}
	return words
}

// tableRows is how many of the lower impacts the table under the figure lists at most.
const tableRows = 24

// mostWhole is how many impacts from the greatest down are listed one by one at most: the highest tenth of a long record.
const mostWhole = 200

// step is how far the next row lies below the k-th impact. The greatest are listed one by one, so that the means of the
// highest third and tenth can be reckoned again from the page; below them some are left out of a long record.
func (e exceedance) step(k, whole int) int {
	if k < whole {
		return 1
	}
	return max(1, (len(e.Peaks.Sizes)-whole)/tableRows)
}

func (e exceedance) table() [][]string {
	table := [][]string{{"Rank", "Impact, g", "Part above", "By the law, g"}}
	n := len(e.Peaks.Sizes)
	whole := min(max(e.Third.K, tableRows), mostWhole)
	for k := 0; k < n; k += e.step(k, whole) {
		table = append(table, []string{fmt.Sprint(k + 1), unit.Text(e.Peaks.Sizes[k], 2), unit.Text(e.part(k), 3), unit.Text(e.law(e.part(k)), 2)})
	}
	return table
}

func (e exceedance) draw(s *sheet) {
	const left, right, top = 52.0, 20.0, 34.0
	bottom := top + 300
	if s.slim() {
		bottom = top + 230
	}
	most := math.Max(e.Peaks.Sizes[0], e.law(e.part(0)))
	if e.Design > 0 && e.Design < 2*most {
		most = math.Max(most, e.Design)
	}
	r := newRuler(0, most, left, s.w-left-right)
	decades := e.decades()
	up := func(part float64) float64 { return top + float64((bottom-top)*-math.Log10(part))/decades }
	s.text("g-text", 2, 16, start, fit("Part of the impacts above", s.w-4))
	for k := 0.0; k <= decades; k++ {
		y := up(math.Pow10(-int(k)))
		s.line("g-grid", left, y, r.from+r.length, y)
		s.text("g-text", left-7, y+4, end, unit.Plain(math.Pow10(-int(k))))
	}
	s.line("g-axis", left, top, left, bottom)
	s.betweenDecades(up, decades, left, r.from+r.length)
	s.h = s.ruled(r, top, bottom, "Impact at the sensor, g")
	e.lawLine(s, r, up, decades)
	e.stands(s, r, top, bottom)
	for k := len(e.Peaks.Sizes) - 1; k >= 0; k-- {
		if k > 400 && k%(len(e.Peaks.Sizes)/400) != 0 {
			continue
		}
		s.circle("g-pa", r.at(e.Peaks.Sizes[k]), up(e.part(k)), 2.6)
	}
}

// betweenDecades draws what lets a part be read off a logarithmic scale: a stroke at every whole multiple, and where there is
// room hairlines with figures at twice and five times.
func (s *sheet) betweenDecades(up func(float64) float64, decades, left, right float64) {
	var strokes []segment
	for k := 1.0; k <= decades; k++ {
		low := math.Pow10(-int(k))
		for n := 2.0; n < 10; n++ {
			y := up(n * low)
			strokes = append(strokes, segment{point{left - 3, y}, point{left, y}})
			if named := n == 2 || n == 5; named && up(low)-up(10*low) > 6*line {
				s.line("g-grid", left, y, right, y)
				s.text("g-text", left-7, y+4, end, unit.Plain(float64(n*low)))
			}
		}
	}
	s.strokes("g-axis", strokes)
}

func (e exceedance) lawLine(s *sheet, r ruler, up func(float64) float64, decades float64) {
	if !(e.Peaks.Average() > e.Peaks.RMS) || e.law(1) < 0 {
		return
	}
	last := math.Pow10(-int(decades))
	for e.law(last) > r.most && last < 1 {
		last *= 1.02
	}
	s.curve("g-b", point{r.at(e.law(1)), up(1)}, point{r.at(e.law(last)), up(last)})
}

// stands draws an upright line at each mean of the highest and at the design acceleration, named at its head in steps, so
// that two that lie close do not stand in each other's words.
func (e exceedance) stands(s *sheet, r ruler, top, bottom float64) {
	step := 0
	stand := func(class string, g float64, words string) {
		if !usable(g) || !(g > 0) || g > r.most {
			return
		}
		x := r.at(g)
		s.line(class, x, top, x, bottom)
		y := top + 14 + float64(step)*line
		at, side := x+5, start
		if x+5+advance(words) > r.from+r.length {
			at, side = x-5, end
		}
		s.text("g-text g-label", at, y, side, words)
		step++
	}
	for _, m := range []struct {
		mean ride.Mean
		name string
	}{{e.Third, "highest third"}, {e.Tenth, "highest tenth"}, {e.Hundredth, "highest hundredth"}} {
		if m.mean.Has {
			stand("g-lead", m.mean.G, m.name+" "+unit.Text(m.mean.G, 2))
		}
	}
	stand("g-wanted", e.Design, "design "+unit.Text(e.Design, 2))
}
