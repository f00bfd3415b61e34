// Package content holds what is said and reckoned as data: method sheets, proofs, alloys, notes and the demo yard.
package content

import "embed"

// Files is the content tree: methods/, limits/, proofs/, alloys/, details/, evidence/, requirements/, notes/, owner/,
// glossary/, schema/, demo/ and start/.
//
//go:embed all:details all:evidence all:requirements all:methods all:limits all:proofs all:alloys all:notes all:owner all:glossary all:schema all:demo all:start
var Files embed.FS
