package planing

import (
	"hullfile/engine/method"
	"hullfile/engine/trial"
)

// sisters back-figures the speed coefficient from the fastest mean of the trial and applies it to other hulls of the family.
func (in *Input) sisters(c *Case, m *models, t *trial.Trial) {
	boat := &in.Hull.Boat
	if t == nil || t.Top < 0 || !boat.Power.Set || !(boat.Power.V > 0) {
		return
	}
	top := t.Settings[t.Top].Speed.Value
	g := method.GivenMap{
		"sister.speed_kn": {Number: top, Unit: "kn", Place: t.Record.At, Source: "fastest mean of the trial"},
		"sister.mass_kg":  {Number: c.Mass, Unit: "kg", Place: t.Record.Mass.At},
		"boat.power_kw":   {Number: float64(boat.Power.V), Unit: "kW", Place: boat.Power.At},
	}
	w, err := m.sister.Evaluate("boat", g, nil)
	if err != nil {
		return
	}
	c.Shown.Sister = w
	for _, s := range in.Sisters {
		b := &s.Boat
		if !b.LoadedMass.Set || !b.Power.Set || !(b.Power.V > 0) {
			continue
		}
		of := method.GivenMap{
			"sister.other_mass_kg":  {Number: float64(b.LoadedMass.V), Unit: "kg", Place: b.LoadedMass.At},
			"sister.other_power_kw": {Number: float64(b.Power.V), Unit: "kW", Place: b.Power.At},
		}
		under, err := m.sister.Evaluate("sister", of, w)
		if err != nil {
			continue
		}
		one := Sister{Number: s.Number, Mass: float64(b.LoadedMass.V), Power: float64(b.Power.V)}
		v, ok := under.Get("V_s")
		if !ok || v.State != method.Sound && v.State != method.Outside {
			continue
		}
		one.Speed, one.Outside = v.Value, v.State == method.Outside
		c.Sisters = append(c.Sisters, one)
	}
}
