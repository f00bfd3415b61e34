package stock

import (
	"fmt"
	"io/fs"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/held"
)

// LimitsFile is where the limits for lots stand below the content folder.
const LimitsFile = "limits/certificates.toml"

// Limits says by what lots are judged beside composition and strength. It is read once and never changed.
type Limits struct {
	Held        held.Table  `toml:"-"` // whose rows these are, and who held them against the standards
	Corrosion   Corrosion   `toml:"corrosion"`
	Certificate Certificate `toml:"certificate"`
	Bends       []Bend      `toml:"bend"`
	Thickness   Thickness   `toml:"thickness"`
}

// Corrosion is the acceptance of marine tempers.
type Corrosion struct {
	held.Cited
	Tempers     []string `toml:"tempers"`
	Met         float64  `toml:"met_mg_cm2"`
	Most        float64  `toml:"most_mg_cm2"`
	Exfoliation []string `toml:"exfoliation"`
	FirstYear   int      `toml:"first_year"`
	Settle      string   `toml:"settle"`
	Acid        Acid     `toml:"acid"`
}

// Acid is the change of acid between editions of the mass-loss test.
type Acid struct {
	held.Cited
	Old    string    `toml:"old"`
	New    string    `toml:"new"`
	Higher []float64 `toml:"higher_by_mg_cm2"` // least and most
}

// Certificate says which kinds of certificate show the delivered lot itself.
type Certificate struct {
	held.Cited
	Enough []string `toml:"enough"`
}

// Bend is the least inside radius in one range of thickness.
type Bend struct {
	held.Cited
	Tempers []string `toml:"tempers"`
	Over    float64  `toml:"over_mm"`
	To      float64  `toml:"to_mm"`
	Times   float64  `toml:"times"`
}

// Thickness says how far a measured thickness may lie under the drawing.
type Thickness struct {
	held.Cited
	Under float64 `toml:"under_percent"`
}

// LoadLimits reads the limits below the content folder, with what a yard lays over them. The error is finding.Faults, or
// one of reading.
func LoadLimits(files fs.FS, own ...held.Source) (*Limits, error) {
	l := &Limits{}
	table, faults, err := held.Read(files, LimitsFile, own, l)
	if err != nil {
		return nil, err
	}
	l.Held = table
	if len(faults) == 0 {
		l.check(func(key, says string) {
			faults = append(faults, finding.Fault{Place: table.Place(key), Key: key, Says: says})
		})
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return l, nil
}

// check keeps out limits that would judge by nothing.
func (l *Limits) check(fault func(key, says string)) {
	based := map[string]finding.Basis{
		"corrosion": l.Corrosion.Basis, "corrosion.acid": l.Corrosion.Acid.Basis, "certificate": l.Certificate.Basis,
		"thickness": l.Thickness.Basis,
	}
	for _, key := range []string{"corrosion", "corrosion.acid", "certificate", "thickness"} {
		if !slices.Contains(finding.Bases(), based[key]) {
			fault(key+".basis", "basis is none of read, derived, yard, practice, recalled")
		}
	}
	if l.Corrosion.Met <= 0 || l.Corrosion.Most < l.Corrosion.Met || len(l.Corrosion.Tempers) == 0 {
		fault("corrosion", "corrosion needs tempers, met_mg_cm2 above 0, and most_mg_cm2 no less")
	}
	if len(l.Corrosion.Acid.Higher) != 2 {
		fault("corrosion.acid.higher_by_mg_cm2", "two figures are needed, least and most")
	}
	if len(l.Certificate.Enough) == 0 {
		fault("certificate.enough", "no kind of certificate is enough")
	}
	for i, b := range l.Bends {
		if b.To <= b.Over || b.Times <= 0 || !slices.Contains(finding.Bases(), b.Basis) {
			fault(fmt.Sprintf("bend[%d]", i+1), "bend needs a range of thickness, times above 0 and a basis")
		}
	}
}
