package chart

import (
	"sync"

	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"github.com/golang/freetype/truetype"
	"golang.org/x/image/math/fixed"
)

// stack is the type of all figures. The first three have the same advance widths, so that what is measured is drawn.
const stack = "Arial, 'Liberation Sans', Helvetica, sans-serif"

// perEm is the number of font units in one em of Liberation Sans.
const perEm = 2048

// near is how many runes have their width kept: Latin, Greek and Cyrillic.
const near = 0x600

// face is the font with the advance widths of the runes that a record is likely to hold.
type face struct {
	font  *truetype.Font
	width [near]uint16
}

// theFace reads the font on first use; safe from many goroutines, and read only after that.
var theFace = sync.OnceValue(newFace)

func newFace() *face {
	font, err := truetype.Parse(liberationsansregular.TTF)
	if err != nil {
		panic("chart: the built-in font cannot be read: " + err.Error())
	}
	f := &face{font: font}
	for r := range f.width {
		f.width[r] = uint16(f.look(rune(r)))
	}
	return f
}

// look gives the advance width of a rune in font units. A rune that the font lacks is taken as wide as it may come out
// in another font: one em, or more for pictures.
func (f *face) look(r rune) int {
	r = written(r)
	index := f.font.Index(r)
	switch {
	case index == 0 && r >= 0x1F000:
		return perEm * 13 / 10
	case index == 0 && r >= 0x20:
		return perEm
	}
	return int(f.font.HMetric(fixed.Int26_6(perEm), index).AdvanceWidth)
}

// advance gives the width of a text set in the given size, both in drawing units.
func (f *face) advance(text string, size float64) float64 {
	sum := 0
	for _, r := range text {
		if r < near {
			sum += int(f.width[r])
			continue
		}
		sum += f.look(r)
	}
	return float64(sum) * size / perEm
}

// advance gives the width of a text in the size of figures.
func advance(text string) float64 { return theFace().advance(text, textSize) }
