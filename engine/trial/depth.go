package trial

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// depthFroude gives the speed of a setting as a part of the fastest wave that the depth of water allows, V/√(g·h).
func (s *Setting) depthFroude(t *Trial) Value {
	depth, ok := t.Record.Depth.Get()
	switch {
	case !ok:
		return Value{Why: "depth of water not written"}
	case !s.Speed.Has:
		return Value{Why: "no mean speed: " + s.Why}
	}
	return Value{Value: s.Speed.Value * metresPerSecond / math.Sqrt(gravity*float64(depth)), Has: true}
}

// depthLine is its working.
func (s *Setting) depthLine(t *Trial) Line {
	return Line{
		Name:   "depth Froude number",
		Text:   fmt.Sprintf("%s kn × %s m/s / √(%s m/s² × %s m)", unit.Text(s.Speed.Value, 2), unit.Text(metresPerSecond, 4), unit.Text(gravity, 2), unit.Text(t.Record.Depth.V, 1)),
		Result: unit.Text(s.Depth.Value, 2), Source: fmt.Sprintf("definition; %s to %s distorts the hump (recalled)", unit.Text(shallowFrom, 1), unit.Text(shallowTo, 1)),
		Basis: finding.Derived,
	}
}
