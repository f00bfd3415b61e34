package beam

import (
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// Stiffness is that of a bar of one section.
type Stiffness struct {
	EI float64 // kN·m²
	EA float64 // kN
	GA float64 // kN; nought where shear is taken as stiff
	GJ float64 // kN·m²; nought where torsion is not counted
}

// StiffnessOf gives that of a section: its inertia with plating, its area, its webs in shear and its torsion constant.
// young is the modulus of elasticity; the shear modulus is young / (2 (1 + poisson)). Take the sound section, not the one
// that heat has softened: heat changes strength and not the modulus.
func StiffnessOf(p section.Properties, young unit.MPa, poisson unit.Ratio) Stiffness {
	e := float64(young)
	g := e / (2 * (1 + float64(poisson)))
	return Stiffness{
		EI: e * float64(p.I) * 1e-5,   // N/mm² · cm⁴
		EA: e * float64(p.Area) * 0.1, // N/mm² · cm²
		GA: g * float64(p.Web) * 0.1,
		GJ: g * float64(p.Torsion) * 1e-5,
	}
}
