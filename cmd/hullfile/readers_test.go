package main

import (
	"go/ast"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// readers lists what is read that somebody else wrote, with the fuzz test that tries it with any bytes. What lies in
// content comes with the program and is read by tests.
var readers = []struct{ what, dir, fuzz string }{
	{"records in TOML", "engine/record", "FuzzTOML"},
	{"tables beside records", "engine/record", "FuzzCSV"},
	{"lists of requirements", "engine/record", "FuzzList"},
	{"method sheets of a yard", "engine/method", "FuzzLoad"},
	{"formulas", "engine/method", "FuzzFormula"},
	{"tables of limits of a yard", "engine/held", "FuzzRead"},
	{"chapters of the owner's book", "engine/handbook", "FuzzRead"},
	{"tracks in GPX", "engine/tracklog", "FuzzGPX"},
	{"sentences of NMEA 0183", "engine/tracklog", "FuzzNMEA"},
	{"tables of loggers", "engine/tracklog", "FuzzCSV"},
	{"logs of accelerations", "engine/ride", "FuzzReadCSV"},
	{"identification numbers", "engine/identity", "FuzzParse"},
	{"first bytes of documents", "engine/document", "FuzzKind"},
	{"names of documents", "engine/document", "FuzzRefuse"},
	{"notes in Markdown", "site", "FuzzProse"},
	{"pages joined for paper", "site", "FuzzJoined"},
	{"record files as pages", "site", "FuzzRecordLines"},
	{"words in a style sheet", "site", "FuzzStyleString"},
	{"values in rows", "site", "FuzzRows"},
	{"values in templates", "site/typeset", "FuzzPrinted"},
	{"texts and numbers in results", "site/results", "FuzzResults"},
	{"cells of tables for spreadsheets", "site", "FuzzTableCell"},
	{"machine copies of files to compare", "engine/compare", "FuzzSide"},
	{"how to make a file again", "site", "FuzzEnclosed"},
	{"what an output remembers", "site", "FuzzState"},
	{"statements of seals", "site/seal", "FuzzStatement"},
	{"lists of signers", "site/seal", "FuzzSigners"},
	{"lists of hashes", "site/seal", "FuzzSums"},
	{"signatures", "site/seal", "FuzzSignature"},
	{"zips of technical files", "site/seal", "FuzzZip"},
}

// TestEveryReaderIsFuzzed holds the list against the tests that there are, both ways.
func TestEveryReaderIsFuzzed(t *testing.T) {
	found := map[string]bool{}
	for _, f := range sources(t) {
		for _, d := range f.file.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && f.isTest() && fn.Recv == nil && strings.HasPrefix(fn.Name.Name, "Fuzz") {
				found[filepath.ToSlash(filepath.Dir(f.path))+"."+fn.Name.Name] = true
			}
		}
	}
	listed := map[string]bool{}
	for _, r := range readers {
		listed[r.dir+"."+r.fuzz] = true
		if !found[r.dir+"."+r.fuzz] {
			t.Errorf("%s: there is no %s in %s", r.what, r.fuzz, r.dir)
		}
	}
	for name := range found {
		if !listed[name] {
			t.Errorf("%s tries a reader that the list does not name", name)
		}
	}
}

// Every reader keeps inputs on which it once did something that the seeds do not, so that a run without fuzzing tries them
// too. They are few and short: what is tried takes no time, and a change of them can be read.
func TestEveryReaderKeepsInputs(t *testing.T) {
	for _, r := range readers {
		kept, err := filepath.Glob(filepath.Join(moduleRoot(t), r.dir, "testdata", "fuzz", r.fuzz, "*"))
		if err != nil || len(kept) == 0 || len(kept) > 12 {
			t.Errorf("%s: %d inputs are kept for %s in %s (%v), want one to twelve", r.what, len(kept), r.fuzz, r.dir, err)
		}
		for _, name := range kept {
			if info, err := os.Stat(name); err != nil || info.Size() > 4<<10 {
				t.Errorf("%s is no short file (%v)", name, err)
			}
		}
	}
}

// parsers are the ways to take apart a text that came from outside, and the files that may use them. A new one is a new
// reader, which wants a fuzz test and walls.
var parsers = map[string][]string{
	"csv.NewReader":   {"engine/record/csv.go", "engine/compare/side.go"},
	"xml.NewDecoder":  {"engine/tracklog/gpx.go"},
	"xml.Unmarshal":   {},
	"zip.NewReader":   {"site/seal/zip.go"},
	"zip.OpenReader":  {},
	"gob.NewDecoder":  {},
	"image.Decode":    {},
	"tar.NewReader":   {},
	"gzip.NewReader":  {},
	"csv.NewWriter":   {"site/table.go"}, // a cell that a spreadsheet would run must be defused first
	"goldmark.New":    {"site/note.go"},
	"exec.Command":    {},
	"http.Get":        {},
	"http.NewRequest": {},
}

func TestNobodyElseReadsOrReachesOut(t *testing.T) {
	for _, f := range sources(t) {
		if f.isTest() || strings.HasPrefix(filepath.ToSlash(f.path), "content/") {
			continue
		}
		ast.Inspect(f.file, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := s.X.(*ast.Ident); ok {
				if may, watched := parsers[x.Name+"."+s.Sel.Name]; watched && !slices.Contains(may, f.path) {
					t.Errorf("%s uses %s.%s: only %v may", f.at(n), x.Name, s.Sel.Name, may)
				}
			}
			return true
		})
	}
}
