package site

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Papers that several hulls ask for are remembered from run to run, also where a run asks for none of them anew.
func TestPapersOfTheYardAreRemembered(t *testing.T) {
	e := newEditor(t)
	name := filepath.Join(e.out, keptName, keptYard)
	remembered := func() string {
		t.Helper()
		if _, err := Render(context.Background(), e.job(e.out)); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	first := remembered()
	if !strings.Contains(first, "designs/HL74/documents/") {
		t.Fatalf("no paper of a design is remembered: %s", first)
	}
	hull := filepath.Join(e.yard, "hulls", "LT56-031", "hull.toml")
	text, err := os.ReadFile(hull)
	if err != nil {
		t.Fatal(err)
	}
	e.put(hull, append([]byte("# a remark\n"), text...))
	if second := remembered(); second != first {
		t.Errorf("after a change of one hull %s is remembered, before it was %s", second, first)
	}
}
