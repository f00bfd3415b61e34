package weld

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/held"
)

// HeatRow is what one work says of how far the heat of a seam softens the plate.
type HeatRow struct {
	held.Cited
	Name    string  `toml:"name"`
	Process string  `toml:"process"` // "" for any
	Over    float64 `toml:"over_mm"` // thickness, not itself in the range
	To      float64 `toml:"to_mm"`   // itself in the range; 0 is open
	MM      float64 `toml:"mm"`
	Times   float64 `toml:"times"` // of the thickness
}

// Softening is how far the plate beside a seam is taken as softened, mm from the root of a fillet or the middle of a butt in
// every direction, with the row that gives the most. Known is false where no row fits.
type Softening struct {
	Known  bool
	MM     float64
	By     *HeatRow
	Beside []*HeatRow // rows that fit and give less
}

// Reach gives the length of a row for a thickness, mm.
func (r *HeatRow) Reach(t float64) float64 { return max(r.MM, float64(r.Times*t)) }

func (r *HeatRow) fits(process string, t float64) bool {
	return (r.Process == "" || r.Process == process) && t > r.Over && (r.To == 0 || t <= r.To)
}

func (r *HeatRow) check(key string, fault func(key, says string)) {
	if r.Name == "" || r.Work == "" || !slices.Contains(finding.Bases(), r.Basis) || r.MM < 0 || r.Times < 0 || r.MM+r.Times == 0 || r.To != 0 && r.To <= r.Over {
		fault(key, "a row of heat needs name, work, basis, mm or times above 0, and a range of thickness")
	}
}

// Softened gives the widest of the rows that fit a process and a thickness in mm: the row that a yard would rather not have
// is not left out, and several works are not mixed within one row.
func (f *Fillets) Softened(process string, t float64) Softening {
	var out Softening
	for i := range f.Heat {
		r := &f.Heat[i]
		switch {
		case !r.fits(process, t):
		case !out.Known:
			out = Softening{Known: true, MM: r.Reach(t), By: r}
		case r.Reach(t) > out.MM:
			out.Beside = append(out.Beside, out.By)
			out.MM, out.By = r.Reach(t), r
		default:
			out.Beside = append(out.Beside, r)
		}
	}
	return out
}
