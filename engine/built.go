package engine

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/held"
	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/stock"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
)

// Building is the limits by which the record of building is judged. It is read once and never changed.
type Building struct {
	Lots  *stock.Limits
	Welds *weld.Ranges
	Flaws *inspection.Limits
}

func loadBuilding(content fs.FS, own []held.Source) (Building, error) {
	var faults finding.Faults
	lots, err := stock.LoadLimits(content, own...)
	if err = keep(&faults, err); err != nil {
		return Building{}, err
	}
	welds, err := weld.LoadRanges(content, own...)
	if err = keep(&faults, err); err != nil {
		return Building{}, err
	}
	flaws, err := inspection.LoadLimits(content, own...)
	if err = keep(&faults, err); err != nil {
		return Building{}, err
	}
	if len(faults) > 0 {
		return Building{}, faults
	}
	return Building{Lots: lots, Welds: welds, Flaws: flaws}, nil
}

// keep gathers faults, so that those of all tables are told at once; another error is given back.
func keep(all *finding.Faults, err error) error {
	var faults finding.Faults
	if errors.As(err, &faults) {
		*all = append(*all, faults...)
		return nil
	}
	return err
}

// WithLimits gives the same reference with the yard's own tables of limits laid over the shipped ones. The error is
// finding.Faults of the tables, or one of reading.
func (r *Reference) WithLimits(content fs.FS, tables []record.SheetSource) (*Reference, error) {
	if len(tables) == 0 {
		return r, nil
	}
	own := make([]held.Source, 0, len(tables))
	var faults finding.Faults
	for _, t := range tables {
		if !slices.Contains(limitTables, t.Name) {
			faults = append(faults, finding.Fault{Place: finding.Place{File: t.Path, Line: 1, Col: 1}, Says: "the program has no table of limits of this name",
				Hint: "its tables are " + strings.Join(limitTables, ", ")})
			continue
		}
		own = append(own, held.Source{Name: t.Name, Path: t.Path, Text: t.Text})
	}
	building, err := loadBuilding(content, own)
	if err = keep(&faults, err); err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	with := *r
	with.Building = building
	return &with, nil
}

// limitTables are the names that a table of a yard's own can have.
var limitTables = []string{path.Base(stock.LimitsFile), path.Base(weld.FilletsFile), path.Base(inspection.LimitsFile), path.Base(weld.ProceduresFile), path.Base(weld.WeldersFile)}

// tables lists all tables of limits in the order of their names.
func (b *Building) tables() []held.Table {
	return []held.Table{b.Lots.Held, b.Welds.Fillets.Held, b.Flaws.Held, b.Welds.ProceduresHeld, b.Welds.WeldersHeld}
}

// built judges what is on record of the building of the hull.
func (d *Dossier) built(y *record.Yard, ref *Reference) {
	d.Stock = stock.Assess(y, d.Hull, ref.Alloys, ref.Building.Lots)
	d.Welding = weld.Assess(y, d.Hull, ref.Library, ref.Alloys, ref.Building.Welds)
	d.Tables = ref.Building.tables()
	d.Welding.Checks = append(d.Welding.Checks, d.weldMetal()...)
}

// weldMetal holds the weld metal that the weight breakdown counts against what the seams of the map take. More is no fault:
// the breakdown counts seams that no map names. Nothing is asked of a hull without weights or without seams of known size.
func (d *Dossier) weldMetal() []finding.Check {
	s := &d.Welding.Sums
	if s.Metal == 0 || len(d.Weight.Items) == 0 {
		return nil
	}
	counted := 0.0
	c := finding.Check{Rule: "weld-metal-weight", Subject: "boat", Standing: finding.NotShown, Basis: finding.Practice, Source: "own practice: weight breakdown beside the weld map",
		Asks: "the weight breakdown counts no less weld metal than the seams of the weld map take", Needed: unit.Text(s.Metal, 2) + " kg"}
	for i := range d.Weight.Items {
		it := &d.Weight.Items[i]
		if strings.Contains(strings.ToLower(it.Record.Name.V), "weld metal") && it.HasMass {
			counted += float64(it.Mass)
			c.Places = append(c.Places, it.Record.At)
		}
	}
	reckoned := fmt.Sprintf("%s m of seams on the map take %s kg of weld metal", unit.Text(s.Metres, 1), unit.Text(s.Metal, 2))
	if s.Without > 0 {
		reckoned += fmt.Sprintf(", without %d joints whose size is not written", s.Without)
	}
	switch {
	case len(c.Places) == 0:
		c.Says, c.Settle = reckoned+"; the breakdown has no item called weld metal", fmt.Sprintf("write an item called weld metal with mass_kg = %s, or length_from = \"seams\" where the boat has lines", unit.Text(s.Metal, 1))
	case counted < s.Metal:
		c.Standing, c.Has, c.Says = finding.Short, unit.Text(counted, 2)+" kg", reckoned+"; the breakdown counts "+unit.Text(counted, 2)+" kg"
		c.Settle = "raise the item, and look whether other seams are missing from it as well"
	default:
		c.Standing, c.Has, c.Says = finding.Met, unit.Text(counted, 2)+" kg", reckoned+"; the breakdown counts "+unit.Text(counted, 2)+" kg"
	}
	return []finding.Check{c}
}

// stale doubts a confirmation that is for other rows than those in use.
func stale(tables []held.Table) []finding.Finding {
	var all []finding.Finding
	for _, t := range tables {
		if t.Stale != "" {
			all = append(all, finding.Finding{Kind: finding.Doubt, Rule: "limits-stale", Subject: "boat", Places: []finding.Place{{File: t.File, Line: 1, Col: 1}},
				Says:   t.File + " confirms rows with the mark " + t.Stale + ", and those of the program have the mark " + t.Rows + ": they count as held by nobody",
				Settle: "hold the rows of the program against the text again, and write confirmed_rows = \"" + t.Rows + "\""})
		}
	}
	return all
}
