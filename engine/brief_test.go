package engine

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"testing"
)

// A brief that was written down and read again gives the same neighbours and the same digest as the records themselves, and
// its number of bytes is a small part of theirs.
func TestBriefsStandInForHulls(t *testing.T) {
	yard, _, _ := demo(t)
	first, second := yard.Hulls[0], yard.Hulls[1]
	second.Design, second.Identity.HIN = first.Design, first.Identity.HIN
	second.Welds, second.Parts = append(second.Welds, first.Welds...), append(second.Parts, first.Parts...)
	whole := NewNeighbours(yard)
	kept := map[string][]byte{}
	var tokens []Token
	for _, h := range yard.Hulls {
		b := BriefOf(h)
		text, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		kept[h.Number] = text
		tokens = append(tokens, b.Token())
	}
	load := func(number string, _ bool) (*Brief, error) {
		b := &Brief{}
		return b, json.Unmarshal(kept[number], b)
	}
	by := NeighboursBy(yard.Designs, tokens, load)
	taken := 0
	for _, h := range yard.Hulls {
		own, err := load(h.Number, true)
		if err != nil {
			t.Fatal(err)
		}
		near, err := by.NearOf(own)
		if err != nil {
			t.Fatal(err)
		}
		taken += len(near)
		want, _ := json.Marshal(whole.Near(h))
		if got, _ := json.Marshal(near); !bytes.Equal(got, want) {
			t.Errorf("hull %s takes %s by briefs and %s by hulls", h.Number, got, want)
		}
		if got := by.DigestOf(h.Number, by.Named(own)); !bytes.Equal(got, whole.Digest(h)) {
			t.Errorf("hull %s has another digest by briefs", h.Number)
		}
		if again := own.Token(); !reflect.DeepEqual(again, BriefOf(h).Token()) {
			t.Errorf("hull %s has another token once its brief was written down", h.Number)
		}
	}
	if taken < 2 {
		t.Errorf("%d hulls take from others; the test shows nothing", taken)
	}
}

// A brief that cannot be had is told with both hulls.
func TestNeighbourThatCannotBeLoaded(t *testing.T) {
	y := manySisters(3)
	var tokens []Token
	for _, h := range y.Hulls {
		tokens = append(tokens, BriefOf(h).Token())
	}
	gone := errors.New("gone")
	n := NeighboursBy(nil, tokens, func(string, bool) (*Brief, error) { return nil, gone })
	if _, err := n.NearOf(BriefOf(y.Hulls[0])); !errors.Is(err, gone) {
		t.Errorf("got %v, want that a brief is gone", err)
	}
}

func BenchmarkNeighboursFromTokensOf1000(b *testing.B) {
	yard, _, _ := demo(b)
	brief := BriefOf(yard.Hulls[0])
	var tokens []Token
	for i := range 1000 {
		t := brief.Token()
		t.Number += string(rune('a'+i%26)) + string(rune('a'+i/26%26)) + string(rune('a'+i/676))
		tokens = append(tokens, t)
	}
	for b.Loop() {
		n := NeighboursBy(yard.Designs, tokens, nil)
		for i := range tokens {
			n.DigestOf(tokens[i].Number, nil)
		}
	}
}
