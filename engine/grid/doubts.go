package grid

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// doubts tells what the grid as a whole leaves open.
func (b *builder) doubts() {
	for _, f := range b.fields {
		b.ranOut(f)
		b.oneSided(f)
	}
	b.pillars()
	b.bareZones()
	b.framesUnnamed()
	b.runsUnnamed()
	b.jointsOpen()
	b.throats()
	b.assumptions()
}

// bareZones tells of zones that are plated only in part.
func (b *builder) bareZones() {
	for _, name := range b.zones {
		z := b.bare[name]
		if z.bare < 0.002*z.whole || z.whole == 0 {
			continue
		}
		b.say(gap("plating-bare", name, fmt.Sprintf("%.0f %% of the %s has no plate on record, first at %s; nothing is derived there", 100*z.bare/z.whole, name, z.where),
			"write where its plates begin and end so that they cover the whole zone", b.firstPlate(name)...))
	}
}

func (b *builder) firstPlate(zone string) []finding.Place {
	for i := range b.rec.Platings {
		if p := &b.rec.Platings[i]; strings.HasPrefix(zone, p.Zone.V) {
			return []finding.Place{p.At}
		}
	}
	return []finding.Place{gridPlace(b.rec)}
}

// framesUnnamed tells of frames that name no section.
func (b *builder) framesUnnamed() {
	if len(b.unnamed) == 0 {
		return
	}
	b.say(gap("frame-without-section", "grid", framesText(b.unnamed)+" without a section on record: taken as holding bottom and side plate, and not judged",
		"write bottom and side of each frame, naming a section", framePlaces(b.unnamed)...))
}

func framesText(all []*record.Frame) string {
	var ids []string
	for _, f := range all {
		ids = append(ids, f.ID)
	}
	if len(ids) == 1 {
		return "frame " + ids[0]
	}
	return "frames " + strings.Join(ids, ", ")
}

// runsUnnamed tells of stringers without a section.
func (b *builder) runsUnnamed() {
	var ids []string
	var at []finding.Place
	for i := range b.rec.Stringers {
		if s := &b.rec.Stringers[i]; !s.Section.Set && s.Kind.V != "formed chine" {
			ids, at = append(ids, s.ID), append(at, s.At)
		}
	}
	if len(ids) > 0 {
		b.say(gap("stringer-without-section", "grid", "without a section on record: "+strings.Join(ids, ", ")+"; taken as holding the plate beside it, and not judged",
			"write the section of each", at...))
	}
}

// jointsOpen tells of frames whose joints are said to be fixed where no locking piece is on record.
func (b *builder) jointsOpen() {
	for _, j := range []struct {
		joins, word string
		of          func(*record.Frame) record.Val[string]
		has         func(*record.Frame) bool
	}{
		{"frame to keel", "keel", func(f *record.Frame) record.Val[string] { return f.Keel }, func(f *record.Frame) bool { return f.Bottom.Set && !f.Floor.Set }},
		{"frame to chine", "chine", func(f *record.Frame) record.Val[string] { return f.Chine }, func(f *record.Frame) bool { return f.Bottom.Set || f.Floor.Set }},
		{"frame to deck", "sheer", func(f *record.Frame) record.Val[string] { return f.Sheer }, func(f *record.Frame) bool { return f.Side.Set && f.Deck.Set }},
	} {
		var open []*record.Frame
		for _, f := range b.frames {
			if j.of(f).V == "fixed" && j.has(f) && !b.bracketed(f, j.joins) {
				open = append(open, f)
			}
		}
		if len(open) > 0 {
			b.say(gap("joint-without-bracket", "grid", framesText(open)+": the joint at the "+j.word+" is fixed, and no bracket that locks it is on record",
				"write the bracket, or write the joint as pinned", framePlaces(open)...))
		}
	}
}

func (b *builder) bracketed(f *record.Frame, joins string) bool {
	for _, k := range b.out.Brackets {
		if k.Frame == f.ID && (k.Record.Joins.V == joins || k.Record.Joins.V == "frame to frame" && joins == "frame to chine") {
			return true
		}
	}
	return false
}

// thickest is the greatest throat of a fillet for one millimetre of the thinner part: beyond it the weld is stronger than
// the plate and only burns it. Practice of the trade, as 0.7 of the thickness.
const thickest = 0.7

// drawnTo is half of the step in which throats are drawn, mm.
const drawnTo = 0.25

// throats tells of brackets whose fillets are too large for their plate or for the web they sit on.
func (b *builder) throats() {
	of := b.sectionsByPiece()
	for i := range b.rec.Brackets {
		r := &b.rec.Brackets[i]
		thin, what, at := float64(r.Thickness.V), "the bracket", r.Thickness.At
		for _, k := range b.out.Brackets {
			if k.Record != r || k.Member == "" {
				continue
			}
			if s := of[k.Member]; s != nil && s.Web.Set && float64(s.Web.V) < thin {
				thin, what, at = float64(s.Web.V), "the web of section "+s.ID, s.Web.At
			}
		}
		if t := float64(r.Throat.V); t > float64(thickest*thin)+drawnTo {
			b.say(doubt("bracket-throat", "bracket "+r.ID, fmt.Sprintf("the fillets of bracket %s have a throat of %s mm on %s of %s mm; more than %s mm is more weld than the plate can carry (practice: 0.7 of the thinner part)",
				r.ID, text(t), what, text(thin), text(thickest*thin)), "look at the drawing; it is used as it stands", r.Throat.At, at))
		}
	}
}

// sectionsByPiece are the sections of the members of the grid by their names.
func (b *builder) sectionsByPiece() map[string]*record.Section {
	of := make(map[string]*record.Section, len(b.pieces))
	for _, p := range slices.Backward(b.pieces) { // of two that share a name the first counts
		of[p.name] = b.sections[p.section]
	}
	return of
}

// assumptions are what was taken because the record does not say it.
func (b *builder) assumptions() {
	if len(b.passing) > 0 {
		b.out.Assumptions = append(b.out.Assumptions, finding.Assumption{Subject: "grid", Basis: finding.Practice,
			Says:   "stringers and girders that do not say how they are held are taken as running through the frames, with spans fixed at their ends: " + strings.Join(b.passing, ", "),
			Settle: "write through or ends of each"})
	}
	var open []string
	for _, f := range b.frames {
		if f.Bottom.Set && !f.Keel.Set || (f.Bottom.Set || f.Side.Set) && !f.Chine.Set {
			open = append(open, f.ID)
		}
	}
	if len(open) > 0 {
		b.out.Assumptions = append(b.out.Assumptions, finding.Assumption{Subject: "grid", Basis: finding.Practice,
			Says:   "joints of frames that are not written are taken as not fixed: frames " + strings.Join(open, ", "),
			Settle: "write keel_joint, chine_joint and sheer_joint of each frame"})
	}
	if b.skin.hull.HasSide {
		b.out.Assumptions = append(b.out.Assumptions, finding.Assumption{Subject: "grid", Basis: finding.Practice,
			Says:   "a knuckle in the side holds no plate: panels go over it, and the plate between its stringers is measured round it",
			Settle: "write a stringer at the knuckle where one lies there"})
	}
}
