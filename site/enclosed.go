package site

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"

	"hullfile/engine"
	"hullfile/engine/record"
)

// rebuildName is the file that says how the yard folder looked from which the technical file was made. With it, the
// records and the papers inside the file suffice to make it again.
const rebuildName = "rebuild.json"

// Walls of the reader of rebuild.json.
const (
	rebuildForm  = 1
	mostRebuild  = 64 << 20 // bytes
	mostEnclosed = 100_000  // papers or records
)

// Enclosed says which files inside a technical file lay where in the yard, and what the file rests on beyond them: the few values
// that it takes from other boats, so that one file can be made again without the files of other owners.
type Enclosed struct {
	Form    int                `json:"form"`
	Hull    string             `json:"hull"`
	Version string             `json:"version,omitempty"` // of the program that made the file
	Records []string           `json:"records"`           // paths in the yard; each lies under records/
	Papers  []EnclosedPaper    `json:"papers"`            // in order of their path in the yard
	Near    []engine.Neighbour `json:"neighbours"`        // what is taken from the records of other hulls

	Plates []record.StockedPlate `json:"plates,omitempty"` // in stock: of the stock only what the boat draws on is enclosed
}

// EnclosedPaper is a document or a log. One that no record names is not in the file; its name alone is shown there.
type EnclosedPaper struct {
	At string `json:"at"`           // path in the yard
	In string `json:"in,omitempty"` // path in the technical file
}

// rebuild writes rebuild.json.
func (b *book) rebuild() error {
	e := Enclosed{Form: rebuildForm, Hull: b.hull.Number, Version: b.press.job.Version, Records: []string{}, Papers: []EnclosedPaper{}, Near: []engine.Neighbour{}}
	for _, f := range b.records {
		e.Records = append(e.Records, f.Path)
	}
	seen := map[string]bool{}
	paper := func(at, in string) {
		if at != "" && !seen[at] {
			seen[at] = true
			e.Papers = append(e.Papers, EnclosedPaper{At: at, In: in})
		}
	}
	for i := range b.dossier.Documents.Documents {
		if d := &b.dossier.Documents.Documents[i]; d.Present {
			paper(d.Path, d.Out)
		}
	}
	for i := range b.dossier.Logs.Logs {
		if log := &b.dossier.Logs.Logs[i]; log.Out != "" {
			paper(log.Path, log.Out)
		}
	}
	for _, stray := range b.dossier.Documents.Strays {
		paper(stray, "")
	}
	slices.SortFunc(e.Papers, func(a, b EnclosedPaper) int { return strings.Compare(a.At, b.At) })
	e.Near, e.Plates = append(e.Near, b.near...), b.yard.StockedPlates() // an empty list, not none
	text, err := json.MarshalIndent(e, "", " ")
	if err != nil {
		return err
	}
	return b.folder.write(rebuildName, append(text, '\n'))
}

// ReadEnclosed reads rebuild.json out of a technical file. Paths that leave their folder are refused.
// The error says that it is not there, too long, or no such file.
func ReadEnclosed(from fs.FS) (Enclosed, error) {
	var e Enclosed
	f, err := from.Open(rebuildName)
	if errors.Is(err, fs.ErrNotExist) {
		return e, fmt.Errorf("%s is not in the file: it cannot be made again from its records", rebuildName)
	}
	if err != nil {
		return e, fmt.Errorf("%s cannot be read: %w", rebuildName, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, mostRebuild+1))
	if err != nil || len(text) > mostRebuild {
		return e, fmt.Errorf("%s cannot be read, or is too long", rebuildName)
	}
	return decodeEnclosed(text)
}

func decodeEnclosed(text []byte) (Enclosed, error) {
	var e Enclosed
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&e); err != nil {
		return e, fmt.Errorf("%s is not as this program writes it: %w", rebuildName, err)
	}
	if e.Form != rebuildForm {
		return e, fmt.Errorf("%s has the form %d, which this program does not know", rebuildName, e.Form)
	}
	if !plainName(e.Hull) || len(e.Records) > mostEnclosed || len(e.Papers) > mostEnclosed {
		return e, fmt.Errorf("%s names no hull, or too many files", rebuildName)
	}
	for _, name := range e.Records {
		if !inside(name) {
			return e, fmt.Errorf("%s: the record %q would not lie in the yard folder", rebuildName, name)
		}
	}
	for _, p := range e.Papers {
		if !inside(p.At) || p.In != "" && !inside(p.In) {
			return e, fmt.Errorf("%s: the paper %q would not lie in its folder", rebuildName, p.At)
		}
	}
	return e, nil
}

// inside reports whether a path stays in its folder. os.Root keeps what systems other than this one read otherwise.
func inside(name string) bool {
	return fs.ValidPath(name) && name != "." && path.Clean(name) == name && !strings.Contains(name, "\x00")
}

// Unpack makes the yard folder anew from a technical file: records, documents and logs where they lay.
// The error names the first file that is missing or cannot be written.
func (e *Enclosed) Unpack(from fs.FS, to *os.Root) error {
	for _, name := range e.Records {
		if err := copyOut(from, "records/"+name, to, name); err != nil {
			return err
		}
	}
	for _, p := range e.Papers {
		if err := copyOut(from, p.In, to, p.At); err != nil {
			return err
		}
	}
	return nil
}

// copyOut copies one file as it is read; without a way in, an empty file takes the name.
func copyOut(from fs.FS, in string, to *os.Root, name string) error {
	if err := to.MkdirAll(path.Dir(name), 0o755); err != nil {
		return plainly(err)
	}
	out, err := to.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("%s: %w", name, plainly(err))
	}
	defer out.Close()
	if in == "" {
		return nil
	}
	f, err := from.Open(in)
	if err != nil {
		return fmt.Errorf("%s is not in the file: %w", in, err)
	}
	defer f.Close()
	if _, err := io.Copy(out, f); err != nil {
		return fmt.Errorf("%s: %w", in, plainly(err))
	}
	return nil
}
