package main

import (
	"fmt"
	"strings"

	"hullfile/engine/compare"
)

// compared prints a comparison: how much changed, and then group by group what to look at again and why. More than a screen holds is
// told in short, one group in a few lines, unless all is asked for.
func (s *screen) compared(c *compare.Comparison, all bool) {
	s.head("%s", c.Old.Name()+" -> "+c.New.Name())
	s.paragraph("", c.Says())
	if c.Old.Version != c.New.Version {
		s.paragraph("", "The two were made by different versions of the program, "+c.Old.Version+" and "+c.New.Version+"; some changes may come from that.")
	}
	short := c.Long() && !all
	if short {
		s.line("")
	}
	for i := range c.Groups {
		if short {
			s.groupInShort(&c.Groups[i])
			continue
		}
		s.group(&c.Groups[i])
	}
	if short {
		s.line("")
		s.paragraph("", "In short. Each change stands on the page that --page writes, and in what --all and --json print.")
	}
}

// groupInShort says of a group what is not met any more, and how much changed.
func (s *screen) groupInShort(g *compare.Group) {
	var parts []string
	for _, p := range []struct {
		n         int
		one, many string
	}{{len(g.Standings), "outcome", "outcomes"}, {len(g.Findings), "finding", "findings"}, {len(g.Things()), "thing on record", "things on record"}, {len(g.Results), "result", "results"}, {len(g.Documents), "document", "documents"}} {
		switch {
		case p.n == 1:
			parts = append(parts, "1 "+p.one)
		case p.n > 1:
			parts = append(parts, fmt.Sprintf("%d %s", p.n, p.many))
		}
	}
	s.paragraph("", g.Name+": "+strings.Join(parts, ", "))
	if met := g.Met(); met != "" {
		s.paragraph("  not met now: ", met)
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
