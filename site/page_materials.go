package site

import (
	"html/template"
	"strconv"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/stock"
	"hullfile/engine/unit"
)

// MaterialsPage says of what metal the boat is built and what its certificates are worth.
type MaterialsPage struct {
	Says     MaterialsSays
	Findings []FindingRow
	Lots     []LotRow
	Parts    []CutRow
	Details  []LotPart
	Supplies []SupplyPart
	HeldBy   string // whose rows the limits are, and who held them against the standards
	Checks   []CheckRow
	Notes    []Note
	Caution  template.HTML
}

// MaterialsSays is the answer about the metal; the cover says it too.
type MaterialsSays struct {
	Tally
	Lots, Parts int
	Traced      int    // parts that lead to a lot of the stock
	Area        string // of the parts, m²
}

// LotRow is one lot in the table of lots.
type LotRow struct {
	Link        Link
	Alloy       string
	Thickness   string
	Cast        Figure
	Certificate Link
	Paper       Figure // number, where the paper is no document of this hull
	Type        Figure
	Received    Figure
	Came        Figure
	Cut         string
	Here        string
	Store       Figure
	Unit        string
	Hulls       []string
	Standing    Standing
	Place       Link
}

// LotPart is what one certificate prints, judged.
type LotPart struct {
	ID       string
	Key      string
	Under    string
	Standing Standing
	Values   []ValueRow
	Findings []FindingRow
	Facts    []Fact
}

// SupplyPart is one lot of filler or gas.
type SupplyPart struct {
	ID       string
	Kind     string
	Key      string
	Under    string
	Values   []ValueRow
	Findings []FindingRow
	Facts    []Fact
}

// ValueRow is one printed value beside its limit.
type ValueRow struct {
	Name     string
	Printed  Figure
	Unit     string
	Limit    string
	Standing Standing
	Why      string
	Source   string
	Basis    Basis
	Place    Link
}

// CutRow is one part of the cut list.
type CutRow struct {
	ID       string
	Key      string
	Name     string
	Where    string
	Panel    Link
	Lot      Link
	Drawn    Figure
	Measured Figure
	Area     Figure
	Count    int
	Mass     Figure
	Cut      Figure
	Place    Link
}

func (l *leaf) materialsPage() (MaterialsPage, error) {
	r := &l.dossier.Stock
	notes, err := l.notesFor("materials")
	if err != nil {
		return MaterialsPage{}, err
	}
	p := MaterialsPage{HeldBy: r.Held.Says(), Says: l.materialsSays(), Checks: grouped(l.checkRows(r.Checks)), Notes: notes, Caution: l.press.notes["materials"]}
	at := []string{""}
	for i := range r.Lots {
		p.Lots = append(p.Lots, l.lotRow(&r.Lots[i]))
		p.Details = append(p.Details, l.lotPart(&r.Lots[i]))
	}
	for i := range r.Parts {
		p.Parts = append(p.Parts, l.partRow(&r.Parts[i]))
		at = append(at, l.anchor("part "+r.Parts[i].Record.ID))
	}
	p.Findings = l.findingsAmong(at)
	for i := range r.Supplies {
		s := r.Supplies[i].Record
		id := l.anchor("consumable " + s.ID)
		p.Supplies = append(p.Supplies, SupplyPart{ID: id, Key: s.ID, Kind: capital(s.Kind.V), Under: s.Classification.V, Values: l.valueRows(r.Supplies[i].Values),
			Findings: l.findingsHere(id), Facts: l.fieldsWritten(s, analysisKeys...)})
	}
	return p, nil
}

// analysisKeys are the fields that stand in the table of values.
var analysisKeys = []string{
	"si_percent", "fe_percent", "cu_percent", "mn_percent", "mg_percent", "cr_percent", "zn_percent", "ti_percent", "be_percent", "other_each_percent", "other_total_percent",
	"tensile_n_mm2", "yield_n_mm2", "elongation_percent", "mass_loss_mg_cm2", "exfoliation",
}

func (l *leaf) materialsSays() MaterialsSays {
	r := &l.dossier.Stock
	s := MaterialsSays{Tally: l.tallyAt(materialsPath, r.Checks), Lots: len(r.Lots), Parts: len(r.Parts)}
	area := 0.0
	for _, p := range r.Parts {
		if p.Lot != nil {
			s.Traced++
		}
		area += float64(p.Record.Area.V) * float64(max(1, p.Record.Count.V))
	}
	if area > 0 {
		s.Area = unit.Text(area, 1)
	}
	return s
}

func (l *leaf) lotRow(lot *stock.Lot) LotRow {
	rec, u := lot.Record, lot.Used
	row := LotRow{
		Link: l.subjectAs("lot "+rec.ID, rec.ID), Alloy: rec.Alloy.V, Thickness: asWritten(rec.Thickness), Cast: has(rec.Cast.Set, rec.Cast.V, "not recorded"),
		Type: has(rec.Type.Set, rec.Type.V, "not recorded"), Received: has(rec.Received.Set, rec.Received.V.ISO(), "not recorded"),
		Came: has(u.HasReceived, unit.Text(u.Received, 1), "not recorded"), Cut: unit.Text(u.Cut, 1), Here: unit.Text(u.Here, 1),
		Store: has(u.HasRemnant, unit.Text(u.Remnant, 1), "not recorded"), Unit: u.Unit, Hulls: lot.Hulls, Place: l.place(rec.At),
		Paper: has(rec.Certificate.Set, rec.Certificate.V, "not recorded"),
	}
	for i := range l.hull.Documents {
		if d := &l.hull.Documents[i]; rec.Certificate.Set && d.Number.V == rec.Certificate.V {
			row.Certificate = l.subjectAs("document "+d.ID, rec.Certificate.V)
		}
	}
	row.Standing, _ = standingOf(l.dossier.Stock.Checks, "lot "+rec.ID)
	return row
}

func (l *leaf) lotPart(lot *stock.Lot) LotPart {
	rec := lot.Record
	subject := "lot " + rec.ID
	p := LotPart{ID: l.anchor(subject), Key: rec.ID, Under: strings.Join([]string{rec.Kind.V, rec.Alloy.V, asWritten(rec.Thickness) + " mm"}, ", "),
		Values: l.valueRows(lot.Values), Findings: l.findingsHere(l.anchor(subject)), Facts: l.fieldsWritten(rec, analysisKeys...)}
	p.Standing, _ = standingOf(l.dossier.Stock.Checks, subject)
	return p
}

func (l *leaf) valueRows(all []stock.Value) []ValueRow {
	var out []ValueRow
	for _, v := range all {
		out = append(out, ValueRow{
			Name: v.Name, Printed: has(v.Printed != "", v.Printed, "not recorded"), Unit: v.Unit, Limit: v.Limit, Standing: standing(v.Standing),
			Why: v.Why, Source: v.Source, Basis: basis(v.Basis), Place: l.place(v.Place),
		})
	}
	return out
}

func (l *leaf) partRow(part *stock.Part) CutRow {
	p := part.Record
	row := CutRow{
		ID: l.anchor("part " + p.ID), Key: p.ID, Name: p.Name.V, Where: p.Where.V, Count: max(1, p.Count.V), Place: l.place(p.At),
		Drawn: has(p.Drawn.Set, asWritten(p.Drawn), "not recorded"), Measured: has(p.Measured.Set, asWritten(p.Measured), "not measured"),
		Area: has(p.Area.Set, asWritten(p.Area), "not recorded"), Mass: has(p.Mass.Set, asWritten(p.Mass), "not recorded"), Cut: has(p.Cut.Set, p.Cut.V.ISO(), "not recorded"),
	}
	if p.Panel.Set {
		row.Panel = l.subjectAs(l.plateSubject(p.Panel.V), p.Panel.V)
	}
	if p.Lot.Set {
		row.Lot = l.subjectAs("lot "+p.Lot.V, p.Lot.V)
	}
	return row
}

// plateSubject is what a part makes: a panel, or a plate of the skin.
func (l *leaf) plateSubject(key string) string {
	for i := range l.hull.Platings {
		if l.hull.Platings[i].ID == key {
			return "plating " + key
		}
	}
	return "panel " + key
}

// asWritten gives a number with the decimals of its record.
func asWritten[T ~float64](v record.Val[T]) string {
	if v.Text != "" {
		return v.Text
	}
	return strconv.FormatFloat(float64(v.V), 'f', -1, 64)
}
