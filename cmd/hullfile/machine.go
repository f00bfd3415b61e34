package main

import (
	"encoding/json"
	"errors"

	"hullfile/engine"
	"hullfile/engine/finding"
)

// machineText is the document of check --json. Its keys are stable; a list is never null.
type machineText struct {
	Hulls    []machineHull     `json:"hulls"`
	Findings []finding.Finding `json:"findings"` // of the yard's own records
	Faults   []finding.Fault   `json:"faults"`   // where there is one, nothing was reckoned
	Error    string            `json:"error,omitempty"`
}

type machineHull struct {
	Number      string               `json:"number"`
	Title       string               `json:"title,omitempty"`
	Standing    finding.Standing     `json:"standing"`
	Checks      []finding.Check      `json:"checks"`
	Findings    []finding.Finding    `json:"findings"`
	Assumptions []finding.Assumption `json:"assumptions"`
}

func (d *desk) machineCheck(hulls []*engine.Dossier, yard []finding.Finding) error {
	text := machineText{Findings: yard}
	for _, h := range hulls {
		text.Hulls = append(text.Hulls, machineHull{
			Number: h.Hull.Number, Title: h.Hull.Title.V, Standing: h.Standing(),
			Checks: list(h.Checks), Findings: list(h.Findings), Assumptions: list(h.Assumptions),
		})
	}
	return d.machine(text)
}

// machineFailure tells a machine why nothing was reckoned.
func (d *desk) machineFailure(err error) error {
	var text machineText
	var faults finding.Faults
	if errors.As(err, &faults) {
		text.Faults = faults
	} else {
		text.Error = err.Error()
	}
	return d.machine(text)
}

func (d *desk) machine(text machineText) error {
	text.Hulls, text.Findings, text.Faults = list(text.Hulls), list(text.Findings), list(text.Faults)
	return d.json(text)
}

// json prints one indented document.
func (d *desk) json(v any) error {
	text, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return err
	}
	d.out.raw(append(text, '\n'))
	return nil
}

// list makes an empty list of none, because a reader of JSON should not have to tell null from [].
func list[T any](all []T) []T {
	if all == nil {
		return []T{}
	}
	return all
}
