package compare

import (
	"math"
	"strconv"
	"strings"
)

// records tells which values of the records changed. What came or went is told entry by entry, e.g. a whole panel.
func records(old, new *Side) []Change {
	was, is := byKey(old.values), byKey(new.values)
	var all []Change
	for _, v := range new.values {
		if before, there := was[v.key]; there && before.text != v.text {
			all = append(all, sized(Change{How: Changed, What: v.key, Old: before.text, New: v.text, At: v.at}))
		}
	}
	all = append(all, entries(Added, new.values, was)...)
	return append(all, entries(Gone, old.values, is)...)
}

func byKey(all []value) map[string]value {
	out := make(map[string]value, len(all))
	for _, v := range all {
		out[v.key] = v
	}
	return out
}

// entries gathers the values that the other side does not have by the entry that they stand in.
func entries(how string, values []value, other map[string]value) []Change {
	g := gathered{how: how, at: map[string]int{}}
	for _, v := range values {
		if _, there := other[v.key]; !there {
			g.take(v.key, '.', v.text, v.at)
		}
	}
	return g.all
}

// gathered is what one side alone has, an entry at a time.
type gathered struct {
	how string
	all []Change
	at  map[string]int // places in all, by entry
}

// take adds one value to its entry: what stands before the last separator of its key.
func (g *gathered) take(whole string, separator byte, text string, at string) {
	entry, key := whole, ""
	if i := strings.LastIndexByte(whole, separator); i >= 0 {
		entry, key = whole[:i], whole[i+1:]+" "
	}
	i, begun := g.at[entry]
	if !begun {
		i = len(g.all)
		g.at[entry] = i
		g.all = append(g.all, Change{How: g.how, What: entry, At: at})
	}
	into := &g.all[i].New
	if g.how == Gone {
		into = &g.all[i].Old
	}
	if *into != "" {
		*into += ", "
	}
	*into += key + text
}

// sized says by how much a number changed; of a whole number without a unit, such as that of an issue, no percentage.
func sized(c Change) Change {
	c.Unit = unitOf(c.What)
	old, err := strconv.ParseFloat(c.Old, 64)
	if err != nil {
		return c
	}
	new, err := strconv.ParseFloat(c.New, 64)
	if err != nil {
		return c
	}
	by := new - old
	if !finite(by) {
		return c
	}
	c.By = &by
	if percent := 100 * by / math.Abs(old); old != 0 && finite(percent) && (c.Unit != "" || strings.ContainsAny(c.Old+c.New, ".e")) {
		c.Percent = &percent
	}
	return c
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// units gives the sign of a unit by the end of a key, the longest end first.
var units = []struct{ end, sign string }{
	{"_kn_m2", "kN/m²"}, {"_kn_m", "kN·m"}, {"force_kn", "kN"}, {"shear_kn", "kN"}, {"_n_m", "N·m"}, {"_cm4", "cm⁴"}, {"_cm3", "cm³"}, {"_cm2", "cm²"}, {"_kg_m3", "kg/m³"}, {"_mm_min", "mm/min"}, {"_l_nm", "l/nm"}, {"_n_mm2", "N/mm²"}, {"_percent", "%"}, {"_l_h", "l/h"}, {"_deg", "°"}, {"_rpm", "1/min"}, {"_kpa", "kPa"}, {"_mm", "mm"}, {"_cm", "cm"}, {"_m2", "m²"}, {"_m3", "m³"},
	{"_kg", "kg"}, {"_kn", "kn"}, {"_kw", "kW"}, {"_nm", "nm"}, {"_hz", "Hz"}, {"_m", "m"}, {"_l", "l"}, {"_h", "h"}, {"_g", "g"}, {"_n", "N"}, {"_s", "s"}, {"_c", "°C"},
}

func unitOf(key string) string {
	for _, u := range units {
		if strings.HasSuffix(key, u.end) {
			return u.sign
		}
	}
	return ""
}
