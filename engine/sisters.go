package engine

import (
	"slices"

	"hullfile/engine/record"
	"hullfile/engine/running"
)

// MostSisters is how many hulls of its design a file counts beside its own: those next to it in order of number. It is
// more boats than any demonstration here asks for, and with it a file does not grow with the yard, nor change with every
// entry in the log of every other boat. The register's page of the design has all of them.
const MostSisters = 40

// sisters are other hulls of the same design: those next to it, and each further one on which a crack was found, for a
// crack anywhere counts. A variant is another design: its welds are others.
func sisters(y *record.Yard, h *record.Hull) []*record.Hull {
	of := func(hulls []*record.Hull) byDesign {
		return kinBy(len(hulls), kinIn(hulls), func(design string) string { return design })
	}
	return record.Once(y, of)[h.Design.V].around(h.Number, true)
}

// family are other hulls of the same design or of one that comes from the same: those next to it.
func family(y *record.Yard, h *record.Hull) []*record.Hull {
	bottom := func(design string) string { return bottomDesign(y.Designs, design) }
	of := func(hulls []*record.Hull) byFamily {
		return byFamily(kinBy(len(hulls), kinIn(hulls), bottom))
	}
	return record.Once(y, of)[bottom(h.Design.V)].around(h.Number, false)
}

// byDesign is by the name of the design, byFamily by that of the design that it comes from in the end.
type (
	byDesign map[string]*kin[*record.Hull]
	byFamily map[string]*kin[*record.Hull]
)

func kinIn(hulls []*record.Hull) func(i int) (*record.Hull, kinship) {
	return func(i int) (*record.Hull, kinship) {
		h := hulls[i]
		return h, kinship{h.Number, h.Design.V, running.Cracked(h)}
	}
}

// kin are the hulls of a yard that belong together, in order of number.
type kin[T any] struct {
	members []T
	at      map[string]int // place by number
	cracked []int          // places of those on which a crack was found
}

// kinship is what decides of a hull to whom it belongs.
type kinship struct {
	number, design string
	cracked        bool
}

// kinBy gathers the hulls that have a design; key gives the name under which one is gathered.
func kinBy[T any](n int, one func(i int) (T, kinship), key func(design string) string) map[string]*kin[T] {
	all := map[string]*kin[T]{}
	for i := range n {
		h, is := one(i)
		if is.design == "" {
			continue
		}
		k := all[key(is.design)]
		if k == nil {
			k = &kin[T]{at: map[string]int{}}
			all[key(is.design)] = k
		}
		if is.cracked {
			k.cracked = append(k.cracked, len(k.members))
		}
		k.at[is.number] = len(k.members)
		k.members = append(k.members, h)
	}
	return all
}

// around gives the hulls next to one, as many on either side as there are, and on demand the cracked ones beyond; in order
// of number and without itself.
func (k *kin[T]) around(number string, cracked bool) []T {
	if k == nil {
		return nil
	}
	at, known := k.at[number]
	if !known {
		return slices.Clone(k.members[:min(MostSisters, len(k.members))])
	}
	from := max(0, min(at-MostSisters/2, len(k.members)-1-MostSisters))
	to := min(len(k.members), from+MostSisters+1)
	var out []T
	for _, i := range k.cracked {
		if cracked && i < from {
			out = append(out, k.members[i])
		}
	}
	out = append(append(out, k.members[from:at]...), k.members[at+1:to]...)
	for _, i := range k.cracked {
		if cracked && i >= to {
			out = append(out, k.members[i])
		}
	}
	return out
}
