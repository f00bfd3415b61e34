package trial

import "strings"

// derive fills in what follows from the means of a setting, with the working of each.
func (s *Setting) derive(t *Trial) {
	s.PerMile = s.perMile()
	s.Range = s.reach(t)
	s.Slip = s.slip(t)
	s.Depth = s.depthFroude(t)
	s.Working = s.working(t)
}

// slip gives the part of one by which the boat stays behind its propeller.
func (s *Setting) slip(t *Trial) Value {
	var missing []string
	if !s.RPM.Has {
		missing = append(missing, "engine speed")
	}
	if !t.Record.Pitch.Set {
		missing = append(missing, t.key("pitch_in"))
	}
	if !t.Record.Gear.Set {
		missing = append(missing, t.key("gear_ratio"))
	}
	switch {
	case len(missing) > 0:
		return Value{Why: strings.Join(missing, " and ") + " not written"}
	case !s.Speed.Has:
		return Value{Why: "no mean speed: " + s.Why}
	}
	_, slip := Slip(s.RPM.Value, float64(t.Record.Pitch.V), float64(t.Record.Gear.V), s.Speed.Value)
	return Value{Value: slip, Has: true}
}
