package method

import (
	"math"
	"sort"
	"strings"

	"hullfile/engine/finding"
)

// function is a mathematical function that formulas may call. Angles are in degrees, as records hold them, and the
// names say so.
type function struct {
	least, most int // how many arguments; most 0 for any number
	call        func(args []float64) float64
}

func one(f func(float64) float64) function {
	return function{1, 1, func(a []float64) float64 { return f(a[0]) }}
}

// functions is the whole list; everything else is refused.
var functions = map[string]function{
	"min":   {2, 0, smallest},
	"max":   {2, 0, greatest},
	"clamp": {3, 3, func(a []float64) float64 { return math.Max(a[1], math.Min(a[0], a[2])) }},
	"abs":   one(math.Abs),
	"sqrt":  one(math.Sqrt),
	"cbrt":  one(math.Cbrt),
	"exp":   one(math.Exp),
	"ln":    one(math.Log),
	"log10": one(math.Log10),
	"sind":  one(func(x float64) float64 { return math.Sin(x * (math.Pi / 180)) }),
	"cosd":  one(func(x float64) float64 { return math.Cos(x * (math.Pi / 180)) }),
	"tand":  one(func(x float64) float64 { return math.Tan(x * (math.Pi / 180)) }),
	"asind": one(func(x float64) float64 { return math.Asin(x) * (180 / math.Pi) }),
	"acosd": one(func(x float64) float64 { return math.Acos(x) * (180 / math.Pi) }),
	"atand": one(func(x float64) float64 { return math.Atan(x) * (180 / math.Pi) }),
	"floor": one(math.Floor),
	"ceil":  one(math.Ceil),
	"round": one(math.Round),
}

func smallest(args []float64) float64 {
	least := args[0]
	for _, a := range args[1:] {
		least = math.Min(least, a)
	}
	return least
}

func greatest(args []float64) float64 {
	most := args[0]
	for _, a := range args[1:] {
		most = math.Max(most, a)
	}
	return most
}

func functionNames() []string {
	names := make([]string, 0, len(functions))
	for name := range functions {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

// suggest is the hint for a function that does not exist.
func suggest(name string, known []string) string {
	switch name {
	case "sin", "cos", "tan", "asin", "acos", "atan":
		return "angles are in degrees here: write " + name + "d"
	case "log":
		return "write ln or log10"
	}
	sort.Strings(known)
	if near, ok := finding.Nearest(name, known); ok {
		return "did you mean " + near + "?"
	}
	return "known: " + strings.Join(known, ", ")
}
