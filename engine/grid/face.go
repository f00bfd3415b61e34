package grid

import (
	"fmt"
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
)

// face is a plate across the boat: the transom or a bulkhead.
type face struct {
	name, zone string  // "bulkhead 6", "bulkhead"
	x, lean    float64 // how far it leans aft for one metre of height
	foot       float64 // height about which it leans
	outline    []point // to starboard, from the keel up to the top at the centre line
	top        float64
	plate      *record.Plating // thickness and alloy of a bulkhead written as those of a plate
	plates     []*record.Plating
	bars       []bar
	shelves    []float64 // heights of soles that end at it
	at         finding.Place
	loaded     bool // by a head of water up to its top
}

// bar is one stiffener of a face to starboard, from end to end.
type bar struct {
	rec       *record.Stiffener
	name      string
	level     bool
	at        float64 // half breadth of an upright one, height of a level one
	from, to  float64
	open      bool // its ends are the edges of the plate
	primary   bool
	section   string
	fixed     bool
	place     finding.Place
	sides     string
	synthetic bool
}

// outlineAt is the section of the hull to starboard, closed along the centre line, cut off at a height.
func (b *builder) outlineAt(x, top float64) []point {
	s := b.skin.at(x).station
	poly := s.Half()
	deck := b.skin.deck(x).at
	for i := len(deck) - 2; i >= 0; i-- {
		poly = append(poly, point{Y: deck[i].Y, Z: deck[i].Z})
	}
	return clip(poly, half{up: true, at: top})
}

// transom lays the transom up to the sheer.
func (b *builder) transom() {
	aft, _ := b.skin.ends()
	l := b.skin.hull
	sheer := l.Stations[0].At[lines.Sheer].Z
	f := face{name: "transom", zone: "transom", x: aft, lean: math.Tan(l.Rake * math.Pi / 180), foot: l.Stations[0].At[lines.Keel].Z,
		outline: b.outlineAt(aft, sheer), top: sheer, plates: b.platesOf("transom"), bars: b.bars("transom", "")}
	for _, s := range b.fields {
		if s.zone == "sole" && s.stops[0].x < aft+0.1 && s.central {
			f.shelves = append(f.shelves, s.level)
		}
	}
	if len(f.plates) == 0 {
		b.noPlate(&field{name: "transom", zone: "transom"})
	}
	b.face(&f)
}

// bulkheads lays the bulkheads.
func (b *builder) bulkheads() {
	for _, r := range b.frames {
		if r.Kind.V != "bulkhead" {
			continue
		}
		if !r.Plate.Set || !r.Alloy.Set {
			b.out.Findings = append(b.out.Findings, gap("bulkhead-plate", "frame "+r.ID, "bulkhead "+r.ID+" has no plate on record, so its plating is not judged",
				"write plate_mm and alloy of the bulkhead", r.At))
			continue
		}
		x := float64(r.X.V)
		top := b.skin.deck(x).at[0].Z
		if v, ok := r.Top.Get(); ok {
			top = min(top, float64(v))
		}
		plate := &record.Plating{Entry: r.Entry, Zone: record.Written("bulkhead", r.At), Thickness: r.Plate, Alloy: r.Alloy}
		f := face{name: "bulkhead " + r.ID, zone: "bulkhead", x: x, outline: b.outlineAt(x, top), top: top, plate: plate,
			plates: []*record.Plating{plate}, bars: append(b.bars("bulkhead", r.ID), b.spaced(r, x)...), at: r.At, loaded: !r.Tight.Set || r.Tight.V}
		for _, s := range b.fields {
			if s.zone == "sole" && s.central && s.stops[0].x < x+near && s.stops[len(s.stops)-1].x > x-near {
				f.shelves = append(f.shelves, s.level)
			}
		}
		b.face(&f)
	}
}

// bars lists the stiffeners written for the transom or a bulkhead, sets laid out one by one.
func (b *builder) bars(on, frame string) []bar {
	var out []bar
	for i := range b.rec.Stiffeners {
		s := &b.rec.Stiffeners[i]
		if s.On.V != on || s.Frame.Set && s.Frame.V != frame {
			continue
		}
		number := 1
		if n, ok := s.Number.Get(); ok {
			number = n
		}
		for k := range number {
			one := bar{rec: s, name: s.ID, level: s.Runs.V == "level", at: float64(s.Offset.V) + float64(float64(k)*float64(s.Spacing.V))/1000,
				from: math.Inf(-1), to: math.Inf(1), primary: s.Role.V == "primary", section: s.Section.V, fixed: s.Ends.V == "fixed", place: s.At, sides: s.Sides.V}
			if number > 1 {
				one.name = fmt.Sprintf("%s %d", s.ID, k+1)
			}
			one.open = !s.Low.Set && !s.High.Set
			if v, ok := s.Low.Get(); ok {
				one.from = float64(v)
			}
			if v, ok := s.High.Get(); ok {
				one.to = float64(v)
			}
			out = append(out, one)
		}
	}
	return out
}

// spaced lays the upright stiffeners of a bulkhead that gives only their spacing: half of it from the centre line, and on.
func (b *builder) spaced(r *record.Frame, x float64) []bar {
	gap, ok := r.StiffenGap.Get()
	if !ok || !r.Stiffener.Set {
		return nil
	}
	step := float64(gap) / 1000
	_, edge, _, _ := box(b.outlineAt(x, math.Inf(1)))
	var out []bar
	for y := step / 2; y < edge-0.1 && len(out) < 60; y += step {
		out = append(out, bar{name: fmt.Sprintf("upright %d", len(out)+1), at: y, from: math.Inf(-1), to: math.Inf(1), open: true,
			section: r.Stiffener.V, place: r.Stiffener.At, synthetic: true})
	}
	return out
}

// column is a stretch of a face between two uprights, or from one to the edge.
type column struct {
	poly   []point
	across bool
}

// face lays panels and stiffeners of one plate across the boat.
func (b *builder) face(f *face) {
	if len(f.outline) < 3 {
		return
	}
	b.facePanels(f)
	b.faceBars(f)
}

// standing reports whether an upright goes from edge to edge of a piece of plate at its half breadth.
func (s *bar) standing(poly []point) bool {
	low, high, ok := upright(poly, s.at)
	return ok && !s.level && s.sides != "port" && s.sides != "starboard" && s.from <= low+near && s.to >= high-near
}

// columns cuts a piece of plate along the uprights that go through it.
func (f *face) columns(poly []point, central bool) []column {
	inner, outer, _, _ := box(poly)
	var ys []float64
	middle := false
	for i := range f.bars {
		s := &f.bars[i]
		switch {
		case !s.standing(poly):
		case s.at < near:
			middle = true
		case s.at > inner+near && s.at < outer-near:
			ys = append(ys, s.at)
		}
	}
	slices.Sort(ys)
	var out []column
	from := inner
	for _, y := range append(ys, outer) {
		c := column{poly: clip(clip(poly, half{at: from, above: true}), half{at: y})}
		c.across = central && from < near && !middle
		out = append(out, c)
		from = y
	}
	return out
}

// rows cuts a column along what lies level through all of it.
func (f *face) rows(c column) []column {
	inner, outer, low, high := box(c.poly)
	var zs []float64
	for i := range f.bars {
		s := &f.bars[i]
		if s.level && s.sides != "port" && s.sides != "starboard" && s.from <= inner+near && s.to >= min(outer, widest(c.poly, s.at))-near {
			zs = append(zs, s.at)
		}
	}
	zs = append(zs, f.shelves...)
	slices.Sort(zs)
	var out []column
	from := low
	for _, z := range append(zs, high) {
		if z <= from+near || z > high || z < high && z > high-near {
			continue
		}
		out = append(out, column{poly: clip(clip(c.poly, half{up: true, at: from, above: true}), half{up: true, at: z}), across: c.across})
		from = z
	}
	return out
}

func widest(poly []point, z float64) float64 {
	y, _ := level(poly, z)
	return y
}

// vector puts a point of a face into the boat.
func (f *face) vector(p point) hydrostatics.Vector {
	return hydrostatics.Vector{X: f.x - float64((p.Z-f.foot)*f.lean), Y: p.Y, Z: p.Z}
}

// up is a height measured along the plate.
func (f *face) up(z float64) float64 { return f.foot + float64((z-f.foot)*f.slope()) }

// slope is the length on the plate for one metre of height.
func (f *face) slope() float64 { return math.Hypot(1, f.lean) }
