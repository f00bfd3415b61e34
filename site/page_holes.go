package site

import "hullfile/engine/unit"

// OpeningRow is a way for water into the hull.
type OpeningRow struct {
	ID, Key, Name string
	X, Y, Z       string
	Area          Figure // mm²
	Closes        string
	Place         Link
}

// RecessRow is a cockpit or a well.
type RecessRow struct {
	ID, Key, Kind string
	From, To      string
	Half, Sole    string
	Drains        string
	Place         Link
}

func (l *leaf) openingRows() []OpeningRow {
	var out []OpeningRow
	for i := range l.hull.Openings {
		o := &l.hull.Openings[i]
		y := unit.Text(o.Y.V, 2)
		if o.Both.V {
			y = "± " + y
		}
		closes := "closes " + o.Closes.V
		if o.Closes.V == "not" {
			closes = "does not close"
		}
		out = append(out, OpeningRow{l.anchor("opening " + o.ID), o.ID, o.Name.V, unit.Text(o.X.V, 2), y, unit.Text(o.Z.V, 3), measured(o.Area, "mm²"), closes, l.place(o.At)})
	}
	return out
}

func (l *leaf) recessRows() []RecessRow {
	var out []RecessRow
	for i := range l.hull.Recesses {
		r := &l.hull.Recesses[i]
		drains := "does not drain by itself"
		if r.Drains.V {
			drains = "drains quickly"
		}
		out = append(out, RecessRow{l.anchor("recess " + r.ID), r.ID, r.Kind.V, unit.Text(r.Aft.V, 2), unit.Text(r.Fore.V, 2), unit.Text(r.Half.V, 2), unit.Text(r.Sole.V, 3), drains, l.place(r.At)})
	}
	return out
}
