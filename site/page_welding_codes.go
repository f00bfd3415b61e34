package site

import (
	"slices"
	"strings"
)

// CodeRow is a code that procedures and certificates are written with, and what it stands for.
type CodeRow struct{ Code, Means, Standard string }

// codesOf lists the codes of a standard in its order. What they stand for is given in our own words and from memory.
type codesOf struct {
	variables []string // of a procedure that are written in them
	standard  string
	codes     [][2]string
}

// weldCodes gives the codes that welding of aluminium is written with.
func weldCodes() []codesOf {
	return []codesOf{
		{[]string{"process"}, "ISO 4063", [][2]string{{"131", "metal inert gas welding, solid wire"}, {"141", "tungsten inert gas welding, solid filler"}, {"43", "friction stir welding"}}},
		{[]string{"material groups"}, "ISO/TR 15608", [][2]string{
			{"21", "pure aluminium"}, {"22", "alloys that are not hardened by heat"}, {"22.1", "aluminium with manganese"}, {"22.2", "up to 1.5 % magnesium"},
			{"22.3", "more than 1.5 and up to 3.5 % magnesium"}, {"22.4", "more than 3.5 % magnesium"}, {"23", "alloys that are hardened by heat"},
			{"23.1", "magnesium and silicon"}, {"23.2", "zinc and magnesium"}}},
		{[]string{"positions"}, "ISO 6947", [][2]string{
			{"PA", "flat, from above"}, {"PB", "fillet on a level plate, from above"}, {"PC", "level seam on an upright plate"}, {"PD", "fillet under a level plate, from below"},
			{"PE", "overhead"}, {"PF", "upright, upward"}, {"PG", "upright, downward"}, {"PH", "round a fixed pipe, upward"}, {"H-L045", "round a pipe at 45°, upward"}}},
		{[]string{"sides"}, "ISO 9606-2", [][2]string{{"ss nb", "from one side, no backing"}, {"ss mb", "from one side, on backing"}, {"bs", "from both sides"}}},
		{[]string{"shielding gas"}, "ISO 14175", [][2]string{{"I1", "argon"}, {"I2", "helium"}, {"I3", "argon with helium"}}},
		{[]string{"kind of current"}, "usage of the trade", [][2]string{{"DC+", "direct current, electrode positive"}, {"DC-", "direct current, electrode negative"}, {"AC", "alternating current"}}},
	}
}

// means gives in words what a variable of a procedure is written with; nothing where a code is not known.
func means(variable, written string) string {
	for _, set := range weldCodes() {
		if !slices.Contains(set.variables, variable) {
			continue
		}
		all := strings.Split(written, ", ")
		var out []string
		for _, one := range all {
			for _, c := range set.codes {
				switch {
				case c[0] != one:
				case len(all) == 1:
					out = append(out, c[1])
				default:
					out = append(out, c[0]+" "+c[1])
				}
			}
		}
		if len(out) == len(all) {
			return strings.Join(out, "; ")
		}
	}
	return ""
}

// codeRows lists the codes that stand in procedures, tests and certificates of the page.
func codeRows(p *WeldingPage) []CodeRow {
	var text strings.Builder
	add := func(all ...string) {
		for _, s := range all {
			text.WriteString(" " + strings.NewReplacer(",", " ", ";", " ").Replace(s) + " ")
		}
	}
	for _, one := range p.Procedures {
		for _, v := range one.Variables {
			if slices.ContainsFunc(weldCodes(), func(c codesOf) bool { return slices.Contains(c.variables, v.Name) }) {
				add(v.Written, v.Qualified.Text)
			}
		}
		for _, t := range one.Tests {
			for _, part := range strings.Split(t.Piece, ", ") {
				if !strings.HasSuffix(part, " mm") {
					add(part)
				}
			}
		}
	}
	for _, w := range p.Welders {
		for _, r := range w.Ranges {
			add(r.Positions, r.Groups, r.Sides)
		}
	}
	var out []CodeRow
	for _, set := range weldCodes() {
		for _, c := range set.codes {
			if strings.Contains(text.String(), " "+c[0]+" ") {
				out = append(out, CodeRow{c[0], c[1], set.standard})
			}
		}
	}
	return out
}
