// Package content holds what is said and reckoned as data: method sheets, proofs, alloys, notes and the demo yard.
package content

import "embed"

// Files is the content tree: methods/, proofs/, alloys/, notes/, demo/ and start/.
//
//go:embed all:methods all:proofs all:alloys all:notes all:demo all:start
var Files embed.FS
