package record

import "strings"

// chaptersDir holds the yard's own chapters of the owner's book.
const chaptersDir = "owner"

// mostChapter is more than a chapter that somebody reads.
const mostChapter = 1 << 20

// chapters keeps the yard's own chapters as text. What stands in them is looked at by those who know the names.
func (r *reading) chapters() {
	all, err := r.disk.list(chaptersDir)
	if err != nil {
		r.faults.add(placeAt(chaptersDir), "", "", "the folder cannot be read: %v", bottom(err))
	}
	for _, e := range all {
		name := chaptersDir + "/" + e.Name()
		bad := badName(strings.TrimSuffix(e.Name(), ".md"))
		switch {
		case leftover(e.Name()):
		case !strings.HasSuffix(e.Name(), ".md"):
			r.disk.stray(chaptersDir, e, folder{strict: true, instead: "chapters of the owner's book end in .md"})
		case bad != "":
			r.faults.add(r.near(chaptersDir, e), "", "use letters, digits, - and _; the name becomes part of links", "the file name %s %s", quoted(e.Name()), bad)
		case r.disk.usual(chaptersDir, e, false):
			if text, ok := r.disk.text(name, mostChapter); ok {
				r.texts = append(r.texts, SheetSource{Name: e.Name(), Path: name, Text: text})
			}
		}
	}
}
