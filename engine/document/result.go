// Package document looks at the papers of a file: whether each is there, is what its record says, and has not changed.
//
//   - Question: is each paper there, what its record says, and unchanged?
//   - In: the yard folder, opened so that nothing leads out of it, and the hull.
//   - Out: each paper with its path, size and SHA-256; checks; files that no record names.
//   - Source: own practice; kinds of files are told by their first bytes.
package document

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Result is all documents of one hull.
type Result struct {
	Documents []Document // in the order of the record
	Strays    []string   // files in the documents folder that no record names, relative to the yard folder
	Checks    []finding.Check
	Findings  []finding.Finding
}

// Document is one paper with what was found on disk.
type Document struct {
	Record  *record.Document
	Why     string // why it was refused, or is not there
	Path    string // relative to the yard folder, forward slashes; empty if refused
	Out     string // path inside the technical file, e.g. documents/certificate-117.pdf
	Present bool
	Bytes   int64
	SHA256  string   // of the file as it is now
	Matches bool     // it is there, and the hash on record agrees or none is on record
	Type    string   // what the bytes are: "PDF", "JPEG", "PNG", "text", "unknown"
	UsedBy  []string // keys of records that name this document
}
