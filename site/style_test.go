package site

import (
	"io/fs"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"hullfile/templates"
)

// Contrast of every text colour on every ground it stands on, by the formulas of WCAG 2.2: relative luminance and
// contrast ratio, success criterion 1.4.3 (4.5 to 1). The standings must differ in lightness, so that they can be told
// apart without colour.
func TestContrast(t *testing.T) {
	for name, colours := range schemes(t) {
		for _, ground := range []string{"paper", "faint", "mark"} {
			for _, text := range []string{"ink", "soft", "accent", "met", "short", "open"} {
				if got := contrast(colours[text], colours[ground]); got < 4.5 {
					t.Errorf("%s: %s on %s has %.2f to 1", name, text, ground, got)
				}
			}
		}
		for _, pair := range [][2]string{{"met", "short"}, {"short", "open"}, {"met", "open"}} {
			if got := contrast(colours[pair[0]], colours[pair[1]]); got < 1.15 {
				t.Errorf("%s: %s and %s are equally light, %.2f to 1", name, pair[0], pair[1], got)
			}
		}
	}
}

// schemes reads the colours of light, dark and paper from the style sheets.
func schemes(t *testing.T) map[string]map[string]string {
	t.Helper()
	book, print := readStyle(t, "book.css"), readStyle(t, "print.css")
	light, dark, ok := strings.Cut(book, "@media (prefers-color-scheme: dark)")
	if !ok {
		t.Fatal("no dark scheme")
	}
	dark, _, _ = strings.Cut(dark, "* { box-sizing")
	out := map[string]map[string]string{"light": colours(light), "dark": colours(dark), "paper": colours(print)}
	out["paper"]["mark"] = out["paper"]["paper"] // nothing is marked on paper
	for name, c := range out {
		if len(c) < 9 {
			t.Fatalf("%s has %d colours", name, len(c))
		}
	}
	return out
}

func readStyle(t *testing.T, name string) string {
	t.Helper()
	text, err := fs.ReadFile(templates.Files, name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func colours(css string) map[string]string {
	out := map[string]string{}
	for _, m := range regexp.MustCompile(`--([a-z]+): #([0-9a-f]{3,6});`).FindAllStringSubmatch(css, -1) {
		hex := m[2]
		if len(hex) == 3 {
			hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
		}
		out[m[1]] = hex
	}
	return out
}

func contrast(a, b string) float64 {
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

func luminance(hex string) float64 {
	v, err := strconv.ParseUint(hex, 16, 32)
	if err != nil || len(hex) != 6 {
		return math.NaN()
	}
	channel := func(shift uint) float64 {
		c := float64(v>>shift&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*channel(16) + 0.7152*channel(8) + 0.0722*channel(0)
}

// A strict policy refuses what the style sheet would fetch from elsewhere.
func TestStyleFetchesNothing(t *testing.T) {
	for _, name := range []string{"book.css", "chart.css", "print.css"} {
		if text := readStyle(t, name); strings.Contains(text, "url(") || strings.Contains(text, "@import") {
			t.Errorf("%s fetches something", name)
		}
	}
	if text := readStyle(t, "book.js"); strings.Contains(text, "innerHTML") || strings.Contains(text, "eval(") || strings.Contains(text, "http") {
		t.Error("book.js makes markup of text, runs text or reaches for the network")
	}
}
