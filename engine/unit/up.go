package unit

import "math"

// Up writes what is needed with so many decimals, rounded up, so that it never looks less than it is. What lies above a
// decimal by less than a thousandth of its unit is left there.
func Up[T ~float64](v T, decimals int) string {
	scale := math.Pow10(decimals)
	return Text(math.Ceil(float64(float64(v)*scale)-1e-3)/scale, decimals)
}
