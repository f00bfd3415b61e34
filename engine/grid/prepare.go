package grid

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
)

// given reports whether a record holds anything of a grid.
func given(h *record.Hull) bool {
	return len(h.Platings) > 0 || len(h.Stringers) > 0 || len(h.Stiffeners) > 0
}

// unsound says why nothing can be laid on the lines.
func unsound(l *lines.Hull) string {
	switch {
	case l == nil || len(l.Stations) == 0:
		return "the shape of the hull is not on record"
	case len(l.Stations) < 2:
		return "the lines have one station only"
	case len(l.Check()) > 0:
		return "the lines, or the frames on them, cannot be those of a hull"
	}
	return ""
}

func (b *builder) prepare() {
	for i := range b.rec.Sections {
		b.sections[b.rec.Sections[i].ID] = &b.rec.Sections[i]
	}
	aft, fore := b.skin.ends()
	for i := range b.rec.Frames {
		f := &b.rec.Frames[i]
		if x := float64(f.X.V); x >= aft-near && x <= fore+near {
			b.frames = append(b.frames, f)
		}
	}
}

// water finds the loaded waterline, level at the draught on record above the lowest point of the keel, and its aft end.
func (b *builder) water() {
	aft, _ := b.skin.ends()
	b.out.AftEnd = aft
	draught, ok := b.rec.Boat.Draught.Get()
	if !ok {
		b.out.Findings = append(b.out.Findings, gap("grid-draught", "boat", "the draught is not on record, so no panel or member has its height above the waterline",
			"write boat.draught_m", gridPlace(b.rec)))
		return
	}
	b.out.HasWaterline = true
	b.out.Waterline = b.skin.lowest() + float64(draught)
	if l := b.skin.hull; l.Rake > 0 {
		keel := l.Stations[0].At[lines.Keel].Z
		b.out.AftEnd -= float64(max(b.out.Waterline-keel, 0) * math.Tan(l.Rake*math.Pi/180))
	}
	b.out.Assumptions = append(b.out.Assumptions, finding.Assumption{Subject: "grid", Basis: finding.Practice,
		Says:   fmt.Sprintf("heights of panels and members are taken from a level waterline at the draught on record, %.2f m above the lowest point of the keel", float64(draught)),
		Settle: "write boat.draught_m as the loaded boat floats"})
}

// stops lists what holds a zone across the boat, from aft: the transom, the frames that hold it, the stem. reach says how
// far a frame reaches over the zone; below nought it does not hold it at all.
func (b *builder) stops(reach func(f *record.Frame) float64) []stop {
	aft, fore := b.skin.ends()
	all := []stop{{name: "transom", x: aft, lean: true, reach: math.Inf(1)}}
	for _, f := range b.frames {
		x := float64(f.X.V)
		if r := reach(f); r >= 0 && x > aft+near && x < fore-near {
			all = append(all, stop{name: f.ID, x: x, frame: f, reach: r})
		}
	}
	return append(all, stop{name: "stem", x: fore, reach: math.Inf(1)})
}

// bare reports whether a frame names no section at all.
func bare(f *record.Frame) bool {
	return !f.Bottom.Set && !f.Side.Set && !f.Deck.Set && !f.Floor.Set && !f.Sole.Set
}

// whole reports whether something stands over the full section there.
func whole(f *record.Frame) bool { return f.Kind.V == "bulkhead" }

// onBottom is how far a frame holds the bottom, as girth from the keel.
func onBottom(f *record.Frame) float64 {
	switch {
	case whole(f) || bare(f):
		return math.Inf(1)
	case f.Bottom.Set:
		return upTo(f.BottomTo)
	case f.Floor.Set:
		return upTo(f.FloorOut)
	}
	return -1
}

// onSide is how far a frame holds the side, as girth from the chine.
func onSide(f *record.Frame) float64 {
	switch {
	case whole(f) || bare(f):
		return math.Inf(1)
	case f.Side.Set:
		return upTo(f.SideTo)
	}
	return -1
}

// upTo is the end of a member that is written, or no end.
func upTo[T ~float64](end record.Val[T]) float64 {
	if end.Set {
		return float64(end.V)
	}
	return math.Inf(1)
}

func onDeck(f *record.Frame) float64 {
	if whole(f) || f.Deck.Set {
		return math.Inf(1)
	}
	return -1
}

func onSole(f *record.Frame) float64 {
	if whole(f) || f.Sole.Set {
		return math.Inf(1)
	}
	return -1
}
