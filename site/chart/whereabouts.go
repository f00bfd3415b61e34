package chart

import (
	"math"

	"hullfile/engine/lines"
)

// Skin is the outline of the unrolled hull, drawn once on a page and used by many small pictures.
type Skin struct {
	Markup string // a drawing of no size that holds the outline; empty where there are no lines
	shape  seamMap
	drawn  bool
}

// Pin is what a small picture points at: a seam by its ends, as in Seam, or a stretch of a zone of the plating.
type Pin struct {
	Seams  []Seam
	Fields []Field
	Whole  bool // the hull as a whole
}

// Field is a stretch of plating: bottom, side or transom, around x, metres forward of the transom.
type Field struct {
	Zone    string
	X, Long float64
}

// The size of a small picture, in drawing units.
const spotWidth, spotEdge = 220.0, 4.0

// NewSkin draws the outline.
func NewSkin(r lines.Result) Skin {
	v, ok := shapeOf(r)
	if !ok {
		return Skin{}
	}
	k := Skin{shape: seamMap{shape: v}, drawn: true}
	s := &sheet{w: spotWidth, h: k.height(), out: make([]byte, 0, 1<<10)} // hundreds of them are small
	s.raw(`<svg class="g-defs" width="0" height="0" aria-hidden="true" focusable="false"><title>outline</title><defs><g id="hull-skin">`)
	for _, side := range []float64{-1, 1} {
		for e := lines.Chine; e <= lines.Sheer; e++ {
			var way []point
			for _, st := range v.stations {
				way = append(way, k.at(st.X, side*girths(st, e)))
			}
			s.curve("g-station", way...)
		}
		s.curve("g-station", k.at(v.aft(), 0), k.at(v.aft(), side*girths(v.stations[0], lines.Sheer)))
	}
	s.curve("g-station", k.at(v.aft(), 0), k.at(v.fore(), 0))
	s.raw(`</g></defs></svg>`)
	k.Markup = string(s.out)
	return k
}

// Spot draws a small picture with a mark on the skin. It is empty where there is nothing to point at. alt says in words
// where the mark is.
func (k Skin) Spot(m Pin, alt string) string {
	if !k.drawn || len(m.Seams)+len(m.Fields) == 0 && !m.Whole {
		return ""
	}
	s := &sheet{w: spotWidth, h: k.height(), out: make([]byte, 0, 1<<10)} // hundreds of them are small
	s.raw(`<svg class="g-spot" viewBox="0 0 `)
	s.num(s.w)
	s.raw(" ")
	s.num(s.h)
	s.raw(`" role="img" aria-label="`)
	s.out = appendText(s.out, alt)
	s.raw(`"><title>`)
	s.out = appendText(s.out, alt)
	s.raw(`</title>`)
	for _, f := range m.Fields {
		k.field(s, f)
	}
	s.raw(`<use href="#hull-skin"/>`)
	for _, one := range m.Seams {
		k.seam(s, one)
	}
	s.raw("</svg>")
	return string(s.out)
}

func (k Skin) scale() float64 {
	return (spotWidth - 2*spotEdge) / (k.shape.fore() - k.shape.aft())
}

// height is that of a small picture: both sides of the widest station.
func (k Skin) height() float64 {
	widest := 0.0
	for _, st := range k.shape.stations {
		widest = math.Max(widest, girths(st, lines.Sheer))
	}
	return 2*spotEdge + float64(2*widest*k.scale())
}

func (k Skin) at(x, girth float64) point {
	return point{spotEdge + float64((x-k.shape.aft())*k.scale()), k.height()/2 + float64(girth*k.scale())}
}

// seam draws a seam with a ring round its middle, so that a short one is seen.
func (k Skin) seam(s *sheet, one Seam) {
	if !near0(one.X) || !near0(one.ToX) || !near0(one.Girth) || !near0(one.ToGirth) {
		return
	}
	way := k.shape.way(one, k.at)
	s.curve("g-seam g-heavy", way...)
	a, b := way[(len(way)-1)/2], way[len(way)/2]
	s.circle("g-ring", (a.x+b.x)/2, (a.y+b.y)/2, 7)
}

// field shades a stretch of plating on both sides.
func (k Skin) field(s *sheet, f Field) {
	if !near0(f.X) || !near0(f.Long) {
		return
	}
	from, to := lines.Keel, lines.Chine
	aft, fore := f.X-f.Long/2, f.X+f.Long/2
	switch f.Zone {
	case "bottom":
	case "side":
		from, to = lines.Chine, lines.Sheer
	case "transom":
		from, to, aft, fore = lines.Keel, lines.Sheer, k.shape.aft(), k.shape.aft()+0.06*(k.shape.fore()-k.shape.aft())
	default:
		return
	}
	aft, fore = math.Max(aft, k.shape.aft()), math.Min(fore, k.shape.fore())
	if fore <= aft {
		return
	}
	for _, side := range []float64{-1, 1} {
		var way []point
		for n := range 5 {
			x := aft + float64(float64(n)/4*(fore-aft))
			way = append(way, k.at(x, side*k.girth(x, from)))
		}
		for n := range 5 {
			x := fore - float64(float64(n)/4*(fore-aft))
			way = append(way, k.at(x, side*k.girth(x, to)))
		}
		s.shape("g-item", way...)
	}
}

// girth gives the distance of an edge from the keel, nought for the keel itself.
func (k Skin) girth(x float64, e lines.Edge) float64 {
	if e == lines.Keel {
		return 0
	}
	return k.shape.girth(x, e)
}
