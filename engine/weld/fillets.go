package weld

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/held"
)

// Fillets is strength of weld metal, what rules ask of fillets, and what is taken for consumption.
type Fillets struct {
	Held  held.Table `toml:"-"` // whose rows these are, and who held them
	Metal struct {
		held.Cited
		Partial  float64                       `toml:"partial_factor"`
		Strength map[string]map[string]float64 `toml:"strength"`
		As       map[string]string             `toml:"as"`
	} `toml:"metal"`
	Factor struct {
		held.Cited
		Note       string             `toml:"note"`
		Continuous float64            `toml:"continuous_from"`
		Least      float64            `toml:"least_throat_mm"`
		LeastBasis finding.Basis      `toml:"least_throat_basis"`
		Of         map[string]float64 `toml:"of"`
	} `toml:"factor"`
	Heat        []HeatRow   `toml:"heat"`
	Consumption Consumption `toml:"consumption"`
}

// Consumption is what is taken where the record does not say.
type Consumption struct {
	Basis        finding.Basis `toml:"basis"`
	Excess       float64       `toml:"excess"`
	Density      float64       `toml:"density_kg_m3"`
	YieldMIG     float64       `toml:"yield_131"`
	YieldTIG     float64       `toml:"yield_141"`
	OperatingMIG float64       `toml:"operating_131"`
	OperatingTIG float64       `toml:"operating_141"`
	Gas          float64       `toml:"gas_l_min"`
	Speed        float64       `toml:"speed_mm_min"`
}

func (f *Fillets) check(fault func(key, says string)) {
	if f.Metal.Partial <= 0 || len(f.Metal.Strength) == 0 || !slices.Contains(finding.Bases(), f.Metal.Basis) {
		fault("metal", "needs partial_factor, strength and basis")
	}
	if f.Factor.Least <= 0 || len(f.Factor.Of) == 0 || !slices.Contains(finding.Bases(), f.Factor.Basis) {
		fault("factor", "needs least_throat_mm, of and basis")
	}
	for i := range f.Heat {
		f.Heat[i].check(fmt.Sprintf("heat[%d]", i+1), fault)
	}
	c := f.Consumption
	for _, v := range []float64{c.Excess, c.Density, c.YieldMIG, c.YieldTIG, c.OperatingMIG, c.OperatingTIG, c.Gas, c.Speed} {
		if v <= 0 {
			fault("consumption", "every figure is above 0")
			break
		}
	}
}

// MetalStrength gives the characteristic strength of weld metal, N/mm², between two parents (the lower is taken) with a
// filler; ok is false where the table gives none.
func (f *Fillets) MetalStrength(filler string, parents ...string) (v float64, ok bool) {
	column := f.Metal.Strength[f.Metal.As[filler]]
	for _, p := range parents {
		alloy, _, _ := strings.Cut(p, "-")
		one := column[alloy]
		if one == 0 {
			return 0, false
		}
		if !ok || one < v {
			v = one
		}
		ok = true
	}
	return v, ok
}
