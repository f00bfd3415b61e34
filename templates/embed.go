// Package templates holds the pages: one base, parts, one file a page kind, the style sheet and the little script.
package templates

import "embed"

// Files is the template tree.
//
//go:embed *.html *.css *.js
var Files embed.FS
