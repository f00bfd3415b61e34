package main

import (
	"strings"

	"hullfile/engine/compare"
)

// compared prints a comparison: how much changed, and then group by group what to look at again and why.
func (s *screen) compared(c *compare.Comparison) {
	s.head("%s", c.Old.Name()+" -> "+c.New.Name())
	s.paragraph("", c.Says())
	if c.Old.Version != c.New.Version {
		s.paragraph("", "The two were made by different versions of the program, "+c.Old.Version+" and "+c.New.Version+"; some changes may come from that.")
	}
	for i := range c.Groups {
		s.group(&c.Groups[i])
	}
}

func (s *screen) group(g *compare.Group) {
	s.line("")
	s.head("%s", g.Name)
	s.paragraph("  look again: ", g.Again)
	for i, one := range g.Standings {
		s.under(i, "standings")
		s.paragraph("    - ", one.Subject+", "+one.Rule+": "+one.Words()+". "+one.Says)
	}
	for i, t := range g.Findings {
		s.under(i, "findings")
		s.paragraph("    - ", t.Subject+": "+t.Words())
	}
	for i, r := range g.Records {
		s.under(i, "records")
		s.paragraph("    - ", strings.Join(without(r.What+": "+r.Words(), at(r.At)), " "))
	}
	for i, r := range g.Results {
		s.under(i, "results")
		s.paragraph("    - ", r.What+": "+r.Words())
	}
	for i, p := range g.Documents {
		s.under(i, "documents")
		s.paragraph("    - ", p.Title+" ("+p.Key+"): "+p.Words())
	}
}

// under writes the head above the first of several.
func (s *screen) under(i int, what string) {
	if i == 0 {
		s.line("  %s", what)
	}
}

func at(place string) string {
	if place == "" {
		return ""
	}
	return "(" + place + ")"
}
