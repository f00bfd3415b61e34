package site

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/unit"
)

// LinesPart is the shape of the hull on the page of the boat.
type LinesPart struct {
	Says                  LinesSays
	Body                  Drawing
	Views                 Drawing
	Iso                   Drawing
	Dimensions            []DimensionRow
	Afloat                []Fact
	Skins                 []SkinRow
	Openings              []OpeningRow
	Recesses              []RecessRow
	Edges                 []string // heads of the table of fairness
	Fair                  []FairRow
	FormMass, FormCentres Drawing
	Form                  []FormRow
	FormOf                string // kg/m³
}

// LinesSays is the answer about the lines; the page begins with it.
type LinesSays struct {
	Stations int
	From, To string
	Mass     string // empty where the hull does not float
	Draught  string
	Length   string
	Why      string // why it is not afloat
	Compared int
	Differ   []string // names of the dimensions that differ by more than the allowance
	Unfair   int      // ordinates that stand out
}

// DimensionRow is one dimension as it is stated and as the lines give it.
type DimensionRow struct {
	Name     string
	Unit     string
	Stated   string
	Lines    Figure
	Diff     Figure
	Allowed  string
	Standing Standing
	Place    Link
}

// SkinRow is the plate of one zone.
type SkinRow struct {
	Zone string
	Area string
	X, Z string
}

// FairRow is the second differences at one station, in the order of the heads.
type FairRow struct {
	ID      string
	Station string
	X       string
	Cells   []FairCell
	Place   Link
}

// FairCell is one ordinate: its second difference, and how far it lies off where it stands out.
type FairCell struct {
	Second Figure
	Off    string // mm, empty where it lies fair
}

// FormRow is one row of the hydrostatic table.
type FormRow struct {
	Draught, Mass, LCB, KB, Plane, LCF, BM, BML, PerCM, TrimCM, Length, Wetted string
}

func (l *leaf) linesPart() LinesPart {
	r := &l.dossier.Lines
	p := LinesPart{Says: linesSays(r), FormOf: unit.Text(float64(lines.SeaWater), 0)}
	if r.Hull == nil {
		return p
	}
	p.Body, p.Views, p.Iso = l.bodyPicture(), l.viewsPicture(), l.isoPicture()
	for i := range r.Compared {
		p.Dimensions = append(p.Dimensions, l.dimensionRow(&r.Compared[i]))
	}
	if r.HasAfloat {
		p.Afloat = afloatFacts(&r.Afloat)
	}
	for _, s := range r.Skins {
		p.Skins = append(p.Skins, SkinRow{s.Zone, unit.Text(s.Area, 2), unit.Text(s.Centre.X, 2), unit.Text(s.Centre.Z, 2)})
	}
	p.Openings, p.Recesses = l.openingRows(), l.recessRows()
	p.Edges, p.Fair = l.fairRows(r)
	p.FormMass, p.FormCentres = l.formPictures()
	for i := range r.Form {
		p.Form = append(p.Form, formRow(&r.Form[i]))
	}
	return p
}

func linesSays(r *lines.Result) LinesSays {
	s := LinesSays{Why: r.Why}
	if r.Hull == nil || len(r.Hull.Stations) == 0 {
		return s
	}
	all := r.Hull.Stations
	s.Stations, s.From, s.To = len(all), unit.Text(all[0].X, 2), unit.Text(all[len(all)-1].X, 2)
	if r.HasAfloat {
		s.Mass, s.Draught, s.Length = mass(r.Afloat.Load.Mass), unit.Text(r.Afloat.Draught, 2), unit.Text(r.Afloat.LengthWL, 2)
	}
	for _, c := range r.Compared {
		if !c.HasLines {
			continue
		}
		s.Compared++
		if !c.Agrees {
			s.Differ = append(s.Differ, c.Name)
		}
	}
	for _, f := range r.Fairness {
		if f.Stands {
			s.Unfair++
		}
	}
	return s
}

func (l *leaf) dimensionRow(c *lines.Compared) DimensionRow {
	n := 2
	if c.Unit == "°" {
		n = 1
	}
	row := DimensionRow{Name: c.Name, Unit: c.Unit, Stated: unit.Text(c.Stated, n), Lines: has(c.HasLines, unit.Text(c.Lines, n), "not shown"),
		Diff: has(c.HasLines, signed(c.Stated-c.Lines, n), "not shown"), Allowed: "± " + unit.Text(c.Allowed, n), Standing: standing(finding.NotShown), Place: l.place(c.Place)}
	if c.HasLines {
		row.Standing = agreed(c.Agrees)
	}
	return row
}

func agreed(ok bool) Standing {
	if ok {
		return standing(finding.Met)
	}
	return standing(finding.Short)
}

// afloatFacts are the dimensions that the lines give of the boat at rest with its loaded mass.
func afloatFacts(a *lines.Afloat) []Fact {
	m := func(name string, v float64, n int, sign string) Fact { return fact(name, true, v, n, sign) }
	return []Fact{
		m("mass afloat", a.Load.Mass, 0, "kg"), m("displaced volume", a.Rest.Volume, 3, "m³"), m("draught, lowest point", a.Draught, 3, "m"),
		m("length of waterline", a.LengthWL, 2, "m"), m("beam of waterline", a.BeamWL, 2, "m"), m("beam between chines at 0.4 of it", a.BeamChine, 2, "m"),
		m("deadrise there", a.Deadrise, 1, "°"), m("trim, bow up", a.Rest.Trim*180/math.Pi, 2, "°"),
		m("freeboard aft", a.Freeboard[0], 3, "m"), m("freeboard amidships", a.Freeboard[1], 3, "m"), m("freeboard forward", a.Freeboard[2], 3, "m"),
		m("metacentric height, upright", a.GM, 2, "m"), m("wetted surface", a.Wetted, 2, "m²"),
		m("reserve of buoyancy, closed at the sheer", a.Reserve, 2, "m³"), m("the same, of what is displaced", 100*a.Reserve/a.Rest.Volume, 0, "%"),
		m("windage of the hull", a.Windage, 2, "m²"), m("its centre above the water", a.WindageZ, 2, "m"),
	}
}

// fairRows gives the second differences, one row a station and one column an ordinate.
func (l *leaf) fairRows(r *lines.Result) (heads []string, rows []FairRow) {
	for _, s := range r.Hull.Stations {
		rows = append(rows, FairRow{ID: l.anchor("station " + s.ID), Station: s.ID, X: unit.Text(s.X, 3), Place: l.place(s.Place)})
	}
	n := len(rows)
	for i, f := range r.Fairness {
		if i%n == 0 {
			what := "half breadth"
			if f.Height {
				what = "height"
			}
			heads = append(heads, f.Edge.String()+", "+what)
		}
		cell := FairCell{Second: has(i%n > 0 && i%n+1 < n, signed(f.Second, 3), "at the end")}
		if f.Stands {
			cell.Off = signed(f.Off*1000, 0)
		}
		rows[i%n].Cells = append(rows[i%n].Cells, cell)
	}
	return heads, rows
}

func formRow(f *hydrostatics.Form) FormRow {
	plane := func(v float64, n int) string {
		if f.Overflow {
			return "–"
		}
		return unit.Text(v, n)
	}
	return FormRow{Draught: unit.Text(f.Level, 2), Mass: unit.Text(f.Mass, 0), LCB: unit.Text(f.LCB, 3), KB: unit.Text(f.KB, 3), Plane: plane(f.Plane, 2),
		LCF: plane(f.LCF, 3), BM: plane(f.BM, 3), BML: plane(f.BML, 2), PerCM: plane(f.PerCM, 1), TrimCM: plane(f.TrimCM, 1), Length: plane(f.Length, 2), Wetted: unit.Text(f.Wetted, 2)}
}
