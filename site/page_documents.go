package site

import (
	"fmt"
	"html/template"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/finding"
)

// DocumentsPage lists the papers, whether each is there and unaltered, and says how to check this file.
type DocumentsPage struct {
	Says     DocumentsSays
	Papers   []PaperRow
	Strays   []string
	Hashes   string // in the form of sha256sum
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// DocumentsSays is the answer about the papers; the cover says it too.
type DocumentsSays struct {
	Tally
	Papers  int
	Missing int
	Altered int
	Unheld  int // there, but with no hash on record to hold them against
	Strays  int
}

// PaperRow is one paper.
type PaperRow struct {
	ID       string
	Key      string
	Title    Link
	Kind     string
	Number   Figure
	Date     Figure
	Until    Figure
	By       Figure
	Type     string
	Size     string
	State    string
	Standing Standing
	Used     []Link
	Place    Link
}

func (l *leaf) documentsPage() (DocumentsPage, error) {
	r := &l.dossier.Documents
	notes, err := l.notesFor("documents")
	if err != nil {
		return DocumentsPage{}, err
	}
	p := DocumentsPage{Says: l.documentsSays(), Strays: r.Strays, Notes: notes, Caution: l.press.notes["documents"], Findings: l.findingsHere("")}
	var sums []sum
	for i := range r.Documents {
		d := &r.Documents[i]
		p.Papers = append(p.Papers, l.paperRow(d))
		if hash, copied := l.copied[d.Out]; copied {
			sums = append(sums, sum{d.Out, hash})
		}
	}
	p.Hashes = string(list(unique(sums)))
	return p, nil
}

// unique leaves out a file that a second record names too.
func unique(sums []sum) []sum {
	seen := map[string]bool{}
	var out []sum
	for _, s := range sums {
		if !seen[s.path] {
			seen[s.path] = true
			out = append(out, s)
		}
	}
	return out
}

func (l *leaf) paperRow(d *document.Document) PaperRow {
	rec := d.Record
	row := PaperRow{
		ID: l.anchor("document " + rec.ID), Key: rec.ID, Title: Link{Text: rec.Title.V}, Kind: rec.Kind.V, Number: word(rec.Number), Date: dated(rec.Date), Until: dated(rec.Until),
		By: word(rec.By), Place: l.place(rec.At), Type: d.Type,
	}
	row.State, row.Standing = l.paperStanding(d)
	if _, copied := l.copied[d.Out]; copied {
		row.Title.Href, row.Title.To, row.Size = l.to(d.Out, ""), d.Out, fileSize(d.Bytes)
	}
	row.Used = append(l.users(d.UsedBy), l.answeredBy("document "+rec.ID)...)
	return row
}

// users gives links to the records that name a paper. After the first of a kind its further ones are named by their key.
func (l *leaf) users(subjects []string) []Link {
	var out []Link
	last := ""
	for _, subject := range subjects {
		link := l.subject(subject)
		if kind, key, ok := strings.Cut(subject, " "); ok {
			if kind == last {
				link.Text = key
			}
			last = kind
		}
		out = append(out, link)
	}
	return out
}

// paperStanding takes the engine's checks where there are any; the words say what was found on disk.
func (l *leaf) paperStanding(d *document.Document) (string, Standing) {
	state, s := "there, hash agrees with the record", finding.Met
	switch {
	case !d.Present:
		state, s = "not there", finding.NotShown
	case !d.Matches:
		state, s = "altered: the hash on record is another", finding.Short
	case !d.Record.SHA256.Set:
		state = "there; no hash on record to hold it against"
	}
	if judged, ok := standingOf(l.dossier.Documents.Checks, "document "+d.Record.ID); ok {
		return state, judged
	}
	return state, standing(s)
}

func (l *leaf) documentsSays() DocumentsSays {
	r := &l.dossier.Documents
	s := DocumentsSays{Tally: l.tallyAt(documentsPath, r.Checks), Papers: len(r.Documents), Strays: len(r.Strays)}
	for i := range r.Documents {
		d := &r.Documents[i]
		switch {
		case !d.Present:
			s.Missing++
		case !d.Matches:
			s.Altered++
		case !d.Record.SHA256.Set:
			s.Unheld++
		}
	}
	return s
}

// documents copies the papers that are there into the book. Two records may name one file; it is copied once.
func (b *book) documents() error {
	root := b.press.job.Root
	for i := range b.dossier.Documents.Documents {
		d := &b.dossier.Documents.Documents[i]
		if _, done := b.copied[d.Out]; done || !d.Present || d.Out == "" || root == nil {
			continue
		}
		if !strings.HasPrefix(d.Out, "documents/") {
			return fmt.Errorf("document %s: %q is not in the documents folder", d.Record.ID, d.Out)
		}
		hash, err := b.copyFrom(d)
		if err != nil {
			return fmt.Errorf("document %s: %w", d.Record.ID, err)
		}
		b.copied[d.Out] = hash
	}
	return nil
}

// copyFrom copies one paper. A file that changed between being judged and being copied would make the pages untrue.
func (b *book) copyFrom(d *document.Document) (hash string, err error) {
	from, err := b.press.job.Root.Open(d.Path)
	if err != nil {
		return "", err
	}
	defer from.Close()
	hash, err = b.folder.take(d.Out, from)
	if err == nil && d.SHA256 != "" && !strings.EqualFold(hash, d.SHA256) {
		return "", fmt.Errorf("%s changed while it was being copied; run again", d.Path)
	}
	return hash, err
}
