package engine

import (
	"fmt"
	"io/fs"

	"hullfile/engine/detail"
	"hullfile/engine/glossary"
	"hullfile/engine/handbook"
	"hullfile/engine/lookup"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/proof"
	"hullfile/engine/record"
	"hullfile/engine/requirement"
)

// Reference is what every hull of a yard is reckoned by. It is read once, never changed after, and shared by all hulls
// and goroutines.
type Reference struct {
	Library *method.Library
	Alloys  *material.Table
	Proofs  proof.Sheet
	Details *detail.Table

	Requirements *requirement.Catalog
	lists        *requirement.Shipped

	Handbook *handbook.Book  // chapters of the owner's book
	Words    *glossary.Table // words that the pages explain

	Building Building // limits by which the record of building is judged
}

// NewReference reads alloys/, details/, evidence/, methods/, proofs/ and requirements/ of the content folder and lays the
// yard's own method sheets over the shipped ones; With does the same for its lists of requirements. The proofs run through the library that results, so that a sheet of the yard's own that no longer gives
// the published values is seen to do so. The error is finding.Faults of the sheets, or an error of reading.
func NewReference(content fs.FS, yard []method.Source) (*Reference, error) {
	alloys, err := material.Load(content)
	if err != nil {
		return nil, err
	}
	methods, err := fs.Sub(content, "methods")
	if err != nil {
		return nil, fmt.Errorf("method sheets: %w", err)
	}
	library, err := method.NewLibrary(methods, yard)
	if err != nil {
		return nil, err
	}
	if faults := lookup.Unknown(library.Sheets()); len(faults) > 0 {
		return nil, faults
	}
	lists, err := requirement.Read(content)
	if err != nil {
		return nil, err
	}
	requirements, err := lists.With(nil)
	if err != nil {
		return nil, err
	}
	proofs, err := proof.Run(content, library, alloys, requirements)
	if err != nil {
		return nil, err
	}
	details, err := detail.Load(content)
	if err != nil {
		return nil, err
	}
	building, err := loadBuilding(content, nil)
	if err != nil {
		return nil, err
	}
	book, err := handbook.Load(content)
	if err != nil {
		return nil, err
	}
	terms, err := glossary.Load(content)
	if err != nil {
		return nil, err
	}
	return &Reference{Library: library, Alloys: alloys, Proofs: proofs, Details: details, Requirements: requirements, lists: lists, Building: building, Handbook: book, Words: terms}, nil
}

// WithChapters gives the same reference with the yard's own chapters laid over those of the owner's book. The error is
// finding.Faults of the chapters.
func (r *Reference) WithChapters(y *record.Yard) (*Reference, error) {
	if len(y.Chapters) == 0 {
		return r, nil
	}
	own := make([]handbook.Source, 0, len(y.Chapters))
	for _, c := range y.Chapters {
		own = append(own, handbook.Source{Name: c.Name, Path: c.Path, Text: c.Text})
	}
	book, faults := r.Handbook.With(own)
	if len(faults) > 0 {
		return nil, faults
	}
	with := *r
	with.Handbook = book
	return &with, nil
}

// With gives the same reference with the lists of requirements of a yard laid over the shipped ones. The error is
// finding.Faults of the lists.
func (r *Reference) With(lists []record.List) (*Reference, error) {
	if len(lists) == 0 {
		return r, nil
	}
	requirements, err := r.lists.With(lists)
	if err != nil {
		return nil, err
	}
	with := *r
	with.Requirements = requirements
	return &with, nil
}
