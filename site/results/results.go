// Package results writes the results of a hull for machines: everything that the pages round, in full, with sorted keys. Open
// results.go first; each discipline has a file, write.go puts it into JSON.
package results

import (
	"encoding/json"
	"math"
	"strconv"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/trial"
	"hullfile/engine/weight"
)

// Name is the file in which the results stand.
const Name = "results.json"

// Form is the number of the form of results.json; it changes when a key changes its meaning.
const Form = 1

// Head says of which hull and issue a file is.
type Head struct {
	Number  string `json:"number"`
	Title   string `json:"title"`
	Design  string `json:"design"`
	State   string `json:"state"`
	Issue   int    `json:"issue"`
	Date    string `json:"date"`
	Builder string `json:"builder"`
}

// object gives the head with its keys in order.
func (h Head) object() object {
	return object{{"number", h.Number}, {"title", h.Title}, {"design", h.Design}, {"state", h.State}, {"issue", h.Issue}, {"date", h.Date}, {"builder", h.Builder}}
}

// full is a number at full precision: ten significant figures, which every make of processor agrees on, or null.
type full float64

// MarshalJSON gives the number, or null for one that is not finite.
func (f full) MarshalJSON() ([]byte, error) {
	v := float64(f)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(f.value())
}

// Round gives a finite number as it stands in the results.
func Round(v float64) float64 { return full(v).value() }

// value gives the number as it is written.
func (f full) value() float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(float64(f), 'e', 9, 64), 64)
	if err != nil {
		panic(err) // it was formatted just now
	}
	return rounded
}

// Of is what the results are made of.
type Of struct {
	Dossier  *engine.Dossier
	Hull     *record.Hull
	Version  string               // of the program
	Findings []finding.Finding    // those that the file tells
	Counts   map[finding.Kind]int // of them
}

// Text gives the text of results.json, written into a slice with nothing in it. Every key of it stands in
// content/schema/results.json. An error is a fault of the program.
func Text(out []byte, of Of) ([]byte, error) {
	d, h := of.Dossier, of.Hull
	head := Head{Number: h.Number, Title: h.Title.V, Design: h.Design.V, State: h.Identity.State.V, Issue: h.Issue.Number.V, Builder: d.Builder.Name.V}
	if h.Issue.Date.Set {
		head.Date = h.Issue.Date.V.ISO()
	}
	text, err := appendJSON(out, object{
		{"form", Form}, {"version", of.Version}, {"hull", head.object()}, {"invented", d.Builder.Invented.V}, {"standing", d.Standing()}, {"counts", of.Counts},
		{"checks", checkResults(d.Checks)}, {"findings", findingResults(of.Findings)}, {"assumptions", assumptionResults(d.Assumptions)},
		{"seams", seamResults(d)}, {"documents", documentResults(&d.Documents)},
		{"panels", panelResults(&d.Structure)}, {"structure", structureResult(&d.Structure)}, {"weight", weightResults(&d.Weight)}, {"lines", linesResult(&d.Lines)}, {"afloat", afloatResult(&d.Loading, &d.Stability)}, {"capacity", capacityResults(&d.Capacity)}, {"trials", trialResults(&d.Trials)}, {"underway", underwayResults(d)}, {"logs", logResults(&d.Logs)}, {"manoeuvres", moveResults(&d.Moves)}, {"requirements", requirementResults(&d.Requirements)},
	}, 0)
	return append(text, '\n'), err
}

func checkResults(checks []finding.Check) []object {
	out := make([]object, 0, len(checks))
	for _, c := range checks {
		out = append(out, object{
			{"rule", c.Rule}, {"subject", c.Subject}, {"asks", c.Asks}, {"standing", c.Standing}, {"says", c.Says}, {"needed", c.Needed}, {"has", c.Has},
			{"basis", c.Basis}, {"source", c.Source}, {"places", placeResults(c.Places)}, {"missing", orEmpty(c.Missing)}, {"settle", c.Settle},
		})
	}
	return out
}

func findingResults(findings []finding.Finding) []object {
	out := make([]object, 0, len(findings))
	for _, f := range findings {
		out = append(out, object{
			{"kind", f.Kind}, {"rule", f.Rule}, {"subject", f.Subject}, {"says", f.Says}, {"settle", f.Settle}, {"places", placeResults(f.Places)},
		})
	}
	return out
}

func assumptionResults(all []finding.Assumption) []object {
	out := make([]object, 0, len(all))
	for _, a := range all {
		out = append(out, object{{"subject", a.Subject}, {"says", a.Says}, {"settle", a.Settle}, {"basis", a.Basis}})
	}
	return out
}

func placeResults(places []finding.Place) []string {
	out := make([]string, 0, len(places))
	for _, p := range places {
		out = append(out, p.String())
	}
	return out
}

func orEmpty[T any](all []T) []T {
	if all == nil {
		return []T{}
	}
	return all
}

func panelResults(r *scantling.Result) []object {
	out := []object{}
	for i := range r.Panels {
		p := &r.Panels[i]
		o := object{{"key", p.Record.ID}, {"standing", p.Standing}, {"fitted_mm", full(p.Fitted)}, {"count", p.Count}, {"basis", p.Basis}, {"governs", p.Governs},
			{"zone", p.Record.Zone.V}, {"derived", p.Derived}, {"opinions", opinionResults(r, p.Opinions)}}
		if p.Same != "" {
			o.add("same", p.Same)
		}
		if p.Standing != finding.NotShown {
			o.add("needed_mm", full(p.Needed))
			o.add("margin", full(p.Margin))
			o.add("pressure_kn_m2", full(p.Pressure))
		}
		if p.Working != nil && !p.Derived {
			o.add("steps", stepResults(p.Working.Steps))
		}
		out = append(out, o)
	}
	return out
}

func stepResults(steps []method.Shown) []object {
	out := []object{}
	for i := range steps {
		s := &steps[i]
		o := append(make(object, 0, 5), member{"symbol", s.Symbol}, member{"state", s.State}, member{"unit", s.Unit}, member{"basis", s.Basis})
		switch {
		case s.IsWord:
			o.add("value", s.Word)
		case s.State == method.Sound || s.State == method.Outside:
			o.add("value", full(s.Value))
		}
		out = append(out, o)
	}
	return out
}

func weightResults(r *weight.Result) object {
	items, weighings := []object{}, []object{}
	for i := range r.Items {
		it := &r.Items[i]
		o := object{{"key", it.Record.ID}, {"count", it.Count}}
		if it.HasMass {
			o.add("mass_kg", full(it.Mass))
			o.add("margin_kg", full(it.Margin))
		}
		items = append(items, o)
	}
	for i := range r.Weighings {
		w := &r.Weighings[i]
		o := object{{"key", w.Record.ID}, {"mass_kg", full(w.Mass)}, {"reckoned", totalResult(w.Reckoned)}, {"difference_kg", full(w.DiffMass)}}
		if w.HasX {
			o.add("x_m", full(w.X))
		}
		weighings = append(weighings, o)
	}
	return object{{"items", items}, {"weighings", weighings}, {"light", totalResult(r.Light)}, {"load", totalResult(r.Load)}, {"loaded", totalResult(r.Loaded)}}
}

func totalResult(t weight.Total) object {
	o := object{{"items", t.Items}, {"mass_kg", full(t.Mass)}, {"margin_kg", full(t.Margin)}, {"without", orEmpty(t.Without)}}
	if t.HasX {
		o.add("x_m", full(t.X))
	}
	if t.HasY {
		o.add("y_m", full(t.Y))
	}
	if t.HasZ {
		o.add("z_m", full(t.Z))
	}
	return o
}

func trialResults(r *trial.Result) []object {
	out := []object{}
	for i := range r.Trials {
		settings := []object{}
		for j := range r.Trials[i].Settings {
			settings = append(settings, settingResult(&r.Trials[i].Settings[j]))
		}
		out = append(out, object{{"key", r.Trials[i].Record.ID}, {"settings", settings}})
	}
	return out
}

func settingResult(s *trial.Setting) object {
	o := object{{"setting", s.Name}, {"one_way", s.OneWay}, {"runs_used", s.Used}}
	for key, m := range map[string]trial.Mean{"engine_rpm": s.RPM, "speed_kn": s.Speed, "fuel_l_h": s.Fuel, "trim_deg": s.Trim} {
		if m.Has {
			o.add(key, object{{"mean", full(m.Value)}, {"spread", full(m.Spread)}, {"n", m.N}})
		}
	}
	for key, v := range map[string]trial.Value{"per_mile_l_nm": s.PerMile, "range_nm": s.Range, "slip": s.Slip} {
		if v.Has {
			o.add(key, full(v.Value))
		}
	}
	return o
}
