package weight

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// weigh reduces one weighing and sets beside it the sum of the items as they were on that day.
//
// The net readings balance the boat: their sum is its mass, and the sum of net reading times position over the mass is
// its centre, so the positions must lie at two places at least. Source: balance of moments.
func weigh(rec *record.Weighing, items []Item) Weighing {
	w := Weighing{Record: rec}
	for i := range rec.Points {
		p := &rec.Points[i]
		w.Points = append(w.Points, Point{Record: p, Net: p.Reading.V - p.Tare.V})
	}
	w.Allowed, w.HasAllowed = rec.AllowedMass.Get()
	w.AllowedX, w.HasAllowX = rec.AllowedCentre.Get()
	w.balance()
	w.Reckoned = sum(items, w.onTheDay)
	w.compare()
	w.Working = w.working()
	return w
}

// balance takes mass and centre from the net readings.
func (w *Weighing) balance() {
	if len(w.Points) == 0 {
		w.Why = "no point is written"
		return
	}
	var mass, mx, my float64
	for _, p := range w.Points {
		if p.Net < 0 {
			w.Why = fmt.Sprintf("the tare at point %s is greater than the reading", p.Record.ID)
			return
		}
		net := float64(p.Net)
		mass += net
		mx += float64(net * float64(p.Record.X.V))
		my += float64(net * float64(p.Record.Y.V))
	}
	if mass <= 0 {
		w.Why = "the net readings add up to nothing"
		return
	}
	w.Mass, w.HasMass = unit.KG(mass), true
	if w.apart(func(p *record.WeighPoint) record.Val[unit.M] { return p.X }) {
		w.X, w.HasX = unit.M(mx/mass), true
	} else {
		w.Why = "the centre fore and aft needs points at two places along the boat"
	}
	if w.apart(func(p *record.WeighPoint) record.Val[unit.M] { return p.Y }) {
		w.Y, w.HasY = unit.M(my/mass), true
	}
}

// apart reports whether every point has this position and two of them differ in it.
func (w *Weighing) apart(of func(*record.WeighPoint) record.Val[unit.M]) bool {
	differ := false
	for _, p := range w.Points {
		if !of(p.Record).Set {
			return false
		}
		differ = differ || of(p.Record).V != of(w.Points[0].Record).V
	}
	return differ
}

// onTheDay reports whether an item was on the boat during the weighing: the light craft less what was ashore, and of
// the load only what was aboard.
func (w *Weighing) onTheDay(it *Item) bool {
	if it.Record.Load.V {
		return slices.Contains(w.Record.Aboard.V, it.Record.ID)
	}
	return !slices.Contains(w.Record.Ashore.V, it.Record.ID)
}

// compare takes weighed less reckoned, where both are there.
func (w *Weighing) compare() {
	if w.HasMass && w.Reckoned.Whole() {
		w.DiffMass = w.Mass - w.Reckoned.Mass
	}
	if w.comparesX() {
		w.DiffX = unit.MM(float64(w.X-w.Reckoned.X) / metresPerMM)
	}
}

func (w *Weighing) comparesX() bool { return w.HasX && w.Reckoned.HasX && w.Reckoned.Whole() }

// working writes the balance out, a line a step.
func (w *Weighing) working() []string {
	var lines, nets, moments []string
	for _, p := range w.Points {
		r := p.Record
		lines = append(lines, fmt.Sprintf("point %s at x %s m: %s − %s = %s kg", r.ID, unit.Text(r.X.V, 3), unit.Text(r.Reading.V, 1), unit.Text(r.Tare.V, 1), unit.Text(p.Net, 1)))
		nets = append(nets, unit.Text(p.Net, 1))
		moments = append(moments, unit.Text(p.Net, 1)+" × "+unit.Text(r.X.V, 3))
	}
	if w.HasMass {
		lines = append(lines, fmt.Sprintf("mass: %s = %s kg", strings.Join(nets, " + "), unit.Text(w.Mass, 1)))
	}
	if w.HasX {
		lines = append(lines, fmt.Sprintf("centre fore and aft: (%s) / %s = %s m", strings.Join(moments, " + "), unit.Text(w.Mass, 1), unit.Text(w.X, 3)))
	}
	if w.HasY {
		lines = append(lines, fmt.Sprintf("centre to starboard, likewise with y: %s m", unit.Text(w.Y, 3)))
	}
	if w.Reckoned.Items > 0 {
		lines = append(lines, w.reckonedLine())
	}
	return lines
}

// reckonedLine says what the items come to on that day.
func (w *Weighing) reckonedLine() string {
	s := "items on that day: light craft"
	if ashore := w.Record.Ashore.V; len(ashore) > 0 {
		s += " less " + strings.Join(ashore, ", ")
	}
	if aboard := w.Record.Aboard.V; len(aboard) > 0 {
		s += " with " + strings.Join(aboard, ", ")
	}
	s += " = " + unit.Text(w.Reckoned.Mass, 1) + " kg"
	if w.Reckoned.HasX {
		s += " at x " + unit.Text(w.Reckoned.X, 3) + " m"
	}
	if w.Reckoned.Margin > 0 {
		s += ", margins of " + unit.Text(w.Reckoned.Margin, 1) + " kg in it"
	}
	return s
}
