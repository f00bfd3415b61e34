package site

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/trial"
	"hullfile/engine/weight"
)

// resultsName is the file in which the results stand for machines: everything that the pages round, in full, with
// sorted keys.
const resultsName = "results.json"

// resultsForm is the number of the form of results.json; it changes when a key changes its meaning.
const resultsForm = 1

// resultsHead is what the register needs of a file that an earlier run wrote.
type resultsHead struct {
	Form     int                  `json:"form"`
	Hull     hullHead             `json:"hull"`
	Standing finding.Standing     `json:"standing"`
	Counts   map[finding.Kind]int `json:"counts"`
}

type hullHead struct {
	Number  string `json:"number"`
	Title   string `json:"title"`
	Design  string `json:"design"`
	State   string `json:"state"`
	Issue   int    `json:"issue"`
	Date    string `json:"date"`
	Builder string `json:"builder"`
}

// full is a number at full precision: twelve significant figures, which every machine agrees on, or null.
type full float64

// MarshalJSON gives the number, or null for one that is not finite.
func (f full) MarshalJSON() ([]byte, error) {
	v := float64(f)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 11, 64), 64)
	if err != nil {
		return nil, err
	}
	return json.Marshal(rounded)
}

// object is a JSON object; encoding/json sorts its keys.
type object = map[string]any

// results writes results.json.
func (b *book) results() error {
	d, h := b.dossier, b.hull
	head := hullHead{Number: h.Number, Title: h.Title.V, Design: h.Design.V, State: h.Identity.State.V, Issue: h.Issue.Number.V, Builder: d.Builder.Name.V}
	if h.Issue.Date.Set {
		head.Date = h.Issue.Date.V.String()
	}
	text, err := sortedJSON(object{
		"form": resultsForm, "hull": head, "invented": d.Builder.Invented.V, "standing": d.Standing(), "counts": tellKinds(b.findings),
		"checks": orEmpty(d.Checks), "findings": orEmpty(b.findings), "assumptions": orEmpty(d.Assumptions),
		"panels": panelResults(b), "weight": weightResults(&d.Weight), "trials": trialResults(&d.Trials),
	})
	if err != nil {
		return err
	}
	return b.folder.write(resultsName, text)
}

// sortedJSON gives JSON with the keys of every object in order, whatever type it came from.
func sortedJSON(v any) ([]byte, error) {
	raw, err := json.Marshal(v)
	if err != nil {
		return nil, err
	}
	var loose any
	dec := json.NewDecoder(bytes.NewReader(raw))
	dec.UseNumber()
	if err := dec.Decode(&loose); err != nil {
		return nil, err
	}
	out, err := json.MarshalIndent(loose, "", " ")
	return append(out, '\n'), err
}

func orEmpty[T any](all []T) []T {
	if all == nil {
		return []T{}
	}
	return all
}

func panelResults(b *book) []object {
	out := []object{}
	for i := range b.dossier.Structure.Panels {
		p := &b.dossier.Structure.Panels[i]
		o := object{"key": p.Record.ID, "standing": p.Standing, "fitted_mm": full(p.Fitted), "count": p.Count, "basis": p.Basis, "governs": p.Governs}
		if p.Standing != finding.NotShown {
			o["needed_mm"], o["margin"] = full(p.Needed), full(p.Margin)
		}
		if p.Working != nil {
			o["steps"] = stepResults(p.Working.Steps)
		}
		out = append(out, o)
	}
	return out
}

func stepResults(steps []method.Shown) []object {
	out := []object{}
	for i := range steps {
		s := &steps[i]
		o := object{"symbol": s.Symbol, "state": s.State, "unit": s.Unit, "basis": s.Basis}
		switch {
		case s.IsWord:
			o["value"] = s.Word
		case s.State == method.Sound || s.State == method.Outside:
			o["value"] = full(s.Value)
		}
		out = append(out, o)
	}
	return out
}

func weightResults(r *weight.Result) object {
	items, weighings := []object{}, []object{}
	for i := range r.Items {
		it := &r.Items[i]
		o := object{"key": it.Record.ID, "count": it.Count}
		if it.HasMass {
			o["mass_kg"], o["margin_kg"] = full(it.Mass), full(it.Margin)
		}
		items = append(items, o)
	}
	for i := range r.Weighings {
		w := &r.Weighings[i]
		o := object{"key": w.Record.ID, "mass_kg": full(w.Mass), "reckoned": totalResult(w.Reckoned), "difference_kg": full(w.DiffMass)}
		if w.HasX {
			o["x_m"] = full(w.X)
		}
		weighings = append(weighings, o)
	}
	return object{"items": items, "weighings": weighings, "light": totalResult(r.Light), "load": totalResult(r.Load), "loaded": totalResult(r.Loaded)}
}

func totalResult(t weight.Total) object {
	o := object{"items": t.Items, "mass_kg": full(t.Mass), "margin_kg": full(t.Margin), "without": orEmpty(t.Without)}
	if t.HasX {
		o["x_m"] = full(t.X)
	}
	if t.HasY {
		o["y_m"] = full(t.Y)
	}
	if t.HasZ {
		o["z_m"] = full(t.Z)
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
		out = append(out, object{"key": r.Trials[i].Record.ID, "settings": settings})
	}
	return out
}

func settingResult(s *trial.Setting) object {
	o := object{"setting": s.Name, "one_way": s.OneWay, "runs_used": s.Used}
	for key, m := range map[string]trial.Mean{"engine_rpm": s.RPM, "speed_kn": s.Speed, "fuel_l_h": s.Fuel, "trim_deg": s.Trim} {
		if m.Has {
			o[key] = object{"mean": full(m.Value), "spread": full(m.Spread), "n": m.N}
		}
	}
	for key, v := range map[string]trial.Value{"per_mile_l_nm": s.PerMile, "range_nm": s.Range, "slip": s.Slip} {
		if v.Has {
			o[key] = full(v.Value)
		}
	}
	return o
}
