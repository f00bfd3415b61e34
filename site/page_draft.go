package site

import (
	"html/template"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/requirement"
	"hullfile/engine/unit"
)

// form is a declaration or statement that is drafted from the record.
type form struct {
	name, title string
	word        string   // word of evidence of the signed paper
	law         string   // market, as the plate names it; empty for a statement that is drafted for all
	lists       []string // lists that its signature speaks of; a statement speaks of all
}

// draftForms are all that are drafted. The declarations are drafted only for the markets whose lists apply.
func draftForms() []form {
	return []form{
		{"declaration-eu-draft", "EU declaration of conformity", "declaration-eu", "EU", []string{"eu-2013-53", "eu-plate-and-number", "eu-manual", "eu-technical-file", "eu-declaration"}},
		{"declaration-uk-draft", "UK declaration of conformity", "declaration-uk", "UK", []string{"eu-2013-53", "eu-plate-and-number", "eu-manual", "eu-technical-file", "uk-2017-737"}},
		{"builders-statement-draft", "Builder's statement", "builders-statement", "", nil},
		{"test-statement-draft", "Statement of tests", "test-statement", "", nil},
	}
}

// drafts are those of this hull.
func (b *book) drafts() []form {
	var out []form
	for _, f := range draftForms() {
		_, known := b.dossier.Requirements.Statement(f.word)
		if known && (f.law == "" || slices.Contains(b.hull.Plate.Law.V, f.law)) {
			out = append(out, f)
		}
	}
	return out
}

// spoken are the lists that apply and that a form speaks of; a statement speaks of all.
func (b *book) spoken(f form) []*requirement.List {
	var out []*requirement.List
	for i := range b.dossier.Requirements.Lists {
		of := &b.dossier.Requirements.Lists[i]
		named := f.lists == nil
		for _, name := range f.lists {
			named = named || name == of.Record.Name
		}
		if named && of.Applies {
			out = append(out, of)
		}
	}
	return out
}

// DraftPage is one declaration or statement, drafted from the record, for a person to sign.
type DraftPage struct {
	Form   string // declaration-eu, declaration-uk, builders-statement, test-statement
	Signed bool
	Paper  []Link // the signed paper
	Why    string // why it is a draft

	Number    Figure
	Maker     []Fact
	For       string // the authorised representative
	Boat      []Fact
	Standards []string
	Module    Figure
	Body      []Fact
	NeedsBody bool
	Engine    Link
	By, As    Figure
	Place     Figure

	Met   bool // every item that the form speaks of is met
	Lacks Link // the list without which nothing can be declared, where the boat need not answer it
	Lists []ListRow
	Open  []OpenRow
	Tests []EvidenceRow

	Caution template.HTML
}

func (l *leaf) draftPage(f form) DraftPage {
	r, h := &l.dossier.Requirements, l.hull
	c := &h.Conformity
	p := DraftPage{
		Form: f.word, Number: word(c.Number), Maker: l.makerFacts(), For: c.For.V, Boat: l.boatFacts(), Standards: c.Standards.V, Module: word(c.Module),
		By: Figure{Why: "not recorded"}, As: word(c.As), Place: word(c.Place), Caution: l.press.notes["drafts"],
	}
	if c.By.Set {
		p.By = Figure{Text: l.nameOf("person", c.By.V)}
	}
	if p.NeedsBody = c.Module.Set && c.Module.V != "A"; p.NeedsBody {
		p.Body = l.bodyFacts(c)
	}
	if c.Engine.Set {
		p.Engine = l.subjectAs("document "+c.Engine.V, l.paperTitle(c.Engine.V))
	}
	l.signature(&p, f)
	p.Met, p.Lacks = l.answered(f)
	for _, of := range l.spoken(f) {
		p.Lists = append(p.Lists, l.listRow(of))
		whole := l.opens(&p, of)
		p.Met = p.Met && whole
	}
	if f.word == "test-statement" {
		for i := range r.Tests {
			p.Tests = append(p.Tests, l.evidenceRow(&r.Tests[i]))
		}
	}
	return p
}

// signature says whether the signed paper is on record.
func (l *leaf) signature(p *DraftPage, f form) {
	ans, _ := l.dossier.Requirements.Statement(f.word)
	p.Signed, p.Why = ans.Standing == finding.Met, ans.Says
	for _, s := range ans.Shown {
		p.Paper = append(p.Paper, l.behind(s))
	}
}

// essential is the list that holds the requirements themselves, of the Union and of the United Kingdom.
const essential = "eu-2013-53"

// answered reports whether a form that declares conformity can do so at all: the boat must answer the requirements.
func (l *leaf) answered(f form) (bool, Link) {
	if f.lists == nil {
		return true, Link{}
	}
	if of, ok := l.dossier.Requirements.Find(essential); ok && of.Applies {
		return true, Link{}
	}
	return false, l.subjectAs("list "+essential, essential)
}

// opens adds what is open in a list, but for signatures, and reports whether nothing is.
func (l *leaf) opens(p *DraftPage, of *requirement.List) bool {
	whole := true
	for i := range of.Items {
		it := &of.Items[i]
		if !it.Applies || it.Standing == finding.Met || onlySignatures(it) {
			continue
		}
		whole = false
		p.Open = append(p.Open, OpenRow{Item: l.itemLink(it), List: l.listLink(of), Standing: standing(it.Standing), Blocks: requirement.Blocked(it.Record.Blocks.V), Says: Prose(closed(capital(it.Says)))})
	}
	return whole
}

// onlySignatures reports whether an item wants nothing but a signature: that cannot be there before this form is signed.
func onlySignatures(it *requirement.Item) bool {
	found := false
	for _, a := range it.Answers {
		if a.Role == requirement.Supports || a.Standing == finding.Met {
			continue
		}
		if a.Word.How.V != "statement" {
			return false
		}
		found = true
	}
	return found
}

func factIf[T any](name string, v record.Val[T], text string) Fact {
	return Fact{Name: name, Value: has(v.Set, text, "not recorded")}
}

func (l *leaf) makerFacts() []Fact {
	b := l.dossier.Builder
	return []Fact{
		factIf("maker", b.Name, b.Name.V), factIf("address", b.Address, strings.ReplaceAll(b.Address.V, "\n", ", ")), factIf("contact", b.Contact, b.Contact.V), factIf("maker's code", b.Code, b.Code.V),
	}
}

func (l *leaf) boatFacts() []Fact {
	h := l.hull
	metres := func(v record.Val[unit.M]) string { return unit.Text(v.V, 2) + " m" }
	load := has(h.Plate.MaxLoad.Set, unit.Text(h.Plate.MaxLoad.V, 0)+" kg", "not recorded")
	power := h.Plate.Power
	if !power.Set {
		power = h.Boat.Power
	}
	return []Fact{
		factIf("what it is", h.Title, h.Title.V), {Name: "yard's number", Value: Figure{Text: h.Number}}, factIf("hull identification number", h.Identity.HIN, h.Identity.HIN.V),
		factIf("design", h.Design, h.Design.V), factIf("category", h.Boat.Category, h.Boat.Category.V), factIf("length of hull", h.Boat.LengthHull, metres(h.Boat.LengthHull)),
		factIf("beam of hull", h.Boat.BeamHull, metres(h.Boat.BeamHull)), factIf("persons", h.Boat.Persons, wordsOfInt(h.Boat.Persons.V)), {Name: "greatest load on the plate", Value: load},
		factIf("greatest power", power, unit.Text(power.V, 0)+" kW"), factIf("building began", h.Identity.KeelLaid, h.Identity.KeelLaid.V.String()),
	}
}

func (l *leaf) bodyFacts(c *record.Conformity) []Fact {
	return []Fact{factIf("body", c.Body, c.Body.V), factIf("its number", c.BodyNo, c.BodyNo.V), factIf("what it did", c.BodyTask, c.BodyTask.V), factIf("its certificate", c.Paper, c.Paper.V)}
}
