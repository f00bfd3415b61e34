package site

import (
	"reflect"
	"testing"

	"hullfile/site/typeset"
	"hullfile/templates"
)

// What the templates cost before the first page: read, and each printed once with an empty page.
func BenchmarkTemplates(b *testing.B) {
	for b.Loop() {
		pages, err := parsePages(templates.Files)
		if err != nil {
			b.Fatal(err)
		}
		p := press{pages: typeset.New(pages, pageFuncs())}
		var into []byte
		for _, kind := range pageKinds {
			if into, err = p.print(into, kind, Page{Body: reflect.Zero(reflect.TypeOf(bodies[kind])).Interface()}); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkParsePages(b *testing.B) {
	for b.Loop() {
		if _, err := parsePages(templates.Files); err != nil {
			b.Fatal(err)
		}
	}
}
