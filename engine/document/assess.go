package document

import (
	"os"
	"path"

	"hullfile/engine/record"
)

// Assess looks for every document of the hull inside the yard folder root and says what it found. A document lies in
// the folder "documents" beside the record file that names it. Nothing outside the yard folder is opened, no link is
// followed, and no file is read into memory whole. Without a root no document is looked for and none is shown.
func Assess(root *os.Root, h *record.Hull) Result {
	var r Result
	out := newNames()
	used := usedBy(h)
	for i := range h.Documents {
		d := find(root, &h.Documents[i])
		d.UsedBy = used[d.Record.ID]
		if d.Path != "" {
			d.Out = out.take(&d)
		}
		r.Documents = append(r.Documents, d)
	}
	for i := range r.Documents {
		d := &r.Documents[i]
		r.Checks = append(r.Checks, checks(d, h)...)
		r.Findings = append(r.Findings, findings(d)...)
	}
	strays, more := straysIn(root, folderOf(h), r.Documents, logsOf(h))
	r.Strays = strays
	r.Findings = append(r.Findings, withoutHash(r.Documents)...)
	r.Findings = append(r.Findings, strayFindings(h, strays, more)...)
	return r
}

// find resolves one document and looks at it.
func find(root *os.Root, rec *record.Document) Document {
	d := Document{Record: rec}
	if d.Why = refuse(rec.File.V); d.Why != "" {
		return d
	}
	folder := path.Join(path.Dir(namedIn(rec)), "documents")
	d.Path = path.Join(folder, rec.File.V)
	seen := look(root, folder, rec.File.V)
	if seen.refused {
		d.Path, d.Why = "", seen.why
		return d
	}
	d.Present, d.Why = seen.present, seen.why
	d.Bytes, d.SHA256, d.Type = seen.bytes, seen.sum, seen.kind
	d.Matches = d.Present && (!rec.SHA256.Set || sameHash(rec.SHA256.V, d.SHA256))
	return d
}

// namedIn gives the record file that names the document: a hull may name another file than its design does.
func namedIn(rec *record.Document) string {
	if rec.File.At.Known() {
		return rec.File.At.File
	}
	return rec.At.File
}

// folderOf gives the documents folder of the hull itself.
func folderOf(h *record.Hull) string { return path.Join(h.Folder, "documents") }
