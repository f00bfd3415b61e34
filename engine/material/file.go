package material

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// alloyFile is one file of content/alloys as it is written.
type alloyFile struct {
	Sources map[string]sourceRow `toml:"source"`
	Alloys  []alloyRow           `toml:"alloy"`

	Compositions []compositionRow `toml:"composition"`

	name string
}

type sourceRow struct {
	Use     int    `toml:"use"`
	Work    string `toml:"work"`
	Edition string `toml:"edition"`
}

type alloyRow struct {
	Names         []string      `toml:"names"`
	Forms         []string      `toml:"forms"`
	About         string        `toml:"about"`
	Density       float64       `toml:"density_kg_m3"`
	DensitySource string        `toml:"density_source"`
	DensityBasis  string        `toml:"density_basis"`
	Elastic       float64       `toml:"elastic_kn_mm2"`
	Poisson       float64       `toml:"poisson"`
	ElasticSource string        `toml:"elastic_source"`
	ElasticBasis  string        `toml:"elastic_basis"`
	Parent        []strengthRow `toml:"parent"`
	Welded        []strengthRow `toml:"welded"`
}

type strengthRow struct {
	Source      string  `toml:"source"`
	Table       string  `toml:"table"`
	Form        string  `toml:"form"`
	Filler      string  `toml:"filler"`
	From        float64 `toml:"thickness_from_mm"`
	To          float64 `toml:"thickness_to_mm"`
	Tensile     float64 `toml:"tensile_n_mm2"`
	TensileMost float64 `toml:"tensile_most_n_mm2"`
	Yield       float64 `toml:"yield_n_mm2"`
	Elongation  float64 `toml:"elongation_percent"`
	FactorF1    float64 `toml:"factor_f1"`
	Basis       string  `toml:"basis"`
	Note        string  `toml:"note"`
}

// readFiles reads alloys/*.toml below files in order of name. Every fault of every file is kept.
func readFiles(files fs.FS) ([]*alloyFile, finding.Faults, error) {
	names, err := fs.Glob(files, "alloys/*.toml")
	if err != nil {
		return nil, nil, fmt.Errorf("list the alloy files: %w", err)
	}
	var out []*alloyFile
	var faults finding.Faults
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, nil, fmt.Errorf("read alloy file %s: %w", path.Base(name), err)
		}
		file, bad := parse(name, string(text))
		faults = append(faults, bad...)
		out = append(out, file)
	}
	return out, faults, nil
}

// parse reads one file. A key that is not known, or not written in small letters, is a fault: the decoder alone would
// let both pass.
func parse(name, text string) (*alloyFile, finding.Faults) {
	file := &alloyFile{name: name}
	meta, err := toml.Decode(text, file)
	if err != nil {
		return file, finding.Faults{syntax(name, err)}
	}
	var faults finding.Faults
	for _, key := range meta.Undecoded() {
		faults = append(faults, finding.Fault{Place: finding.Place{File: name}, Key: key.String(), Says: "unknown key",
			Hint: "a strength is written tensile_n_mm2 or yield_n_mm2, a thickness thickness_from_mm and thickness_to_mm"})
	}
	for _, key := range meta.Keys() {
		last := key[len(key)-1]
		if key[0] == "alloy" && last != strings.ToLower(last) {
			faults = append(faults, finding.Fault{Place: finding.Place{File: name}, Key: key.String(), Says: "key is not in small letters"})
		}
	}
	return file, faults
}

func syntax(name string, err error) finding.Fault {
	var at toml.ParseError
	if errors.As(err, &at) {
		return finding.Fault{Place: finding.Place{File: name, Line: at.Position.Line, Col: at.Position.Col}, Key: at.LastKey, Says: at.Message}
	}
	return finding.Fault{Place: finding.Place{File: name}, Says: strings.TrimPrefix(err.Error(), "toml: ")}
}
