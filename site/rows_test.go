package site

import (
	"reflect"
	"strings"
	"sync"
	"testing"

	"hullfile/engine/record"
)

// The hand-written rows hold as much markup with hostile text as with plain text: nothing of a record becomes markup.
func FuzzRows(f *testing.F) {
	p := &press{pages: sync.OnceValues(pageSet), lasting: &cache{}}
	f.Add(hostile)
	f.Add("&<>\"'\x00")
	f.Fuzz(func(t *testing.T, text string) {
		if text == "" {
			return
		}
		plain := "x"
		if strings.Contains(text, "/") {
			plain = "x/x" // a record line may be broken behind its folder
		}
		wild, tame := rowsOf(t, p, text), rowsOf(t, p, plain)
		for _, sign := range []string{"<", ">", `"`, "'"} {
			if a, b := strings.Count(wild, sign), strings.Count(tame, sign); a != b {
				t.Fatalf("%q stands %d times with the text and %d times with plain text: %s", sign, a, b, wild)
			}
		}
	})
}

func rowsOf(t *testing.T, p *press, text string) string {
	t.Helper()
	step := StepRow{
		ID: text, Name: text, Result: Figure{Text: text}, Unit: text, State: text, Why: text, Remark: text, Governs: true, Rests: Basis{Word: "recalled", Soft: true},
	}
	input := InputRow{
		ID: text, Name: text, Value: Figure{Why: text}, Unit: text, Source: text, State: text, Why: text, Idle: true, Place: Link{Text: text, Href: text},
	}
	bare := InputRow{Place: Link{Text: text}}
	steps, err := p.stepRows([]StepRow{step})
	if err != nil {
		t.Fatal(err)
	}
	inputs, err := p.inputRows([]InputRow{input, bare})
	if err != nil {
		t.Fatal(err)
	}
	return string(steps + inputs + cells([][]string{{text, text}}))
}

// fields.go reaches into record.Val by the index of its fields.
func TestValueFields(t *testing.T) {
	typ := reflect.TypeFor[record.Val[string]]()
	for i, name := range []string{valueV: "V", valueSet: "Set", valueAt: "At"} {
		if got := typ.Field(i).Name; got != name {
			t.Errorf("field %d of a value is %s, want %s", i, got, name)
		}
	}
	if !isValue(reflect.TypeFor[record.Val[bool]]()) || isValue(reflect.TypeFor[record.Identity]()) {
		t.Error("a table is taken for a value, or a value for a table")
	}
}
