package section

import "hullfile/engine/unit"

// Section is a shape as metal in place, alone or on plating.
type Section struct {
	Shape     Shape
	Parts     []Part
	Plate     unit.MM  // thickness of the attached plating, nought without
	Effective unit.MM  // breadth of plating that counts
	Says      []string // what was approximated, and how; whole sentences
	outline   outline
	twist     float64 // torsion constant of the sound metal, mm⁴
}

// Properties is what a section is good for. Heights are above the outer face of the plating, or above the foot where no
// plating is attached.
type Properties struct {
	Area    unit.CM2 // with plating
	Bar     unit.CM2 // without
	Depth   unit.MM  // over all, with plating
	Neutral unit.MM  // neutral axis
	Across  unit.MM  // centroid beside the middle of the web
	I       unit.CM4 // about the neutral axis, parallel to the plating
	AtPlate unit.CM3 // section modulus to the outer face of the plating or to the foot
	AtEdge  unit.CM3 // section modulus to the free edge
	Web     unit.CM2 // shear area: the webs alone
	Peak    unit.CM2 // area that gives the greatest shear stress: I t / S at the neutral axis
	Upright unit.CM4 // inertia about the axis square to the plating
	Product unit.CM4 // product of inertia; nought for what is the same on both sides
	Torsion unit.CM4 // torsion constant
	Paint   unit.M   // length of the outline that paint reaches, which is m² a metre of bar
}

// Mass is that of a metre of the bar, without plating.
func (p Properties) Mass(density unit.KGPerM3) unit.KGPerM {
	return unit.KGPerM(float64(p.Bar) * 1e-4 * float64(density))
}
