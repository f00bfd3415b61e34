package proof

import (
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/loading"
)

// functionAfloat finds a function of bodies in the water.
func functionAfloat(name string) (function, bool) {
	switch name {
	case "box lever":
		return function{boxInputs("heel_deg"), func(in map[string]float64) float64 { return lever(boxOf(in)(in["heel_deg"])) }}, true
	case "box metacentric height":
		return function{boxInputs(), func(in map[string]float64) float64 { return metacentric(boxOf(in)(0)) }}, true
	case "prism lever":
		return function{prismInputs("heel_deg"), func(in map[string]float64) float64 { return lever(prismOf(in)(in["heel_deg"])) }}, true
	case "prism draught":
		return function{prismInputs(), func(in map[string]float64) float64 { return prismOf(in)(0).rest.Level }}, true
	case "prism metacentric height":
		return function{prismInputs(), func(in map[string]float64) float64 { return metacentric(prismOf(in)(0)) }}, true
	case "free surface":
		return function{[]string{"length_m", "breadth_m", "parts", "density_kg_m3", "mass_kg"}, func(in map[string]float64) float64 {
			return loading.FreeSurface(in["length_m"], in["breadth_m"], int(in["parts"]), in["density_kg_m3"], in["mass_kg"])
		}}, true
	}
	return function{}, false
}

func boxInputs(more ...string) []string {
	return append([]string{"length_m", "breadth_m", "depth_m", "draught_m", "centre_m"}, more...)
}

func prismInputs(more ...string) []string {
	return append([]string{"length_m", "chine_y_m", "chine_z_m", "sheer_y_m", "sheer_z_m", "mass_kg", "centre_m"}, more...)
}

// floated is a body at rest; rest is not finite where it does not float, and so is no result.
type floated struct {
	load hydrostatics.Load
	rest hydrostatics.Rest
	err  error
}

const seaWater = 1025 // kg/m³, cancels out of every lever

func boxOf(in map[string]float64) func(heel float64) floated {
	b, d := in["breadth_m"]/2, in["depth_m"]
	outline := []hydrostatics.Point{{Y: 0, Z: 0}, {Y: b, Z: 0}, {Y: b, Z: d}, {Y: -b, Z: d}, {Y: -b, Z: 0}}
	return prismatic(outline, in["length_m"], in["length_m"]*in["breadth_m"]*in["draught_m"]*seaWater, in["centre_m"])
}

func prismOf(in map[string]float64) func(heel float64) floated {
	c := hydrostatics.Point{Y: in["chine_y_m"], Z: in["chine_z_m"]}
	s := hydrostatics.Point{Y: in["sheer_y_m"], Z: in["sheer_z_m"]}
	outline := []hydrostatics.Point{{}, c, s, {Y: -s.Y, Z: s.Z}, {Y: -c.Y, Z: c.Z}}
	return prismatic(outline, in["length_m"], in["mass_kg"], in["centre_m"])
}

func prismatic(outline []hydrostatics.Point, length, mass, centre float64) func(heel float64) floated {
	load := hydrostatics.Load{Mass: mass, Centre: hydrostatics.Vector{X: length / 2, Z: centre}, Density: seaWater}
	body, err := hydrostatics.NewBody([]hydrostatics.Section{{X: 0, Outline: outline}, {X: length, Outline: outline}}, 2)
	return func(heel float64) floated {
		if err != nil {
			return floated{err: err}
		}
		rest, err := body.Balance(load, heel*math.Pi/180, hydrostatics.Attitude{}, false)
		return floated{load, rest, err}
	}
}

func lever(f floated) float64 {
	if f.err != nil {
		return math.NaN()
	}
	return f.rest.Lever
}

func metacentric(f floated) float64 {
	if f.err != nil {
		return math.NaN()
	}
	return f.rest.Metacentric(f.load)
}
