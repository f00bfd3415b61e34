package site

import (
	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// RenewalPage is the sheet for the yard: how thin each panel may become, columns for readings, and readings on record.
type RenewalPage struct {
	Says     WearSays
	Zones    []RenewalZone
	Gauged   []GaugedRow
	Practice bool // the sheet for diminution gives values
	Yard     bool // the yard wrote a share of its own
	Sheet    Link
	Findings []FindingRow
}

// WearSays is the answer about wear.
type WearSays struct {
	Panels   int // for which a least thickness is known
	Short    int // of them, thinner than that as built
	NotShown int
	Readings int
	Renew    int
	Watch    int
	NotHeld  int    // readings that could not be held against a panel
	Least    string // least room of all that are not short: "0.65 mm"; empty where all are
	At       Link
	ShortAt  Link // the shortest of them
}

// RenewalZone is one table of the sheet.
type RenewalZone struct {
	Name string
	Rows []RenewalRow
}

// RenewalRow is one panel, or those that wear alike.
type RenewalRow struct {
	Panel    Link
	Also     []string
	Where    string
	Count    int
	Built    string
	Must     Figure // must remain
	Room     Figure // may be lost by strength
	Practice Figure
	Watch    Figure
	Yard     Figure
	Read     []string // readings on record
}

// GaugedRow is one reading held against its panel.
type GaugedRow struct {
	Key        string
	Panel      Link
	Place      Link
	Date       string
	By         string
	Measured   string
	Built      string
	Lost       string
	Share      string
	Left       string
	Used       string
	Instrument Standing
	Standing   Standing
	Renew      bool
	Watched    bool
	Says       string
}

func (p RenewalPage) heading() (heading, under string) {
	return "Renewal thickness", "how thin each panel may become"
}

func (l *leaf) renewalPage() (RenewalPage, error) {
	r := &l.dossier.Structure
	p := RenewalPage{Says: l.wearSays(), Findings: l.findingsOn()}
	rows := map[string][]RenewalRow{}
	like := map[string]int{}
	for i := range r.Renewals {
		n := &r.Renewals[i]
		panel := &r.Panels[n.Panel]
		zone := panel.Record.Zone.V
		p.Practice, p.Yard = p.Practice || n.Practice > 0, p.Yard || n.Yard > 0
		row := l.renewalRow(n, panel)
		if panel.Same != "" && len(n.Gauged) == 0 {
			if k, known := like[panel.Same]; known {
				same := &rows[zone][k]
				same.Also, same.Count = append(same.Also, panel.Record.ID), same.Count+row.Count
				continue
			}
		}
		like[panel.Record.ID] = len(rows[zone])
		rows[zone] = append(rows[zone], row)
		for k := range n.Gauged {
			p.Gauged = append(p.Gauged, l.gaugedRow(&n.Gauged[k], panel))
		}
	}
	for _, zone := range l.zoneNames() {
		if len(rows[zone]) > 0 {
			p.Zones = append(p.Zones, RenewalZone{zone, rows[zone]})
		}
	}
	return p, nil
}

func (l *leaf) renewalRow(n *scantling.Renewal, panel *scantling.Panel) RenewalRow {
	row := RenewalRow{Panel: l.subjectAs("panel "+panel.Record.ID, panel.Record.ID), Where: panel.Record.Where.V, Count: panel.Count, Built: written(float64(panel.Fitted), "mm"),
		Must: has(n.Shown || n.Yard > 0, thicknessText(n.Must()), notShownWhy(n.Why)), Room: has(n.Shown, unit.Text(n.Room, 2), notShownWhy(n.Why)),
		Practice: has(n.Practice > 0, thicknessText(n.Practice), "not shown"), Watch: has(n.Watch > 0, thicknessText(n.Watch), "not shown"), Yard: has(n.Yard > 0, thicknessText(n.Yard), "none written")}
	if n.ShortAsBuilt(panel.Fitted) {
		row.Room = Figure{Why: unit.Text(n.Must()-panel.Fitted, 2) + " short as built"}
		row.Practice, row.Watch = Figure{Why: "short as built"}, Figure{Why: "short as built"}
	}
	for k := range n.Gauged {
		row.Read = append(row.Read, unit.Text(n.Gauged[k].Measured, 2))
	}
	return row
}

// thicknessText writes a thickness that must remain, in steps of 0.05 mm.
func thicknessText(t unit.MM) string { return unit.Text(t, 2) }

func (l *leaf) gaugedRow(g *scantling.Gauged, panel *scantling.Panel) GaugedRow {
	rec := g.Record
	return GaugedRow{Key: rec.ID, Panel: l.subjectAs("panel "+panel.Record.ID, panel.Record.ID), Place: l.place(rec.At), Date: rec.Date.V.ISO(), By: rec.By.V, Measured: unit.Text(g.Measured, 2), Built: written(float64(panel.Fitted), "mm"),
		Lost: unit.Text(g.Lost, 2), Share: unit.Text(100*g.Share, 1), Left: unit.Text(g.Left, 2), Used: unit.Text(100*g.Used, 0), Instrument: standing(g.Instrument), Standing: standing(g.Standing), Renew: g.Renew, Watched: g.Watched, Says: closed(capital(g.Says))}
}

func (l *leaf) wearSays() WearSays {
	r := &l.dossier.Structure
	s := WearSays{}
	least, worst := -1, -1
	for i := range r.Renewals {
		n := &r.Renewals[i]
		if !n.Shown {
			s.NotShown++
		} else {
			s.Panels++
			if n.ShortAsBuilt(r.Panels[n.Panel].Fitted) {
				s.Short++
				if worst < 0 || n.Room < r.Renewals[worst].Room {
					worst = i
				}
			} else if least < 0 || n.Room < r.Renewals[least].Room {
				least = i
			}
		}
		for k := range n.Gauged {
			g := &n.Gauged[k]
			s.Readings++
			switch {
			case g.Renew:
				s.Renew++
			case g.Watched:
				s.Watch++
			}
			if g.Standing == finding.NotShown {
				s.NotHeld++
			}
		}
	}
	if worst >= 0 {
		s.ShortAt = l.subject("panel " + r.Panels[r.Renewals[worst].Panel].Record.ID)
	}
	if least >= 0 {
		id := r.Panels[r.Renewals[least].Panel].Record.ID
		s.Least, s.At = unit.Text(r.Renewals[least].Room, 2)+" mm", l.subject("panel "+id)
	}
	return s
}
