// Package weld derives what procedure tests and welders' tests qualify, from limit tables that are data, and holds
// procedures and people against it. It reckons heat, strength and consumption of seams by method sheets.
package weld

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// Where the limit tables stand below the content folder.
const (
	ProceduresFile = "limits/procedure-ranges.toml"
	WeldersFile    = "limits/welder-ranges.toml"
	FilletsFile    = "limits/fillets.toml"
)

// Ranges is all limit tables for procedures, welders and fillets, read once and never changed.
type Ranges struct {
	Procedures       []Scheme
	ProceduresHeldBy string // who held the rows against the standards; empty where nobody did
	Welders          []WelderScheme
	WeldersHeldBy    string
	Foreign          []Foreign
	Fillets          Fillets
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

// LoadRanges reads the limit tables below the content folder. The error is finding.Faults with all that is wrong in any
// of them, or one of reading.
func LoadRanges(files fs.FS) (*Ranges, error) {
	var procedures struct {
		Held    string   `toml:"confirmed_by"`
		Schemes []Scheme `toml:"scheme"`
	}
	var welders struct {
		Held    string         `toml:"confirmed_by"`
		Schemes []WelderScheme `toml:"scheme"`
		Foreign []Foreign      `toml:"foreign"`
	}
	r := &Ranges{}
	var faults finding.Faults
	for _, one := range []struct {
		name string
		into any
	}{{ProceduresFile, &procedures}, {WeldersFile, &welders}, {FilletsFile, &r.Fillets}} {
		bad, err := decode(files, one.name, one.into)
		if err != nil {
			return nil, err
		}
		faults = append(faults, bad...)
	}
	r.Procedures, r.ProceduresHeldBy = procedures.Schemes, procedures.Held
	r.Welders, r.WeldersHeldBy, r.Foreign = welders.Schemes, welders.Held, welders.Foreign
	faults = append(faults, r.check()...)
	if len(faults) > 0 {
		return nil, faults
	}
	return r, nil
}

func decode(files fs.FS, name string, into any) (finding.Faults, error) {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return nil, fmt.Errorf("limits of welding: %w", err)
	}
	meta, err := toml.Decode(string(text), into)
	if err != nil {
		return finding.Faults{syntax(name, err)}, nil
	}
	var faults finding.Faults
	for _, key := range meta.Undecoded() {
		faults = append(faults, finding.Fault{Place: finding.Place{File: name}, Key: key.String(), Says: "unknown key"})
	}
	return faults, nil
}

func syntax(name string, err error) finding.Fault {
	var at toml.ParseError
	if errors.As(err, &at) {
		return finding.Fault{Place: finding.Place{File: name, Line: at.Position.Line, Col: at.Position.Col}, Key: at.LastKey, Says: at.Message}
	}
	return finding.Fault{Place: finding.Place{File: name}, Says: strings.TrimPrefix(err.Error(), "toml: ")}
}

// check keeps out tables that would qualify by nothing.
func (r *Ranges) check() finding.Faults {
	var faults finding.Faults
	fault := func(file, key, says string) {
		faults = append(faults, finding.Fault{Place: finding.Place{File: file}, Key: key, Says: says})
	}
	for _, s := range r.Procedures {
		if s.Standard == "" || s.Work == "" || len(s.Thickness) == 0 {
			fault(ProceduresFile, s.Standard, "scheme needs standard, work and rows of thickness")
		}
		if !slices.Contains(finding.Bases(), s.Basis) || !slices.Contains(finding.Bases(), s.OthersBasis) {
			fault(ProceduresFile, s.Standard, "basis is none of read, derived, yard, practice, recalled")
		}
		checkRows(ProceduresFile, s.Standard, append(slices.Clone(s.Thickness), s.Throat...), fault)
	}
	for _, s := range r.Welders {
		if s.Standard == "" || s.Work == "" || len(s.Thickness) == 0 || s.Years < 1 || s.ConfirmMonths < 1 {
			fault(WeldersFile, s.Standard, "scheme needs standard, work, rows of thickness, years and confirm_months")
		}
		if !slices.Contains(finding.Bases(), s.Basis) || !slices.Contains(finding.Bases(), s.LifeBasis) {
			fault(WeldersFile, s.Standard, "basis is none of read, derived, yard, practice, recalled")
		}
		checkRows(WeldersFile, s.Standard, append(slices.Clone(s.Thickness), s.Diameter...), fault)
	}
	return append(faults, r.Fillets.check()...)
}

func checkRows(file, key string, rows []Row, fault func(file, key, says string)) {
	for _, row := range rows {
		none := row.Times == 0 && row.From == 0 && !row.Free
		if none || row.To != 0 && row.To <= row.Over || row.Times < 0 || row.From < 0 || row.Up < 0 || row.Most < 0 {
			fault(file, key, fmt.Sprintf("row over %v to %v mm qualifies nothing", row.Over, row.To))
		}
	}
}
