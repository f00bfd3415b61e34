package inspection

import "math"

// absoluteZero in degrees Celsius, and the pressure of the air at sea level in kPa where none was read.
const (
	absoluteZero = -273.15
	StandardAir  = 101.325
)

// Expected gives the gauge pressure that a tight chamber shows at the end of a hold, when the air in it has changed its
// temperature: p2 = (p1 + air) T2 / T1 - air, the law of ideal gas at one volume. Pressures in kPa, temperatures in °C;
// air is the pressure of the air outside, the same at both ends. NaN where a temperature is below absolute zero.
func Expected(start, air, from, to float64) float64 {
	t1, t2 := from-absoluteZero, to-absoluteZero
	if t1 <= 0 || t2 <= 0 {
		return math.NaN()
	}
	return float64((start+air)*t2/t1) - air
}

// Head gives the height of a column of fresh water in a U-tube for a gauge pressure in kPa, metres: h = p / (rho g) with
// rho = 1000 kg/m³ and g = 9.80665 m/s².
func Head(kPa float64) float64 { return kPa / 9.80665 }
