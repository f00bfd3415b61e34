package chart

import (
	"html"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// TestPage writes a page of sample figures for looking at, where HULLFILE_FIGURES names a folder.
func TestPage(t *testing.T) {
	dir := os.Getenv("HULLFILE_FIGURES")
	if dir == "" {
		t.Skip("HULLFILE_FIGURES names no folder")
	}
	var page strings.Builder
	page.WriteString(`<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>Figures</title>` +
		`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'">` +
		`<link rel="stylesheet" href="book.css"><link rel="stylesheet" href="chart.css"></head><body><main>`)
	for _, f := range samples() {
		page.WriteString("<figure>" + f.SVG + "<figcaption>" + html.EscapeString(f.Note) + "</figcaption></figure>\n")
	}
	page.WriteString("</main></body></html>")
	files := map[string]string{"figures.html": page.String()}
	for _, name := range []string{"book.css", "chart.css"} {
		text, err := os.ReadFile("../../templates/" + name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(text)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func samples() []Figure {
	t, w, panels := sampleTrial(), sampleWeight(), samplePanels(26)
	link := func(p scantling.Panel) string { return "structure/" + p.Record.ID + ".html" }
	curved := panels[3]
	record := *curved.Record
	record.Camber, record.ID = wr(unit.MM(18)), "D4c"
	curved.Record = &record
	return []Figure{SpeedFuel(t), MileRange(t), Trim(t), Margins(panels, link), Panel(panels[2], sampleBoat()), Panel(curved, sampleBoat()),
		WeightGroups(w), Centres(w, sampleBoat()), Weighing(sampleWeighing()), Sensitivity(w),
		blank("fig-x", "none", "No engine speed and boat speed on record for one setting together.", nil)}
}
