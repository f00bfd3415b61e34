// Package beam solves structures of straight members in one plane by the direct stiffness method: frames, loaded in
// their plane, and grillages, loaded square to it. Moments, shears and deflections are exact along each member, not only at
// nodes, and every solution is held against the balance of its loads and reactions.
//
// The way through:
//
//	model := beam.Model{Kind: beam.Frame, Nodes: ..., Members: ..., Supports: ..., Loads: ...}
//	solution, err := model.Solve()          // err names all faults, or the node that nothing holds
//	bar := solution.Bars[0]
//	bar.At(0.4)                             // moment, shear, force along, deflection at 0.4 m
//	bar.Extremes()                          // the greatest and least, and where
//
// The two models of a boat, the ring of a frame and the grillage of a bottom, are made in engine/scantling, from the grid
// and the members that are judged there.
//
// Units: metres, kilonewtons, radians; so EI in kN·m², EA and GA in kN, moments in kN·m, line loads in kN/m. Axes: x to the
// right and y up in a frame; x and y in the plane of a grillage, z square to it; turning is counterclockwise.
//
// The equations are solved here and not by a library, because the same records must give the same bytes on any
// machine: products are rounded before they are summed, and sums have one order. Tests hold the solver against gonum.
//
// Source of the method: any book on matrix analysis of structures, for instance Przemieniecki, Theory of Matrix Structural
// Analysis, 1968, recalled; shear flexibility after Timoshenko.
//
//   - Question: how much does each member of a frame or of a bottom carry, and how far does it bend?
//   - In: nodes, members with their stiffness, what holds them, loads.
//   - Out: moments, shears, forces and deflections along every member; an error that names all faults, or the node
//     that nothing holds.
//   - Source: see above; the published cases are in content/proofs and in the tests.
package beam
