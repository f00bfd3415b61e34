package site

import (
	"strings"

	"hullfile/engine/stability"
	"hullfile/site/chart"
)

// Pictures of the boat afloat; picture.go has the others.

func (l *leaf) leversPicture() Drawing {
	return drawing("Righting lever in every condition", chart.Levers(l.dossier.Stability.Conditions)).says(l.leversSay())
}

func (l *leaf) leverPicture(c *stability.Condition, key string) Drawing {
	return drawing("Righting lever, "+c.Loading.Title, chart.Lever(*c, key)).says(leverSays(c))
}

func (l *leaf) shiftsPicture(t *stability.Inclining) Drawing {
	return drawing("Heel over moment", chart.Shifts(*t)).says(incliningSays(t))
}

func (l *leaf) crowdPicture(h *stability.Heeling) Drawing {
	c := l.leverOf(h.Condition)
	f := chart.Crowd(l.dossier.Lines, *h, nil, l.hull.CrewAreas, l.hull.Boat.Persons.V)
	if c != nil {
		f = chart.Crowd(l.dossier.Lines, *h, c.Loading, l.hull.CrewAreas, l.hull.Boat.Persons.V)
	}
	return drawing("Heel with "+h.Name, f).says(heelingSays(h))
}

// ofPeople reports whether a heeling moment is that of people at one side.
func ofPeople(name string) bool { return strings.Contains(name, "one side") }
