package main

import (
	"bytes"
	"strings"
	"testing"
)

// Every verb says what it does, shows an example that begins with the command, says how it ends, and fits 80 columns.
func TestHelpOfEveryVerb(t *testing.T) {
	root := rootCommand(newDesk(&bytes.Buffer{}, &bytes.Buffer{}))
	n := 0
	for _, verb := range root.Commands() {
		var out, errs bytes.Buffer
		if status := run(t.Context(), []string{verb.Name(), "--help"}, &out, &errs); status != statusSound || errs.Len() > 0 {
			t.Errorf("%s: status %d, said %q", verb.Name(), status, errs.String())
		}
		text := out.String()
		for _, part := range []string{"Examples:\n  hullfile " + verb.Name(), "Use: hullfile " + verb.Name(), "--help ", "Ends with:\n  0  ", "\n  2  "} {
			if !strings.Contains(text, part) {
				t.Errorf("the help of %s lacks %q", verb.Name(), part)
			}
		}
		for line := range strings.Lines(text) {
			if width := len([]rune(strings.TrimRight(line, "\n"))); width > paperWidth {
				t.Errorf("%s: %d characters wide: %s", verb.Name(), width, line)
			}
		}
		n++
	}
	if n < 14 {
		t.Errorf("only %d verbs were looked at", n)
	}
}
