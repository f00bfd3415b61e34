package survey

import (
	"slices"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// under is the part of the stated thickness that rolling and the gauge together may leave below it, in per cent. Over is
// likewise above it: more would be another plate.
const (
	under = 5.0
	over  = 10.0
)

// thick expects a thickness with what rolling leaves (practice; the tolerances of EN 485-3 and EN 485-4 are closer).
func thick(stated float64, as string) Expect {
	e := Expect{Low: float64(stated * (1 - under/100)), High: float64(stated * (1 + over/100)), HasLow: true, HasTop: true, Basis: finding.Practice}
	e.Says = as + ", " + unit.Text(e.Low, 2) + " to " + unit.Text(e.High, 2) + " mm"
	e.Source = "the record; 5 % under and 10 % over for rolling and gauge"
	return e
}

// panels are those with the least room, the least first. One that is short stands among those that are short.
func (in *Input) panels() []Item {
	all := slices.Clone(in.Structure.Panels)
	slices.SortStableFunc(all, func(a, b scantling.Panel) int {
		switch {
		case a.Margin < b.Margin:
			return -1
		case a.Margin > b.Margin:
			return 1
		}
		return 0
	})
	var out []Item
	for n := range all {
		p := &all[n]
		if p.Margin <= 0 || p.Standing != finding.Met {
			continue
		}
		i := Item{Key: key("margin", p.Record.ID), Class: Least, Subject: "panel " + p.Record.ID, Places: []finding.Place{p.Record.Thickness.At}}
		i.Why = unit.Text(p.Fitted, 1) + " mm fitted, " + unit.Text(p.Needed, 2) + " mm needed: " + unit.Text(p.Margin, 2) + " times"
		in.locate(&i)
		i.thickness(p)
		out = append(out, i)
	}
	return out
}

// thickness asks for the thickness of a panel.
func (i *Item) thickness(p *scantling.Panel) {
	i.Do, i.Unit = "measure the thickness at three places of the field, away from welds, and write the least", "mm"
	i.Expect = thick(float64(p.Fitted), unit.Text(p.Fitted, 1)+" mm fitted")
	if p.Needed > 0 {
		i.Expect.Says += "; needed " + unit.Text(p.Needed, 2) + " mm"
	}
}

func (in *Input) panel(id string) *scantling.Panel {
	for n := range in.Structure.Panels {
		if in.Structure.Panels[n].Record.ID == id {
			return &in.Structure.Panels[n]
		}
	}
	return nil
}

func (in *Input) part(id string) *record.Part {
	for n := range in.Hull.Parts {
		if in.Hull.Parts[n].ID == id {
			return &in.Hull.Parts[n]
		}
	}
	return nil
}

// spots are the welded details that impacts use up fastest, in the order of the ranking.
func (in *Input) spots() []Item {
	var out []Item
	for n := range in.Details.Spots {
		s := &in.Details.Spots[n]
		i := Item{Key: key("detail", s.Record.ID), Class: Worn, Subject: "spot " + s.Record.ID, Where: s.Record.Place.V, Places: []finding.Place{s.Record.At}}
		i.Why = "number " + strconv.Itoa(n+1) + " of the ranking of welded details; " + unit.Text(100*s.Relative, 0) + " % of the damage of the first"
		i.Do = "clean, light from the side, look along the toe of the weld with a lens; dye penetrant where in doubt"
		i.Expect = Expect{Says: "no crack, no dark or wet line, no grey or white streak, no paint broken along the toe", Source: "practice", Basis: finding.Practice}
		i.Spot.None = true
		out = append(out, i)
	}
	return out
}

// lots are those of which a check is not met, or about which there is a doubt.
func (in *Input) lots() []Item {
	why := map[string]string{}
	at := map[string][]finding.Place{}
	for _, c := range in.Checks {
		if c.Standing != finding.Met && why[c.Subject] == "" {
			why[c.Subject], at[c.Subject] = c.Says, c.Places
		}
	}
	for _, f := range in.Findings {
		if why[f.Subject] == "" {
			why[f.Subject], at[f.Subject] = f.Says, f.Places
		}
	}
	var out []Item
	for n := range in.Stock.Lots {
		l := &in.Stock.Lots[n]
		subject := "lot " + l.Record.ID
		if why[subject] == "" {
			continue
		}
		i := Item{Key: key("lot", l.Record.ID), Class: Lot, Subject: subject, Why: why[subject], Places: at[subject]}
		for _, p := range l.Parts {
			i.Spot.Panels = append(i.Spot.Panels, p.Panel.V)
			i.Where = joinWords(i.Where, partWords(p))
		}
		i.Do = "read the mark on the metal at these parts, and the cast on the certificate"
		i.Expect = Expect{Says: "cast " + orNone(l.Record.Cast.V) + " on both", Source: "the stock records", Basis: finding.Yard}
		out = append(out, i)
	}
	return out
}

func orNone(s string) string {
	if s == "" {
		return "not recorded"
	}
	return s
}

func partWords(p *record.Part) string {
	if p.Name.V != "" {
		return p.Name.V + " (" + p.ID + ")"
	}
	return "part " + p.ID
}

func joinWords(a, b string) string {
	if a == "" {
		return b
	}
	return a + ", " + b
}
