package inspection

import (
	"fmt"
	"io/fs"
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/held"
)

// LimitsFile is where the limits for imperfections stand below the content folder.
const LimitsFile = "limits/iso-10042.toml"

// Limits says how much of an imperfection each quality level leaves. It is read once and never changed.
type Limits struct {
	Title, Work, Edition, Standing string
	Held                           held.Table // whose rows these are, and who held them against the standard
	ShortRun                       string     // what counts as a short imperfection
	ShortBasis                     finding.Basis
	Rows                           []Row
}

// Row is the limit of one imperfection in one range of plate thickness.
type Row struct {
	Imperfection string        `toml:"imperfection"` // number in ISO 6520-1
	Seen         string        `toml:"seen"`         // "surface", "inside", or "" for both
	Name         string        `toml:"name"`
	Measure      string        `toml:"measure"` // depth, height, diameter, offset, lack, difference, area, presence
	Unit         string        `toml:"unit"`    // "mm", "%", "" for presence
	Of           string        `toml:"of"`      // t, s, a, b, "s or a", or "" where the limit is no part of anything
	Over         float64       `toml:"over_mm"` // plate thickness, mm; not itself in the range
	To           float64       `toml:"to_mm"`   // itself in the range; 0 is open
	Basis        finding.Basis `toml:"basis"`
	Note         string        `toml:"note"`
	D            Level         `toml:"D"`
	C            Level         `toml:"C"`
	B            Level         `toml:"B"`
	Beside       Beside        `toml:"beside"`
}

// Level is what one quality level leaves: plus + times x of the dimension, at most most.
type Level struct {
	No       bool    `toml:"no"`
	Plus     float64 `toml:"plus"`
	Times    float64 `toml:"times"`
	Most     float64 `toml:"most"` // 0: no upper end
	Short    bool    `toml:"short"`
	AlsoLong bool    `toml:"also_long"`
}

// Beside is a limit of another work for the same imperfection, printed beside and judging nothing.
type Beside struct {
	held.Cited
	Times float64 `toml:"times"`
	Most  float64 `toml:"most"`
}

type limitsFile struct {
	Title      string        `toml:"title"`
	Work       string        `toml:"work"`
	Edition    string        `toml:"edition"`
	Standing   string        `toml:"standing"`
	ShortRun   string        `toml:"short_run"`
	ShortBasis finding.Basis `toml:"short_basis"`
	Rows       []Row         `toml:"limit"`
}

// LoadLimits reads the limits below the content folder, with what a yard lays over them. The error is finding.Faults, or
// one of reading.
func LoadLimits(files fs.FS, own ...held.Source) (*Limits, error) {
	var file limitsFile
	table, faults, err := held.Read(files, LimitsFile, own, &file)
	if err != nil {
		return nil, err
	}
	return file.limits(table, faults)
}

// limits gives the rows if nothing is wrong with them.
func (file *limitsFile) limits(table held.Table, faults finding.Faults) (*Limits, error) {
	fault := func(key, says string, args ...any) {
		faults = append(faults, finding.Fault{Place: table.Place(key), Key: key, Says: fmt.Sprintf(says, args...)})
	}
	if file.Work == "" || file.Edition == "" {
		fault("work", "limits need a work and an edition")
	}
	for i := range file.Rows {
		file.Rows[i].check(fmt.Sprintf("limit[%d]", i+1), fault)
	}
	if len(file.Rows) == 0 {
		fault("limit", "no row")
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return &Limits{file.Title, file.Work, file.Edition, file.Standing, table, file.ShortRun, file.ShortBasis, file.Rows}, nil
}

// check keeps out rows that would judge by nothing.
func (r *Row) check(key string, fault func(key, says string, args ...any)) {
	if r.Imperfection == "" || r.Name == "" {
		fault(key, "row needs imperfection and name")
	}
	if !slices.Contains(finding.Bases(), r.Basis) {
		fault(key, "basis %q is none of read, derived, yard, practice, recalled", r.Basis)
	}
	if !slices.Contains([]string{"", "t", "s", "a", "b", "s or a"}, r.Of) {
		fault(key, "of = %q is none of t, s, a, b, s or a", r.Of)
	}
	if r.To != 0 && r.To <= r.Over {
		fault(key, "thickness over %v to %v mm is no range", r.Over, r.To)
	}
	if r.Unit != "" && r.Unit != "mm" && r.Unit != "%" {
		fault(key, "unit %q is neither mm nor %%", r.Unit)
	}
	levels := []struct {
		name string
		of   Level
	}{{"D", r.D}, {"C", r.C}, {"B", r.B}}
	for _, l := range levels {
		for _, v := range []float64{l.of.Plus, l.of.Times, l.of.Most} {
			if v < 0 || math.IsNaN(v) || math.IsInf(v, 0) {
				fault(key+"."+l.name, "value %v is impossible", v)
			}
		}
		if !l.of.No && l.of.Plus == 0 && l.of.Times == 0 {
			fault(key+"."+l.name, "level leaves nothing; write no = true, plus or times")
		}
		if l.of.Times > 0 && r.Of == "" {
			fault(key+"."+l.name, "times of what is not said; write of")
		}
	}
}
