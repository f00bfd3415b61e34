package capacity

import (
	"fmt"
	"strconv"

	"hullfile/engine/identity"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// This file is how the figures of labels are written. Those of the United States' rule, which a label must not exceed, are
// cut off and never rounded up; kilograms are rounded as the plate that they are held against.

const (
	poundsPerKG = 1 / 0.45359237
	kwPerHP     = 0.745699872
)

// whole gives a figure of the United States' working, never rounded up.
func (a *assessor) whole(symbol, sign string) string {
	v, ok := a.Loading.Value(symbol)
	if !ok || v < 0 {
		return ""
	}
	whole := float64(int(settled(v)))
	if sign == "" {
		return unit.Text(whole, 0)
	}
	return unit.Text(whole, 0) + " lb (" + unit.Text(settled(v)/poundsPerKG, 0) + " kg)"
}

func (a *assessor) horsepower() string {
	hp, ok := a.Power.Value("H_max")
	if !ok {
		return ""
	}
	return unit.Plain(settled(hp)) + " hp (" + unit.Text(hp*kwPerHP, 0) + " kW)"
}

func (a *assessor) pounds(kg unit.KG, set bool) string {
	if !set {
		return ""
	}
	return unit.Text(float64(kg)*poundsPerKG, 0) + " lb (" + unit.Text(kg, 0) + " kg)"
}

// numberOrYear is the hull number, else the year in which building began.
func (a *assessor) numberOrYear() string {
	id := &a.hull.Identity
	if n := identity.Parse(id.HIN.V); id.HIN.Set && n.Maker != "" {
		return id.HIN.V
	}
	if id.KeelLaid.Set {
		return strconv.Itoa(id.KeelLaid.V.Year)
	}
	return ""
}

func (a *assessor) personsMass() string {
	p := &a.hull.Plate
	if !p.Persons.Set || a.PerPerson <= 0 {
		return ""
	}
	return unit.Text(float64(p.Persons.V)*float64(a.PerPerson), 0) + " kg"
}

func (a *assessor) mostPersons() string {
	l, ok := a.Governing(a.Persons)
	return count(l.Persons, ok)
}

// mostLoad is what the governing check leaves.
func (a *assessor) mostLoad() string {
	l, ok := a.Governing(a.Load)
	if !ok {
		return ""
	}
	return unit.Text(l.Load, 0) + " kg"
}

func (a *assessor) value(w *method.Working, symbol string) string {
	v, ok := w.Value(symbol)
	if !ok || v < 0 {
		return ""
	}
	return unit.Text(settled(v), 0) + " kg"
}

func count(n int, set bool) string {
	if !set {
		return ""
	}
	return fmt.Sprint(n)
}

func kilograms(v unit.KG, set bool) string {
	if !set {
		return ""
	}
	return unit.Text(v, 0) + " kg"
}

func kilowatts(v unit.KW, set bool) string {
	if !set {
		return ""
	}
	return unit.Plain(v) + " kW"
}

// oneLine sets an address in one line.
func oneLine(text string) string {
	out := make([]rune, 0, len(text))
	for _, r := range text {
		if r == '\n' {
			out = append(out, ',', ' ')
			continue
		}
		out = append(out, r)
	}
	return string(out)
}
