package chart

import (
	"fmt"

	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// Section draws a stiffener to scale as it stands on its plating: sizes, neutral axis, and, where soft is given, the strips
// that the heat of welding has softened, hatched. key is the record key of the member, for identifiers; name stands in the title.
func Section(key, name string, sound section.Section, soft *section.Softened) Figure {
	id := "fig-section-" + slug(key)
	title := "Section of " + name
	p := sound.Properties()
	if len(sound.Parts) == 0 || !drawable(p) {
		return blank(id, title, "The sizes of this section are not on record, or are none that can be drawn.", nil)
	}
	d := sectionDrawing{Section: sound, soft: soft, p: p}
	pl := plate{id: id, title: title, alt: d.words(), paint: d.draw}
	return pl.finished(d.note(), d.table())
}

// drawable reports whether all that the drawing rests on are numbers that can be drawn.
func drawable(p section.Properties) bool {
	return thick(p.Depth) && usable(float64(p.I)) && p.I > 0 && usable(float64(p.Neutral)) && usable(float64(p.Area))
}

// sectionDrawing is the picture of one section.
type sectionDrawing struct {
	section.Section
	soft *section.Softened
	p    section.Properties
}

// weld reports whether there are softened strips to show.
func (d sectionDrawing) weld() bool { return d.soft != nil && len(d.soft.Zones) > 0 }

func (d sectionDrawing) words() string {
	words := named(string(d.Shape.Kind)) + " of " + d.size()
	if d.Plate > 0 {
		words += fmt.Sprintf(" on plating of %s mm, of which %s mm count", unit.Plain(d.Plate), unit.Text(d.Effective, 0))
	}
	words += fmt.Sprintf(". Neutral axis %s mm above %s, section modulus %s cm³ at the free edge.", unit.Text(d.p.Neutral, 1), d.datum(), unit.Figures(d.p.AtEdge, 3))
	if d.weld() {
		words += fmt.Sprintf(" With the strips that welding softens %s cm³.", unit.Figures(d.soft.Properties().AtEdge, 3))
	}
	return words
}

// datum is what heights are measured from.
func (d sectionDrawing) datum() string {
	if d.Plate > 0 {
		return "the outer face of the plating"
	}
	return "the foot"
}

// size names the dimensions of the bar as they are ordered.
func (d sectionDrawing) size() string {
	s := d.Shape
	switch s.Kind {
	case section.FlatBar, section.Bulb:
		return unit.Plain(s.Height) + " × " + unit.Plain(s.Web) + " mm"
	case section.Pipe:
		return unit.Plain(s.Diameter) + " mm outside, wall " + unit.Plain(s.Wall) + " mm"
	case section.BuiltUp:
		return fmt.Sprintf("%d pieces, %s mm high", len(s.Pieces), unit.Plain(d.p.Depth-d.Plate))
	}
	return fmt.Sprintf("%s × %s mm, web %s mm, flange %s mm", unit.Plain(s.Height), unit.Plain(s.Flange), unit.Plain(s.Web), unit.Plain(s.FlangeThickness))
}

func (d sectionDrawing) note() string {
	note := "To scale; sharp corners, welds not drawn."
	if d.cut() {
		note += " The plating is drawn shorter than what of it counts."
	}
	if d.Shape.Kind == section.Bulb {
		note += " The bulb is drawn roughly."
	}
	if d.weld() {
		note += fmt.Sprintf(" Hatched: softened by welding, %s mm each way from a root.", unit.Plain(d.soft.By.Half))
	}
	for _, says := range d.Says {
		note += " " + says
	}
	return note
}

func (d sectionDrawing) table() [][]string {
	head := []string{"Of the section", "Value", "Unit"}
	if d.weld() {
		head = []string{"Of the section", "Sound", "Softened", "Unit"}
	}
	table := [][]string{head}
	soft := d.p
	if d.weld() {
		soft = d.soft.Properties()
	}
	for _, r := range []struct {
		name    string
		a, b    float64
		figures int
		unit    string
	}{
		{"Area with plating", float64(d.p.Area), float64(soft.Area), 3, "cm²"},
		{"Neutral axis above " + d.datum(), float64(d.p.Neutral), float64(soft.Neutral), 3, "mm"},
		{"Second moment of area", float64(d.p.I), float64(soft.I), 3, "cm⁴"},
		{"Section modulus at " + d.datum(), float64(d.p.AtPlate), float64(soft.AtPlate), 3, "cm³"},
		{"Section modulus at the free edge", float64(d.p.AtEdge), float64(soft.AtEdge), 3, "cm³"},
		{"Area of the webs in shear", float64(d.p.Web), float64(soft.Web), 3, "cm²"},
	} {
		row := []string{r.name, unit.Figures(r.a, r.figures), r.unit}
		if d.weld() {
			row = []string{r.name, unit.Figures(r.a, r.figures), unit.Figures(r.b, r.figures), r.unit}
		}
		table = append(table, row)
	}
	return table
}
