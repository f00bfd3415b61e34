package scantling

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Bracket is one locking piece, or one kind of it at one frame, judged by the sheet for brackets.
type Bracket struct {
	Record *record.Bracket
	ID     string  // "bracket K frame 3", or the key of the record where it names its member
	Member string  // member whose end it holds, as Result.Members names it; empty where none is known
	Count  int     // both sides together
	Moment float64 // kN·m that it passes on, at the end of the member
	Force  float64 // kN
	From   string  // where these come from: the formula for one span, or the model of its neighbours
	Local
}

// Fitting is one place where a load comes in at a point, judged by the sheet for local loads.
type Fitting struct {
	Record *record.Fitting
	Force  float64 // kN
	Moment float64 // kN·m
	Local
}

// Collision is the stated case of running into something at speed. It is information and makes no check.
type Collision struct {
	Working      *method.Working
	Shown        bool
	Why          string
	Force        float64 // kN
	Acceleration float64 // g
}

// Local is the judgement that brackets and fittings share.
type Local struct {
	Working  *method.Working
	Needs    []Need
	Governs  Need // with the least room
	Margin   float64
	Standing finding.Standing
	Basis    finding.Basis
	Outside  bool // rests on a value outside the range of its formula
	Why      string
}
