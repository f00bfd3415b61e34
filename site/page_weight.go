package site

import (
	"html/template"
	"slices"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// WeightPage adds up the boat.
type WeightPage struct {
	Says      WeightSays
	Totals    []TotalRow
	Stated    []StatedRow
	Picture   Drawing
	Centres   Drawing
	Groups    []GroupRow
	Items     []ItemRow
	Densities []DensitySource
	Moves     []MoveRow
	Moving    Drawing
	Weighings []WeighingPart
	Findings  []FindingRow
	Notes     []Note
	Caution   template.HTML
}

// WeightSays is the answer about the weight; the cover says it too.
type WeightSays struct {
	Tally
	Items    int
	Light    string // kg, empty where nothing adds up
	LightX   string // m forward of the transom, empty where not shown
	Loaded   string
	Without  int // items that lack a mass or a position
	Weighed  bool
	Date     string
	Mass     string // weighed
	Diff     string // weighed less reckoned, with its sign
	DiffPart string // in percent of the mass weighed
}

// TotalRow is one sum with its centre.
type TotalRow struct {
	Name    string
	Mass    Figure
	Margin  Figure
	X, Y, Z Figure
	Items   int
	Without []Link
}

// StatedRow is a mass that the record states, against the sum of the items.
type StatedRow struct {
	Name     string
	Stated   string
	Reckoned string
	Diff     string
	Allowed  string
	Place    Link
}

// GroupRow is the sum of one group and how much of it is known in which way.
type GroupRow struct {
	Name    string
	Mass    Figure
	Share   Figure
	X, Z    Figure
	Items   int
	ByBasis [4]string // weighed, reckoned, maker's, estimated
}

// basesOfMass are the ways in which a mass can be known, in the order of the columns.
var basesOfMass = [4]string{"weighed", "reckoned", "maker's", "estimated"}

// ItemRow is one item.
type ItemRow struct {
	ID      string
	Key     string
	Name    string
	Group   string
	Basis   string
	Load    bool
	Count   int
	Mass    Figure
	Margin  string
	X, Y, Z Figure
	Working string
	Lines   string // what of it comes from the lines
	Soft    Basis  // of the density, where it is not firm
	Paper   Link
	Place   Link
}

// DensitySource is where densities of alloys come from, with a word for how they are known.
type DensitySource struct {
	Source string
	Basis  Basis
}

// MoveRow says what a tenth of an item would change.
type MoveRow struct {
	Item Link
	Mass Figure
	By   string // kg
	X    string // mm, fore and aft
}

func (l *leaf) weightPage() (WeightPage, error) {
	r := &l.dossier.Weight
	notes, err := l.notesFor("weight")
	if err != nil {
		return WeightPage{}, err
	}
	p := WeightPage{
		Says: l.weightSays(), Totals: l.totalRows(r), Stated: l.statedRows(r), Picture: l.groupsPicture(), Centres: l.centresPicture(), Moving: l.movingPicture(),
		Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["weight"],
	}
	for _, g := range r.Groups {
		p.Groups = append(p.Groups, groupRow(g))
	}
	alignRows(p.Groups, func(g *GroupRow) []*string {
		return []*string{&g.Mass.Text, &g.ByBasis[0], &g.ByBasis[1], &g.ByBasis[2], &g.ByBasis[3]}
	})
	for i := range r.Items {
		it := &r.Items[i]
		p.Items = append(p.Items, l.itemRow(it))
		from := DensitySource{it.Source, basis(it.Basis)}
		if it.HasMass && it.Source != weight.OnRecord && !slices.Contains(p.Densities, from) {
			p.Densities = append(p.Densities, from)
		}
	}
	alignRows(p.Items, func(it *ItemRow) []*string { return []*string{&it.Mass.Text, &it.Margin} })
	p.Moves = l.moveRows(r)
	for i := range r.Weighings {
		p.Weighings = append(p.Weighings, l.weighingPart(&r.Weighings[i]))
	}
	return p, nil
}

func (l *leaf) totalRows(r *weight.Result) []TotalRow {
	return []TotalRow{l.totalRow("light craft", r.Light), l.totalRow("carried", r.Load), l.totalRow("fully loaded", r.Loaded)}
}

// statedRows holds what the record states of the boat against what the items add up to.
func (l *leaf) statedRows(r *weight.Result) []StatedRow {
	places := map[string]Link{"boat.loaded_mass_kg": l.place(l.hull.Boat.LoadedMass.At), "boat.light_mass_kg": l.place(l.hull.Boat.LightMass.At)}
	var out []StatedRow
	for _, s := range r.Stated {
		out = append(out, StatedRow{s.Name, mass(float64(s.Mass)), mass(float64(s.Reckoned)), signed(float64(s.Diff), 0), "± " + mass(float64(s.Allowed)), places[s.Key]})
	}
	return out
}

func (l *leaf) totalRow(name string, t weight.Total) TotalRow {
	row := TotalRow{Name: name, Mass: has(t.Items > 0, mass(float64(t.Mass)), "no items"), Margin: has(t.Items > 0, mass(float64(t.Margin)), "no items"), Items: t.Items}
	row.X, row.Y, row.Z = centre(t.HasX, t.X), centre(t.HasY, t.Y), centre(t.HasZ, t.Z)
	for _, key := range t.Without {
		row.Without = append(row.Without, l.subjectAs("weight "+key, key))
	}
	return row
}

func centre(ok bool, v unit.M) Figure { return has(ok, unit.Text(v, 2), "not shown") }

func groupRow(g weight.Group) GroupRow {
	row := GroupRow{
		Name: g.Name, Mass: has(g.Total.Items > 0, mass(float64(g.Total.Mass)), "no items"), Share: has(g.Share > 0, unit.Text(g.Share*100, 1), "not shown"),
		X: centre(g.Total.HasX, g.Total.X), Z: centre(g.Total.HasZ, g.Total.Z), Items: g.Total.Items,
	}
	for i, b := range basesOfMass {
		for _, part := range g.Basis {
			if part.Basis == b {
				row.ByBasis[i] = mass(float64(part.Mass))
			}
		}
	}
	return row
}

func (l *leaf) itemRow(it *weight.Item) ItemRow {
	rec := it.Record
	row := ItemRow{
		ID: l.anchor("weight " + rec.ID), Key: rec.ID, Name: rec.Name.V, Group: rec.Group.V, Basis: rec.Basis.V, Load: rec.Load.V, Count: it.Count,
		Mass: has(it.HasMass, mass(float64(it.Mass)), "not shown"), Working: it.Working, Lines: it.FromLines, Soft: basis(it.Basis), Place: l.place(rec.At),
		X: has(it.HasX, unit.Text(rec.X.V, 2), "not recorded"), Y: has(it.HasY, unit.Text(rec.Y.V, 2), "not recorded"), Z: has(it.HasZ, unit.Text(rec.Z.V, 2), "not recorded"),
	}
	if it.Margin != 0 {
		row.Margin = mass(float64(it.Margin))
	}
	if rec.Document.V != "" {
		row.Paper = l.subjectAs("document "+rec.Document.V, rec.Document.V)
	}
	return row
}

// moveRows gives the items that move the mass most, then those that move the centre most and are not among them.
func (l *leaf) moveRows(r *weight.Result) []MoveRow {
	var out []MoveRow
	done := map[int]bool{}
	for _, i := range slices.Concat(r.MostMass, r.MostCentre) {
		if done[i] {
			continue
		}
		done[i] = true
		it := &r.Items[i]
		out = append(out, MoveRow{
			Item: l.subjectAs("weight "+it.Record.ID, it.Record.Name.V), Mass: has(it.HasMass, mass(float64(it.Mass)), "not shown"),
			By: signed(float64(it.MovesKG), 1), X: signed(float64(it.MovesX), 1),
		})
	}
	return out
}

func (l *leaf) weightSays() WeightSays {
	r := &l.dossier.Weight
	s := WeightSays{Tally: l.tallyAt(weightPath, r.Checks), Items: len(r.Items), Without: len(r.Light.Without) + len(r.Load.Without)}
	if r.Light.Items > 0 {
		s.Light = mass(float64(r.Light.Mass))
	}
	if r.Light.HasX {
		s.LightX = unit.Text(r.Light.X, 2)
	}
	if r.Loaded.Items > 0 {
		s.Loaded = mass(float64(r.Loaded.Mass))
	}
	if n := len(r.Weighings); n > 0 && r.Weighings[n-1].HasMass {
		w := &r.Weighings[n-1]
		s.Weighed, s.Mass, s.Diff = true, mass(float64(w.Mass)), signed(float64(w.DiffMass), 0)
		s.Date = w.Record.Date.V.String()
		if w.Mass > 0 {
			s.DiffPart = signed(float64(w.DiffMass)/float64(w.Mass)*100, 1)
		}
	}
	return s
}

// standingOf gives the standing of the checks about one subject, and whether there are any.
func standingOf(checks []finding.Check, subject string) (Standing, bool) {
	about := checksOf(checks, subject)
	return tally(about).Standing, len(about) > 0
}

func wordsOfInt(n int) string { return strconv.Itoa(n) }
