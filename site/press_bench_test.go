package site

import (
	"reflect"
	"sync"
	"testing"

	"hullfile/templates"
)

// What the templates cost before the first page: read, and each printed once with an empty page.
func BenchmarkTemplates(b *testing.B) {
	for b.Loop() {
		p := press{pages: sync.OnceValues(pageSet)}
		var into []byte
		var err error
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
