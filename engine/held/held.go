// Package held reads tables of limits: the shipped ones, what a yard lays in their place, and who held the rows against the
// text of a standard.
//
// A file of the same name in the folder limits of a yard does one of two things. With rows in it, it takes the place of
// the shipped table whole. With nothing but who held the rows, against which edition and on which day, it confirms the
// shipped rows as they are; the mark of those rows stands in it, so that a later program with other rows is not taken for
// confirmed.
//
//   - Question: whose limits are these, and who held them against the standard?
//   - In: the shipped table, and the yard's file of the same name.
//   - Out: the decoded rows and a Table that says where they come from; faults with their place.
//   - Source: each row names work, edition, clause and basis.
package held

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Source is a table of limits of a yard's own.
type Source struct {
	Name string // file name, e.g. certificates.toml
	Path string // relative to the yard folder
	Text []byte
}

// Table is where the rows of one table come from and who held them against the text.
type Table struct {
	File    string // limits/certificates.toml
	Own     bool   // the yard's own rows
	By      string // who held them; empty where nobody did
	Edition string // the copy that they held
	On      string // the day, 2026-01-12
	Rows    string // mark of the rows in use
	Stale   string // mark of the rows that were held, where they are not those in use

	text []byte
}

// Place finds where a key of the rows in use stands; the line is known for rows of the yard's own.
func (t Table) Place(key string) finding.Place { return Place(t.File, t.text, key) }

// Holds reports whether somebody held the rows in use against the text.
func (t Table) Holds() bool { return t.By != "" && t.Stale == "" }

// Who says by whom, when and by which copy the rows in use were held; empty where nobody did.
func (t Table) Who() string {
	if !t.Holds() {
		return ""
	}
	return t.By + " on " + unit.Day(t.On) + ", by " + t.Edition
}

// Says gives where the rows come from and who held them, as the rest of a sentence.
func (t Table) Says() string {
	rows := "rows of the program"
	if t.Own {
		rows = "the yard's own rows, " + t.File
	}
	switch {
	case t.Stale != "":
		return rows + "; " + t.By + " held other rows on " + unit.Day(t.On) + " (mark " + t.Stale + ", in use are " + t.Rows + ")"
	case t.By == "":
		return rows + "; held against the text by nobody yet"
	}
	return rows + "; held against the text by " + t.Who()
}

// Mark is a short digest of a table, by which a confirmation names the rows that it is for.
func Mark(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:4])
}

// Read decodes one table into into: the yard's own where it has rows, otherwise the shipped one. The faults are those of
// the yard's file and unknown keys; the error is one of reading the shipped tables.
func Read(files fs.FS, file string, own []Source, into any) (Table, finding.Faults, error) {
	t := Table{File: file}
	text, err := fs.ReadFile(files, file)
	if err != nil {
		return t, nil, fmt.Errorf("limits: %w", err)
	}
	for _, s := range own {
		if s.Name != path.Base(file) {
			continue
		}
		rows, faults := t.confirm(s, Mark(text))
		if len(faults) > 0 {
			return t, faults, nil
		}
		if rows {
			text, t.Own = s.Text, true
		}
	}
	t.Rows, t.text = Mark(text), text
	return t, decode(file, text, into), nil
}

func decode(file string, text []byte, into any) finding.Faults {
	meta, err := toml.Decode(string(text), into)
	if err != nil {
		return finding.Faults{syntax(file, err)}
	}
	var faults finding.Faults
	for _, key := range meta.Undecoded() {
		if name := key.String(); !strings.HasPrefix(name, "confirmed_") {
			faults = append(faults, finding.Fault{Place: Place(file, text, name), Key: name, Says: "unknown key", Hint: "the shipped table of the same name shows the keys"})
		}
	}
	return faults
}

func syntax(file string, err error) finding.Fault {
	var at toml.ParseError
	if errors.As(err, &at) {
		return finding.Fault{Place: finding.Place{File: file, Line: at.Position.Line, Col: at.Position.Col}, Key: at.LastKey, Says: at.Message}
	}
	return finding.Fault{Place: finding.Place{File: file}, Says: strings.TrimPrefix(err.Error(), "toml: ")}
}
