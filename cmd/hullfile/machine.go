package main

import (
	"encoding/json"
	"errors"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/next"
)

// machineText is the document of check --json. Its keys are stable; a list is never null.
type machineText struct {
	Next     *machineNext      `json:"next"` // null where nothing was reckoned: then the first fault is next
	Hulls    []machineHull     `json:"hulls"`
	Findings []finding.Finding `json:"findings"` // of the yard's own records
	Faults   []finding.Fault   `json:"faults"`   // where there is one, nothing was reckoned
	Error    string            `json:"error,omitempty"`
}

type machineHull struct {
	Number      string               `json:"number"`
	Title       string               `json:"title,omitempty"`
	Standing    finding.Standing     `json:"standing"`
	Next        next.Step            `json:"next"`
	Parts       []next.Part          `json:"parts"` // of the file, in the order in which a builder knows things
	Checks      []finding.Check      `json:"checks"`
	Findings    []finding.Finding    `json:"findings"`
	Assumptions []finding.Assumption `json:"assumptions"`
}

// machineNext is the one thing to do next in the whole yard.
type machineNext struct {
	Hull string `json:"hull"`
	next.Step
}

func (d *desk) machineCheck(hulls []*engine.Dossier, yard []finding.Finding) error {
	text := machineText{Findings: yard}
	for _, h := range hulls {
		text.Hulls = append(text.Hulls, machineHull{
			Number: h.Hull.Number, Title: h.Hull.Title.V, Standing: h.Standing(), Next: h.Next(), Parts: h.Parts(),
			Checks: list(h.Checks), Findings: list(h.Findings), Assumptions: list(h.Assumptions),
		})
	}
	if h := foremost(hulls); h != nil {
		text.Next = &machineNext{Hull: h.Hull.Number, Step: h.Next()}
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
