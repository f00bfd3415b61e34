package site

import (
	"bytes"
	"html/template"

	"hullfile/engine/record"
)

// RecordsPage lists the record files that made this technical file.
type RecordsPage struct {
	Files []RecordRow
}

// RecordRow is one record file.
type RecordRow struct {
	Link  Link
	Raw   Link
	Lines int
	Size  string
	Hash  string
}

// RecordPage is the text of one record file, line by line.
type RecordPage struct {
	Path  string
	Raw   Link
	Lines int
	Hash  string
	Used  int // lines that some page cites
	Text  template.HTML
}

func (l *leaf) recordsPage() (RecordsPage, error) {
	var p RecordsPage
	for i, f := range l.records {
		p.Files = append(p.Files, RecordRow{
			Link: l.section(l.at.kids[i]), Raw: Link{Text: "as written", Href: l.to("records/"+f.Path, "")}, Lines: lineCount(f.Text), Size: fileSize(int64(len(f.Text))), Hash: hashOf(f.Text),
		})
	}
	return p, nil
}

func (l *leaf) recordPage(f record.File) (RecordPage, error) {
	return RecordPage{
		Path: f.Path, Raw: Link{Text: "the file as written", Href: l.to("records/"+f.Path, "")}, Lines: lineCount(f.Text), Hash: hashOf(f.Text), Text: l.press.recordLines(f.Text, l.usedBy(f.Path)), Used: l.usedLines(f.Path),
	}, nil
}

func lineCount(text []byte) int {
	n := bytes.Count(text, []byte("\n"))
	if len(text) > 0 && text[len(text)-1] != '\n' {
		n++
	}
	return n
}
