package site

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/weight"
)

// tables are the main tables of the book, in the order in which the page lists them.
func (b *book) tables() []*csvTable {
	all := []*csvTable{
		b.checkTable(), b.findingTable(), b.assumptionTable(), b.panelTable(), b.memberTable(), b.weightTable(), b.conditionTable(), b.limitTable(), b.settingTable(),
		b.seamTable(), b.documentTable(), b.valueTable(),
	}
	if b.dossier.WeldMap.Missing > 0 {
		all = append(all, b.proposedJoints())
	}
	return all
}

// writeTables writes the tables and the schema of results.json.
func (b *book) writeTables() error {
	b.csv = b.tables()
	for _, t := range b.csv {
		if err := b.folder.write(t.path(), t.text()); err != nil {
			return err
		}
		if t.lent {
			b.press.rooms.back(t.body)
			t.body = nil
		}
	}
	return b.folder.write(schemaName, b.press.schema)
}

func (b *book) checkTable() *csvTable {
	t := &csvTable{name: "checks", says: "every check with its outcome", head: []string{"rule", "subject", "asks", "standing", "says", "needed", "has", "basis", "source", "places", "settle"}}
	t.body, t.lent = b.press.rooms.take(usualTable), true
	for _, c := range b.dossier.Checks {
		t.add(c.Rule, c.Subject, c.Asks, string(c.Standing), c.Says, c.Needed, c.Has, string(c.Basis), c.Source, placesText(c.Places), c.Settle)
	}
	return t
}

func (b *book) findingTable() *csvTable {
	t := &csvTable{name: "findings", says: "what contradicts, is short, missing or doubtful", head: []string{"kind", "rule", "subject", "says", "settle", "places"}}
	for _, f := range b.findings {
		t.add(string(f.Kind), f.Rule, f.Subject, f.Says, f.Settle, placesText(f.Places))
	}
	return t
}

func (b *book) assumptionTable() *csvTable {
	t := &csvTable{name: "assumptions", says: "values that nobody wrote and that matter", head: []string{"subject", "says", "settle", "basis"}}
	for _, a := range b.dossier.Assumptions {
		t.add(a.Subject, a.Says, a.Settle, string(a.Basis))
	}
	return t
}

func placesText(all []finding.Place) string {
	texts := make([]string, len(all))
	for i, p := range all {
		texts[i] = p.String()
	}
	return strings.Join(texts, " ")
}

func (b *book) panelTable() *csvTable {
	t := &csvTable{name: "panels", says: "plate fitted and needed, panel by panel", head: []string{"panel", "count", "fitted_mm", "needed_mm", "margin", "governs", "standing", "basis"}}
	for i := range b.dossier.Structure.Panels {
		p := &b.dossier.Structure.Panels[i]
		if p.Standing == finding.NotShown {
			t.add(p.Record.ID, p.Count, float64(p.Fitted), "", "", p.Governs, string(p.Standing), string(p.Basis))
			continue
		}
		t.add(p.Record.ID, p.Count, float64(p.Fitted), float64(p.Needed), float64(p.Margin), p.Governs, string(p.Standing), string(p.Basis))
	}
	return t
}

// memberTable has a row for each thing that is asked of a member, so that what it needs stands beside what it has.
func (b *book) memberTable() *csvTable {
	t := &csvTable{name: "members", says: "stiffeners, frames and girders: what is asked of each, fitted and needed", head: []string{"member", "count", "zone", "section", "carries_mm", "span_mm", "pressure_kn_m2", "of", "unit", "fitted", "needed", "most", "margin", "governs", "standing", "basis"}}
	for i := range b.dossier.Structure.Members {
		m := &b.dossier.Structure.Members[i]
		row := func(of, unit string, fitted, needed any, most bool, margin any, governs bool) {
			t.add(m.Record.ID, m.Count, m.Record.Zone.V, m.Record.Section.V, writtenCell(m.Record.Spacing), writtenCell(m.Record.Span), cellIf(m.Pressure > 0, m.Pressure), of, unit, fitted, needed, most, margin, governs, string(m.Standing), string(m.Basis))
		}
		if len(m.Needs) == 0 {
			row("", "", "", "", false, "", false)
		}
		for k := range m.Needs {
			n := &m.Needs[k]
			if n.State == method.NotSet { // not asked of this member
				continue
			}
			row(n.What, n.Unit, cellIf(n.Shown, n.Fitted), cellIf(n.Shown, n.Needed), n.Most, cellIf(n.Shown && n.Margin > 0, n.Margin), n.What == m.Governs && n.Margin == m.Margin)
		}
	}
	return t
}

func (b *book) weightTable() *csvTable {
	t := &csvTable{name: "weights", says: "items of the weight breakdown, and their sums", head: []string{"item", "name", "count", "mass_kg", "margin_kg", "x_m", "y_m", "z_m"}}
	r := &b.dossier.Weight
	for i := range r.Items {
		it := &r.Items[i]
		mass, margin := any(""), any("")
		if it.HasMass {
			mass, margin = float64(it.Mass), float64(it.Margin)
		}
		t.add(it.Record.ID, it.Record.Name.V, it.Count, mass, margin, writtenCell(it.Record.X), writtenCell(it.Record.Y), writtenCell(it.Record.Z))
	}
	for _, sum := range []struct {
		name string
		of   *weight.Total
	}{{"light craft", &r.Light}, {"load", &r.Load}, {"fully loaded", &r.Loaded}} {
		t.add("", sum.name, sum.of.Items, float64(sum.of.Mass), float64(sum.of.Margin), cellIf(sum.of.HasX, sum.of.X), cellIf(sum.of.HasY, sum.of.Y), cellIf(sum.of.HasZ, sum.of.Z))
	}
	return t
}

func writtenCell[T ~float64](v record.Val[T]) any { return cellIf(v.Set, v.V) }

// cellIf is a number, or nothing where there is none.
func cellIf[T ~float64](has bool, v T) any {
	if !has {
		return ""
	}
	return float64(v)
}

func (b *book) conditionTable() *csvTable {
	t := &csvTable{name: "conditions", says: "what the boat weighs in each condition, and how it floats", head: []string{"condition", "kind", "mass_kg", "x_m", "y_m", "z_m", "draught_m", "least_freeboard_m", "gm_fluid_m"}}
	for i := range b.dossier.Loading.Conditions {
		c := &b.dossier.Loading.Conditions[i]
		t.add(c.ID, string(c.Kind), cellIf(c.Whole, float64(c.Mass)), cellIf(c.Whole, float64(c.Centre.X)), cellIf(c.Whole, float64(c.Centre.Y)), cellIf(c.Whole, float64(c.Centre.Z)),
			cellIf(c.Floats, c.Afloat.Draught), cellIf(c.Floats, c.Least), cellIf(c.Floats, c.GMFluid))
	}
	return t
}

func (b *book) limitTable() *csvTable {
	t := &csvTable{name: "capacity", says: "every limit of load and persons, and which governs", head: []string{"limit", "binds", "load_kg", "persons", "governs_load", "governs_persons", "basis", "source", "why"}}
	r := &b.dossier.Capacity
	for i := range r.Limits {
		l := &r.Limits[i]
		persons := any("")
		if l.HasPersons {
			persons = l.Persons
		}
		t.add(l.Name, !l.Info, cellIf(l.HasLoad, float64(l.Load)), persons, i == r.Load && l.HasLoad, i == r.Persons && l.HasPersons, string(l.Basis), l.Source, l.Why)
	}
	return t
}

func (b *book) settingTable() *csvTable {
	t := &csvTable{name: "trials", says: "means of each setting of each trial", head: []string{"trial", "setting", "runs_used", "one_way", "engine_rpm", "speed_kn", "speed_spread_kn", "fuel_l_h", "trim_deg", "per_mile_l_nm", "range_nm", "slip"}}
	for i := range b.dossier.Trials.Trials {
		tr := &b.dossier.Trials.Trials[i]
		for k := range tr.Settings {
			s := &tr.Settings[k]
			mean := func(m trial.Mean) any { return cellIf(m.Has, m.Value) }
			value := func(v trial.Value) any { return cellIf(v.Has, v.Value) }
			t.add(tr.Record.ID, s.Name, s.Used, s.OneWay, mean(s.RPM), mean(s.Speed), cellIf(s.Speed.Has, s.Speed.Spread), mean(s.Fuel), mean(s.Trim), value(s.PerMile), value(s.Range), value(s.Slip))
		}
	}
	return t
}

func (b *book) seamTable() *csvTable {
	t := &csvTable{name: "seams", says: "joints with who welded them, who looked, and what is missing", head: []string{"joint", "type", "category", "where", "length_m", "parts", "stamps", "last_weld", "looked_at", "standing", "lacks"}}
	if b.dossier.Seams == nil {
		return t
	}
	m := b.dossier.Seams
	for _, j := range m.Joints {
		var parts, lacks []string
		for _, p := range j.Parts {
			if p != nil {
				parts = append(parts, p.ID)
			}
		}
		for _, l := range m.Lacks(j) {
			lacks = append(lacks, l.Says)
		}
		stamps, last := j.WeldedBy()
		t.add(j.Record.ID, j.Record.Type.V, j.Record.Category.V, j.Record.Where.V, float64(j.Record.Length.V), strings.Join(parts, " "), stamps, last, seenHow(j), string(m.Standing(j)), strings.Join(lacks, "; "))
	}
	return t
}

func (b *book) documentTable() *csvTable {
	t := &csvTable{name: "documents", says: "papers with the hash of what lies there", head: []string{"document", "title", "kind", "number", "date", "issued_by", "path", "sha256", "present", "agrees"}}
	for i := range b.dossier.Documents.Documents {
		d := &b.dossier.Documents.Documents[i]
		date, path := "", ""
		if d.Record.Date.Set {
			date = d.Record.Date.V.ISO()
		}
		if d.Present {
			path = d.Out
		}
		t.add(d.Record.ID, d.Record.Title.V, d.Record.Kind.V, d.Record.Number.V, date, d.Record.By.V, path, d.SHA256, d.Present, d.Matches)
	}
	return t
}

// valuesName is the table of all values of the records; two issues are compared by it.
const valuesName = "values"

func (b *book) valueTable() *csvTable {
	t := &csvTable{name: valuesName, says: "every value of the records as it stands for this hull, with its place", head: []string{"key", "value", "file", "line"}}
	t.body, t.lent = b.press.rooms.take(usualTable), true
	record.Values(b.yard, b.hull, func(v record.Value) { t.add(v.Key, v.Text, v.At.File, v.At.Line) })
	return t
}
