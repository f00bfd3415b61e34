package engine

import (
	"crypto/sha256"
	"fmt"
	"hash"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/crosscheck"
	"hullfile/engine/finding"
	"hullfile/engine/identity"
	"hullfile/engine/record"
)

// Neighbours tells, for every hull of a yard, what its dossier takes from the records of other hulls. It is made once
// and only read after. As long as a hull's own records, those of the yard and its digest here are the same, so is its
// dossier.
type Neighbours struct {
	yard   *record.Yard
	bottom map[string]string                             // design -> design that it comes from in the end
	groups map[string]hash.Hash                          // what the hulls of a group bring, in order of number
	own    map[string]map[*record.Hull][sha256.Size]byte // the same hull by hull, where one looks at some of them only
	of     map[*record.Hull][]string                     // the groups of a hull
	in     map[string][]*record.Hull                     // the hulls of a group, in order of number
}

// share is what a hull brings to a group of hulls that look at each other.
type share struct {
	group string
	what  []any
	some  bool // a hull looks at some hulls of the group only
}

// NewNeighbours gathers what hulls bring to each other.
func NewNeighbours(y *record.Yard) *Neighbours {
	n := &Neighbours{
		yard: y, bottom: map[string]string{}, groups: map[string]hash.Hash{}, own: map[string]map[*record.Hull][sha256.Size]byte{},
		of: map[*record.Hull][]string{}, in: map[string][]*record.Hull{},
	}
	for _, d := range y.Designs {
		n.bottom[d.Name] = bottomDesign(y, d.Name)
	}
	var text []byte
	for _, h := range y.Hulls {
		n.of[h] = nil
		for _, s := range n.shares(h) {
			text = strconv.AppendQuote(text[:0], h.Number)
			for _, w := range s.what {
				text = spell(text, reflect.ValueOf(w))
			}
			n.brings(h, s, text)
			n.of[h] = append(n.of[h], s.group)
		}
	}
	return n
}

func (n *Neighbours) brings(h *record.Hull, s share, text []byte) {
	if s.some {
		if n.own[s.group] == nil {
			n.own[s.group] = map[*record.Hull][sha256.Size]byte{}
		}
		n.own[s.group][h] = sha256.Sum256(text)
		return
	}
	if n.groups[s.group] == nil {
		n.groups[s.group] = sha256.New()
	}
	n.groups[s.group].Write(text)
	n.in[s.group] = append(n.in[s.group], h)
}

// seen gives the hulls of a group that a hull looks at; it may be among them.
func (n *Neighbours) seen(h *record.Hull, group string) []*record.Hull {
	switch kind, _, _ := strings.Cut(group, " "); kind {
	case "family":
		return family(n.yard, h)
	case "design":
		return sisters(n.yard, h)
	case "names":
		return crosscheck.Named(n.yard, h)
	}
	return n.in[group]
}

// Digest changes when something changes that the hull's dossier takes from another hull. It also changes with what the
// hull itself brings to the others. A hull of another yard has none.
func (n *Neighbours) Digest(h *record.Hull) []byte {
	groups, known := n.of[h]
	if !known {
		return nil
	}
	all := sha256.New()
	for _, group := range groups {
		own := n.own[group]
		if own == nil {
			fmt.Fprintf(all, "%q%x", group, n.groups[group].Sum(nil))
			continue
		}
		fmt.Fprintf(all, "%q%x", group, own[h])
		for _, other := range n.seen(h, group) {
			fmt.Fprintf(all, "%x", own[other])
		}
	}
	return all.Sum(nil)
}

// shares lists the groups of a hull: those that one HIN or one serial number would bring together (crosscheck,
// identity), the family of designs (planing), the design (running), each lot that parts were cut from (stock), papers
// that may name another hull and the hours of each welder (crosscheck). A place belongs to it only where it is printed.
func (n *Neighbours) shares(h *record.Hull) []share {
	var all []share
	if hin := h.Identity.HIN; hin.Set {
		number := identity.Parse(hin.V)
		all = append(all, share{group: "hin " + bare(hin.V), what: []any{hin.V, hin.At}}, share{group: "serial " + strings.ToUpper(number.Maker+number.Serial), what: []any{hin.V, hin.At}})
	}
	if h.Design.Set {
		b := &h.Boat
		all = append(all, share{group: "family " + n.family(h.Design.V), what: []any{h.Design.V, b.LoadedMass.V, b.LoadedMass.Set, b.LoadedMass.At, b.Power.V, b.Power.Set, b.Power.At}, some: true})
		all = append(all, share{group: "design " + h.Design.V, what: []any{h.Hours, h.Looks}, some: true})
	}
	for _, lot := range lotsOf(h) {
		all = append(all, share{group: "lot " + lot, what: partsOf(h, lot)})
	}
	all = append(all, share{group: "names", what: []any{h.Identity.HIN.V}, some: true})
	return append(all, hoursOf(h)...)
}

// hoursOf gives the hours that each stamp welded on each day, in order: a welder who was at two boats at one time is told
// on both (crosscheck).
func hoursOf(h *record.Hull) []share {
	at := map[string]int{}
	var all []share
	for i := range h.Welds {
		w := &h.Welds[i]
		if !w.Date.Set || !w.Begin.Set || !w.End.Set {
			continue
		}
		group := "hours " + w.Welder.V + " " + w.Date.V.String()
		k, known := at[group]
		if !known {
			k, at[group] = len(all), len(all)
			all = append(all, share{group: group})
		}
		all[k].what = append(all[k].what, w.Joint.V, w.Begin.V, w.Begin.At, w.End.V)
	}
	return all
}

func (n *Neighbours) family(design string) string {
	if bottom, known := n.bottom[design]; known {
		return bottom
	}
	return design
}

var readable = strings.NewReplacer(" ", "", "-", "", "\u00a0", "")

// bare is a hull identification number without what people add to read it.
func bare(hin string) string {
	return strings.ToUpper(readable.Replace(hin))
}

// lotsOf lists the lots that a hull names, in order.
func lotsOf(h *record.Hull) []string {
	var all []string
	for i := range h.Parts {
		all = append(all, h.Parts[i].Lot.V)
	}
	for _, p := range h.Plated() {
		all = append(all, p.Lot.V)
	}
	slices.Sort(all)
	return slices.DeleteFunc(slices.Compact(all), func(lot string) bool { return lot == "" })
}

// partsOf gives the sizes of the parts that were cut from a lot.
func partsOf(h *record.Hull, lot string) []any {
	var all []any
	for i := range h.Parts {
		if p := &h.Parts[i]; p.Lot.V == lot {
			all = append(all, p.ID, p.Count, p.Length, p.Width, p.Area)
		}
	}
	return all
}

// spell appends a value so that two values that differ are spelt differently. Places are left out of records: they
// change with every line that is written above them. A place that is given by itself is spelt.
func spell(to []byte, v reflect.Value) []byte {
	switch v.Kind() {
	case reflect.Struct:
		alone := v.Type() == reflect.TypeFor[finding.Place]()
		for i := range v.NumField() {
			if f := v.Field(i); alone || f.Type() != reflect.TypeFor[finding.Place]() {
				to = spell(to, f)
			}
		}
	case reflect.Slice:
		to = append(strconv.AppendInt(append(to, '['), int64(v.Len()), 10), ':')
		for i := range v.Len() {
			to = spell(to, v.Index(i))
		}
	case reflect.String:
		to = strconv.AppendQuote(to, v.String())
	case reflect.Bool:
		to = strconv.AppendBool(to, v.Bool())
	case reflect.Int:
		to = append(strconv.AppendInt(to, v.Int(), 10), ';')
	case reflect.Float64:
		to = append(strconv.AppendFloat(to, v.Float(), 'g', -1, 64), ';')
	default:
		to = fmt.Appendf(to, "(%v)", v.Interface())
	}
	return to
}
