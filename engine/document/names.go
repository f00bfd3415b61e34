package document

import (
	"fmt"
	"path"
	"slices"
	"strings"
)

// mostStem is the greatest length of a name inside the technical file, without its end, in bytes.
const mostStem = 80

// kept are the ends of names that a document keeps. Anything else gets .txt or .bin behind it, so that a browser
// opening the technical file from a folder does not run a document as a page or a script.
var kept = [...]string{
	".pdf", ".png", ".jpg", ".jpeg", ".gif", ".webp", ".tif", ".tiff", ".heic", ".txt", ".csv", ".md", ".toml", ".json",
	".docx", ".xlsx", ".odt", ".ods", ".dxf", ".dwg", ".step", ".stp", ".igs", ".iges", ".zip", ".mp4", ".mov",
}

// names gives documents their names inside the technical file: safe on every system, unique where case does not
// count, and the same for the same file.
type names struct {
	byPath map[string]string
	taken  map[string]bool
}

func newNames() *names {
	return &names{byPath: map[string]string{}, taken: map[string]bool{}}
}

// take gives the path of a document inside the technical file.
func (n *names) take(d *Document) string {
	if out, given := n.byPath[d.Path]; given {
		return out
	}
	stem, end := safeName(d.Record.File.V, d.Type)
	out := stem + end
	for i := 2; n.taken[strings.ToLower(out)]; i++ {
		out = fmt.Sprintf("%s-%d%s", stem, i, end)
	}
	n.taken[strings.ToLower(out)] = true
	n.byPath[d.Path] = "documents/" + out
	return n.byPath[d.Path]
}

// safeName turns a file name into letters, figures, dots, dashes and underscores.
func safeName(name, kind string) (stem, end string) {
	end = path.Ext(name)
	stem = strings.TrimSuffix(name, end)
	if !slices.Contains(kept[:], strings.ToLower(end)) {
		stem, end = name, ".bin"
		if kind == kindText {
			end = ".txt"
		}
	}
	stem = strings.Trim(strings.Map(safe, stem), ".-")
	stem = strings.Trim(stem[:min(len(stem), mostStem)], ".-")
	if stem == "" || device(stem) {
		stem = strings.TrimSuffix("document-"+stem, "-")
	}
	return stem, end
}

// safe keeps what every system and every link takes as it stands.
func safe(r rune) rune {
	switch {
	case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '.', r == '-', r == '_':
		return r
	}
	return '-'
}
