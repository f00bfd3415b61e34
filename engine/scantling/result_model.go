package scantling

import (
	"hullfile/engine/beam"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/unit"
)

// Model is one ring or grillage solved as beams, under the pressure that the governing sheet puts on its members. It is
// information beside the rule, unless the record says that it decides.
type Model struct {
	Name        string // "ring at frame 5", "bottom, bulkhead 6 to bulkhead 11"
	Kind        beam.Kind
	Frame       string // of a ring
	Solved      bool
	Why         string  // why it is not
	Pressure    float64 // kN/m² on a grillage; nought for a ring, whose members have their own
	Bars        []ModelBar
	Reactions   []ModelReaction
	Assumptions []string // whole sentences
}

// ModelBar is one stretch between two joints, with what happens along it.
type ModelBar struct {
	Member   string // by its own name in the grid
	Judged   string // the record that judges it
	From, To string // joints
	Ends     [2]hydrostatics.Vector
	Load     float64 // kN/m, greatest on it, inward
	Length   float64 // m
	EI       float64 // kN·m², against bending
	EA, GA   float64 // kN, against stretching and shear; nought where the model takes it as stiff
	At       []ModelPoint
}

// ModelPoint is one place of a stretch.
type ModelPoint struct {
	At     float64 // m from its start
	Moment float64 // kN·m
	Shear  float64 // kN
	Moves  unit.MM // inward
}

// ModelReaction is what holds a joint.
type ModelReaction struct {
	Joint string
	At    hydrostatics.Vector
	Force [3]float64 // kN and kN·m, in the order of the ways of the kind
}
