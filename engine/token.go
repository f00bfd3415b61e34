package engine

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/json"
	"slices"
	"strings"

	"hullfile/engine/identity"
)

// Token is what is kept of every hull of a yard at all times: from the tokens follows which hulls look at each other, and
// whether anything changed in what one takes from another. It holds hashes and no values, so that a fleet of thousands
// fits beside the one hull that is worked on.
type Token struct {
	Number, Design, HIN string
	Cracked             bool
	Marked              Mark    // its hull identification number and where it stands
	Boat                Mark    // what hulls of its family of designs take
	Life                Mark    // what hulls of its design take
	Shares              []Share // what it brings to further groups, in order of group, each once
}

// Mark is a part of a hash, long enough that two different values never have the same.
type Mark [16]byte

// Share is what a hull brings to a group of hulls that look at each other.
type Share struct {
	Group uint64 // hash of the name of the group; two groups with one hash only look at each other without need
	What  Mark
}

// share is the same before it is hashed.
type share struct {
	kind, name string
	what       any
}

func (s *share) group() uint64 {
	sum := sha256.Sum256([]byte(s.kind + " " + s.name))
	return binary.BigEndian.Uint64(sum[:])
}

// Token makes the token of a hull. Its texts are copies: those of a record are cut out of the text of the whole file, which they would hold
// in memory.
func (b *Brief) Token() Token {
	t := Token{Number: strings.Clone(b.Number), Design: strings.Clone(b.Design), HIN: strings.Clone(b.hin()), Cracked: b.Cracked, Marked: markOf(b.HIN), Boat: markOf(b.Design, b.Mass, b.Power), Life: markOf(b.Design, b.Hours, b.Looks)}
	for _, s := range b.shares() {
		t.Shares = append(t.Shares, Share{s.group(), markOf(s.what)})
	}
	slices.SortStableFunc(t.Shares, func(a, b Share) int {
		switch {
		case a.Group < b.Group:
			return -1
		case a.Group > b.Group:
			return 1
		}
		return 0
	})
	return t
}

// shares lists what a hull brings to groups, beside its designs: to those that have one HIN or one serial number
// (crosscheck, identity), to those whose parts were cut from one lot (stock), and to those at which one stamp welded on one
// day (crosscheck: a welder who was at two boats at one time is told on both). A place belongs to it only where it is printed.
func (b *Brief) shares() []share {
	var all []share
	if b.HIN != nil {
		number := identity.Parse(b.HIN.V)
		all = append(all, share{"hin", bare(b.HIN.V), b.HIN}, share{"serial", strings.ToUpper(number.Maker + number.Serial), b.HIN})
	}
	for _, lot := range b.Lots {
		all = append(all, share{"lot", lot, b.partsOf(lot)})
	}
	at := map[string]int{}
	for i := range b.Welds {
		name := b.Welds[i].stint()
		k, known := at[name]
		if !known {
			k, at[name] = len(all), len(all)
			all = append(all, share{kind: "hours", name: name, what: []NearWeld{}})
		}
		all[k].what = append(all[k].what.([]NearWeld), b.Welds[i])
	}
	return all
}

// stint is one stamp on one day.
func (w *NearWeld) stint() string { return w.Welder + " " + w.Date }

// partsOf gives the parts that were cut from a lot.
func (b *Brief) partsOf(lot string) []NearPart {
	var all []NearPart
	for _, p := range b.Parts {
		if p.Lot == lot {
			all = append(all, p)
		}
	}
	return all
}

var readable = strings.NewReplacer(" ", "", "-", "", "\u00a0", "")

// bare is a hull identification number without what people add to read it.
func bare(hin string) string {
	return strings.ToUpper(readable.Replace(hin))
}

// markOf hashes values so that two that differ have two marks.
func markOf(values ...any) (m Mark) {
	text, err := json.Marshal(values)
	if err != nil {
		panic(err) // plain values of our own; a number that is none is refused by the reader of records
	}
	sum := sha256.Sum256(text)
	copy(m[:], sum[:])
	return m
}
