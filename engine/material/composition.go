package material

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"hullfile/engine/finding"
)

// Composition is what an alloy or a filler may hold, in mass per cent.
type Composition struct {
	Citation
	Name   string
	Limits []ElementLimit // in the order of Elements
}

// ElementLimit is the limit of one element, of a sum of elements, or of those that are not named.
type ElementLimit struct {
	Element string // "Mg", "Mn+Cr", "each", "total"
	Limit
}

// Elements lists what a limit can be for, in the order in which certificates print it.
func Elements() []string {
	return []string{"Si", "Fe", "Cu", "Mn", "Mg", "Cr", "Zn", "Ti", "Be", "Mn+Cr", "each", "total"}
}

// Composition gives the limits of an alloy with or without temper ("5083-H116", "5083") or of a filler ("S Al 5183").
func (t *Table) Composition(name string) (*Composition, bool) {
	if c, ok := t.compositions[name]; ok {
		return c, true
	}
	plain, _, _ := strings.Cut(name, "-")
	c, ok := t.compositions[plain]
	return c, ok
}

// Of gives the limit of one element; ok is false where the source gives none.
func (c *Composition) Of(element string) (Limit, bool) {
	for _, l := range c.Limits {
		if l.Element == element {
			return l.Limit, true
		}
	}
	return Limit{}, false
}

// compositionRow is one composition as it is written.
type compositionRow struct {
	Alloys []string          `toml:"alloys"`
	Source string            `toml:"source"`
	Table  string            `toml:"table"`
	Basis  string            `toml:"basis"`
	Note   string            `toml:"note"`
	Limits map[string]string `toml:"limits"`
}

func (l *loader) takeCompositions(f *alloyFile) {
	for i, row := range f.Compositions {
		key := fmt.Sprintf("composition[%d]", i+1)
		c := Composition{Citation: l.citation(f.name, key, row.Source, row.Table, row.Basis, row.Note)}
		for _, element := range Elements() {
			text, ok := row.Limits[element]
			if !ok {
				continue
			}
			limit, err := ParseLimit(text)
			if err != nil {
				l.fault(f.name, key+".limits."+element, "%v", err)
			}
			c.Limits = append(c.Limits, ElementLimit{element, limit})
		}
		if len(c.Limits) != len(row.Limits) || len(c.Limits) == 0 {
			l.fault(f.name, key+".limits", "limits are given for %s and nothing else", strings.Join(Elements(), ", "))
		}
		for _, name := range row.Alloys {
			if _, twice := l.table.compositions[name]; twice {
				l.fault(f.name, key, "the composition of %q is there twice", name)
			}
			one := c
			one.Name = name
			l.table.compositions[name] = &one
		}
	}
}

// Limit is a least and a most with the decimals in which each is printed.
type Limit struct {
	Least, Most                 float64
	LeastDecimals, MostDecimals int
	HasLeast, HasMost           bool
}

// ParseLimit reads "0.40" as a most and "4.0-4.9" as a least and a most.
// The error quotes what is no number or range.
func ParseLimit(text string) (Limit, error) {
	low, high, two := strings.Cut(text, "-")
	if !two {
		low, high = "", text
	}
	var l Limit
	var err error
	if two {
		l.HasLeast, l.LeastDecimals = true, Decimals(low)
		if l.Least, err = strconv.ParseFloat(low, 64); err != nil {
			return l, fmt.Errorf("limit %q is no number or range", text)
		}
	}
	l.HasMost, l.MostDecimals = true, Decimals(high)
	if l.Most, err = strconv.ParseFloat(high, 64); err != nil || l.Most < l.Least {
		return l, fmt.Errorf("limit %q is no number or range", text)
	}
	return l, nil
}

// String gives the limit as it is printed.
func (l Limit) String() string {
	least, most := strconv.FormatFloat(l.Least, 'f', l.LeastDecimals, 64), strconv.FormatFloat(l.Most, 'f', l.MostDecimals, 64)
	switch {
	case l.HasLeast && l.HasMost:
		return least + " to " + most
	case l.HasLeast:
		return "at least " + least
	}
	return "at most " + most
}

// Decimals counts the digits behind the point of a number as it was written.
func Decimals(text string) int {
	_, after, _ := strings.Cut(text, ".")
	return len(after)
}

// Fit is how a printed value lies to a limit.
type Fit string

// The ways in which a printed value lies to a limit.
const (
	Inside  Fit = "inside"
	Rounded Fit = "inside once rounded" // outside as printed, inside once rounded to the decimals of the limit
	Coarse  Fit = "too coarse"          // printed with so few decimals that the value behind it may lie on either side
	Beyond  Fit = "outside"
)

// Standing is what the fit says: a value that rounding brings inside is met, one too coarse to tell is not shown.
func (f Fit) Standing() finding.Standing {
	switch f {
	case Inside, Rounded:
		return finding.Met
	case Coarse:
		return finding.NotShown
	}
	return finding.Short
}

// Judge holds a value, with the text in which it was printed, against the limit. A value printed with more decimals than
// the limit is rounded to those of the limit, as ISO 80000-1 and ASTM E29 do it (recalled); one with fewer decimals is
// judged only where every value behind the printed one lies on one side.
func (l Limit) Judge(v float64, text string) Fit {
	fit := Inside
	if l.HasLeast {
		fit = worse(fit, judgeEnd(v, text, l.Least, l.LeastDecimals, -1))
	}
	if l.HasMost {
		fit = worse(fit, judgeEnd(v, text, l.Most, l.MostDecimals, 1))
	}
	return fit
}

// judgeEnd judges one end; side is 1 for a most, -1 for a least.
func judgeEnd(v float64, text string, end float64, decimals int, side float64) Fit {
	// A value that is the limit itself is inside with any decimals: a spreadsheet drops the last nought of 0.40.
	const hair = 1e-9 // keeps binary fractions out of a comparison of decimal ones
	beyond := side*(v-end) > hair
	if printed := Decimals(text); printed < decimals && text != "" {
		half := 0.5 * math.Pow10(-printed)
		worst, best := side*(v-end)+half, side*(v-end)-half
		switch {
		case !beyond && worst > 0.5*math.Pow10(-decimals)+hair && v != end:
			return Coarse
		case beyond && best < hair:
			return Coarse
		}
	}
	if !beyond {
		return Inside
	}
	scale := math.Pow10(decimals)
	if side*(math.RoundToEven(v*scale)/scale-end) <= hair {
		return Rounded
	}
	return Beyond
}

func worse(a, b Fit) Fit {
	order := map[Fit]int{Inside: 0, Rounded: 1, Coarse: 2, Beyond: 3}
	if order[b] > order[a] {
		return b
	}
	return a
}
