package trace

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
)

// search is one mark on its way through the yard. The sets hold the keys of records of the yard that carry the mark, or
// that one which carries it leads to.
type search struct {
	yard *record.Yard
	mark string
	only string // number of the one hull that is asked about

	lots, supplies, procedures, stamps, inspectors, instruments, people map[string]bool

	numbers map[string]bool // of papers that carry the mark
	shown   map[string]bool // of certificates of the lots and fillers that do
	byKey   map[string]*record.Lot

	is, behind []Node
}

// any reports whether one of the texts is the mark.
func (s *search) any(texts ...string) bool {
	for _, t := range texts {
		if t != "" && strings.EqualFold(strings.TrimSpace(t), s.mark) {
			return true
		}
	}
	return false
}

func (s *search) add(kind, key, says string, at finding.Place) {
	s.is = append(s.is, Node{kind, key, says, at})
}

// stock looks through the records of the yard.
func (s *search) stock() {
	for _, set := range []*map[string]bool{&s.lots, &s.supplies, &s.procedures, &s.stamps, &s.inspectors, &s.instruments, &s.people, &s.numbers, &s.shown} {
		*set = map[string]bool{}
	}
	s.certificates()
	s.metal()
	s.used()
	s.welding()
	s.persons()
}

// certificates finds papers of any hull that carry the mark and have a number: what that number certifies carries it too.
func (s *search) certificates() {
	s.byKey = map[string]*record.Lot{}
	for _, h := range s.yard.Hulls {
		if s.only != "" && h.Number != s.only {
			continue
		}
		for i := range h.Documents {
			if d := &h.Documents[i]; d.Number.V != "" && s.carries(d) {
				s.numbers[d.Number.V] = true
			}
		}
	}
}

func (s *search) carries(d *record.Document) bool { return s.any(d.ID, d.Number.V, d.File.V) }

// metal finds lots by key, cast, maker's number and certificate.
func (s *search) metal() {
	for i := range s.yard.Stock.Lots {
		l := &s.yard.Stock.Lots[i]
		s.byKey[l.ID] = l
		if !s.any(l.ID, l.Cast.V, l.MakersLot.V, l.Certificate.V) && !s.numbers[l.Certificate.V] {
			continue
		}
		s.lots[l.ID] = true
		s.add("lot", l.ID, LotSays(l), l.At)
		if l.Certificate.Set {
			s.shown[l.Certificate.V] = true
			s.behind = append(s.behind, Node{"certificate", l.Certificate.V, said("of ", l.Maker.V), l.Certificate.At})
		}
	}
}

// LotSays gives a lot in short.
func LotSays(l *record.Lot) string {
	return strings.Join(words(l.Alloy.V, unit.Plain(l.Thickness.V)+" mm", l.Kind.V, said("cast ", l.Cast.V), said("certificate ", l.Certificate.V), date("received ", l.Received)), ", ")
}

func (s *search) used() {
	for i := range s.yard.Stock.Consumables {
		c := &s.yard.Stock.Consumables[i]
		if !s.any(c.ID, c.Batch.V, c.Cast.V, c.Certificate.V) && !s.numbers[c.Certificate.V] {
			continue
		}
		s.supplies[c.ID] = true
		s.add("consumable", c.ID, strings.Join(words(c.Kind.V, c.Classification.V, said("batch ", c.Batch.V), said("cast ", c.Cast.V), said("certificate ", c.Certificate.V)), ", "), c.At)
		if c.Certificate.Set {
			s.shown[c.Certificate.V] = true
			s.behind = append(s.behind, Node{"certificate", c.Certificate.V, said("of ", c.Supplier.V), c.Certificate.At})
		}
	}
}

// welding finds procedures, and tests with the procedures that rest on them.
func (s *search) welding() {
	tests := map[string]bool{}
	for i := range s.yard.Welding.Tests {
		t := &s.yard.Welding.Tests[i]
		if s.any(t.ID, t.Record.V) {
			tests[t.ID] = true
			s.add("procedure test", t.ID, strings.Join(words(t.Standard.V, t.Weld.V, date("welded ", t.Date)), ", "), t.At)
		}
	}
	for i := range s.yard.Welding.Procedures {
		p := &s.yard.Welding.Procedures[i]
		number, rests := weld.Number(p), tests[p.Test.V]
		for _, key := range p.Tests.V {
			rests = rests || tests[key]
		}
		if !s.any(p.ID, number) && !rests {
			continue
		}
		s.procedures[number] = true
		s.add("procedure", p.ID, strings.Join(words(said("revision ", p.Revision.V), p.Title.V), ", "), p.At)
		for _, key := range append(p.Tests.V[:len(p.Tests.V):len(p.Tests.V)], p.Test.V) {
			if key != "" && !tests[key] {
				s.behind = append(s.behind, Node{"procedure test", key, "", p.At})
			}
		}
	}
}

// persons finds people, and the stamps, certificates and instruments they go by.
func (s *search) persons() {
	b := &s.yard.Builder
	for i := range b.People {
		if p := &b.People[i]; s.any(p.ID, p.Name.V) {
			s.people[p.ID] = true
			s.add("person", p.ID, strings.Join(words(p.Name.V, p.Role.V), ", "), p.At)
		}
	}
	certified := map[string]bool{}
	for i := range b.Qualifications {
		q := &b.Qualifications[i]
		if s.any(q.ID, q.Certificate.V) {
			certified[q.Welder.V] = true
			s.add("qualification", q.ID, strings.Join(words(q.Standard.V, q.Designation.V, date("tested ", q.Tested)), ", "), q.At)
		}
	}
	for i := range b.Welders {
		w := &b.Welders[i]
		if !s.any(w.ID, w.Stamp.V) && !s.people[w.Person.V] && !certified[w.ID] {
			continue
		}
		s.stamps[w.Stamp.V], s.stamps[w.ID] = true, true
		s.add("welder", w.ID, strings.Join(words("stamp "+w.Stamp.V, w.Person.V), ", "), w.At)
		for j := range b.Qualifications {
			if q := &b.Qualifications[j]; q.Welder.V == w.ID && !certified[w.ID] {
				s.behind = append(s.behind, Node{"qualification", q.ID, q.Designation.V, q.At})
			}
		}
	}
	for i := range b.Inspectors {
		if in := &b.Inspectors[i]; s.any(in.ID, in.Certificate.V) || s.people[in.Person.V] {
			s.inspectors[in.ID] = true
			s.add("inspector", in.ID, strings.Join(words(in.Method.V, said("certificate ", in.Certificate.V), in.Person.V), ", "), in.At)
		}
	}
	for i := range b.Instruments {
		if t := &b.Instruments[i]; s.any(t.ID, t.Serial.V, t.Document.V) {
			s.instruments[t.ID] = true
			s.add("instrument", t.ID, strings.Join(words(t.Name.V, said("serial ", t.Serial.V)), ", "), t.At)
		}
	}
}

// words leaves out what is empty.
func words(all ...string) []string {
	var out []string
	for _, w := range all {
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

func said(before, what string) string {
	if what == "" {
		return ""
	}
	return before + what
}

func date(before string, d record.Val[record.Date]) string {
	if !d.Set {
		return ""
	}
	return before + d.V.ISO()
}
