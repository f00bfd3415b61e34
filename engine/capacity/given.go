package capacity

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/lookup"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// standardPerson is the mass of one person where the record says none: that of the small-craft standards and of
// TP 14619 (read).
const standardPerson = 75

// given hands the values of one hull to the sheets of this package.
type given struct{ *assessor }

// Lookup finds the value that a sheet asks for; ok is false when nobody wrote it.
func (g given) Lookup(from string) (method.Quantity, bool) {
	kind, key, _ := strings.Cut(from, ".")
	switch kind {
	case "boat":
		return lookup.Of(&g.hull.Boat, key)
	case "lines":
		return lookup.Of(&g.hull.Lines, key)
	case "capacity":
		return g.capacity(key)
	case "plate":
		return g.plate(key)
	case "rating":
		return g.rating(key)
	case "list_test":
		return g.listTest()
	}
	return method.Quantity{}, false
}

// capacity takes the length of hull where no length over the deck is written.
func (g given) capacity(key string) (method.Quantity, bool) {
	q, ok := lookup.Of(&g.hull.Capacity, key)
	if ok || key != "length_m" {
		return q, ok
	}
	if q, ok = lookup.Of(&g.hull.Boat, "length_hull_m"); ok {
		q.Source = "length of hull"
	}
	return q, ok
}

func (g given) plate(key string) (method.Quantity, bool) {
	q, ok := lookup.Of(&g.hull.Plate, key)
	if ok || key != "person_mass_kg" {
		return q, ok
	}
	return method.Quantity{Number: standardPerson, Unit: "kg", Basis: finding.Read, Source: "taken as small-craft standards do"}, true
}

// rating gives what follows from several records: greatest power, light craft, contents of tanks.
func (g given) rating(key string) (method.Quantity, bool) {
	switch key {
	case "power_kw":
		if q, ok := lookup.Of(&g.hull.Plate, "power_kw"); ok {
			return q, true
		}
		return lookup.Of(&g.hull.Boat, "power_kw")
	case "light_mass_kg":
		return g.mass(g.Light)
	case "fixed_contents_kg":
		if !g.Fixed.Has {
			return method.Quantity{}, false
		}
		q := method.Quantity{Number: float64(g.Fixed.KG), Unit: "kg", Basis: finding.Yard, Source: "sum of the fixed tanks"}
		if g.Fixed.Assumed {
			q.Basis, q.Source = finding.Practice, "fuel and water of the weight breakdown"
		}
		return q, true
	}
	return method.Quantity{}, false
}

func (g given) mass(m Mass) (method.Quantity, bool) {
	if !m.Has {
		return method.Quantity{}, false
	}
	q := method.Quantity{Number: float64(m.KG), Unit: "kg", Basis: m.Basis, Source: m.How}
	if len(m.Places) > 0 {
		q.Place = m.Places[0]
	}
	return q, true
}

// listTest gives the least mass of all float-to-list tests.
func (g given) listTest() (method.Quantity, bool) {
	least := record.Val[unit.KG]{}
	for _, t := range g.hull.ListTests {
		if t.Weight.Set && (!least.Set || t.Weight.V < least.V) {
			least = t.Weight
		}
	}
	return method.Quantity{Number: float64(least.V), Unit: "kg", Place: least.At}, least.Set
}
