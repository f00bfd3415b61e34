package scantling

import (
	"strings"

	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// bars are the sections of a hull as metal, each made once.
type bars struct {
	found map[string]*bar
}

// bar is one section alone, and on each plating that counted with it so far.
type bar struct {
	record *record.Section
	alone  section.Section
	wrong  string // why it is no section
	values method.GivenMap
	on     map[plating]*fitted
}

// plating is what counts with a bar.
type plating struct{ thickness, breadth unit.MM }

type fitted struct {
	section section.Section
	props   section.Properties
	least   float64 // elastic buckling stress of its weakest part over the modulus of elasticity; nought until it is asked
}

func newBars(h *record.Hull) *bars {
	b := &bars{found: make(map[string]*bar, len(h.Sections))}
	for i := range h.Sections {
		b.found[h.Sections[i].ID] = newBar(&h.Sections[i])
	}
	return b
}

// apart is the same bars with platings of their own, for somebody who asks beside others.
func (b *bars) apart() *bars {
	out := &bars{found: make(map[string]*bar, len(b.found))}
	for name, one := range b.found {
		out.found[name] = &bar{record: one.record, alone: one.alone, wrong: one.wrong, values: one.values, on: map[plating]*fitted{}}
	}
	return out
}

func newBar(rec *record.Section) *bar {
	b := &bar{record: rec, on: map[plating]*fitted{}}
	alone, err := section.New(ShapeOf(rec))
	if err != nil {
		b.wrong = "section " + rec.ID + ": " + strings.ReplaceAll(err.Error(), "\n", "; ")
		return b
	}
	b.alone = alone
	b.values = b.given()
	return b
}

// ShapeOf turns the record of a section into its shape.
func ShapeOf(rec *record.Section) section.Shape {
	s := section.Shape{
		Kind: section.Kind(rec.Shape.V), Height: rec.Height.V, Web: rec.Web.V, Flange: rec.Flange.V, FlangeThickness: rec.FlangeThickness.V,
		Foot: rec.Foot.V, FootThickness: rec.FootThickness.V, Base: rec.Base.V, Diameter: rec.Diameter.V, Wall: rec.Wall.V,
		Area: rec.Area.V, Centroid: rec.Centroid.V, Joined: rec.Joined.V,
	}
	for i := range rec.Pieces {
		p := &rec.Pieces[i]
		s.Pieces = append(s.Pieces, section.Piece{Name: p.ID, Role: section.Role(p.Role.V), Left: p.Left.V, Foot: p.Foot.V, Breadth: p.Breadth.V, Height: p.Height.V})
	}
	return s
}

// open reports whether the slenderness of its web and flange can be told by the two ratios that sheets know. Of others
// engine/section tells it part by part.
func (b *bar) open() bool {
	switch b.alone.Shape.Kind {
	case section.FlatBar, section.Angle, section.Tee:
		return true
	}
	return false
}

// given is what sheets ask of a section under section.KEY. A section without a web has none of it.
func (b *bar) given() method.GivenMap {
	s := b.alone.Shape
	height, web := s.Height, s.Web
	switch s.Kind {
	case section.Angle, section.Tee, section.TopHat:
		height -= s.FlangeThickness
	case section.Box:
		height -= 2 * s.FlangeThickness
	case section.Pipe:
		height, web = s.Diameter, s.Wall
	case section.BuiltUp:
		height, web = b.built()
	}
	if web <= 0 {
		return nil
	}
	put := func(v unit.MM) method.Quantity {
		return method.Quantity{Number: float64(v), Unit: "mm", Place: b.record.At, Source: "section " + b.record.ID}
	}
	flange, thick := s.Flange, s.FlangeThickness
	if !b.open() {
		flange, thick = 0, 0
	}
	free := flange // on one side of the web
	if s.Kind == section.Tee {
		free = flange / 2
	}
	return method.GivenMap{
		"section.web_height_mm": put(height), "section.web_thickness_mm": put(web),
		"section.flange_breadth_mm": put(flange), "section.flange_thickness_mm": put(thick), "section.outstand_mm": put(free),
	}
}

// built gives height and thickness of the web of a built-up section with the greatest ratio; nought where no piece is a web.
func (b *bar) built() (height, web unit.MM) {
	for _, p := range b.alone.Shape.Pieces {
		if p.Role == section.Web && (web == 0 || p.Height/p.Breadth > height/web) {
			height, web = p.Height, p.Breadth
		}
	}
	return height, web
}

// with gives the bar on plating. A thickness of nought is a bar that stands free of the plate.
func (b *bar) with(thickness, breadth unit.MM) (*fitted, error) {
	key := plating{thickness, breadth}
	if f := b.on[key]; f != nil {
		return f, nil
	}
	s := b.alone
	if thickness > 0 {
		var err error
		if s, err = b.alone.With(thickness, breadth); err != nil {
			return nil, err
		}
	}
	f := &fitted{section: s, props: s.Properties()}
	b.on[key] = f
	return f, nil
}

// form is the form of metal for which strengths are asked.
func (b *bar) form() string {
	switch b.alone.Shape.Kind {
	case section.FlatBar, section.BuiltUp:
		return "plate"
	}
	return "extrusion"
}
