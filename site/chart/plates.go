package chart

import (
	"strings"

	"hullfile/engine/capacity"
)

// Label draws one plate of the boat in our own layout, with the fields that its law names: large the figures that are
// read from a distance, below them the words. A figure that nobody has read off the boat says that it is reckoned.
func Label(l capacity.Label) Figure {
	id := "fig-label-" + slug(l.Key)
	if len(l.Fields) == 0 {
		return blank(id, l.Title, "No field of this plate is known.", nil)
	}
	d := labelDrawing{l}
	p := plate{id: id, title: l.Title, alt: d.words(), paint: d.draw}
	return p.finished(d.note(), d.table())
}

type labelDrawing struct{ capacity.Label }

func (d labelDrawing) words() string {
	var parts []string
	for i := range d.Fields {
		if f := &d.Fields[i]; f.Large {
			parts = append(parts, f.Name+" "+textOf(f))
		}
	}
	if len(parts) == 0 {
		return d.Title + "."
	}
	return strings.Join(parts, ", ") + "."
}

func textOf(f *capacity.Field) string {
	if f.Text() == "" {
		return "not recorded"
	}
	return f.Text()
}

func (d labelDrawing) note() string {
	note := "Layout of our own; the law says what must stand there, and in part how large."
	if d.Why != "" {
		note = strings.ToUpper(d.Why[:1]) + d.Why[1:] + ". " + note
	}
	return note
}

func (d labelDrawing) table() [][]string {
	table := [][]string{{"Field", "On the plate", "From the record", "Law or standard"}}
	for i := range d.Fields {
		f := &d.Fields[i]
		name := f.Name
		if f.Note != "" {
			name += " (" + f.Note + ")"
		}
		table = append(table, []string{name, dash(f.Stated), dash(f.Reckoned), f.Source + ", " + string(f.Basis)})
	}
	return cut(table)
}

func dash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

// The measures of a label in drawing units.
const (
	labelEdge = 18.0 // from the edge of the drawing to the writing
	labelGap  = 10.0
	tileHigh  = 74.0
)

// draw sets title, figures and words. What is drawn first lies under what follows, so the plate itself, whose height is
// known only at the end, is drawn on a sheet of its own.
func (d labelDrawing) draw(s *sheet) {
	body := newSheet(s.w, 0)
	y := d.title(body)
	y = d.tiles(body, y+8)
	y = d.rows(body, y+20)
	s.h = y + 8
	s.rect("g-metal", box{1, 1, s.w - 1, s.h - 1})
	for _, at := range []point{{9, 9}, {s.w - 9, 9}, {9, s.h - 9}, {s.w - 9, s.h - 9}} {
		s.circle("g-raw", at.x, at.y, 3)
	}
	s.out = append(s.out, body.out...)
	s.words = append(s.words, body.words...)
}

func (d labelDrawing) title(s *sheet) float64 {
	y := 30.0
	for _, text := range wrap(d.Title, s.w-2*labelEdge) {
		s.text("g-text", labelEdge, y, start, text)
		y += line
	}
	s.line("g-axis", labelEdge, y-8, s.w-labelEdge, y-8)
	return y
}

// tiles sets the large figures side by side, each with its name over it and under it what it is not.
func (d labelDrawing) tiles(s *sheet, top float64) float64 {
	var large []*capacity.Field
	for i := range d.Fields {
		if d.Fields[i].Large {
			large = append(large, &d.Fields[i])
		}
	}
	if len(large) == 0 {
		return top
	}
	across, high := min(len(large), 4), tileHigh
	if s.slim() {
		across, high = min(across, 2), tileHigh+line
	}
	width := (s.w - 2*labelEdge - labelGap*float64(across-1)) / float64(across)
	for i, f := range large {
		x := labelEdge + float64(i%across)*(width+labelGap)
		y := top + float64(i/across)*(high+labelGap)
		tile(s, f, box{x, y, x + width, y + high})
	}
	rows := (len(large) + across - 1) / across
	return top + float64(rows)*(high+labelGap) - labelGap
}

func tile(s *sheet, f *capacity.Field, b box) {
	s.rect("g-gap", b)
	most := b.right - b.left - 16
	s.text("g-soft", b.left+8, b.top+17, start, fit(f.Name, most))
	s.large("g-text", b.left+8, b.top+44, most, dash(f.Text()))
	switch {
	case f.Text() == "":
		under(s, b, "not recorded")
	case f.Stated == "":
		under(s, b, "from the record")
	default:
		under(s, b, f.Note)
	}
}

// under sets up to two lines below the figure of a tile; on a phone there is room for both.
func under(s *sheet, b box, text string) {
	lines := wrap(text, b.right-b.left-16)
	if room := int((b.bottom - b.top - 58) / line); len(lines) > room {
		lines = []string{fit(text, b.right-b.left-16)}
	}
	for i, one := range lines {
		s.text("g-soft", b.left+8, b.top+64+float64(i)*line, start, one)
	}
}

// rows sets the other fields: the name, and beside or under it what it says.
func (d labelDrawing) rows(s *sheet, y float64) float64 {
	name, at, most := 160.0, labelEdge+170, s.w-2*labelEdge-170
	if s.slim() {
		name, at, most = s.w-2*labelEdge, labelEdge+12, s.w-2*labelEdge-12
	}
	for i := range d.Fields {
		f := &d.Fields[i]
		if f.Large {
			continue
		}
		s.text("g-soft", labelEdge, y, start, fit(f.Name, name))
		if s.slim() {
			y += line
		}
		for _, text := range wrap(textOf(f), most) {
			s.text("g-text", at, y, start, text)
			y += line
		}
		y += 4
	}
	return y
}
