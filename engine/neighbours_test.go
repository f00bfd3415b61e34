package engine

import (
	"bytes"
	"reflect"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// What the dossier of a hull takes from other hulls is in its digest: every field of another hull is emptied, one after
// the other, and where the dossier changes the digest must. The hull itself is left without lines, because floating it
// takes long and looks at no other.
func TestNothingIsTakenFromAnotherHullThatTheDigestDoesNotHold(t *testing.T) {
	yard, ref, root := demo(t)
	h, other := yard.Hulls[0], yard.Hulls[1]
	h.Stations, other.Design, other.Identity.HIN.V = nil, h.Design, h.Identity.HIN.V
	assess := func() []any {
		return comparable(Assess(yard, h, ref, root))
	}
	before, again, was := assess(), assess(), NewNeighbours(yard).Digest(h)
	var held []int // parts that are equal to themselves: some hold functions, or numbers that are none
	for i := range before {
		if reflect.DeepEqual(before[i], again[i]) {
			held = append(held, i)
		}
	}
	if len(held) < 12 {
		t.Errorf("only %d of %d parts of a dossier can be compared", len(held), len(before))
	}
	fields, taken := 0, 0
	eachFieldEmptied("hull", reflect.ValueOf(other).Elem(), 3, func(field string) {
		fields++
		if !bytes.Equal(was, NewNeighbours(yard).Digest(h)) {
			taken++
			return
		}
		now := assess()
		for _, i := range held {
			if !reflect.DeepEqual(before[i], now[i]) {
				t.Errorf("%T of %s rests on %s of %s, the digest does not", before[i], h.Number, field, other.Number)
			}
		}
	})
	if fields < 50 || taken < 5 {
		t.Errorf("%d fields emptied, %d of them in the digest; the walk is broken", fields, taken)
	}
}

// comparable gives the results of a dossier one by one.
func comparable(d *Dossier) []any {
	out := []any{d.Checks, d.Findings, d.Assumptions}
	v := reflect.ValueOf(d).Elem()
	for i := range v.NumField() {
		if name := v.Type().Field(i).Name; v.Field(i).Kind() == reflect.Struct && name != "Proofs" {
			out = append(out, v.Field(i).Interface())
		}
	}
	return out
}

// eachFieldEmptied empties each field of a struct, and down to some depth each of those below it, for the length of a call.
func eachFieldEmptied(name string, v reflect.Value, depth int, call func(field string)) {
	if v.Kind() != reflect.Struct || depth == 0 {
		return
	}
	for i := range v.NumField() {
		f, below := v.Field(i), name+"."+v.Type().Field(i).Name
		if f.IsZero() {
			continue
		}
		kept := reflect.New(f.Type()).Elem()
		kept.Set(f)
		f.SetZero()
		call(below)
		f.Set(kept)
		eachFieldEmptied(below, f, depth-1, call)
	}
}

// The digest holds what it says and nothing that changes with every line.
func TestDigestOfNeighbours(t *testing.T) {
	make := func() *record.Yard {
		y := &record.Yard{Designs: []record.DesignName{{Name: "A"}, {Name: "A2", BasedOn: "A"}, {Name: "B"}}}
		for i, design := range []string{"A", "A", "A2", "B"} {
			h := &record.Hull{Number: string(rune('1' + i)), Design: record.Written(design, finding.Place{})}
			h.Identity.HIN = record.Written("XX-XZX7400"+h.Number+"C626", finding.Place{File: h.Number, Line: 3})
			h.Boat.LoadedMass = record.Written(h.Boat.LoadedMass.V+3000, finding.Place{File: h.Number, Line: 4})
			h.Parts = []record.Part{{Entry: record.Entry{ID: "P1"}, Lot: record.Written("L"+design, finding.Place{})}}
			y.Hulls = append(y.Hulls, h)
		}
		return y
	}
	first := make()
	was := NewNeighbours(first).Digest(first.Hulls[0])
	if NewNeighbours(first).Digest(make().Hulls[0]) != nil {
		t.Error("a hull of another yard has a digest")
	}
	rows := []struct {
		where   string
		change  func(y *record.Yard)
		differs bool
	}{
		{"nothing", func(*record.Yard) {}, false},
		{"mass of a hull of the same design", func(y *record.Yard) { y.Hulls[1].Boat.LoadedMass.V++ }, true},
		{"mass of a hull of a variant", func(y *record.Yard) { y.Hulls[2].Boat.LoadedMass.V++ }, true},
		{"mass of a hull of another design", func(y *record.Yard) { y.Hulls[3].Boat.LoadedMass.V++ }, false},
		{"place of the mass, which is printed", func(y *record.Yard) { y.Hulls[1].Boat.LoadedMass.At.Line++ }, true},
		{"hours of a hull of the same design", func(y *record.Yard) { y.Hulls[1].Hours = []record.Hours{{}} }, true},
		{"hours of a hull of a variant", func(y *record.Yard) { y.Hulls[2].Hours = []record.Hours{{}} }, false},
		{"the same number on another hull", func(y *record.Yard) { y.Hulls[3].Identity.HIN.V = "xx xzx74001c626" }, true},
		{"another number on another hull", func(y *record.Yard) { y.Hulls[3].Identity.HIN.V = "XX-XZX74009C626" }, false},
		{"size of a part of the same lot", func(y *record.Yard) {
			y.Hulls[1].Parts[0].Area = record.Written(y.Hulls[1].Parts[0].Area.V+2, finding.Place{})
		}, true},
		{"place of a part of the same lot", func(y *record.Yard) { y.Hulls[1].Parts[0].At.Line++ }, false},
		{"size of a part of another lot", func(y *record.Yard) { y.Hulls[3].Parts[0].Count = record.Written(2, finding.Place{}) }, false},
		{"a hull less", func(y *record.Yard) { y.Hulls = y.Hulls[:1] }, true},
	}
	for _, r := range rows {
		y := make()
		r.change(y)
		if got := NewNeighbours(y).Digest(y.Hulls[0]); bytes.Equal(got, was) == r.differs {
			t.Errorf("%s: digest differs %v, want %v", r.where, !r.differs, r.differs)
		}
	}
}

func BenchmarkNeighboursOf1000(b *testing.B) {
	yard, _, _ := demo(b)
	fleet := *yard
	fleet.Hulls = nil
	for i := range 1000 {
		h := *yard.Hulls[0]
		h.Number += string(rune('a' + i%26))
		fleet.Hulls = append(fleet.Hulls, &h)
	}
	for b.Loop() {
		n := NewNeighbours(&fleet)
		for _, h := range fleet.Hulls {
			n.Digest(h)
		}
	}
}
