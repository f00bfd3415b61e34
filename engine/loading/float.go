package loading

import (
	"errors"
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/unit"
)

const (
	mostHeel = 60 * math.Pi / 180 // beyond which no rest is looked for
	heelStep = 2 * math.Pi / 180
)

// float lets a condition find its rest. What undrained recesses hold is air: water is outside until their rim goes under.
func (a *assessor) float(c *Condition) {
	subject := "condition " + c.ID
	load := c.Load(a.out.Density, false)
	up, err := a.lines.Float(load)
	if err != nil {
		c.Why = a.noRest(c, subject, err)
		return
	}
	c.Afloat, c.GM = up, up.GM
	c.GMFluid = c.GM - c.Rise
	body, err := a.lines.Body(false)
	if err == nil {
		c.Rest, err = Settle(body, c.Load(a.out.Density, true), up.Rest.Attitude)
	}
	if err != nil {
		c.Why = a.noRest(c, subject, err)
		return
	}
	c.Floats = true
	c.Heel = c.Rest.Heel * 180 / math.Pi
	c.Least, c.LeastX = lowestEdge(a.lines, c.Rest.Attitude)
	if c.GMFluid <= 0 {
		a.say(finding.Shortfall, "condition-gm", subject, fmt.Sprintf("%s: metacentric height %s m with free surfaces, so the boat does not stay upright; it lies at %s°",
			c.Title, unit.Text(c.GMFluid, 3), unit.Text(c.Heel, 1)), "less mass high up, or tanks that are full or empty", a.placesOf(c)...)
	}
}

func (a *assessor) placesOf(c *Condition) []finding.Place {
	if c.Record != nil {
		return []finding.Place{c.Record.At}
	}
	if len(a.lines.Stations) > 0 {
		return []finding.Place{a.lines.Stations[0].Place}
	}
	return nil
}

func (a *assessor) noRest(c *Condition, subject string, err error) string {
	rule, kind := "condition-rest", finding.Contradiction
	if errors.Is(err, hydrostatics.ErrSinks) {
		rule = "condition-sinks"
	}
	says := fmt.Sprintf("%s, %s kg: %v", c.Title, unit.Text(c.Mass, 0), err)
	a.say(kind, rule, subject, says, "hold the masses and the lines against each other", a.placesOf(c)...)
	return err.Error()
}

// Settle finds the heel at which a body lies by itself, near upright: on the side to which its centre of gravity is off, and
// to starboard where it is not. from is the rest upright. Errors are those of hydrostatics; ErrNoRest where it lies nowhere
// within 60°.
func Settle(body *hydrostatics.Body, load hydrostatics.Load, from hydrostatics.Attitude) (hydrostatics.Rest, error) {
	up, err := body.Balance(load, 0, from, false)
	if err != nil {
		return up, err
	}
	side := 1.0
	if load.Centre.Y < 0 {
		side = -1
	}
	const none = 1e-6 // metre of lever that is taken for nothing
	if math.Abs(up.Lever) < none && up.Metacentric(load) > 0 {
		return up, nil
	}
	before := up
	for h := heelStep; h <= mostHeel+1e-9; h += heelStep {
		now, err := body.Balance(load, side*h, before.Attitude, false)
		if err != nil {
			return now, err
		}
		if side*now.Lever >= 0 {
			return halve(body, load, before, now, side)
		}
		before = now
	}
	return before, hydrostatics.ErrNoRest
}

// halve narrows the heel at which the lever changes its sign.
func halve(body *hydrostatics.Body, load hydrostatics.Load, lo, hi hydrostatics.Rest, side float64) (hydrostatics.Rest, error) {
	for k := 0; k < 40 && math.Abs(hi.Heel-lo.Heel) > 1e-6; k++ {
		mid, err := body.Balance(load, (lo.Heel+hi.Heel)/2, lo.Attitude, false)
		if err != nil {
			return mid, err
		}
		if side*mid.Lever >= 0 {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi, nil
}

// lowestEdge is the least height of the sheer above the water on either side, and where.
func lowestEdge(h *lines.Hull, at hydrostatics.Attitude) (least, x float64) {
	least = math.Inf(1)
	for _, p := range h.Along(lines.Sheer) {
		for _, y := range []float64{p.Y, -p.Y} {
			if v := at.Height(hydrostatics.Vector{X: p.X, Y: y, Z: p.Z}); v < least {
				least, x = v, p.X
			}
		}
	}
	return least, x
}
