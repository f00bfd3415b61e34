package record

import (
	"reflect"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// Drawing tells which files of the stock a hull draws on: those that list what one of its records names by key, cast, batch or
// certificate, and those that list the same again. A yard that keeps the metal of each year or boat in a file of its own then
// need not show all of it in the file of every boat.
type Drawing struct {
	files map[string][]string // by the marks of what they list
	marks map[string][]string // and the other way round
}

// NewDrawing gives the drawing of a stock that is empty yet.
func NewDrawing() *Drawing {
	return &Drawing{files: map[string][]string{}, marks: map[string][]string{}}
}

// DrawingOf gives the drawing of what a yard has in stock.
func DrawingOf(y *Yard) *Drawing {
	return Once(y, func([]*Hull) *Drawing {
		d := NewDrawing()
		for i := range y.Stock.Lots {
			l := &y.Stock.Lots[i]
			d.Lists(l.At.File, l.ID, l.Cast.V, l.MakersLot.V, l.Certificate.V)
		}
		for i := range y.Stock.Consumables {
			c := &y.Stock.Consumables[i]
			d.Lists(c.At.File, c.ID, c.Cast.V, c.Batch.V, c.Certificate.V)
		}
		return d
	})
}

// Lists says which marks a file of the stock lists.
func (d *Drawing) Lists(file string, marks ...string) {
	for _, mark := range marks {
		if mark == "" || slices.Contains(d.files[mark], file) {
			continue
		}
		mark = strings.Clone(mark) // it is cut out of the text of the file, which is let go of
		d.files[mark] = append(d.files[mark], file)
		d.marks[file] = append(d.marks[file], mark)
	}
}

// Marks gives what a file lists; none of a file that is not of the stock.
func (d *Drawing) Marks(file string) []string { return d.marks[file] }

// All gives every mark, in no order.
func (d *Drawing) All() []string {
	all := make([]string, 0, len(d.files))
	for mark := range d.files {
		all = append(all, mark)
	}
	return all
}

// Drawn are the files of the stock that a hull draws on.
type Drawn struct {
	from  *Drawing
	files map[string]bool
}

// Nothing is drawn on yet.
func (d *Drawing) Nothing() *Drawn { return &Drawn{d, map[string]bool{}} }

// Of gives what a hull draws on.
func (d *Drawing) Of(h *Hull) *Drawn {
	drawn := d.Nothing()
	EachText(h, drawn.By)
	return drawn
}

// By draws on the files that list a mark, and on those that list the same again.
func (d *Drawn) By(mark string) {
	for _, file := range d.from.files[mark] {
		if d.files[file] {
			continue
		}
		d.files[file] = true
		for _, also := range d.from.marks[file] {
			d.By(also)
		}
	}
}

// Has reports whether a file belongs to the hull: all do that are not of the stock, and all where it draws on none.
func (d *Drawn) Has(file string) bool {
	return len(d.files) == 0 || d.files[file] || len(d.from.marks[file]) == 0
}

// EachText calls do with every text in the records of a hull.
func EachText(h *Hull, do func(string)) { eachText(reflect.ValueOf(&h.HullFile).Elem(), do) }

func eachText(v reflect.Value, do func(string)) {
	switch v.Kind() {
	case reflect.String:
		do(v.String())
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.Type() != reflect.TypeFor[finding.Place]() {
				eachText(f, do)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachText(v.Index(i), do)
		}
	}
}
