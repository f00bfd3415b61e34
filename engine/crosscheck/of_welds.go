package crosscheck

import (
	"slices"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// outsideThickness finds joints whose plates are thinner or thicker than their procedure is written for.
func outsideThickness(b *build) []told {
	return b.once(func(j *seam.Joint, _ *record.Weld, p *record.Procedure) (told, bool) {
		if !p.ThickFrom.Set || !p.ThickTo.Set {
			return told{}, false
		}
		for _, t := range b.Plates(j) {
			if t.MM < float64(p.ThickFrom.V)-1e-9 || t.MM > float64(p.ThickTo.V)+1e-9 {
				return tell("joint "+j.Record.ID, "weld by a procedure that covers the plates, or test one", at(t.At, p.ThickFrom.At),
					"joint %s has plate of %s mm, but %s is for %s to %s mm", j.Record.ID, t.Text, named(p), unit.Text(p.ThickFrom.V, 1), unit.Text(p.ThickTo.V, 1)), true
			}
		}
		return told{}, false
	})
}

// once asks about each joint and procedure once, however many welds the joint has by it.
func (b *build) once(wrong func(*seam.Joint, *record.Weld, *record.Procedure) (told, bool)) []told {
	type pair struct {
		j *seam.Joint
		p *record.Procedure
	}
	asked := map[pair]bool{}
	var all []told
	b.each(func(j *seam.Joint, w *record.Weld, p *record.Procedure) {
		if asked[pair{j, p}] {
			return
		}
		asked[pair{j, p}] = true
		if t, is := wrong(j, w, p); is {
			all = append(all, t)
		}
	})
	return all
}

// otherGroup finds joints in metal of a group that their procedure does not name.
func otherGroup(b *build) []told {
	return b.once(func(j *seam.Joint, _ *record.Weld, p *record.Procedure) (told, bool) {
		if !p.Groups.Set {
			return told{}, false
		}
		for _, part := range j.Parts {
			alloy := b.Metal(part)
			group := seam.GroupOf(alloy.V)
			if group == "" || covers(p.Groups.V, group) {
				continue
			}
			return tell("joint "+j.Record.ID, "weld by a procedure for both metals, or test one", at(alloy.At, p.Groups.At),
				"part %s of joint %s is %s, material group %s; %s is for group %s", part.ID, j.Record.ID, alloy.V, group, named(p), strings.Join(p.Groups.V, ", ")), true
		}
		return told{}, false
	})
}

// covers reports whether a group, or the group that it is part of, is in the list.
func covers(groups []string, group string) bool {
	return slices.ContainsFunc(groups, func(g string) bool { return g == group || strings.HasPrefix(group, g+".") })
}

// otherPosition finds welds in a position that their procedure does not name.
func otherPosition(b *build) []told {
	var all []told
	b.each(func(j *seam.Joint, w *record.Weld, p *record.Procedure) {
		pos := w.Position
		if !pos.Set {
			pos = j.Record.Position
		}
		if pos.Set && p.Positions.Set && !slices.Contains(p.Positions.V, pos.V) {
			all = append(all, tell("weld "+w.ID, "correct the position, or weld by a procedure that holds for it", at(pos.At, p.Positions.At),
				"weld %s of joint %s was made in position %s; %s is for %s", w.ID, j.Record.ID, pos.V, named(p), strings.Join(p.Positions.V, ", ")))
		}
	})
	return all
}

// otherJoint finds joints of a kind that their procedure is not for: a butt by a fillet procedure, or one side where the
// procedure says both.
func otherJoint(b *build) []told {
	return b.once(func(j *seam.Joint, _ *record.Weld, p *record.Procedure) (told, bool) {
		if kind := seam.KindOf(j.Record); kind != "" && p.Weld.Set && p.Weld.V != kind {
			return tell("joint "+j.Record.ID, "correct the procedure or the kind of joint", at(j.Record.Type.At, p.Weld.At),
				"joint %s is a %s joint, but %s is for %s welds", j.Record.ID, j.Record.Type.V, named(p), p.Weld.V), true
		}
		if j.Record.Sides.Set && p.Sides.Set && j.Record.Sides.V != p.Sides.V {
			return tell("joint "+j.Record.ID, "correct the procedure or the drawing of the joint", at(j.Record.Sides.At, p.Sides.At),
				"joint %s is welded %q, but %s is for %q", j.Record.ID, j.Record.Sides.V, named(p), p.Sides.V), true
		}
		return told{}, false
	})
}

// otherFiller finds welds with a filler that their procedure does not name.
func otherFiller(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		c := b.Consumables[w.Filler.V]
		if c == nil || !c.Classification.Set || !p.Fillers.Set || slices.ContainsFunc(p.Fillers.V, func(f string) bool { return fillerName(f) == fillerName(c.Classification.V) }) {
			return
		}
		all = append(all, tell("weld "+w.ID, "read the label of the spool", at(w.Filler.At, c.Classification.At, p.Fillers.At),
			"weld %s was made with lot %s, %s; %s is for %s", w.ID, c.ID, c.Classification.V, named(p), strings.Join(p.Fillers.V, ", ")))
	})
	return all
}

// fillerName leaves the number of a filler: S Al 5183, ER5183 and 5183 are one.
func fillerName(classification string) string {
	name := strings.ToUpper(strings.ReplaceAll(classification, " ", ""))
	for _, start := range []string{"SAL", "ERAL", "ER", "AL"} {
		name = strings.TrimPrefix(name, start)
	}
	return strings.Trim(name, "()")
}

// siliconFiller finds silicon filler in metal with more than 2 % magnesium: the seam becomes brittle (Mathers, The welding of
// aluminium and its alloys, p. 49; Dwight, Aluminium design and construction, 3.3.4; read).
func siliconFiller(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		for _, w := range j.Welds {
			c := b.Consumables[w.Filler.V]
			if c == nil || !strings.HasPrefix(fillerName(c.Classification.V), "4") {
				continue
			}
			for _, part := range j.Parts {
				alloy := b.Metal(part)
				if g := seam.GroupOf(alloy.V); g != "22.4" && g != "22.3" {
					continue
				}
				all = append(all, tell("weld "+w.ID, "take the weld out and make it again with a filler of the 5000 series", at(w.Filler.At, c.Classification.At, alloy.At),
					"weld %s was made with silicon filler %s in part %s of %s, which has more than 2 %% magnesium", w.ID, c.Classification.V, part.ID, alloy.V))
				break
			}
		}
	}
	return all
}

// outsideThroat finds fillets, drawn or measured, whose throat is outside the range of their procedure.
func outsideThroat(b *build) []told {
	return b.once(func(j *seam.Joint, w *record.Weld, p *record.Procedure) (told, bool) {
		if !p.ThroatFrom.Set || !p.ThroatTo.Set || j.Record.Type.V == "butt" {
			return told{}, false
		}
		for _, a := range []record.Val[unit.MM]{j.Record.Throat, w.Throat} {
			if a.Set && (a.V < p.ThroatFrom.V || a.V > p.ThroatTo.V) {
				return tell("joint "+j.Record.ID, "weld by a procedure for that throat, or measure again", at(a.At, p.ThroatFrom.At),
					"joint %s has a throat of %s mm, but %s is for %s to %s mm", j.Record.ID, unit.Text(a.V, 1), named(p), unit.Text(p.ThroatFrom.V, 1), unit.Text(p.ThroatTo.V, 1)), true
			}
		}
		return told{}, false
	})
}
