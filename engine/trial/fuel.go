package trial

import (
	"math"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// planingCoefficient is the speed coefficient V/√(g·B) from which a setting counts as on the plane. Practice: below it
// a planing method does not hold and the trial speaks for itself.
const planingCoefficient = 1.5

// gravity is standard gravity in m/s² (by definition).
const gravity = 9.80665

// metresPerSecond is one knot (by definition).
const metresPerSecond = 1852.0 / 3600.0

// planingFrom gives the speed in knots from which the boat counts as on the plane, by its chine beam.
func planingFrom(boat *record.Boat) Value {
	beam, ok := boat.BeamChine.Get()
	if !ok {
		return Value{Why: "boat.beam_chine_m is not written"}
	}
	return Value{Value: planingCoefficient * math.Sqrt(gravity*float64(beam)) / metresPerSecond, Has: true}
}

// fuelAboard takes what range is reckoned with. The volume of the tanks is never taken for what the engines can draw:
// range would come out too long.
func (t *Trial) fuelAboard(boat *record.Boat) {
	if v, ok := boat.FuelUsable.Get(); ok {
		t.Usable = v
	} else {
		t.missing = append(t.missing, "boat.fuel_usable_l")
	}
	if v, ok := t.Record.Reserve.Get(); ok {
		t.Reserve = v
	} else {
		t.missing = append(t.missing, t.key("reserve_percent"))
	}
	t.HasRange = len(t.missing) == 0
	if !t.HasRange {
		t.RangeWhy = strings.Join(t.missing, " and ") + " not written"
		return
	}
	t.RangeWhy = "usable fuel " + unit.Text(t.Usable, 0) + " l, of which " + unit.Text(t.Reserve, 0) + " % is kept back"
}

// burns reports whether fuel flow was measured on any run that was used.
func (t *Trial) burns() bool {
	for _, s := range t.Settings {
		if s.Fuel.Has {
			return true
		}
	}
	return false
}

// mostEconomical gives the setting on the plane with the least litres per nautical mile, or why there is none.
func (t *Trial) mostEconomical() (best int, why string) {
	if !t.Planing.Has {
		return -1, t.Planing.Why
	}
	best = -1
	for i, s := range t.Settings {
		if !s.PerMile.Has || s.Speed.Value < t.Planing.Value {
			continue
		}
		if best < 0 || s.PerMile.Value < t.Settings[best].PerMile.Value {
			best = i
		}
	}
	if best < 0 {
		return -1, "no setting on the plane has both a mean speed and a fuel flow"
	}
	return best, ""
}

// perMile gives litres per nautical mile.
func (s *Setting) perMile() Value {
	switch {
	case !s.Fuel.Has:
		return Value{Why: "no fuel flow written"}
	case !s.Speed.Has:
		return Value{Why: "no mean speed: " + s.Why}
	case s.Speed.Value <= 0:
		return Value{Why: "the boat did not move"}
	}
	return Value{Value: s.Fuel.Value / s.Speed.Value, Has: true}
}

// reach gives the range in nautical miles with the reserve kept back.
func (s *Setting) reach(t *Trial) Value {
	switch {
	case !s.PerMile.Has:
		return Value{Why: s.PerMile.Why}
	case !t.HasRange:
		return Value{Why: t.RangeWhy}
	case s.PerMile.Value <= 0:
		return Value{Why: "no fuel was burnt"}
	}
	kept := 1 - float64(t.Reserve)/100
	return Value{Value: float64(t.Usable) * kept / s.PerMile.Value, Has: true}
}
