package engine

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Neighbour is what the dossier of a hull takes from another hull of the yard, and no more: with it a technical file can
// be made again from the records inside it, without those of other boats. Neighbours (neighbours.go) says what is taken
// and why; names of people and notes are left out.
type Neighbour struct {
	Number string          `json:"number"`
	Design string          `json:"design,omitempty"`
	Bottom string          `json:"bottom,omitempty"` // design that its design comes from in the end
	Named  bool            `json:"named,omitempty"`  // a paper of the hull holds its number
	HIN    *Noted[string]  `json:"hin,omitempty"`
	Mass   *Noted[float64] `json:"loaded_mass_kg,omitempty"`
	Power  *Noted[float64] `json:"power_kw,omitempty"`
	Hours  [][2]float64    `json:"hours,omitempty"` // meter from and to
	Looks  []NearLook      `json:"looks,omitempty"`
	Parts  []NearPart      `json:"parts,omitempty"`
	Welds  []NearWeld      `json:"welds,omitempty"`
}

// Noted is a value and where it stands in the records of the other hull.
type Noted[T any] struct {
	V  T             `json:"v"`
	At finding.Place `json:"at"`
}

// NearLook is a look at the seams of another hull: the meter, and what each thing that was found turned out to be.
type NearLook struct {
	Meter float64  `json:"at_h"`
	Is    []string `json:"is,omitempty"`
}

// NearPart is a part that was cut from the same lot; sizes that nobody wrote are missing.
type NearPart struct {
	Key    string   `json:"key"`
	Lot    string   `json:"lot"`
	Count  *int     `json:"count,omitempty"`
	Length *float64 `json:"length_m,omitempty"`
	Width  *float64 `json:"width_m,omitempty"`
	Area   *float64 `json:"area_m2,omitempty"`
}

// NearWeld is what a welder did elsewhere on a day on which he welded here too.
type NearWeld struct {
	Welder string        `json:"welder"`
	Joint  string        `json:"joint"`
	Date   string        `json:"date"`
	Begin  string        `json:"begin"`
	At     finding.Place `json:"at"`
	End    string        `json:"end"`
}

// Near lists what the dossier of a hull takes from the other hulls, in order of their number.
func (n *Neighbours) Near(h *record.Hull) []Neighbour {
	own, err := n.load(h.Number, true)
	if err != nil || !n.of[h] {
		return nil
	}
	near, _ := n.NearOf(own) // a yard in memory has every brief
	return near
}

// NearOf does the same by the brief of the hull. The error is that of loading the brief of another.
func (n *Neighbours) NearOf(own *Brief) ([]Neighbour, error) {
	g := gathering{n: n, own: own, by: map[int]*Neighbour{}}
	for _, i := range n.family[n.bottomOf(own.Design)].around(own.Number, false) {
		g.from(i, false, (*Neighbour).boat)
	}
	for _, i := range n.designs[own.Design].around(own.Number, true) {
		g.from(i, false, (*Neighbour).life)
	}
	for _, s := range own.shares() {
		if c := n.circles[s.group()]; c != nil {
			for _, i := range c.members {
				g.from(i, true, func(o *Neighbour, b *Brief) { o.take(b, s.kind, s.name) })
			}
		}
	}
	for _, number := range n.Named(own) {
		g.from(n.at[number], false, func(o *Neighbour, b *Brief) { o.named(own, b) })
	}
	var out []Neighbour
	for _, o := range g.by {
		if o.Design != "" {
			o.Bottom = n.bottomOf(o.Design)
		}
		if o.brings() {
			out = append(out, *o)
		}
	}
	slices.SortFunc(out, func(a, b Neighbour) int { return strings.Compare(a.Number, b.Number) })
	return out, g.failed
}

// gathering is what has been taken from other hulls so far.
type gathering struct {
	n      *Neighbours
	own    *Brief
	by     map[int]*Neighbour
	failed error
}

// from takes something from the hull at a place of the yard, with its parts and welds or without.
func (g *gathering) from(i int, metal bool, take func(*Neighbour, *Brief)) {
	number := g.n.tokens[i].Number
	if number == g.own.Number || g.failed != nil {
		return
	}
	b, err := g.n.load(number, metal)
	if err != nil {
		g.failed = fmt.Errorf("hull %s, which hull %s takes from: %w", number, g.own.Number, err)
		return
	}
	if g.by[i] == nil {
		g.by[i] = &Neighbour{Number: number}
	}
	take(g.by[i], b)
}

func (o *Neighbour) brings() bool {
	return o.Design != "" || o.HIN != nil || o.Named || len(o.Parts)+len(o.Welds) > 0
}

// boat takes what hulls of one family of designs tell each other.
func (o *Neighbour) boat(b *Brief) { o.Design, o.Mass, o.Power = b.Design, b.Mass, b.Power }

// life takes what hulls of one design tell each other.
func (o *Neighbour) life(b *Brief) { o.Design, o.Hours, o.Looks = b.Design, b.Hours, b.Looks }

// take adds what another hull brings to a group, as shares names it. A hull that does not belong to the group brings nothing.
func (o *Neighbour) take(b *Brief, kind, name string) {
	switch kind {
	case "hin", "serial":
		o.HIN = b.HIN
	case "lot":
		o.Parts = append(o.Parts, b.partsOf(name)...)
	case "hours":
		for i := range b.Welds {
			if b.Welds[i].stint() == name {
				o.Welds = append(o.Welds, b.Welds[i])
			}
		}
	}
}

// named takes another hull that a paper of this one could name.
func (o *Neighbour) named(own, b *Brief) {
	for _, text := range own.Papers {
		o.Named = o.Named || strings.Contains(text, b.Number)
		if hin := b.hin(); hin != "" && strings.Contains(text, hin) {
			o.HIN = b.HIN
		}
	}
}

// Rejoin gives a yard of one hull the neighbours that its dossier takes something from.
// The error names every neighbour that cannot be read or stands twice.
func Rejoin(y *record.Yard, near []Neighbour) (*record.Yard, error) {
	out := *y
	out.Hulls, out.Designs = slices.Clone(y.Hulls), slices.Clone(y.Designs)
	var wrong []error
	for i := range near {
		h, err := near[i].hull()
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		if slices.ContainsFunc(out.Hulls, func(o *record.Hull) bool { return o.Number == h.Number }) {
			wrong = append(wrong, fmt.Errorf("hull %s stands among its own neighbours, or twice", h.Number))
			continue
		}
		out.Hulls = append(out.Hulls, h)
		known := slices.ContainsFunc(out.Designs, func(d record.DesignName) bool { return d.Name == h.Design.V })
		if bottom := near[i].Bottom; h.Design.V != "" && bottom != h.Design.V && !known {
			out.Designs = append(out.Designs, record.DesignName{Name: h.Design.V, BasedOn: bottom})
		}
	}
	slices.SortStableFunc(out.Hulls, func(a, b *record.Hull) int { return strings.Compare(a.Number, b.Number) })
	return out.Settled(), errors.Join(wrong...)
}

// hull makes a hull with nothing but what was taken from it.
func (o *Neighbour) hull() (*record.Hull, error) {
	h := &record.Hull{Number: o.Number}
	if o.Number == "" {
		return nil, errors.New("a neighbour has no number")
	}
	if o.Design != "" {
		h.Design = record.Written(o.Design, finding.Place{})
	}
	if o.HIN != nil {
		h.Identity.HIN = record.Written(o.HIN.V, o.HIN.At)
	}
	if o.Mass != nil {
		h.Boat.LoadedMass = record.Written(unit.KG(o.Mass.V), o.Mass.At)
	}
	if o.Power != nil {
		h.Boat.Power = record.Written(unit.KW(o.Power.V), o.Power.At)
	}
	h.Hours = slices.Grow(h.Hours, len(o.Hours)) // there are many, of long rows, and a hull has forty neighbours
	for _, span := range o.Hours {
		h.Hours = append(h.Hours, record.Hours{From: record.Written(unit.Hour(span[0]), finding.Place{}), To: record.Written(unit.Hour(span[1]), finding.Place{})})
	}
	for _, l := range o.Looks {
		look := record.Look{Meter: record.Written(unit.Hour(l.Meter), finding.Place{})}
		for _, is := range l.Is {
			look.Indications = append(look.Indications, record.Indication{Is: record.Written(is, finding.Place{})})
		}
		h.Looks = append(h.Looks, look)
	}
	for _, p := range o.Parts {
		h.Parts = append(h.Parts, p.part())
	}
	for _, w := range o.Welds {
		day, err := time.Parse(time.DateOnly, w.Date)
		if err != nil {
			return nil, fmt.Errorf("hull %s: %q is no day", o.Number, w.Date)
		}
		h.Welds = append(h.Welds, record.Weld{Welder: record.Written(w.Welder, finding.Place{}), Joint: record.Written(w.Joint, finding.Place{}),
			Date:  record.Written(record.Date{Year: day.Year(), Month: day.Month(), Day: day.Day()}, finding.Place{}),
			Begin: record.Written(w.Begin, w.At), End: record.Written(w.End, finding.Place{})})
	}
	return h, nil
}

func (p *NearPart) part() record.Part {
	out := record.Part{Entry: record.Entry{ID: p.Key}, Lot: record.Written(p.Lot, finding.Place{})}
	if p.Count != nil {
		out.Count = record.Written(*p.Count, finding.Place{})
	}
	if p.Length != nil {
		out.Length = record.Written(unit.M(*p.Length), finding.Place{})
	}
	if p.Width != nil {
		out.Width = record.Written(unit.M(*p.Width), finding.Place{})
	}
	if p.Area != nil {
		out.Area = record.Written(unit.M2(*p.Area), finding.Place{})
	}
	return out
}
