// Package section reckons what a stiffener is good for from its shape: area, neutral axis, inertia, section moduli, shear
// area, torsion, mass and paint, alone or with a strip of plating attached, sound or softened by the heat of welding.
// It is geometry and elastic plate theory; which breadth of plating counts, which strength heat leaves and which stress
// is allowed is said by the rule that asks.
//
// The way through:
//
//	bar, err := section.New(section.Shape{Kind: section.FlatBar, Height: 50, Web: 5})
//	fitted, err := bar.With(6, 200)         // on 6 mm plating of which 200 mm counts
//	p := fitted.Properties()                // p.Neutral, p.I, p.AtPlate, p.AtEdge, p.Web ...
//	soft := fitted.Heated(rule)             // the same after welding, and which strips were softened
//	rows := fitted.Slender(young)           // elastic buckling stress of web and flanges
//
// Axes: y across the stiffener, from the middle of its web; z up from the outer face of the plating, or from the foot of
// the bar where no plating is attached. Millimetres inside; results in the units of their types.
//
// Bending is about the axis through the centroid parallel to the plating. An angle or a bulb flat alone would also bend
// sideways under such a load; the plating to which it is welded keeps it from that. Product gives what that neglects.
// Plating and bar have the same modulus of elasticity. Roundings, fillets and weld metal are not counted.
//
//   - Question: what is this bar good for on this plate?
//   - In: a shape in mm, the plating that counts with it.
//   - Out: area, inertia, moduli, shear area, buckling, mass; an error where the sizes make no section.
//   - Source: elastic theory; the tests name their handbook cases.
package section
