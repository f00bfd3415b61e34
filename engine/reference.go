package engine

import (
	"fmt"
	"io/fs"

	"hullfile/engine/detail"
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

	Building Building // limits by which the record of building is judged
}

// NewReference reads alloys/, details/, evidence/, methods/, proofs/ and requirements/ of the content folder and lays the
// yard's own method sheets and lists of requirements over the shipped ones. The proofs run through the library that results, so that a sheet of the yard's own that no longer gives
// the published values is seen to do so. The error is finding.Faults of the sheets, or an error of reading.
func NewReference(content fs.FS, yard []method.Source, lists ...record.List) (*Reference, error) {
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
	requirements, err := requirement.Load(content, lists)
	if err != nil {
		return nil, err
	}
	proofs, err := proof.Run(content, library, alloys)
	if err != nil {
		return nil, err
	}
	details, err := detail.Load(content)
	if err != nil {
		return nil, err
	}
	building, err := loadBuilding(content)
	if err != nil {
		return nil, err
	}
	return &Reference{Library: library, Alloys: alloys, Proofs: proofs, Details: details, Requirements: requirements, Building: building}, nil
}
