package site

import (
	"hullfile/engine/finding"
	"hullfile/engine/requirement"
)

// Where the pages of requirements lie, relative to the folder of the hull.
const requirementsPath = "requirements.html"

// requirementContents lays these pages out. A hull that must answer no list has none.
func (b *book) requirementContents() {
	r := &b.dossier.Requirements
	if len(r.Lists) == 0 {
		return
	}
	top := b.top("Requirements", requirementsPath, "requirements", page((*leaf).requirementsPage))
	names := slugs{}
	for i := range r.Lists {
		list := &r.Lists[i]
		below(top, list.Record.Title.V, "requirements/"+names.take(list.Record.Name)+".html", "requirementlist",
			page(func(l *leaf) (ListPage, error) { return l.listPage(list), nil }))
	}
	for _, d := range b.drafts() {
		below(top, d.title, "requirements/"+names.take(d.name)+".html", "draft", page(func(l *leaf) (DraftPage, error) { return l.draftPage(d), nil }))
	}
}

// requirementSubjects are the subjects that these pages show.
func (b *book) requirementSubjects(add func(subject, path, anchor string)) {
	s := b.sectionOf(requirementsPath)
	if s == b.cover {
		return
	}
	for i := range b.dossier.Requirements.Lists {
		add("list "+b.dossier.Requirements.Lists[i].Record.Name, s.kids[i].path, "")
	}
}

func (b *book) requirementDisciplines(of func(path string, checks []finding.Check, findings []finding.Finding)) {
	of(requirementsPath, b.dossier.Requirements.Checks, b.dossier.Requirements.Findings)
}

// answeredBy gives the items that something answers, the first of each list, in the order of the lists.
func (l *leaf) answeredBy(subject string) []Link {
	var out []Link
	for i := range l.dossier.Requirements.Lists {
		if it := answers(&l.dossier.Requirements.Lists[i], subject); it != nil {
			out = append(out, l.itemLink(it))
		}
	}
	return out
}

// answers gives the first item of a list that something answers by name, not as one of many papers.
func answers(of *requirement.List, subject string) *requirement.Item {
	for i := range of.Items {
		for _, a := range of.Items[i].Answers {
			for _, s := range a.Shown {
				if s.Subject == subject && s.Rule == "" {
					return &of.Items[i]
				}
			}
		}
	}
	return nil
}

// listLink is the way to the page of a list.
func (l *leaf) listLink(of *requirement.List) Link {
	return l.subjectAs("list "+of.Record.Name, of.Record.Title.V)
}

// itemLink is the way to an item of a list.
func (l *leaf) itemLink(it *requirement.Item) Link {
	link := l.subjectAs("list "+it.List.Name, it.Title())
	if link.Href == "#main" {
		link.Href = ""
	}
	if link.Href != "" || link.Text != "" {
		link.Href += "#" + itemAnchor(it.Record.ID)
	}
	return link
}
