package grid

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func gap(rule, subject, says, settle string, at ...finding.Place) finding.Finding {
	return finding.Finding{Kind: finding.Gap, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: at}
}

func doubt(rule, subject, says, settle string, at ...finding.Place) finding.Finding {
	return finding.Finding{Kind: finding.Doubt, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: at}
}

func wrong(rule, subject, says, settle string, at ...finding.Place) finding.Finding {
	return finding.Finding{Kind: finding.Contradiction, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: at}
}

func (b *builder) say(f finding.Finding) { b.out.Findings = append(b.out.Findings, f) }

// clear tells of a run that lies outside the hull or its zone, on the wrong edge, or that crosses another.
func (r *run) clear(b *builder, f *field) {
	aft, fore := b.skin.ends()
	if r.fore <= r.aft {
		b.say(wrong("stringer-outside", r.subject(), fmt.Sprintf("%s reaches from x %.2f to %.2f m, which is no length", r.words(), r.aft, r.fore), "write from_x_m aft and to_x_m forward", r.at))
		return
	}
	if r.aft < aft-near || r.fore > fore+near {
		b.say(wrong("stringer-outside", r.subject(), fmt.Sprintf("%s from x %.2f to %.2f m reaches beyond the hull, x %.2f to %.2f m", r.words(), r.aft, r.fore, aft, fore), "measure from_x_m and to_x_m again", r.at))
	}
	from := max(r.aft, aft)
	long := f.course(from).long()
	if g := r.girth(from, long); g > f.outer(from)+near || g < f.inner-near {
		b.say(wrong("stringer-outside", r.subject(), fmt.Sprintf("%s begins %.0f mm from the %s, where the %s is %.0f mm broad", r.words(), 1000*g, f.edgeWords(-1), f.name, 1000*f.outer(from)),
			"measure the offset again", r.at))
	}
}

// ranOut tells of a run that ends between two frames though it does not run out at an edge: it holds no plate there.
func (b *builder) ranOut(f *field) {
	for _, r := range f.runs {
		if r.rec == nil || r.hard() || r.edgeBar() {
			continue
		}
		for i := 1; i < len(f.stops); i++ {
			p, q := f.stops[i-1], f.stops[i]
			end := r.fore
			if r.aft > p.x {
				end = r.aft
			}
			if !r.touches(p.x, q.x) || r.covers(p.x, q.x) || f.runsOut(r, end) {
				continue
			}
			b.say(doubt("stringer-ends", r.subject(), fmt.Sprintf("%s ends at x %.2f m, between %s and %s; the plate of that bay is taken as not held by it", r.words(), end, p.phrase(), q.phrase()),
				"let it end at a frame, or write where it ends", r.at))
		}
	}
}

func (r *run) subject() string {
	if r.rec == nil {
		return "support " + r.name
	}
	return "stringer " + r.rec.ID
}

// oneSided tells of runs on one side only: panels are the same to port, so these hold nothing.
func (b *builder) oneSided(f *field) {
	for _, r := range f.runs {
		if r.side == "port" || r.side == "starboard" {
			b.say(doubt("stringer-one-side", r.subject(), r.words()+" is on one side only; panels are reckoned as if it held no plate, on both sides alike",
				"list the panels beside it by hand where that is too hard", r.at))
		}
	}
}

func (b *builder) endsInPlate(f *field, c *cell) {
	s := c.fore
	b.say(doubt("frame-ends", "frame "+s.name, fmt.Sprintf("frame %s stops %.0f mm from the %s, between %s and %s; the plate there is taken as not held by it",
		s.name, 1000*s.reach, f.edgeWords(-1), c.inner.words(f), c.outer.words(f)), "let it end on a stringer or girder, or at the edge", s.frame.At))
}

func (b *builder) strakesChange(f *field, c *cell) {
	s := c.fore
	b.say(doubt("frame-ends", "frame "+s.name, fmt.Sprintf("frame %s does not reach %s of the %s, and the stringers beside it change there; its panels are taken as ending at the frame",
		s.name, c.outer.words(f), f.name), "list the panels there by hand", s.frame.At))
}

func (b *builder) noBreadth(c *cell) {
	if c.fore.x-c.aft.x > 0.01 {
		return // runs out to nothing at the stem or between converging stringers
	}
	b.say(wrong("bay-zero", "frame "+c.fore.name, fmt.Sprintf("%s and %s stand at one place, x %.3f m", c.aft.phrase(), c.fore.phrase(), c.fore.x), "measure x_m of both again", c.place(c.f.at)))
}

func (b *builder) noSpan(name string, at finding.Place, span float64) {
	b.say(wrong("span-zero", name, fmt.Sprintf("%s has a span of %.0f mm", name, 1000*span), "hold the frames and girders at its ends against the drawing", at))
}

func (b *builder) barOutside(f *face, s *bar) {
	if s.synthetic {
		return
	}
	b.say(wrong("stiffener-outside", "stiffener "+s.rec.ID, fmt.Sprintf("stiffener %s lies outside the plate of the %s", s.name, f.name), "measure offset_m, from_m and to_m again", s.place))
}

func (b *builder) soleUnplaced(p *record.Plating) {
	b.say(gap("sole-height", "plating "+p.ID, "the sole "+p.ID+" has no height and lies in no recess, so it is not laid", "write its z_m", p.At))
}

func (b *builder) bracketNowhere(r *record.Bracket, f *record.Frame) {
	b.say(wrong("bracket-nowhere", "bracket "+r.ID, fmt.Sprintf("bracket %s joins %s at frame %s, where no such member is on record", r.ID, r.Joins.V, f.ID),
		"write the section of the frame there, or take the frame off the bracket's list", r.At, f.At))
}

// noPlate tells of a zone without plate on record.
func (b *builder) noPlate(f *field) {
	switch f.zone {
	case "bottom", "side", "transom":
		b.say(gap("plating-bare", f.name, "no plate of the "+f.name+" is on record, so none of its panels is derived", "write its plate as [plating.NAME], or its panels one by one", gridPlace(b.rec)))
	}
}

// reckonBare sums up what of a zone has plate.
func (b *builder) reckonBare(c *cell, m *measure, some, full bool) {
	z := b.bareZone(c.f.name)
	z.whole += m.area
	if full {
		return
	}
	share := 1.0
	if some {
		share = 0.5 // ends inside the panel
	}
	z.bare += float64(share * m.area)
	if z.where == "" {
		z.where = c.name()
	}
}

func (b *builder) bareFace(f *face, area float64, plated bool) {
	z := b.bareZone(f.name)
	z.whole += area
	if !plated {
		z.bare += area
		z.where = f.name
	}
}

func (b *builder) bareZone(name string) *bareness {
	if z, known := b.bare[name]; known {
		return z
	}
	z := &bareness{zone: name}
	b.bare[name] = z
	b.zones = append(b.zones, name)
	return z
}

func (b *builder) overlap(p, q *record.Plating) {
	key := [2]*record.Plating{p, q}
	if b.twice[key] || p.Thickness.V == q.Thickness.V && p.Alloy.V == q.Alloy.V {
		return
	}
	b.twice[key] = true
	b.say(wrong("plating-twice", "plating "+q.ID, fmt.Sprintf("plates %s (%s mm) and %s (%s mm) cover the same part of the %s; the thinner is taken", p.ID, text(p.Thickness.V), q.ID, text(q.Thickness.V), p.Zone.V),
		"write where each begins and ends: from_x_m, to_x_m, inner_m, outer_m", p.At, q.At))
}

func text[T ~float64](v T) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", float64(v)), ".0")
}

// assumeEnds keeps what was taken for the ends of runs that do not say it, once for each record.
func (b *builder) assumeEnds(r *run, through bool) {
	if b.saidEnds[r.rec] {
		return
	}
	b.saidEnds[r.rec] = true
	if through {
		b.passing = append(b.passing, r.rec.ID)
	}
}

func tankAssumption(t *record.Tank, high float64) finding.Assumption {
	return finding.Assumption{Subject: "tank " + t.ID, Basis: finding.Practice,
		Says:   fmt.Sprintf("the plating of tank %s is taken as a box over its free surface, %.0f mm high, which gives its volume", t.ID, math.Round(1000*high)),
		Settle: "list its panels by hand where it has another shape"}
}
