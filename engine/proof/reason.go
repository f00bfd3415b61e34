package proof

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// Reason says in words why formulas of a sheet have no outside check, and what would give them one.
type Reason struct {
	Method string `toml:"method" json:"method"` // sheet, by file name without .toml
	Says   string `toml:"says" json:"says"`
	Closes string `toml:"closes" json:"closes"`
}

// reasonFile is where the reasons stand below the content folder. It is no set of cases, so it has a folder of its own.
const reasonFile = "proofs/none/sheets.toml"

// readReasons reads the reasons and keeps every fault. A folder without the file has none, which the page says.
func readReasons(files fs.FS) ([]Reason, error) {
	text, err := fs.ReadFile(files, reasonFile)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("read why formulas have no proof: %w", err)
	}
	var written struct {
		Sheets []Reason `toml:"sheet"`
	}
	meta, err := toml.Decode(string(text), &written)
	if err != nil {
		return nil, finding.Faults{syntax(reasonFile, err)}
	}
	var faults finding.Faults
	fault := func(key, says string) {
		faults = append(faults, finding.Fault{Place: finding.Place{File: reasonFile}, Key: key, Says: says})
	}
	for _, key := range meta.Undecoded() {
		fault(key.String(), "unknown key")
	}
	met := map[string]bool{}
	for i, r := range written.Sheets {
		key := fmt.Sprintf("sheet[%d] %s", i+1, r.Method)
		if r.Method == "" || r.Says == "" || r.Closes == "" {
			fault(key, "a sheet needs method, says and closes")
		}
		if met[r.Method] {
			fault(key, "the sheet stands here twice")
		}
		met[r.Method] = true
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return written.Sheets, nil
}

// reason finds what is written of a sheet, which is named by its file.
func (s *Sheet) reason(file string) Reason {
	for _, r := range s.Reasons {
		if r.Method == strings.TrimSuffix(file, ".toml") {
			return r
		}
	}
	return Reason{}
}
