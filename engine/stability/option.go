package stability

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// option chooses part and option of ISO 12217. Part 1 is for hulls of 6 m and more, and for shorter ones that are decked and
// drain quickly; part 3 for the others, and it gives only categories C and D (read in previews of both). The table of options
// of part 1 is recalled.
func (j *judge) option() Option {
	length, cat := j.length(), j.hull.Boat.Category.V
	if length < 6 && !(j.decking() == "decked" && (cat == "A" || cat == "B")) {
		return Option{Part: "iso-12217-3-2022", Basis: finding.Read,
			Says: fmt.Sprintf("part 3, for hulls of less than 6 m; the hull is %s m", metre(length))}
	}
	o := Option{Part: "iso-12217-1-2015", Basis: finding.Recalled}
	if n, ok := j.hull.Afloat.Option.Get(); ok {
		o.Number, o.Basis = n, finding.Yard
		o.Says = fmt.Sprintf("part 1, option %d as the yard has chosen", n)
		return o
	}
	o.Number = optionOf(cat, j.hull.Lines.Sides.V, len(j.hull.Buoyancy) > 0)
	o.Says = fmt.Sprintf("part 1, option %d: category %s, %s", o.Number, cat, deckWords(j.hull.Lines.Sides.V))
	if len(j.hull.Buoyancy) > 0 {
		o.Says += ", with means of flotation"
	}
	j.assume("option "+fmt.Sprint(o.Number)+" of ISO 12217-1, from category, decking and flotation on record", "write afloat.option", finding.Recalled)
	return o
}

func deckWords(w string) string {
	if w == "" {
		return "open as far as the record says"
	}
	return w
}

// optionOf is the table of options of ISO 12217-1 (recalled): 1 and 2 fully enclosed, 3 and 4 any decking with level
// flotation, 5 partially protected, 6 any decking. Options 1 and 3 are for A and B, the others for C and D.
func optionOf(cat, sides string, floats bool) int {
	high := cat == "A" || cat == "B"
	switch {
	case sides == "fully decked" && high:
		return 1
	case high:
		return 3
	case sides == "fully decked":
		return 2
	case floats:
		return 4
	case sides == "partly decked":
		return 5
	}
	return 6
}

// wants reports whether an option of part 1 asks for something; part 3 asks as option 6 does, with flotation apart.
func (o Option) wants(options ...int) bool {
	n := o.Number
	if o.Part == "iso-12217-3-2022" {
		n = 6
	}
	return slices.Contains(options, n)
}

func (j *judge) length() float64 {
	if l, ok := j.hull.Boat.LengthHull.Get(); ok {
		return float64(l)
	}
	n := len(j.lines.Stations)
	return j.lines.Stations[n-1].X - j.lines.Stations[0].X
}

// categoryFits is short where the chosen part or option does not give the category.
func (j *judge) categoryFits() {
	o, cat := j.out.Option, j.hull.Boat.Category
	why := ""
	switch {
	case !cat.Set:
		return // the sheet says that the category is missing
	case o.Part == "iso-12217-3-2022" && (cat.V == "A" || cat.V == "B"):
		why = "part 3 gives categories C and D only; category " + cat.V + " asks for a decked hull that drains quickly"
	case o.Number == 3 && cat.V == "A":
		why = "category A asks for a fully enclosed boat"
	case cat.V != "A" && cat.V != "B" && (o.Number == 1 || o.Number == 3), (cat.V == "A" || cat.V == "B") && o.Number > 3 || o.Number == 2 && (cat.V == "A" || cat.V == "B"):
		why = fmt.Sprintf("option %d does not give category %s", o.Number, cat.V)
	default:
		return
	}
	c := finding.Check{Rule: "category-option", Subject: "boat", Asks: "the part and option of ISO 12217 give the category", Standing: finding.Short, Says: why,
		Basis: o.Basis, Source: o.named(), Places: finding.Places(cat.At, j.hull.Afloat.Option.At), Settle: "another category, or another option"}
	j.out.Checks = append(j.out.Checks, c)
}

// named gives the standard of the part as it is cited: ISO 12217-1:2015 for the sheet iso-12217-1-2015.
func (o Option) named() string {
	parts := strings.Split(o.Part, "-")
	if len(parts) != 4 {
		return "ISO 12217"
	}
	return "ISO " + parts[1] + "-" + parts[2] + ":" + parts[3]
}
