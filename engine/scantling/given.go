package scantling

import (
	"strings"

	"hullfile/engine/lookup"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// given hands the values of the boat, of the yard's choices of rules, of one panel, member, bracket or fitting, of its
// section and of its alloy to a method sheet, under the names that sheets use: "boat.loaded_mass_kg", "rules.service",
// "panel.short_side_mm", "member.span_mm", "section.web_height_mm", "alloy.welded.yield_n_mm2", "alloy.filler".
type given struct {
	boat  *record.Boat
	rules *record.Rules
	kind  string // panel or member; empty for what has no record of its own under the names of the sheet
	entry any    // pointer to its record
	own   method.GivenMap
	alloy *metal
}

// wanted is one value that a scope asks for, with its name parted and its keys in the records found once.
type wanted struct {
	from, kind, key string
	at, ruled       record.Key // of the record; of the choices of rules
}

func want(from string) wanted {
	kind, key, _ := strings.Cut(from, ".")
	return wanted{from: from, kind: kind, key: key}
}

// in looks the key of an input up in a record.
func (w *wanted) in(entry any, at *record.Key) (method.Quantity, bool) {
	if !at.Fits(entry) {
		*at = record.KeyOf(entry, w.key)
	}
	return lookup.Written(at.In(entry))
}

// Lookup finds the value that a sheet asks for; ok is false when nobody wrote it.
func (g *given) Lookup(from string) (method.Quantity, bool) {
	w := want(from)
	return g.find(&w)
}

// find is Lookup for a name that is parted already. A value of own, which is reckoned or stands in for one that is not
// written, comes after the record.
func (g *given) find(w *wanted) (method.Quantity, bool) {
	switch {
	case w.kind == "boat":
		return w.in(g.boat, &w.at)
	case w.kind == "rules":
		return g.rule(w)
	case w.from == "alloy.filler" && g.alloy != nil:
		return g.alloy.wire.quantity(), true
	case w.kind == "alloy" && g.alloy != nil:
		return g.alloy.Lookup(w.from)
	case w.kind == g.kind && g.entry != nil:
		if q, ok := w.in(g.entry, &w.at); ok {
			return q, true
		}
	}
	q, ok := g.own[w.from]
	return q, ok
}

// rule finds a choice of the yard: one that has a key of its own, or one that is entered for a sheet.
func (g *given) rule(w *wanted) (method.Quantity, bool) {
	if q, ok := w.in(g.rules, &w.ruled); ok {
		return q, true
	}
	for i := range g.rules.Values {
		v := &g.rules.Values[i]
		if v.ID != w.key {
			continue
		}
		q := method.Quantity{Place: v.At, Source: v.From.V}
		if v.Word.Set {
			q.Word, q.IsWord, q.Place = v.Word.V, true, v.Word.At
			return q, true
		}
		q.Number, q.Place = float64(v.Number.V), v.Number.At
		return q, v.Number.Set
	}
	return method.Quantity{}, false
}
