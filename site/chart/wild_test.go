package chart

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// value draws a number as a record or a faulty reckoning may give it.
func value(t *rapid.T, lo, hi float64) float64 {
	switch rapid.IntRange(0, 19).Draw(t, "kind") {
	case 0:
		return math.NaN()
	case 1:
		return math.Inf(1)
	case 2:
		return 0
	}
	return rapid.Float64Range(lo, hi).Draw(t, "value")
}

func wildName(t *rapid.T) string { return rapid.StringN(0, 40, -1).Draw(t, "name") }

func wildTrial(t *rapid.T) trial.Trial {
	tr := trial.Trial{Record: &record.Trial{}, Best: rapid.IntRange(-1, 5).Draw(t, "best"), Top: rapid.IntRange(-1, 5).Draw(t, "top"), RangeWhy: wildName(t)}
	tr.Record.ID = wildName(t)
	has := rapid.Bool()
	for range rapid.IntRange(0, 12).Draw(t, "settings") {
		set := trial.Setting{Name: wildName(t), OneWay: has.Draw(t, "one way")}
		set.RPM = trial.Mean{Value: value(t, 400, 7000), Has: has.Draw(t, "rpm")}
		set.Speed = trial.Mean{Value: value(t, 0, 120), Has: has.Draw(t, "speed")}
		set.Fuel = trial.Mean{Value: value(t, 0, 2000), Has: has.Draw(t, "fuel")}
		set.Trim = trial.Mean{Value: value(t, -10, 30), Has: has.Draw(t, "trim")}
		set.PerMile = trial.Value{Value: value(t, 0, 1e6), Has: has.Draw(t, "mile")}
		set.Range = trial.Value{Value: value(t, 0, 1e6), Has: has.Draw(t, "range")}
		r := &record.Run{RPM: wr(unit.RPM(value(t, 1, 20000))), Speed: wr(unit.Knot(value(t, 0, 120))), Fuel: wr(unit.LPerH(value(t, 0, 2000))), Trim: wr(unit.Deg(value(t, -10, 30)))}
		set.Runs = []trial.Run{{Record: r, Used: has.Draw(t, "used")}, {}}
		tr.Settings = append(tr.Settings, set)
	}
	return tr
}

func TestAnyTrialIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := wildTrial(t)
		for _, f := range []Figure{SpeedFuel(tr), MileRange(tr), Trim(tr)} {
			check(t, f)
		}
	})
}

// check fails a drawn case for the first thing wrong with a figure.
func check(t *rapid.T, f Figure) {
	for _, fault := range look(f) {
		t.Fatalf("%s\n%s", fault, f.Alt)
	}
	if all, err := drawingsOf(f.SVG); err == nil {
		for _, d := range all {
			for _, text := range d.texts {
				if len(text.body) > 20 && text.body[:20] == "This figure could no" {
					t.Fatalf("fault while drawing: %s", text.body)
				}
			}
		}
	}
}

func TestAnyPanelsAreSound(t *testing.T) {
	standings := []finding.Standing{finding.Met, finding.Short, finding.NotShown, ""}
	rapid.Check(t, func(t *rapid.T) {
		var panels []scantling.Panel
		for range rapid.IntRange(0, 30).Draw(t, "panels") {
			r := &record.Panel{Zone: wr(wildName(t)), Alloy: wr(wildName(t)), Edges: wr(wildName(t)), Short: wr(unit.MM(value(t, 1, 5000))), Long: wr(unit.MM(value(t, 1, 10000))),
				Camber: wr(unit.MM(value(t, 0, 2000))), X: wr(unit.M(value(t, -2, 30)))}
			r.ID = wildName(t)
			p := scantling.Panel{Record: r, Fitted: unit.MM(value(t, 0.1, 60)), Needed: unit.MM(value(t, 0.1, 60)), Standing: rapid.SampledFrom(standings).Draw(t, "standing")}
			p.Margin = float64(p.Fitted / p.Needed)
			panels = append(panels, p)
		}
		check(t, Margins(panels, func(p scantling.Panel) string { return p.Record.ID }))
		boat := &record.Boat{LengthWL: wr(unit.M(value(t, 1, 30)))}
		for _, p := range panels[:min(2, len(panels))] {
			check(t, Panel(p, boat))
		}
	})
}

func TestAnyWeightIsSound(t *testing.T) {
	has := rapid.Bool()
	rapid.Check(t, func(t *rapid.T) {
		var r weight.Result
		for range rapid.IntRange(0, 25).Draw(t, "items") {
			w := &record.Weight{Name: wr(wildName(t)), X: wr(unit.M(value(t, -5, 30))), Z: wr(unit.M(value(t, -2, 15)))}
			r.Items = append(r.Items, weight.Item{Record: w, Mass: unit.KG(value(t, -2000, 50000)), HasMass: has.Draw(t, "mass"), HasX: has.Draw(t, "x"), HasZ: has.Draw(t, "z"),
				MovesKG: unit.KG(value(t, -200, 5000)), MovesX: unit.MM(value(t, -500, 500))})
		}
		total := func() weight.Total {
			return weight.Total{Mass: unit.KG(value(t, 0, 1e5)), X: unit.M(value(t, -5, 30)), Z: unit.M(value(t, -2, 15)), HasX: has.Draw(t, "has x"), HasZ: has.Draw(t, "has z")}
		}
		r.Light, r.Loaded = total(), total()
		for range rapid.IntRange(0, 12).Draw(t, "groups") {
			g := weight.Group{Name: wildName(t), Total: total(), Share: value(t, -1, 1)}
			for _, basis := range []string{"weighed", "reckoned", "maker's", "estimated", "guessed"} {
				g.Basis = append(g.Basis, weight.BasisPart{Basis: basis, Mass: unit.KG(value(t, -2000, 9000))})
			}
			r.Groups = append(r.Groups, g)
		}
		w := weight.Weighing{Record: &record.Weighing{}, Mass: unit.KG(value(t, 0, 1e5)), X: unit.M(value(t, -5, 30)), HasX: has.Draw(t, "centre"), Reckoned: total(), DiffX: unit.MM(value(t, -900, 900)), DiffMass: unit.KG(value(t, -900, 900))}
		w.Record.ID = wildName(t)
		for range rapid.IntRange(0, 6).Draw(t, "points") {
			p := &record.WeighPoint{X: wr(unit.M(value(t, -5, 30)))}
			w.Points = append(w.Points, weight.Point{Record: p, Net: unit.KG(value(t, 0, 1e5))})
		}
		r.Weighings = []weight.Weighing{w}
		boat := &record.Boat{LengthHull: wr(unit.M(value(t, 1, 30)))}
		for _, f := range []Figure{WeightGroups(r), Centres(r, boat), Weighing(w), Sensitivity(r)} {
			check(t, f)
		}
	})
}

func TestAnySeriesAreSound(t *testing.T) {
	classes := []Class{LineA, LineB, LineC, MeanA, MeanB, MeanC, OneWay, Raw, LeftOut, "", "other"}
	rapid.Check(t, func(t *rapid.T) {
		s := Spec{ID: "fig", Title: wildName(t), X: Axis{wildName(t), wildName(t), true}, Y: Axis{wildName(t), "", false}, Y2: Axis{wildName(t), wildName(t), rapid.Bool().Draw(t, "from 0")}}
		size := math.Pow(10, rapid.Float64Range(-6, 9.5).Draw(t, "size"))
		for range rapid.IntRange(0, 4).Draw(t, "series") {
			var x, y []float64
			for range rapid.IntRange(0, 30).Draw(t, "points") {
				x, y = append(x, value(t, -size, size)), append(y, value(t, -size, size))
			}
			c, right := rapid.SampledFrom(classes).Draw(t, "class"), rapid.Bool().Draw(t, "right")
			s.Lines = append(s.Lines, Line{Name: wildName(t), X: x, Y: y, Class: c, Right: right, Area: rapid.Bool().Draw(t, "area")})
			s.Dots = append(s.Dots, Dots{Name: wildName(t), X: x, Y: y, Class: c, Right: right})
			if len(x) > 0 {
				s.Marks = append(s.Marks, Mark{X: x[0], Y: y[0], Text: wildName(t), Right: right})
			}
		}
		check(t, Plot(s))
	})
}
