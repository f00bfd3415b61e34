package site

import (
	"fmt"
	"hash/crc32"
	"html/template"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/requirement"
)

// ListPage is one list of requirements, item by item.
type ListPage struct {
	Row      ListRow
	Kind     string
	About    []string // paragraphs
	Place    Link     // of a list of the yard's own
	Items    []AskedRow
	Findings []FindingRow
	Caution  template.HTML
}

// AskedRow is one item with what answers it.
type AskedRow struct {
	ID       string
	No       string
	Heading  string
	Asks     string
	Applies  bool
	Standing Standing
	Says     Prose
	Missing  []string
	Evidence []EvidenceRow
	Accepted []AcceptedRow
	Clause   string
	Basis    Basis
	Open     bool   // it applies and is not met
	Blocks   string // what may not happen without it
	Note     string
}

// EvidenceRow is one answer with what stands behind it.
type EvidenceRow struct {
	Word     string
	How      string // test, result, document, record, statement
	Role     string
	Standing Standing
	Says     Prose
	Behind   []Link
	Doubts   int
}

// AcceptedRow is who took an item as answered.
type AcceptedRow struct {
	By   Link
	As   string
	Date string
	Note string
	At   Link
}

func (l *leaf) listPage(of *requirement.List) ListPage {
	p := ListPage{Row: l.listRow(of), Kind: of.Record.Kind.V, Findings: l.findingsHere(""), Caution: l.press.notes["requirements"]}
	if about := strings.TrimSpace(of.Record.About.V); about != "" {
		p.About = strings.Split(about, "\n\n")
	}
	if of.Record.Yards {
		p.Place = l.place(finding.Place{File: of.Record.Path, Line: 1})
	}
	for i := range of.Items {
		p.Items = append(p.Items, l.askedRow(&of.Items[i]))
	}
	return p
}

// itemAnchor is the anchor of an item on the page of its list. A number that cannot stand in an anchor as it is written
// gets its sum behind it, because two such numbers may look alike once their signs are taken away.
func itemAnchor(no string) string {
	name := slug(no)
	if name != no {
		name = fmt.Sprintf("%s-%08x", name, crc32.ChecksumIEEE([]byte(no)))
	}
	return "item-" + name
}

func (l *leaf) askedRow(it *requirement.Item) AskedRow {
	rec := it.Record
	row := AskedRow{
		ID: itemAnchor(rec.ID), No: rec.ID, Heading: rec.Heading.V, Asks: rec.Asks.V, Applies: it.Applies, Says: Prose(closed(capital(it.Says))), Missing: it.Lacks,
		Clause: rec.Clause.V, Basis: basis(it.Basis), Blocks: requirement.Blocks(rec.Blocks.V), Note: rec.Note.V,
	}
	if it.Applies {
		row.Standing, row.Open = standing(it.Standing), it.Standing != finding.Met
	}
	for i := range it.Answers {
		row.Evidence = append(row.Evidence, l.evidenceRow(&it.Answers[i]))
	}
	for _, acc := range it.Accepted {
		row.Accepted = append(row.Accepted, AcceptedRow{l.subjectAs("person "+acc.By.V, l.nameOf("person", acc.By.V)), acc.As.V, acc.Date.V.ISO(), note(acc), l.place(acc.At)})
	}
	return row
}

// note gives the words of an acceptance of this very item; those about a whole list stand in the record.
func note(acc *record.Accepted) string {
	if acc.Item.V == "all" {
		return ""
	}
	return acc.Note.V
}

// mostBehind is how many links stand behind an answer; the rest is counted.
const mostBehind = 8

func (l *leaf) evidenceRow(a *requirement.Answer) EvidenceRow {
	row := EvidenceRow{Word: a.Word.Says.V, How: a.Word.How.V, Standing: standing(a.Standing), Says: Prose(a.Says)}
	switch a.Role {
	case requirement.Either:
		row.Role = "one of these is enough"
	case requirement.Supports:
		row.Role = "shown beside it"
	}
	seen := map[Link]bool{}
	for _, s := range a.Shown {
		if s.Doubt {
			row.Doubts++
		}
		link := l.behind(s)
		if link.Text == "" || seen[link] {
			continue
		}
		seen[link] = true
		if row.Behind = append(row.Behind, link); len(row.Behind) == mostBehind {
			break
		}
	}
	return row
}

// behind is the way to what stands behind an answer: the page that works a check out, the paper, or the record line.
func (l *leaf) behind(s requirement.Shown) Link {
	switch {
	case s.Doubt:
		return Link{}
	case s.Subject == "":
		return l.place(s.Place)
	case strings.HasPrefix(s.Subject, "document "):
		return l.subjectAs(s.Subject, l.paperTitle(strings.TrimPrefix(s.Subject, "document ")))
	}
	if path, ruled := l.rulePage[s.Rule]; ruled && s.Count > 1 {
		page := l.section(l.sectionOf(path))
		page.Text = strings.ToLower(page.Text)
		return page
	}
	return l.about(s.Rule, s.Subject, s.Subject)
}

func (l *leaf) paperTitle(key string) string {
	for i := range l.hull.Documents {
		if d := &l.hull.Documents[i]; d.ID == key {
			return d.Title.V
		}
	}
	return key
}
