package stock

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
)

// Assess judges the lots that a hull uses and holds its parts against them. The yard gives the stock, and the parts of
// the other hulls that were cut from the same lots.
func Assess(y *record.Yard, h *record.Hull, alloys *material.Table, limits *Limits) Result {
	a := &assessor{yard: y, hull: h, alloys: alloys, limits: limits}
	a.Recorded, a.Held = recorded(h), limits.Held
	if !a.Recorded {
		a.nothing()
		return a.Result
	}
	a.parts()
	for _, l := range a.lots() {
		a.Lots = append(a.Lots, a.lot(l))
	}
	a.casts()
	a.supplies()
	a.papers()
	return a.Result
}

type assessor struct {
	Result
	yard   *record.Yard
	hull   *record.Hull
	alloys *material.Table
	limits *Limits
}

// recorded reports whether anything at all of the building of a hull is on record.
func recorded(h *record.Hull) bool {
	return len(h.Parts)+len(h.Joints)+len(h.Welds)+len(h.Inspections)+len(h.LeakTests)+len(h.HoldPoints)+len(h.Repairs)+len(h.Nonconformities) > 0
}

// nothing tells once that the building of a hull has left no record.
func (a *assessor) nothing() {
	a.Findings = append(a.Findings, finding.Finding{
		Kind: finding.Gap, Rule: ruleBuild, Subject: "boat",
		Says:   "no part, joint, weld or inspection is on record, so nothing shows of what metal this hull was built and by whom it was welded",
		Settle: "write parts.csv, joints.csv, welds.csv and inspections.csv beside hull.toml, and the lots of plate into stock/",
		Places: []finding.Place{placeOf(a.hull)},
	})
}

// placeOf is the record file of the hull itself, the last of those it is laid over.
func placeOf(h *record.Hull) finding.Place {
	for _, f := range h.Over {
		if strings.HasSuffix(f, "hull.toml") {
			return finding.Place{File: f}
		}
	}
	return finding.Place{}
}

// lots lists the lots that parts, panels or plates of the hull name, in the order of the stock.
func (a *assessor) lots() []*record.Lot {
	named := map[string]bool{}
	for i := range a.hull.Parts {
		named[a.hull.Parts[i].Lot.V] = true
	}
	for _, p := range a.hull.Plated() {
		named[p.Lot.V] = true
	}
	var out []*record.Lot
	for i := range a.yard.Stock.Lots {
		if l := &a.yard.Stock.Lots[i]; named[l.ID] {
			out = append(out, l)
		}
	}
	return out
}

func (a *assessor) find(kind finding.Kind, rule, subject, says, settle string, places ...finding.Place) {
	a.Findings = append(a.Findings, finding.Finding{Kind: kind, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: finding.Places(places...)})
}

// lot judges one lot.
func (a *assessor) lot(l *record.Lot) Lot {
	out := Lot{Record: l}
	for i := range a.hull.Parts {
		if p := &a.hull.Parts[i]; p.Lot.V == l.ID {
			out.Parts = append(out.Parts, p)
		}
	}
	a.certificate(l)
	a.cast(l)
	out.Values = append(out.Values, a.composition(l)...)
	out.Values = append(out.Values, a.strength(l)...)
	out.Values = append(out.Values, a.corrosion(l)...)
	out.Used, out.Hulls = a.area(l)
	a.days(l, out.Parts)
	return out
}

// certificate asks for a certificate of the delivered lot, as a paper of this hull.
func (a *assessor) certificate(l *record.Lot) {
	lim := a.limits.Certificate
	c := finding.Check{Rule: ruleCertificate, Subject: "lot " + l.ID, Standing: finding.NotShown, Basis: lim.Basis, Source: lim.String(),
		Asks:   "the lot has a certificate that shows its own test results, type " + strings.Join(lim.Enough, " or "),
		Needed: strings.Join(lim.Enough, " or "), Has: l.Type.V, Places: finding.Places(l.At, l.Certificate.At, l.Type.At)}
	doc := a.paper(l.Certificate)
	switch {
	case !l.Certificate.Set:
		c.Says, c.Missing = "no certificate of lot "+l.ID+" is on record", []string{"lot." + l.ID + ".certificate"}
		c.Settle = "ask the supplier for it and write its number"
	case !l.Type.Set:
		c.Says, c.Missing = "it is not written of what type certificate "+l.Certificate.V+" is", []string{"lot." + l.ID + ".certificate_type"}
		c.Settle = "read the type off the certificate"
	case !slices.Contains(lim.Enough, l.Type.V):
		c.Standing = finding.Short
		c.Says = "certificate " + l.Certificate.V + " is of type " + l.Type.V + ": it does not show results of the delivered lot itself"
		c.Settle = "ask the works for a certificate of type " + strings.Join(lim.Enough, " or ") + ", or have a piece of the lot tested"
	case doc == nil:
		c.Says = "certificate " + l.Certificate.V + " is not among the documents of this hull"
		c.Settle = "put the paper into documents/ and write it as a document with that number"
	default:
		c.Standing, c.Says = finding.Met, "certificate "+l.Certificate.V+" of type "+l.Type.V
		c.Places = append(c.Places, doc.At)
	}
	a.Checks = append(a.Checks, c)
}

// paper finds the document of this hull with a number.
func (a *assessor) paper(number record.Val[string]) *record.Document {
	for i := range a.hull.Documents {
		if d := &a.hull.Documents[i]; number.Set && d.Number.Set && d.Number.V == number.V {
			return d
		}
	}
	return nil
}

// papers doubts a material certificate that belongs to no lot of the stock. Where the yard keeps no stock, nothing is said.
func (a *assessor) papers() {
	if len(a.yard.Stock.Lots) == 0 {
		return
	}
	numbers := map[string]bool{}
	for i := range a.yard.Stock.Lots {
		numbers[a.yard.Stock.Lots[i].Certificate.V] = true
	}
	for i := range a.yard.Stock.Consumables {
		numbers[a.yard.Stock.Consumables[i].Certificate.V] = true
	}
	for i := range a.hull.Documents {
		d := &a.hull.Documents[i]
		if d.Kind.V == "material certificate" && d.Number.Set && !numbers[d.Number.V] {
			a.find(finding.Doubt, rulePaper, "document "+d.ID, "certificate "+d.Number.V+" belongs to no lot in the stock",
				"write the lot into stock/, or correct the number", d.Number.At)
		}
	}
}

// cast asks for the cast number, by which plate is recalled.
func (a *assessor) cast(l *record.Lot) {
	c := finding.Check{Rule: ruleCast, Subject: "lot " + l.ID, Standing: finding.Met, Basis: finding.Practice, Source: "practice",
		Asks: "the cast number of the lot is on record", Says: "cast " + l.Cast.V, Has: l.Cast.V, Places: finding.Places(l.Cast.At)}
	if !l.Cast.Set {
		c.Standing, c.Says, c.Missing = finding.NotShown, "the cast of lot "+l.ID+" is not written, so it cannot be found again by its cast", []string{"lot." + l.ID + ".cast"}
		c.Settle, c.Places = "read it off the certificate and the plate", []finding.Place{l.At}
	}
	a.Checks = append(a.Checks, c)
}
