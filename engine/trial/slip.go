package trial

import "math"

// The units of slip, each by definition: an inch is 25.4 mm, a nautical mile 1852 m, an hour sixty minutes.
const (
	metresPerInch  = 0.0254
	metresPerMile  = 1852.0
	minutesPerHour = 60.0

	// inchesPerMinute is one knot in inches a minute: 1215.22 (own derivation).
	inchesPerMinute = metresPerMile / (metresPerInch * minutesPerHour)
)

// Slip gives the speed in knots at which the propeller would advance if the water were a thread of its pitch, and the
// part of one by which the boat stays behind it. rpm is of the engine, pitch nominal in inches, gear the turns of the
// engine for one of the propeller. Both results are not numbers unless rpm, pitch and gear are above nought.
//
// Pitch is nominal and a cupped blade shifts it, so slip compares runs with each other; below nought it says that
// pitch, gear, speed or engine speed is wrong. Source: own derivation from the definition of pitch.
func Slip(rpm, pitchIn, gear, speedKn float64) (theoretical, slip float64) {
	if rpm <= 0 || pitchIn <= 0 || gear <= 0 {
		return math.NaN(), math.NaN()
	}
	theoretical = rpm * pitchIn / (gear * inchesPerMinute)
	return theoretical, 1 - speedKn/theoretical
}
