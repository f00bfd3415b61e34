package site

import (
	"html/template"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/glossary"
	"hullfile/site/chart"
)

// OwnerTable is a table of the owner's book. A row without a text in any cell is there to be written on.
type OwnerTable struct {
	Caption string
	Head    []OwnerHead
	Rows    []OwnerRow
}

// OwnerHead is the head of one column.
type OwnerHead struct {
	Text, Unit string
	Num        bool
	Keep       bool // its cells stay on one line
}

// OwnerRow is one row, or an empty one.
type OwnerRow struct {
	Cells []OwnerCell
	Blank bool
}

// OwnerCell is one cell.
type OwnerCell struct {
	Figure
	Num  bool
	Keep bool
	Href string // of a paper that lies in the book
}

// newOwnerTable makes a table of heads such as "Power|kW|n": text, unit, and n for a column of numbers or k for one whose cells
// stay on one line.
func newOwnerTable(caption string, heads ...string) *OwnerTable {
	t := &OwnerTable{Caption: caption}
	for _, h := range heads {
		part := append(strings.Split(h, "|"), "", "")
		t.Head = append(t.Head, OwnerHead{part[0], part[1], part[2] == "n", part[2] == "k"})
	}
	return t
}

func (t *OwnerTable) row(cells ...Figure) {
	r := OwnerRow{}
	for i, c := range cells {
		r.Cells = append(r.Cells, OwnerCell{Figure: c, Num: t.Head[i].Num, Keep: t.Head[i].Keep})
	}
	t.Rows = append(t.Rows, r)
}

func (t *OwnerTable) blank(n int) {
	for range n {
		t.Rows = append(t.Rows, OwnerRow{Cells: make([]OwnerCell, len(t.Head)), Blank: true})
	}
}

// OwnerPart is one part of a chapter: words, a picture, a table, a card, or lines to write on.
type OwnerPart struct {
	Text    template.HTML
	Picture Drawing
	Table   *OwnerTable
	Facts   []Fact
	Card    HelmCard
	Links   []Link
	Terms   []glossary.Term
	Lines   []int // as many lines to write on
	Unknown []OwnerUnknown
	Short   []string // what is not in order
	None    string   // what could not be shown, and why
}

// OwnerUnknown is what one chapter does not know.
type OwnerUnknown struct {
	Chapter Link
	Lacks   string
}

// empty reports whether a part has nothing to show.
func (p *OwnerPart) empty() bool {
	return p.Text == "" && p.Picture.SVG == "" && p.Table == nil && len(p.Facts)+len(p.Links)+len(p.Terms)+len(p.Unknown)+len(p.Short)+len(p.Lines)+len(p.Card.Rows) == 0
}

// ownerBlock gives a picture, table or list of the closed set. It is made once: all chapters lie in one folder.
func (l *leaf) ownerBlock(name string) OwnerPart {
	p, made := l.blocks[name]
	if !made {
		p = l.newOwnerBlock(name)
		l.blocks[name] = p
	}
	return p
}

// newOwnerBlock makes one. What is not on record says so.
func (l *leaf) newOwnerBlock(name string) OwnerPart {
	kind, what, _ := strings.Cut(name, " ")
	var p OwnerPart
	switch kind {
	case "picture":
		p.Picture = l.ownerPicture(what)
	case "papers":
		p.Table = l.paperTable(what)
	case "lines":
		n, _ := strconv.Atoi(what)
		p.Lines = make([]int, n)
	case "list":
		l.ownerList(what, &p)
	case "table":
		l.ownerTable(what, &p)
	}
	if p.Table != nil && len(p.Table.Rows) == 0 {
		p.Table = nil
	}
	if p.empty() && name != "list unknown" && name != "list short" { // a book of a boat in order has no such list
		p.None = ownerLacks(kind, what)
		if kind != "picture" && what != "speeds" && what != "limits" { // what an owner can find out and write down
			p.Lines = make([]int, 3)
		}
	}
	return p
}

func ownerLacks(kind, what string) string {
	switch {
	case kind == "picture":
		return "Not shown: the records do not say enough to draw it."
	case kind == "papers":
		return "Not shown: no paper on this is on record. Ask the yard, and write here what there is."
	case what == "emergency":
		return "Not shown: no emergency contact is on record. Write here whom to call where you use the boat, before you leave."
	}
	return "Not shown: nothing is on record."
}

func (l *leaf) ownerPicture(what string) Drawing {
	d := l.dossier
	switch what {
	case "arrangement":
		return l.viewsPicture()
	case "people":
		return drawing("Places for people, and tanks, from above", chart.People(d.Lines, l.hull.CrewAreas, l.hull.Tanks)).says(l.personsSay())
	case "welds":
		return l.seamPicture()
	case "heeled":
		most := -1
		for i := range d.Stability.Heelings {
			h := &d.Stability.Heelings[i]
			if h.Rests && ofPeople(h.Name) && (most < 0 || h.Heel > d.Stability.Heelings[most].Heel) {
				most = i
			}
		}
		if most >= 0 {
			return l.crowdPicture(&d.Stability.Heelings[most])
		}
	}
	return Drawing{}
}

func (l *leaf) ownerTable(what string, p *OwnerPart) {
	switch what {
	case "identity":
		p.Facts = onlyOwner(l.fields(&l.hull.Identity, "state"))
	case "plate":
		p.Facts = onlyOwner(l.fields(&l.hull.Plate, "law", "approved_by", "document", "approved_as"))
	case "principal":
		p.Facts = onlyOwner(l.fields(&l.hull.Boat, "use"))
	case "limits":
		if r := &l.dossier.Limits; r.Why == "" {
			p.Card = l.helmCard(r)
		}
	case "people":
		p.Table = l.peopleTable()
	case "openings":
		p.Table = l.openingTable()
	case "strong":
		p.Table = l.strongTable()
	case "engines":
		p.Table = l.engineTable()
	case "speeds":
		p.Table = l.speedTable()
	case "metal":
		p.Table = l.metalTable()
	case "care":
		p.Table = l.careTable()
	case "looks":
		p.Table = l.lookTable()
	case "warranty":
		p.Table = l.warrantyTable()
	case "claims":
		p.Table = l.claimTable()
	case "service":
		p.Table = l.serviceTable()
	case "hours":
		p.Table = l.hoursTable()
	case "spares":
		p.Table = l.spareTable()
	case "contacts":
		p.Table = l.contactTable(false)
	case "emergency":
		p.Table = l.contactTable(true)
	}
}

// onlyOwner leaves the facts that somebody wrote, without the lines of the records: those are the yard's.
func onlyOwner(all []Fact) []Fact {
	out := onlyWritten(all)
	for i := range out {
		out[i].Place, out[i].Link, out[i].Note = Link{}, Link{}, ""
		if out[i].names != "" {
			out[i].Value = Figure{Text: initials(out[i].Value.Text)}
		}
	}
	return out
}

func (l *leaf) peopleTable() *OwnerTable {
	t := newOwnerTable("Places for people", "Place", "How", "At most|persons|n", "Forward of the transom|m|n")
	for i := range l.hull.CrewAreas {
		a := &l.hull.CrewAreas[i]
		t.row(word(a.Name), word(a.Posture), has(a.Persons.Set, strconv.Itoa(a.Persons.V), "not recorded"), measured(a.X, "m"))
	}
	return t
}

func (l *leaf) openingTable() *OwnerTable {
	t := newOwnerTable("Ways for water into the hull", "Opening", "Forward of the transom|m|n", "Above the base line|m|n", "Closes", "Under way")
	for i := range l.hull.Openings {
		o := &l.hull.Openings[i]
		do := "keep shut"
		if o.Closes.V == "not" {
			do = "cannot be shut"
		}
		t.row(word(o.Name), measured(o.X, "m"), measured(o.Z, "m"), word(o.Closes), Figure{Text: do})
	}
	return t
}

func (l *leaf) engineTable() *OwnerTable {
	t := newOwnerTable("Engines", "Where", "Kind", "Power|kW|n", "Serial", "Runs on", "Oil", "Propeller")
	for i := range l.hull.Engines {
		e := &l.hull.Engines[i]
		t.row(word(e.Where), word(e.Kind), measured(e.Power, "kW"), word(e.Serial), word(e.Fuel), word(e.Oil), word(e.Propeller))
	}
	return t
}

func (l *leaf) speedTable() *OwnerTable {
	t := newOwnerTable("Speed, fuel and range as measured on trial", "Engine|rpm|n", "Speed|kn|n", "Fuel|l/h|n", "Fuel for a mile|l|n", "Range|NM|n")
	for i := range l.dossier.Trials.Trials {
		for n := range l.dossier.Trials.Trials[i].Settings {
			r := settingRow(&l.dossier.Trials.Trials[i].Settings[n])
			t.row(r.RPM, r.Speed, r.Fuel, r.PerMile, r.Range)
		}
	}
	return t
}

// metalTable groups the plates and panels by zone, alloy, thickness and lot.
func (l *leaf) metalTable() *OwnerTable {
	t := newOwnerTable("Plate by zone", "Zone", "Alloy and temper", "Thickness|mm|n", "Lots", "Certificates")
	type group struct{ zone, alloy, mm string }
	var order []group
	lots, papers := map[group][]string{}, map[group][]string{}
	for _, p := range l.hull.Plated() {
		g := group{p.Zone.V, p.Alloy.V, written(float64(p.Thickness.V), "mm")}
		if !slices.Contains(order, g) {
			order = append(order, g)
		}
		lots[g] = addOnce(lots[g], p.Lot.V)
		for n := range l.dossier.Stock.Lots {
			if rec := l.dossier.Stock.Lots[n].Record; rec.ID == p.Lot.V {
				papers[g] = addOnce(papers[g], rec.Certificate.V)
			}
		}
	}
	for _, g := range order {
		t.row(Figure{Text: g.zone}, Figure{Text: g.alloy}, Figure{Text: g.mm}, has(len(lots[g]) > 0, strings.Join(lots[g], ", "), "not recorded"), has(len(papers[g]) > 0, strings.Join(papers[g], ", "), "not recorded"))
	}
	return t
}

func (l *leaf) contactTable(urgent bool) *OwnerTable {
	t := newOwnerTable("Whom to call", "About", "Who", "Telephone or channel", "Where", "When")
	if urgent {
		t.Caption = "In an emergency"
	}
	for i := range l.hull.Contacts {
		c := &l.hull.Contacts[i]
		if urgent && !c.Urgent.V {
			continue
		}
		t.row(Figure{Text: c.For.V}, Figure{Text: c.Name.V}, word(c.Telephone), dash(c.Address.V), dash(c.Hours.V))
	}
	return t
}

// paperTable lists the papers of one part of the boat by title, number and day; those that are for the owner lie in this
// book.
func (l *leaf) paperTable(system string) *OwnerTable {
	t := newOwnerTable("Papers: "+system, "Paper", "Number", "Day", "Issued by", "Copy")
	if system == "boat" {
		system = "whole boat"
	}
	for i := range l.dossier.Documents.Documents {
		doc := &l.dossier.Documents.Documents[i]
		if rec := doc.Record; rec.System.V == system {
			copied, way := Figure{Text: "with the yard"}, ""
			if rec.Owner.V && doc.Present {
				copied, way = Figure{Text: "in this book"}, escapePath(ownerPaper(doc))
			}
			t.row(Figure{Text: rec.Title.V}, dash(rec.Number.V), has(rec.Date.Set, rec.Date.V.ISO(), "–"), dash(rec.By.V), copied)
			cells := t.Rows[len(t.Rows)-1].Cells
			cells[len(cells)-1].Href = way
		}
	}
	return t
}

// ownerPaper is where a paper lies inside the owner's book.
func ownerPaper(d *document.Document) string {
	return "papers/" + strings.TrimPrefix(d.Out, "documents/")
}

func (l *leaf) ownerList(what string, p *OwnerPart) {
	switch what {
	case "chapters":
		for _, s := range l.order {
			if s != l.cover {
				p.Links = append(p.Links, l.section(s))
			}
		}
	case "short":
		p.Short = l.ownerShort()
	case "unknown":
		p.Unknown = l.ownerUnknown()
	case "glossary":
		if l.press.job.Words == nil {
			return
		}
		for _, term := range l.press.job.Words.Terms {
			if term.Owner {
				p.Terms = append(p.Terms, term)
			}
		}
	}
}
