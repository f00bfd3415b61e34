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
		return kinBy(hulls, func(design string) string { return design })
	}
	return record.Once(y, of)[h.Design.V].around(h, true)
}

// family are other hulls of the same design or of one that comes from the same: those next to it.
func family(y *record.Yard, h *record.Hull) []*record.Hull {
	bottom := func(design string) string { return bottomDesign(y, design) }
	of := func(hulls []*record.Hull) byFamily { return byFamily(kinBy(hulls, bottom)) }
	return record.Once(y, of)[bottom(h.Design.V)].around(h, false)
}

// kin are the hulls of a yard that belong together, in order of number.
type kin struct {
	hulls   []*record.Hull
	at      map[string]int // place by number
	cracked []int          // places of those on which a crack was found
}

// byDesign is by the name of the design, byFamily by that of the design that it comes from in the end.
type (
	byDesign map[string]*kin
	byFamily map[string]*kin
)

func kinBy(hulls []*record.Hull, key func(design string) string) byDesign {
	all := byDesign{}
	for _, h := range hulls {
		if !h.Design.Set {
			continue
		}
		k := all[key(h.Design.V)]
		if k == nil {
			k = &kin{at: map[string]int{}}
			all[key(h.Design.V)] = k
		}
		if running.Cracked(h) {
			k.cracked = append(k.cracked, len(k.hulls))
		}
		k.at[h.Number] = len(k.hulls)
		k.hulls = append(k.hulls, h)
	}
	return all
}

// around gives the hulls next to one, as many on either side as there are, and on demand the cracked ones beyond; in order
// of number and without itself.
func (k *kin) around(h *record.Hull, cracked bool) []*record.Hull {
	if k == nil || !h.Design.Set {
		return nil
	}
	at, known := k.at[h.Number]
	if !known {
		return slices.Clone(k.hulls[:min(MostSisters, len(k.hulls))])
	}
	from := max(0, min(at-MostSisters/2, len(k.hulls)-1-MostSisters))
	to := min(len(k.hulls), from+MostSisters+1)
	var out []*record.Hull
	for _, i := range k.cracked {
		if cracked && i < from {
			out = append(out, k.hulls[i])
		}
	}
	out = append(append(out, k.hulls[from:at]...), k.hulls[at+1:to]...)
	for _, i := range k.cracked {
		if cracked && i >= to {
			out = append(out, k.hulls[i])
		}
	}
	return out
}
