package method

import (
	"os"
	"testing"
)

// trial loads the sheet of this package's tests.
func trial(t testing.TB) *Sheet {
	t.Helper()
	text, err := os.ReadFile("testdata/trial-plating.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := Load("trial-plating.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
