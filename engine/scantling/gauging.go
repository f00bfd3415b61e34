package scantling

import (
	"fmt"

	"hullfile/engine/calibration"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Rules of the checks and findings about thickness readings.
const (
	ruleRenewal = "plate-renewal"
	ruleWear    = "plate-wear"
	ruleReading = "gauging-reading"
)

// thicker is by how much a reading may exceed the built thickness before it is doubted, mm: plate is rolled with a
// tolerance and gauges read a tenth (practice).
const thicker = 0.4

// gaugings holds every reading against the panel in which it lies.
func (j *judge) gaugings(out *Result, wear *method.Sheet) {
	for i := range j.hull.Gaugings {
		g := &j.hull.Gaugings[i]
		at, why := j.panelOf(g, out)
		if at < 0 {
			out.Checks = append(out.Checks, lostReading(g, why))
			continue
		}
		out.Renewals[at].Gauged = append(out.Renewals[at].Gauged, j.gauged(g, &out.Panels[at], &out.Renewals[at], wear, out))
	}
}

// panelOf finds the panel of a reading by its name, or by the place where it was read.
func (j *judge) panelOf(g *record.Gauging, out *Result) (at int, why string) {
	name, named := g.Panel.Get()
	if !named {
		if name, why = j.where(g); why != "" {
			return -1, why
		}
	}
	if judged, drawn := j.judgedAs[name]; drawn {
		name = judged
	}
	for i := range out.Panels {
		if out.Panels[i].Record.ID == name {
			return i, ""
		}
	}
	return -1, "panel " + name + " is neither listed nor in the grid"
}

func lostReading(g *record.Gauging, why string) finding.Check {
	return finding.Check{Rule: ruleRenewal, Subject: "gauging " + g.ID, Standing: finding.NotShown, Asks: "the plate is as thick as it must remain",
		Basis: finding.Practice, Source: "practice", Says: "the reading cannot be held against a panel: " + why,
		Missing: []string{"gauging." + g.ID + ".panel"}, Settle: "write panel, or zone with x_m and girth_m, of gauging " + g.ID, Places: placesOf(g.At)}
}

// gauged judges one reading and adds its checks and findings.
func (j *judge) gauged(g *record.Gauging, p *Panel, n *Renewal, wear *method.Sheet, out *Result) Gauged {
	d := Gauged{Record: g, Measured: g.Measured.V, Lost: unit.MM(settled(float64(p.Fitted - g.Measured.V))), Standing: finding.NotShown}
	if p.Fitted > 0 {
		d.Share = float64(d.Lost) / float64(p.Fitted)
	}
	if wear != nil && n.Shown {
		d.Working, _ = wear.Evaluate("renewal", j.wearOf(p, n.Least, g), nil)
	}
	c := finding.Check{Rule: ruleRenewal, Subject: "panel " + p.Record.ID, Standing: finding.NotShown, Asks: "the plate is as thick as it must remain",
		Basis: p.Basis, Source: j.governing().cite(), Has: fittedText(d.Measured) + " mm", Places: finding.Places(g.Measured.At, p.Record.Thickness.At)}
	if n.Shown {
		d.hold(p, n)
		c.Standing, c.Needed = d.Standing, fittedText(n.Must())+" mm"
		c.Says = fmt.Sprintf("reading %s: %s", g.ID, d.Says)
		switch {
		case n.ShortAsBuilt(p.Fitted):
			c.Settle = "fit plate of " + fittedText(n.Must()) + " mm or more there, or lower speed or mass on record and judge again; wear is not the cause"
		case d.Renew:
			c.Settle = "renew the plate there, or lower speed or mass on record and judge again"
		}
	} else {
		d.Says = "how thin the plate may become is not shown: " + n.Why
		c.Says, c.Settle = "reading "+g.ID+": "+d.Says, "show the panel first"
	}
	tool := calibration.Check(j.builder(), calibration.Use{Subject: "gauging " + g.ID, Key: "gauging." + g.ID + ".instrument", Instrument: g.Instrument, Day: g.Date})
	d.Instrument = tool.Standing
	out.Checks = append(out.Checks, c, tool)
	out.Findings = append(out.Findings, d.doubts(p, n)...)
	return d
}

// hold compares a reading with what must remain.
func (d *Gauged) hold(p *Panel, n *Renewal) {
	must := n.Must()
	d.Left = unit.MM(settled(float64(d.Measured - must)))
	if room := float64(p.Fitted - must); room > 0 {
		d.Used = float64(d.Lost) / room
	}
	d.Renew, d.Watched = d.Left < 0, n.Watch > 0 && d.Measured < n.Watch
	d.Standing = finding.Met
	says := fmt.Sprintf("%s mm of %s mm built, %s %% lost; %s mm must remain", fittedText(d.Measured), fittedText(p.Fitted), unit.Text(100*d.Share, 1), fittedText(must))
	switch {
	case n.ShortAsBuilt(p.Fitted):
		d.Standing = finding.Short
		d.Says = says + ", which the plate did not have as built"
		return
	case d.Renew:
		d.Standing = finding.Short
		d.Says = says + ": renew"
		return
	}
	d.Says = says + fmt.Sprintf(", %s mm are left above it", unit.Text(d.Left, 2))
}

// doubts tells of wear that the method still bears and class practice does not, and of readings above what was built.
func (d *Gauged) doubts(p *Panel, n *Renewal) []finding.Finding {
	subject, at := "panel "+p.Record.ID, finding.Places(d.Record.Measured.At, p.Record.Thickness.At)
	switch {
	case float64(d.Measured-p.Fitted) > thicker:
		return []finding.Finding{{Kind: finding.Doubt, Rule: ruleReading, Subject: subject, Places: at,
			Says:   fmt.Sprintf("reading %s gives %s mm, more than the %s mm that are on record as fitted", d.Record.ID, fittedText(d.Measured), fittedText(p.Fitted)),
			Settle: "read again without paint, or mend the thickness on record"}}
	case n.Shown && !d.Renew && n.Yard == 0 && n.Practice > 0 && d.Measured < n.Practice:
		return []finding.Finding{{Kind: finding.Doubt, Rule: ruleWear, Subject: subject, Places: at,
			Says:   fmt.Sprintf("reading %s gives %s mm, less than the %s mm that class practice leaves of %s mm (recalled), though the method is still met", d.Record.ID, fittedText(d.Measured), unit.Text(n.Practice, 2), fittedText(p.Fitted)),
			Settle: "let the surveyor decide, or write the share that the yard lets go as diminution_share under rules.value"}}
	}
	return nil
}

// builder is the yard's own record, nil without a yard.
func (j *judge) builder() *record.Builder {
	if j.in.Yard == nil {
		return nil
	}
	return &j.in.Yard.Builder
}
