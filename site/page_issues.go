package site

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// IssueRow is one issue of the file.
type IssueRow struct {
	Number string
	Date   Figure
	Reason Figure
	By     Figure
	Place  Link
}

// issueRows lists the issues of the file, the present one first; nothing where none came before it.
func (l *leaf) issueRows() []IssueRow {
	now := &l.hull.Issue
	if len(now.Earlier) == 0 {
		return nil
	}
	var rows []IssueRow
	if now.Number.Set {
		rows = append(rows, l.issueRow(now.Number, now.Date, now.Reason, now.By, now.Number.At))
	}
	for _, past := range slices.Backward(now.Earlier) {
		rows = append(rows, l.issueRow(past.Number, past.Date, past.Reason, past.By, past.At))
	}
	return rows
}

func (l *leaf) issueRow(number record.Val[int], date record.Val[record.Date], reason, by record.Val[string], at finding.Place) IssueRow {
	row := IssueRow{Number: wordsOfInt(number.V), Date: dated(date), Reason: word(reason), By: Figure{Why: "not recorded"}, Place: l.place(at)}
	if by.Set {
		row.By = Figure{Text: l.nameOf("person", by.V)}
	}
	return row
}
