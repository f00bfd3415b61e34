package chart

import (
	"fmt"
	"math"
	"slices"

	"hullfile/engine/finding"
)

// Tile is one panel on an unrolled face of the boat.
type Tile struct {
	Name     string
	Flat     [][2]float64 // metres: along and across the face
	Standing finding.Standing
	Margin   float64 // fitted over needed, nought where not shown
	Fitted   string  // for the table, as the page writes it
	Needed   string
	Href     string
	Plain    bool // its outline alone, to say where the others lie
}

// Bar is one member on an unrolled face.
type Bar struct {
	Flat     [][2]float64
	Standing finding.Standing
	Margin   float64
	Primary  bool // carries other members
	Named    bool // its own figure beside it
}

// Unfolded is one face of the boat laid flat.
type Unfolded struct {
	Name   string
	Both   bool // port is drawn too: above the keel or the centre line, or to its left
	Along  bool // runs along the boat: x forward, girth downward from the keel or the centre line; else y to starboard, z up
	Tiles  []Tile
	Bars   []Bar
	Frames []FrameMark // along the boat only
}

// FrameMark is where a frame stands.
type FrameMark struct {
	Name string
	X    float64
}

// Unrolled draws faces of the boat laid flat: panels shaded by what is fitted over what is needed and labelled with it
// where the label fits, members by their standing. Faces along the boat lie under each other, in several lengths where
// one would be too small to read; others stand beside each other.
func Unrolled(id, title string, faces []Unfolded) Figure {
	id = "fig-unrolled-" + slug(id)
	u := unrolled{}
	for _, f := range faces {
		if f = f.usable(); len(f.Tiles)+len(f.Bars) > 0 {
			u.faces = append(u.faces, f)
		}
	}
	if len(u.faces) == 0 {
		return blank(id, title, "No panel has a place on the lines, so there is nothing to unroll.", nil)
	}
	p := plate{id: id, title: title, alt: u.words(), links: u.linked(), paint: u.draw}
	return p.finished(u.note(), u.table())
}

type unrolled struct{ faces []Unfolded }

// usable leaves out what has no place that can be drawn.
func (f Unfolded) usable() Unfolded {
	unsound := func(flat [][2]float64, least int) bool {
		return len(flat) < least || slices.ContainsFunc(flat, func(p [2]float64) bool { return !near0(p[0]) || !near0(p[1]) })
	}
	f.Tiles = without(f.Tiles, func(t Tile) bool { return unsound(t.Flat, 3) })
	f.Bars = without(f.Bars, func(b Bar) bool { return unsound(b.Flat, 2) })
	return f
}

// without leaves out what is not wanted. Where that is nothing the list itself comes back.
func without[T any](all []T, not func(T) bool) []T {
	if !slices.ContainsFunc(all, not) {
		return all
	}
	return slices.DeleteFunc(slices.Clone(all), not)
}

func (u unrolled) linked() bool {
	for _, f := range u.faces {
		if slices.ContainsFunc(f.Tiles, func(t Tile) bool { return t.Href != "" && local(t.Href) }) {
			return true
		}
	}
	return false
}

// judgedTile reports whether there is a margin to show.
func judgedTile(s finding.Standing, margin float64) bool {
	return s != finding.NotShown && s != "" && usable(margin) && margin > 0
}

func (u unrolled) words() string {
	panels, short, open := 0, 0, 0
	var least *Tile
	for i := range u.faces {
		for k := range u.faces[i].Tiles {
			t := &u.faces[i].Tiles[k]
			if t.Plain {
				continue
			}
			panels++
			switch {
			case !judgedTile(t.Standing, t.Margin):
				open++
				continue
			case t.Standing == finding.Short:
				short++
			}
			if least == nil || t.Margin < least.Margin {
				least = t
			}
		}
	}
	if panels == 0 {
		return "Where they lie on the unrolled boat."
	}
	words := fmt.Sprintf("%d panels drawn, %d of them short, %d not shown.", panels, short, open)
	if least != nil {
		words += fmt.Sprintf(" The least room is at %s, %s times.", least.Name, ratioOf(least.Standing, least.Margin))
	}
	return words
}

// ratioOf writes fitted over needed; what is short never reads as enough.
func ratioOf(s finding.Standing, margin float64) string {
	if s == finding.Short {
		margin = math.Min(margin, 0.99)
	}
	return ratio(margin)
}

func (u unrolled) note() string {
	note := "Figures: fitted over needed. The stronger the shade, the less room a panel has; hatched with ▼ is short, ○ is not shown."
	switch {
	case u.named():
		note = "Heavy lines are the members, with what is there over what is asked of them; broken: not shown; crossed: short. Thin lines are the panels."
	case u.barred():
		note += " Lines are members, heavy ones carry others; broken: not shown; crossed and with its figure: short."
	}
	if slices.ContainsFunc(u.faces, func(f Unfolded) bool { return f.Along }) {
		note += " Girth runs downward from the keel, or from the centre line; forward is to the right. Figures over the picture number the frames."
	}
	if slices.ContainsFunc(u.faces, func(f Unfolded) bool { return f.Both }) {
		note += " Where both sides are drawn, port lies above the keel or the centre line, or to the left."
	}
	return note + " Where a figure finds no room it stands in the table only."
}

// barred reports whether members are drawn, named whether each has its figure beside it.
func (u unrolled) barred() bool {
	return slices.ContainsFunc(u.faces, func(f Unfolded) bool { return len(f.Bars) > 0 })
}

func (u unrolled) named() bool {
	return slices.ContainsFunc(u.faces, func(f Unfolded) bool {
		return slices.ContainsFunc(f.Bars, func(b Bar) bool { return b.Named })
	})
}

func (u unrolled) table() [][]string {
	table := [][]string{{"Panel", "On", "Fitted, mm", "Needed, mm", "Fitted / needed", "Standing"}}
	seen := map[string]bool{}
	for _, f := range u.faces {
		for _, t := range f.Tiles {
			if seen[t.Name] || t.Plain {
				continue
			}
			seen[t.Name] = true
			row := []string{t.Name, f.Name, dash(t.Fitted), "–", "–", string(t.Standing)}
			if judgedTile(t.Standing, t.Margin) {
				row[3], row[4] = dash(t.Needed), ratioOf(t.Standing, t.Margin)
			}
			table = append(table, row)
		}
	}
	return table
}
