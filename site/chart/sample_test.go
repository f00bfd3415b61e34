package chart

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

func wr[T any](v T) record.Val[T] { return record.Written(v, finding.Place{}) }

// sampleTrial is an invented trial of a twin-outboard launch.
func sampleTrial() trial.Trial {
	rpm := []float64{900, 1800, 2600, 3200, 3800, 4400, 5000, 5600, 5900}
	speed := []float64{4.1, 7.2, 8.9, 14.6, 20.3, 24.8, 29.0, 32.9, 34.4}
	fuel := []float64{3.1, 11.6, 24.5, 34.0, 42.1, 53.5, 71.8, 97.0, 112.4}
	trim := []float64{0.8, 2.4, 5.9, 5.1, 4.2, 3.7, 3.3, 3.0, 2.9}
	t := trial.Trial{Record: &record.Trial{}, Best: 4, Top: 8, HasRange: true, RangeWhy: "180 l usable, 20 % kept back", Usable: 180, Reserve: 20}
	t.Record.ID = "T1"
	for i := range rpm {
		set := trial.Setting{Name: unit.Text(rpm[i], 0), Used: 2}
		set.RPM = trial.Mean{Value: rpm[i], Has: true, N: 2}
		set.Speed = trial.Mean{Value: speed[i], Has: true, N: 2}
		set.Fuel = trial.Mean{Value: fuel[i], Has: true, N: 2}
		set.Trim = trial.Mean{Value: trim[i], Has: true, N: 2}
		set.PerMile = trial.Value{Value: fuel[i] / speed[i], Has: true}
		set.Range = trial.Value{Value: 180 * 0.8 * speed[i] / fuel[i], Has: true}
		for k, d := range []float64{-0.7, 0.7} {
			r := &record.Run{RPM: wr(unit.RPM(rpm[i] + 10*d)), Speed: wr(unit.Knot(speed[i] + d)), Fuel: wr(unit.LPerH(fuel[i] * (1 + d/30))), Trim: wr(unit.Deg(trim[i] + d/4))}
			r.ID = unit.Text(float64(k), 0)
			set.Runs = append(set.Runs, trial.Run{Record: r, Used: true})
		}
		t.Settings = append(t.Settings, set)
	}
	left := &record.Run{RPM: wr(unit.RPM(5000)), Speed: wr(unit.Knot(24)), Fuel: wr(unit.LPerH(80)), Trim: wr(unit.Deg(4.9))}
	t.Settings[6].Runs = append(t.Settings[6].Runs, trial.Run{Record: left, Why: "weed on the propeller"})
	t.Settings[1].OneWay = true
	return t
}

// samplePanels are invented panels: some short, some not shown.
func samplePanels(n int) []scantling.Panel {
	zones := []string{"bottom", "side", "transom", "deck", "superstructure"}
	all := make([]scantling.Panel, n)
	for i := range all {
		r := &record.Panel{Zone: wr(zones[i%5]), Short: wr(unit.MM(210 + 10*i)), Long: wr(unit.MM(500 + 20*i)), Thickness: wr(unit.MM(4 + i%3)),
			Alloy: wr("5083-H116"), Edges: wr("welded"), X: wr(unit.M(0.3 * float64(i)))}
		r.ID = fmt.Sprintf("%c%d", 'A'+i%5, i+1)
		p := scantling.Panel{Record: r, Fitted: r.Thickness.V, Needed: unit.MM(2.4 + 0.11*float64(i)), Standing: finding.Met, Governs: "t_P"}
		p.Margin = float64(p.Fitted) / float64(p.Needed)
		if p.Margin < 1 {
			p.Standing = finding.Short
		}
		if i%9 == 8 {
			p.Needed, p.Margin, p.Standing = 0, 0, finding.NotShown
		}
		all[i] = p
	}
	return all
}

func sampleBoat() *record.Boat {
	return &record.Boat{LengthHull: wr(unit.M(7.4)), LengthWL: wr(unit.M(6.6))}
}

// sampleWeight is an invented breakdown of a launch of 7.4 m.
func sampleWeight() weight.Result {
	rows := []struct {
		key, name, group, basis string
		load                    bool
		mass, x, z              float64
	}{
		{"bottom", "Bottom plating", "plating", "reckoned", false, 214, 3.2, 0.25},
		{"sides", "Side plating", "plating", "reckoned", false, 168, 3.4, 0.8},
		{"deck", "Deck plating", "plating", "reckoned", false, 131, 3.3, 0.75},
		{"frames", "Frames and stringers", "framing", "reckoned", false, 236, 3.1, 0.4},
		{"house", "Wheelhouse", "superstructure", "reckoned", false, 142, 3.9, 1.7},
		{"engines", "Two outboard engines", "machinery", "maker's", false, 432, -0.25, 0.85},
		{"rigging", "Controls and steering", "machinery", "estimated", false, 38, 1.2, 0.8},
		{"batteries", "Batteries", "electrical", "weighed", false, 84, 0.9, 0.5},
		{"wiring", "Wiring and lamps", "electrical", "estimated", false, 46, 3.4, 1.2},
		{"tank", "Fuel tank", "systems", "weighed", false, 41, 2.1, 0.4},
		{"fender", "Fendering", "fittings", "maker's", false, 95, 3.7, 1.0},
		{"seats", "Seats", "outfit", "maker's", false, 62, 3.6, 1.1},
		{"paint", "Paint", "paint and weld", "estimated", false, 34, 3.3, 0.7},
		{"people", "Six persons", "people", "estimated", true, 450, 3.3, 1.3},
		{"fuel", "Fuel", "fuel and water", "reckoned", true, 150, 2.1, 0.4},
		{"stores", "Stores and anchor", "stores", "estimated", true, 70, 6.2, 0.9},
	}
	var r weight.Result
	light, load, loaded := &r.Light, &r.Load, &r.Loaded
	for _, row := range rows {
		w := &record.Weight{Name: wr(row.name), Group: wr(row.group), Basis: wr(row.basis), Load: wr(row.load), X: wr(unit.M(row.x)), Z: wr(unit.M(row.z))}
		w.ID = row.key
		r.Items = append(r.Items, weight.Item{Record: w, Count: 1, Each: unit.KG(row.mass), Mass: unit.KG(row.mass), HasMass: true, HasX: true, HasZ: true,
			MovesKG: unit.KG(row.mass / 10), MovesX: unit.MM((row.x - 2.8) * row.mass / 24)})
		sum := light
		if row.load {
			sum = load
		}
		for _, t := range []*weight.Total{sum, loaded} {
			t.Mass += unit.KG(row.mass)
			t.X += unit.M(row.mass * row.x)
			t.Z += unit.M(row.mass * row.z)
		}
		if n := len(r.Groups); n == 0 || r.Groups[n-1].Name != row.group {
			r.Groups = append(r.Groups, weight.Group{Name: row.group})
		}
		g := &r.Groups[len(r.Groups)-1]
		g.Total.Mass += unit.KG(row.mass)
		g.Basis = append(g.Basis, weight.BasisPart{Basis: row.basis, Mass: unit.KG(row.mass)})
	}
	for _, t := range []*weight.Total{light, load, loaded} {
		t.X, t.Z, t.HasX, t.HasZ = t.X/unit.M(t.Mass), t.Z/unit.M(t.Mass), true, true
	}
	for i := range r.Groups {
		r.Groups[i].Share = float64(r.Groups[i].Total.Mass / loaded.Mass)
	}
	r.Weighings = []weight.Weighing{sampleWeighing()}
	return r
}

// sampleWeighing is a weighing on three cells.
func sampleWeighing() weight.Weighing {
	w := weight.Weighing{Record: &record.Weighing{}, Mass: 1762, X: 2.41, HasX: true}
	w.Record.ID = "W1"
	for i, p := range []struct{ x, y, net float64 }{{0.4, -0.9, 566}, {0.4, 0.9, 574}, {6.1, 0, 622}} {
		r := &record.WeighPoint{X: wr(unit.M(p.x)), Y: wr(unit.M(p.y)), Reading: wr(unit.KG(p.net))}
		r.ID = fmt.Sprintf("P%d", i+1)
		w.Points = append(w.Points, weight.Point{Record: r, Net: unit.KG(p.net)})
	}
	w.DiffMass, w.DiffX = 39, -60
	w.Reckoned = weight.Total{Mass: 1723, X: 2.47, HasX: true}
	return w
}
