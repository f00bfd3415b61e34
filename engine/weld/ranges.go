// Package weld derives what procedure tests and welders' tests qualify, from limit tables that are data, and holds
// procedures and people against it. It reckons heat, strength and consumption of seams by method sheets.
//
//   - Question: was each seam welded by somebody and by something that is qualified for it, and how strong and how hot
//     is it?
//   - In: procedures, tests and certificates, welds and seams, the tables of ranges, the sheets.
//   - Out: what each test qualifies, who and what is outside it, heat (kJ/mm), throat and strength, wire and gas used.
//   - Source: ISO 15614-2 and ISO 9606-2 as recalled, EN 1999-1-1, in content/limits and the sheets.
package weld

import (
	"fmt"
	"io/fs"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/held"
)

// Where the limit tables stand below the content folder.
const (
	ProceduresFile = "limits/procedure-ranges.toml"
	WeldersFile    = "limits/welder-ranges.toml"
	FilletsFile    = "limits/fillets.toml"
)

// Ranges is all limit tables for procedures, welders and fillets, read once and never changed.
type Ranges struct {
	Procedures     []Scheme
	ProceduresHeld held.Table // whose rows these are, and who held them against the standards
	Welders        []WelderScheme
	WeldersHeld    held.Table
	Foreign        []Foreign
	Fillets        Fillets
}

// Row is the range that follows from one range of the tested measure, mm.
type Row struct {
	Weld   string  `toml:"weld"`
	Layers string  `toml:"layers"`
	Over   float64 `toml:"over_mm"`
	To     float64 `toml:"to_mm"`
	Times  float64 `toml:"from_times"`
	From   float64 `toml:"from_mm"`
	Up     float64 `toml:"to_times"`
	Most   float64 `toml:"to_most_mm"`
	Free   bool    `toml:"free"`
}

// Scheme is what one edition of a standard for procedure tests qualifies.
type Scheme struct {
	Standard    string              `toml:"standard"`
	Edition     string              `toml:"edition"`
	Also        []string            `toml:"also"`
	Work        string              `toml:"work"`
	Basis       finding.Basis       `toml:"basis"`
	Replaced    string              `toml:"replaced"`
	Thickness   []Row               `toml:"thickness"`
	Throat      []Row               `toml:"throat"`
	SingleOnly  bool                `toml:"single_run_only"`
	Positions   string              `toml:"positions"`
	OthersBasis finding.Basis       `toml:"others_basis"`
	ButtFillet  bool                `toml:"butt_covers_fillet"`
	Groups      map[string][]string `toml:"groups"`
	Sides       map[string][]string `toml:"sides"`
	Fillers     [][]string          `toml:"fillers"`
}

// WelderScheme is what one edition of a standard for welders' tests qualifies, and for how long.
type WelderScheme struct {
	Standard      string                         `toml:"standard"`
	Edition       string                         `toml:"edition"`
	Also          []string                       `toml:"also"`
	Work          string                         `toml:"work"`
	Basis         finding.Basis                  `toml:"basis"`
	Note          string                         `toml:"note"`
	Replaced      string                         `toml:"replaced"`
	Thickness     []Row                          `toml:"thickness"`
	Diameter      []Row                          `toml:"diameter"`
	Groups        map[string][]string            `toml:"groups"`
	Sides         map[string][]string            `toml:"sides"`
	Positions     map[string]map[string][]string `toml:"positions"`
	PlateToPipe   map[string]float64             `toml:"plate_to_pipe"`
	PipeOver      float64                        `toml:"pipe_over_covers_plate"`
	ButtFillets   string                         `toml:"butt_fillets"`
	Years         int                            `toml:"years"`
	ConfirmMonths int                            `toml:"confirm_months"`
	ProlongYears  int                            `toml:"prolong_years"`
	LifeBasis     finding.Basis                  `toml:"life_basis"`
}

// Foreign is a standard that a welder of aluminium cannot be qualified by.
type Foreign struct {
	Standard string        `toml:"standard"`
	Why      string        `toml:"why"`
	Basis    finding.Basis `toml:"basis"`
}

// LoadRanges reads the limit tables below the content folder, with what a yard lays over them. The error is
// finding.Faults with all that is wrong in any of them, or one of reading.
func LoadRanges(files fs.FS, own ...held.Source) (*Ranges, error) {
	var procedures struct {
		Schemes []Scheme `toml:"scheme"`
	}
	var welders struct {
		Schemes []WelderScheme `toml:"scheme"`
		Foreign []Foreign      `toml:"foreign"`
	}
	r := &Ranges{}
	var faults finding.Faults
	for _, one := range []struct {
		name string
		into any
		held *held.Table
	}{{ProceduresFile, &procedures, &r.ProceduresHeld}, {WeldersFile, &welders, &r.WeldersHeld}, {FilletsFile, &r.Fillets, &r.Fillets.Held}} {
		table, bad, err := held.Read(files, one.name, own, one.into)
		if err != nil {
			return nil, err
		}
		*one.held = table
		faults = append(faults, bad...)
	}
	r.Procedures, r.Welders, r.Foreign = procedures.Schemes, welders.Schemes, welders.Foreign
	if len(faults) == 0 {
		faults = r.check()
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return r, nil
}

// check keeps out tables that would qualify by nothing.
func (r *Ranges) check() finding.Faults {
	var faults finding.Faults
	in := func(t held.Table) func(key, says string) {
		return func(key, says string) {
			faults = append(faults, finding.Fault{Place: t.Place(key), Key: key, Says: says})
		}
	}
	for i, s := range r.Procedures {
		key, fault := fmt.Sprintf("scheme[%d]", i+1), in(r.ProceduresHeld)
		if s.Standard == "" || s.Work == "" || len(s.Thickness) == 0 {
			fault(key, "scheme "+s.Standard+" needs standard, work and rows of thickness")
		}
		based(s.Standard, key, fault, s.Basis, s.OthersBasis)
		checkRows(s.Standard, key, append(slices.Clone(s.Thickness), s.Throat...), fault)
	}
	for i, s := range r.Welders {
		key, fault := fmt.Sprintf("scheme[%d]", i+1), in(r.WeldersHeld)
		if s.Standard == "" || s.Work == "" || len(s.Thickness) == 0 || s.Years < 1 || s.ConfirmMonths < 1 {
			fault(key, "scheme "+s.Standard+" needs standard, work, rows of thickness, years and confirm_months")
		}
		based(s.Standard, key, fault, s.Basis, s.LifeBasis)
		checkRows(s.Standard, key, append(slices.Clone(s.Thickness), s.Diameter...), fault)
	}
	r.Fillets.check(in(r.Fillets.Held))
	return faults
}

func based(standard, key string, fault func(key, says string), all ...finding.Basis) {
	for _, b := range all {
		if !slices.Contains(finding.Bases(), b) {
			fault(key, fmt.Sprintf("scheme %s: basis %q is none of read, derived, yard, practice, recalled", standard, b))
		}
	}
}

func checkRows(standard, key string, rows []Row, fault func(key, says string)) {
	for _, row := range rows {
		none := row.Times == 0 && row.From == 0 && !row.Free
		if none || row.To != 0 && row.To <= row.Over || row.Times < 0 || row.From < 0 || row.Up < 0 || row.Most < 0 {
			fault(key, fmt.Sprintf("scheme %s: row over %v to %v mm qualifies nothing", standard, row.Over, row.To))
		}
	}
}
