package proof

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/crew"
	"hullfile/engine/finding"
)

// set is one file of content/proofs as it is written.
type set struct {
	Title   string        `toml:"title"`
	Source  string        `toml:"source"`
	Edition string        `toml:"edition"`
	Basis   finding.Basis `toml:"basis"`
	About   string        `toml:"about"`

	Method string         `toml:"method"` // method sheet of all cases, by file name without .toml
	Scope  string         `toml:"scope"`  // scope of all cases
	Inputs map[string]any `toml:"inputs"` // inputs that all cases share
	Values string         `toml:"values"` // source of the alloy values, as the alloy files name it
	Cases  []row          `toml:"case"`

	name string // file name without .toml
}

// row is one case: a symbol of a method sheet, a value of an alloy, or a function of the calculator.
type row struct {
	Name string `toml:"name"`

	Symbol string         `toml:"symbol"` // of the method sheet
	Scope  string         `toml:"scope"`  // instead of that of the set
	Inputs map[string]any `toml:"inputs"` // beside those of the set
	Checks []string       `toml:"checks"` // symbols that the printed value speaks for; all that the result rests on if left out

	Alloy     string  `toml:"alloy"`
	Value     string  `toml:"value"` // parent.tensile, welded.yield, ...
	Form      string  `toml:"form"`
	Filler    string  `toml:"filler"`
	Thickness float64 `toml:"thickness_mm"`

	Function string `toml:"function"`

	Printed   string   `toml:"printed"`   // as printed in the source
	Want      *float64 `toml:"want"`      // where the printed text is no plain number
	Tolerance *float64 `toml:"tolerance"` // half a unit in the last printed place if left out
	Unit      string   `toml:"unit"`      // of a function's result
	Why       string   `toml:"why"`       // why the tolerance is what it is
	Note      string   `toml:"note"`
}

// readSets reads proofs/*.toml below files in order of name and keeps every fault.
func readSets(files fs.FS) ([]*set, error) {
	names, err := fs.Glob(files, "proofs/*.toml")
	if err != nil {
		return nil, fmt.Errorf("list the proofs: %w", err)
	}
	out, bad, failed := make([]*set, len(names)), make([]finding.Faults, len(names)), make([]error, len(names))
	var each crew.Crew
	for i, name := range names {
		each.Go(func() {
			text, err := fs.ReadFile(files, name)
			if err != nil {
				failed[i] = fmt.Errorf("read proof %s: %w", path.Base(name), err)
				return
			}
			out[i], bad[i] = parse(name, string(text))
		})
	}
	each.Wait()
	if err := errors.Join(failed...); err != nil {
		return nil, err
	}
	if faults := slices.Concat(bad...); len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

func parse(name, text string) (*set, finding.Faults) {
	s := &set{}
	if !quick(text, s) {
		var faults finding.Faults
		if s, faults = careful(name, text); len(faults) > 0 {
			return s, faults
		}
	}
	s.name = strings.TrimSuffix(path.Base(name), ".toml")
	return s, s.faults(name)
}

// careful decodes a file with every fault of its syntax and its keys.
func careful(name, text string) (*set, finding.Faults) {
	s := &set{}
	meta, err := toml.Decode(text, s)
	if err != nil {
		return s, finding.Faults{syntax(name, err)}
	}
	var faults finding.Faults
	for _, key := range meta.Undecoded() {
		faults = append(faults, finding.Fault{Place: finding.Place{File: name}, Key: key.String(), Says: "unknown key"})
	}
	return s, faults
}

// faults says what is wrong with a set before it is run.
func (s *set) faults(name string) finding.Faults {
	var faults finding.Faults
	fault := func(key, says string) {
		faults = append(faults, finding.Fault{Place: finding.Place{File: name}, Key: key, Says: says})
	}
	if s.Title == "" || s.Source == "" {
		fault("", "proof needs a title and a source")
	}
	if !slices.Contains(finding.Bases(), s.Basis) {
		fault("basis", fmt.Sprintf("basis %q is none of read, derived, yard, practice, recalled", s.Basis))
	}
	if len(s.Cases) == 0 {
		fault("case", "proof has no case")
	}
	for i := range s.Cases {
		for _, says := range s.Cases[i].faults() {
			fault(fmt.Sprintf("case[%d] %s", i+1, s.Cases[i].Name), says)
		}
	}
	return faults
}

// faults says what is wrong with a case before it is run. A tolerance wider than the printing must say why: otherwise
// a case could be made to pass by widening it.
func (r *row) faults() []string {
	var out []string
	if r.Name == "" || r.Printed == "" {
		out = append(out, "case needs a name and the printed value")
	}
	targets := 0
	for _, t := range []string{r.Symbol, r.Alloy, r.Function} {
		if t != "" {
			targets++
		}
	}
	if targets != 1 {
		out = append(out, "case needs one of symbol, alloy, function")
	}
	if len(r.Checks) > 0 && r.Symbol == "" {
		out = append(out, "checks names symbols of a sheet, and the case has none")
	}
	if (r.Tolerance != nil || r.Want != nil) && r.Why == "" {
		out = append(out, "a want or a tolerance of its own needs a why")
	}
	if r.Tolerance != nil && !(*r.Tolerance >= 0 && *r.Tolerance < 1e6) {
		out = append(out, fmt.Sprintf("tolerance %v is impossible", *r.Tolerance))
	}
	if _, _, err := r.wanted(); err != nil {
		out = append(out, err.Error())
	}
	return out
}

func syntax(name string, err error) finding.Fault {
	var at toml.ParseError
	if errors.As(err, &at) {
		return finding.Fault{Place: finding.Place{File: name, Line: at.Position.Line, Col: at.Position.Col}, Key: at.LastKey, Says: at.Message}
	}
	return finding.Fault{Place: finding.Place{File: name}, Says: strings.TrimPrefix(err.Error(), "toml: ")}
}
