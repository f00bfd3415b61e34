package engine

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"sync"

	"hullfile/engine/detail"
	"hullfile/engine/finding"
	"hullfile/engine/glossary"
	"hullfile/engine/handbook"
	"hullfile/engine/lookup"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/proof"
	"hullfile/engine/record"
	"hullfile/engine/requirement"
)

// Shipped is what comes with the program and what no yard changes: alloys/, details/, evidence/, limits, methods/, proofs/ and
// requirements/ of the content folder. It is read side by side and beside the records of a yard, and never changed after.
// Each part waits for itself and gives its own error.
type Shipped struct {
	alloys   func() (*material.Table, error)
	sheets   func() (*method.Shipped, error)
	lists    func() (*requirement.Shipped, error)
	catalog  func() (*requirement.Catalog, error)
	sets     func() (proof.Sets, error)
	details  func() (*detail.Table, error)
	building func() (Building, error)
	book     func() (*handbook.Book, error)
	words    func() (*glossary.Table, error)
}

// begun starts making something of the content folder and gives what waits for it. Its faults are not those of the records.
func begun[T any](make func() (T, error)) func() (T, error) {
	done := sync.OnceValues(func() (T, error) {
		made, err := make()
		return made, finding.Shipped(err, "content")
	})
	go done()
	return done
}

// ofSheets marks the faults of shipped method sheets, whose places have the name of the file alone; a sheet of the yard lies in
// its folder methods.
func ofSheets(err error) error {
	var all finding.Faults
	if !errors.As(err, &all) {
		return err
	}
	var out finding.Faults
	for _, f := range all {
		if !strings.Contains(f.Place.File, "/") {
			f.Place.File, f.Shipped = "content/methods/"+f.Place.File, true
		}
		out = append(out, f)
	}
	return out
}

// ReadShipped begins to read the content folder and returns at once.
func ReadShipped(content fs.FS) *Shipped {
	s := &Shipped{}
	s.alloys = begun(func() (*material.Table, error) { return material.Load(content) })
	s.lists = begun(func() (*requirement.Shipped, error) { return requirement.Read(content) })
	s.catalog = begun(func() (*requirement.Catalog, error) {
		lists, err := s.lists()
		if err != nil {
			return nil, err
		}
		return lists.With(nil)
	})
	s.sheets = begun(func() (*method.Shipped, error) {
		methods, err := fs.Sub(content, "methods")
		if err != nil {
			return nil, fmt.Errorf("method sheets: %w", err)
		}
		return method.ReadShipped(methods), nil
	})
	s.sets = begun(func() (proof.Sets, error) { return proof.Read(content) })
	s.details = begun(func() (*detail.Table, error) { return detail.Load(content) })
	s.building = begun(func() (Building, error) { return loadBuilding(content, nil) })
	s.book = begun(func() (*handbook.Book, error) { return handbook.Load(content) })
	s.words = begun(func() (*glossary.Table, error) { return glossary.Load(content) })
	return s
}

// Known is what the reader of records asks the content for.
// The error says which part of the content could not be read.
func (s *Shipped) Known() (record.Known, error) {
	alloys, err := s.alloys()
	if err != nil {
		return record.Known{}, fmt.Errorf("alloy tables: %w", err)
	}
	catalog, err := s.catalog()
	if err != nil {
		return record.Known{}, fmt.Errorf("lists of requirements: %w", err)
	}
	return record.Known{Alloys: alloys.Names(), Lists: catalog.Names(), Words: catalog.Words()}, nil
}

// Reference lays the yard's own method sheets over the shipped ones; With of the reference does the same for its lists of
// requirements. Proofs run when the first hull is reckoned, or when somebody asks. The error is finding.Faults of the sheets, or an error
// of reading.
func (s *Shipped) Reference(yard []method.Source) (*Reference, error) {
	r := &Reference{}
	var err error
	if r.Alloys, err = s.alloys(); err != nil {
		return nil, err
	}
	sheets, err := s.sheets()
	if err != nil {
		return nil, err
	}
	if r.Library, err = sheets.Library(yard); err != nil {
		return nil, ofSheets(err)
	}
	if faults := lookup.Unknown(r.Library.Sheets()); len(faults) > 0 {
		return nil, ofSheets(faults)
	}
	if r.lists, err = s.lists(); err != nil {
		return nil, err
	}
	if r.listed, err = s.catalog(); err != nil {
		return nil, err
	}
	r.Requirements = r.listed
	sets, err := s.sets()
	if err != nil {
		return nil, err
	}
	if r.Details, err = s.details(); err != nil {
		return nil, err
	}
	if r.Building, err = s.building(); err != nil {
		return nil, err
	}
	if r.Handbook, err = s.book(); err != nil {
		return nil, err
	}
	if r.Words, err = s.words(); err != nil {
		return nil, err
	}
	r.proofs = newProofs(r.Library, func(shipped *method.Library) *proof.Runs { return sets.Runs(shipped, r.Alloys, r.listed) })
	return r, nil
}
