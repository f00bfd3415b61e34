package site

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/fleet"
)

// DesignPage shows the hulls of one design beside each other: what was weighed against what was reckoned, and margins.
type DesignPage struct {
	Design  string
	Says    []string
	Rows    []DesignRow
	Written int
}

// DesignRow is one hull of a design.
type DesignRow struct {
	Link       Link
	Weighing   string
	Mass       string
	Reckoned   string
	Difference string
	Outside    bool // beyond the limits
	Panel      string
	Margin     string
}

// designs writes a page for every design of which two hulls have their file, and gives the links to them.
func (r *register) designs() ([]Link, error) {
	of := map[string][]line{}
	var names []string
	for _, n := range r.lines {
		if n.Sums == "" || n.Design == "" {
			continue
		}
		if of[n.Design] == nil {
			names = append(names, n.Design)
		}
		of[n.Design] = append(of[n.Design], n)
	}
	slices.Sort(names)
	var out []Link
	taken := slugs{}
	for _, name := range names {
		if len(of[name]) < 2 {
			continue
		}
		at := registerDir + "/design-" + taken.take(name) + ".html"
		if err := r.print("design", at, r.below("Design "+name), designPage(name, of[name])); err != nil {
			return nil, err
		}
		out = append(out, Link{Text: name, Href: at, To: at})
	}
	return out, nil
}

// designPage fills the page of a design from its hulls, in order of number.
func designPage(name string, lines []line) DesignPage {
	p := DesignPage{Design: name, Written: len(lines)}
	var above []float64 // weighed above reckoned, per cent
	var of []int        // the rows that these belong to
	for i, n := range lines {
		row := DesignRow{Link: Link{Text: n.Number, Href: "../" + escapePath(n.Number) + "/" + coverName}}
		if w := n.Weighed; w != nil {
			percent := 100 * (w.Mass - w.Reckoned) / w.Reckoned
			row.Weighing, row.Mass, row.Reckoned, row.Difference = w.Key, fmt.Sprintf("%.0f", w.Mass), fmt.Sprintf("%.0f", w.Reckoned), plusMinus(percent)
			above, of = append(above, percent), append(of, i)
		}
		if n.Least != nil {
			row.Panel, row.Margin = n.Least.Panel, plusMinus(100*n.Least.Margin)
		}
		p.Rows = append(p.Rows, row)
	}
	c := fleet.Individuals(above)
	for _, i := range c.Outside {
		p.Rows[of[i]].Outside = true
	}
	p.Says = append(p.Says, chartSays(c, func(i int) string { return lines[of[i]].Number })...)
	p.shorten()
	return p
}

// shorten leaves in a long table the last hulls and those beyond the limits, and says so.
func (p *DesignPage) shorten() {
	if len(p.Rows) <= pageful {
		return
	}
	from := len(p.Rows) - pageful
	var rows []DesignRow
	for i, row := range p.Rows {
		if i >= from || row.Outside {
			rows = append(rows, row)
		}
	}
	p.Rows = rows
	p.Says = append(p.Says, fmt.Sprintf("The table holds the last %d hulls and those outside.", pageful))
}

func plusMinus(v float64) string {
	text := fmt.Sprintf("%+.1f", v)
	if text == "-0.0" {
		text = "+0.0"
	}
	return strings.Replace(text, "-", "\u2212", 1)
}

// chartSays puts the chart of weighings into words.
func chartSays(c fleet.Chart, number func(int) string) []string {
	if c.N == 0 {
		return []string{"None of these hulls has been weighed."}
	}
	says := []string{fmt.Sprintf("%d weighed. On average the weighed mass differs from the reckoned one by %s %%.", c.N, plusMinus(c.Mean))}
	if !c.Limited {
		return append(says, fmt.Sprintf("Limits are given from %d weighed hulls on (practice).", fleet.LeastHulls))
	}
	says = append(says, fmt.Sprintf("As long as nothing in the work changes, nearly all hulls lie between %s %% and %s %%: mean and 2.66 mean ranges from hull to hull (chart of individual values, ISO 7870-2, recalled).", plusMinus(c.Lower), plusMinus(c.Upper)))
	if len(c.Outside) == 0 {
		return append(says, "No hull lies outside.")
	}
	var out []string
	for _, i := range c.Outside {
		out = append(out, number(i))
	}
	return append(says, "Outside: "+strings.Join(out, ", ")+". Look for what was different there.")
}
