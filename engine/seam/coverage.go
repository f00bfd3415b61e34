package seam

import (
	"cmp"
	"maps"
	"slices"

	"hullfile/engine/record"
)

// Coverage is how far the seams of a hull are covered by evidence. Lengths in metres.
type Coverage struct {
	Joints     int
	Metres     float64
	Welded     float64
	Shell      float64 // seam of the shell
	Whole      float64 // of it with a whole chain
	Categories []Category
	Open       []*record.Nonconformity
	Procedures []Rate
	Welders    []Rate
}

// Category is the seams of one category.
type Category struct {
	Name    string
	Joints  int
	Metres  float64
	Methods []Share
}

// Share is how much of a category was seen by one method.
type Share struct {
	Method string
	Metres float64
	Part   float64 // of the length, 0 to 1
}

// Rate is how much of what was welded by one procedure, or by one welder, had to be repaired.
type Rate struct {
	Key      string
	Welds    int
	Metres   float64
	Repairs  int
	Repaired float64 // metres
	Part     float64 // of the length, 0 to 1
}

// The categories and methods in the order in which they are told.
var (
	categories = []string{"shell", "slamming zone", "watertight", "primary", "secondary"}
	methods    = []string{"visual", "penetrant", "radiographic", "ultrasonic"}
)

// Methods lists the methods of inspection in the order in which they are told.
func Methods() []string { return slices.Clone(methods) }

// Cover counts.
func (m *Map) Cover() Coverage {
	c := Coverage{Joints: len(m.Joints)}
	for _, j := range m.Joints {
		c.Metres += j.Metres()
		c.Welded += j.Welded()
		if j.OfShell() {
			c.Shell += j.Metres()
			if len(m.Lacks(j)) == 0 {
				c.Whole += j.Metres()
			}
		}
	}
	for _, name := range categories {
		if row := m.category(name); row.Joints > 0 {
			c.Categories = append(c.Categories, row)
		}
	}
	for i := range m.Hull.Nonconformities {
		if n := &m.Hull.Nonconformities[i]; !n.Closed.Set {
			c.Open = append(c.Open, n)
		}
	}
	c.Procedures = m.rates(func(w *record.Weld) string { return w.Procedure.V })
	c.Welders = m.rates(func(w *record.Weld) string { return w.Welder.V })
	return c
}

func (m *Map) category(name string) Category {
	c := Category{Name: name}
	seen := make([]float64, len(methods))
	for _, j := range m.Joints {
		if j.Record.Category.V != name {
			continue
		}
		c.Joints++
		c.Metres += j.Metres()
		for i, method := range methods {
			seen[i] += m.SeenBy(j, method)
		}
	}
	for i, method := range methods {
		part := 0.0
		if c.Metres > 0 {
			part = seen[i] / c.Metres
		}
		c.Methods = append(c.Methods, Share{method, seen[i], part})
	}
	return c
}

// rates counts welds and repairs by what key gives. A repair counts for whoever made the weld that it mends: the welds of
// its joint, in equal parts where there are several keys.
func (m *Map) rates(key func(*record.Weld) string) []Rate {
	all := map[string]*Rate{}
	for _, j := range m.Joints {
		var keys []string
		for _, w := range j.Welds {
			k := key(w)
			if k == "" {
				continue
			}
			if all[k] == nil {
				all[k] = &Rate{Key: k}
			}
			all[k].Welds++
			all[k].Metres += m.WeldLength(w)
			if !slices.Contains(keys, k) {
				keys = append(keys, k)
			}
		}
		for _, r := range j.Repairs {
			for _, k := range keys {
				all[k].Repairs++
				all[k].Repaired += float64(r.Length.V) / 1000 / float64(len(keys))
			}
		}
	}
	var out []Rate
	for _, k := range slices.Sorted(maps.Keys(all)) {
		r := *all[k]
		if r.Metres > 0 {
			r.Part = r.Repaired / r.Metres
		}
		out = append(out, r)
	}
	slices.SortStableFunc(out, func(a, b Rate) int { return cmp.Compare(b.Part, a.Part) })
	return out
}
