package grid

import (
	"slices"
	"strings"

	"hullfile/engine/record"
)

// brackets lays every bracket on record at the frames that it names, or at all that have such a joint.
func (b *builder) brackets() {
	for i := range b.rec.Brackets {
		r := &b.rec.Brackets[i]
		switch {
		case r.Member.Set:
			b.out.Brackets = append(b.out.Brackets, Bracket{ID: "bracket " + r.ID, Record: r, Member: r.Member.V, Count: times(r, 1)})
		case strings.HasPrefix(r.Joins.V, "frame to"):
			b.atFrames(r)
		default:
			b.out.Brackets = append(b.out.Brackets, Bracket{ID: "bracket " + r.ID, Record: r, Count: times(r, 1)})
		}
	}
}

func times(r *record.Bracket, count int) int {
	if n, ok := r.Count.Get(); ok {
		return n
	}
	return count
}

func (b *builder) atFrames(r *record.Bracket) {
	named, all := r.Frames.Get()
	for _, f := range b.frames {
		if all && !slices.Contains(named, f.ID) {
			continue
		}
		member := b.heldBy(f, r.Joins.V)
		if member == "" && !all {
			continue
		}
		if member == "" {
			b.bracketNowhere(r, f)
		}
		b.out.Brackets = append(b.out.Brackets, Bracket{ID: "bracket " + r.ID + " frame " + f.ID, Record: r, Frame: f.ID, Member: member, Count: times(r, 2)})
	}
}

// heldBy names the part of a frame whose end a joint holds.
func (b *builder) heldBy(f *record.Frame, joins string) string {
	pick := func(kinds string, last bool) string {
		found := ""
		for i := range b.pieces {
			p := &b.pieces[i]
			if p.at == f.At && strings.Contains(kinds, p.label()) && (found == "" || last) {
				found = p.name
			}
		}
		return found
	}
	switch joins {
	case "frame to keel":
		return pick("bottom floor", false)
	case "frame to chine":
		return pick("bottom floor", true)
	case "frame to deck":
		return pick("side", true)
	}
	return pick("bottom floor side", true)
}

// label is the first word of what a piece is on: bottom, floor, side, deck.
func (p *piece) label() string { return strings.Fields(p.name)[0] }
