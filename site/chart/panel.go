package chart

import (
	"fmt"
	"math"

	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// Panel draws one panel: the plate field with its sides, the section across the short side, fitted and needed thickness
// side by side, and where along the waterline it lies. The length of the waterline comes from the boat, which may be nil.
func Panel(p scantling.Panel, boat *record.Boat) Figure {
	id := "fig-panel-" + slug(panelKey(p))
	title := "Panel " + panelKey(p)
	if p.Record == nil || !side(p.Record.Short) || !side(p.Record.Long) {
		return blank(id, title, "The sides of this panel are not on record, so it cannot be drawn.", nil)
	}
	d := panelDrawing{Panel: p, boat: boat}
	plate := plate{id: id, title: title, alt: d.words(), paint: d.draw}
	return plate.finished(d.note(), d.table())
}

// panelDrawing is the picture of one panel.
type panelDrawing struct {
	scantling.Panel
	boat *record.Boat
}

func side(v record.Val[unit.MM]) bool { return v.Set && thick(v.V) }

// sides gives the short and the long side in millimetres, whichever way round they were written.
func (d panelDrawing) sides() (short, long float64) {
	a, b := float64(d.Record.Short.V), float64(d.Record.Long.V)
	return min(a, b), max(a, b)
}

// fitted and needed give the thicknesses in millimetres, nought where there is none to draw.
func (d panelDrawing) fitted() float64 {
	if !thick(d.Fitted) {
		return 0
	}
	return float64(d.Fitted)
}

func (d panelDrawing) needed() float64 {
	if !judged(d.Panel) {
		return 0
	}
	return float64(d.Needed)
}

func (d panelDrawing) camber() float64 {
	if c, set := d.Record.Camber.Get(); set && thick(c) {
		return float64(c)
	}
	return 0
}

// waterline gives the length of the waterline in metres where it is on record.
func (d panelDrawing) waterline() (float64, bool) {
	if d.boat == nil {
		return 0, false
	}
	l, set := d.boat.LengthWL.Get()
	return float64(l), set && usable(float64(l)) && l > 0
}

// place gives how far forward of the aft end of the waterline the panel lies, in metres.
func (d panelDrawing) place() (float64, bool) {
	x, set := d.Record.X.Get()
	return float64(x), set && math.Abs(float64(x)) <= 1000
}

func (d panelDrawing) words() string {
	short, long := d.sides()
	words := fmt.Sprintf("Plate field %s × %s mm", unit.Text(short, 0), unit.Text(long, 0))
	if thick(d.Fitted) {
		words += ", " + unit.Text(d.Fitted, 1) + " mm fitted"
	}
	if judged(d.Panel) {
		words += ", " + unit.Up(d.Needed, 2) + " mm needed"
	}
	return words + "."
}

func (d panelDrawing) note() string {
	note := "Sides are from centre to centre of the stiffeners, whose own width is not to scale."
	if d.camber() > 0 {
		note += " Camber is to scale with the short side."
	}
	return note
}

func (d panelDrawing) table() [][]string {
	short, long := d.sides()
	x, hasX := d.place()
	length, hasLength := d.waterline()
	table := [][]string{{"Of the panel", "Value", "Unit"}, {"Short side", unit.Text(short, 0), "mm"}, {"Long side", unit.Text(long, 0), "mm"},
		{"Camber", unit.Text(d.camber(), 0), "mm"}, {"Fitted", figure(float64(d.Fitted), thick(d.Fitted), 1), "mm"},
		{"Needed", figure(float64(d.Needed), judged(d.Panel), 2), "mm"}, {"Forward of the aft end of the waterline", figure(x, hasX, 2), "m"}}
	if hasX && hasLength {
		table = append(table, []string{"Part of the waterline", unit.Text(x/length, 2), ""})
	}
	return table
}

// draw sets the four parts on the sheet: beside each other on a page, under each other on a phone.
func (d panelDrawing) draw(s *sheet) {
	if s.slim() {
		y := d.field(s, box{0, 0, s.w, 230})
		y = d.section(s, box{40, y + 26, s.w - 40, 0})
		y = d.thickness(s, box{40, y + 26, s.w - 40, 0})
		s.h = d.along(s, box{16, y + 26, s.w - 16, 0})
		return
	}
	y := d.field(s, box{0, 0, 420, 300})
	right := d.section(s, box{480, 0, 690, 0})
	right = d.thickness(s, box{480, right + 24, 690, 0})
	s.h = d.along(s, box{24, max(y, right) + 28, s.w - 24, 0})
}
