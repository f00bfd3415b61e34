package site

import (
	"bytes"
	"html/template"
	"math/rand/v2"
	"reflect"
	"testing"

	"hullfile/site/typeset"
	"hullfile/templates"
)

// Every page kind, filled by chance, comes out byte for byte as html/template itself prints it: what decides how a text is
// escaped is html/template, and the faster printing may change nothing.
func TestPagesPrintAsHTMLTemplateWould(t *testing.T) {
	slow, err := parsePages(templates.Files)
	if err != nil {
		t.Fatal(err)
	}
	again, err := parsePages(templates.Files)
	if err != nil {
		t.Fatal(err)
	}
	fast := typeset.New(again, pageFuncs())
	chance := rand.New(rand.NewPCG(7, 8))
	for _, kind := range pageKinds {
		for round := range 25 {
			body := reflect.New(reflect.TypeOf(bodies[kind])).Elem()
			var frame Frame
			if round > 0 { // the first is empty
				fillByChance(chance, body, 0)
				fillByChance(chance, reflect.ValueOf(&frame).Elem(), 0)
			}
			page := Page{frame, body.Interface()}
			var want bytes.Buffer
			if err := slow.ExecuteTemplate(&want, "base "+kind, page); err != nil {
				t.Fatalf("%s: %v", kind, err)
			}
			got, err := fast.Append(nil, "base "+kind, page)
			if err != nil {
				t.Fatalf("%s: %v", kind, err)
			}
			if !bytes.Equal(got, want.Bytes()) {
				at := 0
				for at < min(len(got), want.Len()) && got[at] == want.Bytes()[at] {
					at++
				}
				t.Fatalf("%s: after %q comes %q, want %q", kind, got[max(0, at-60):at], got[at:min(len(got), at+60)], want.Bytes()[at:min(want.Len(), at+60)])
			}
		}
	}
}

// fillByChance sets what a page is made of, each text and list now empty, now not. In an interface stays what is there.
func fillByChance(chance *rand.Rand, v reflect.Value, depth int) {
	if !v.CanSet() {
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(chanceText(chance, v.Type()))
	case reflect.Bool:
		v.SetBool(chance.IntN(2) == 0)
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(chance.IntN(4) - 1))
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fillByChance(chance, v.Elem(), depth+1)
	case reflect.Slice:
		n := chance.IntN(3)
		if depth > 5 {
			n = 0
		}
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			fillByChance(chance, v.Index(i), depth+1)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fillByChance(chance, v.Field(i), depth+1)
		}
	}
}

func chanceText(chance *rand.Rand, t reflect.Type) string {
	if t == reflect.TypeFor[template.HTML]() {
		return []string{"", "<b>1 &lt; 2</b>", "<p>ø</p>\n"}[chance.IntN(3)]
	}
	texts := []string{"", "", "met", "short", "6.0 mm", "structure/B3.html#x", "https://example.invalid/a?b=c&d=e+f%20g", "javascript:alert(1)", "mailto:a@example.invalid", hostile, "\x00\xff\u2028+'", "ø å (5%)"}
	return texts[chance.IntN(len(texts))]
}
