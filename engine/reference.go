package engine

import (
	"io/fs"

	"hullfile/engine/detail"
	"hullfile/engine/glossary"
	"hullfile/engine/handbook"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/requirement"
)

// Reference is what every hull of a yard is reckoned by. It is read once, never changed after, and shared by all hulls
// and goroutines.
type Reference struct {
	Library *method.Library
	Alloys  *material.Table
	Details *detail.Table

	Requirements *requirement.Catalog
	lists        *requirement.Shipped
	listed       *requirement.Catalog // without lists of the yard's own

	Handbook *handbook.Book  // chapters of the owner's book
	Words    *glossary.Table // words that the pages explain

	Building Building // limits by which the record of building is judged

	proofs *proofs
}

// NewReference is ReadShipped with the reference of one yard.
// The error is finding.Faults, or one of reading.
func NewReference(content fs.FS, yard []method.Source) (*Reference, error) {
	return ReadShipped(content).Reference(yard)
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
