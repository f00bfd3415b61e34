package site

import (
	"regexp"
	"strings"
)

// Prose is a sentence in which symbols of a method sheet may stand as they are typed: n_1. A page sets what comes after
// the line below it.
type Prose string

// Piece is a run of a sentence, and the letters below the line that follow it.
type Piece struct{ Text, Below string }

// typed finds a symbol of one letter with something below it, on its own: not a part of a key such as boat.speed_kn.
var typed = regexp.MustCompile(`(^|[^\pL\pN_.])(\pL)_([A-Za-z0-9]+)`)

// lengths are the endings of keys with one letter, such as x_m: they are no symbols.
var lengths = map[string]bool{"m": true, "mm": true, "s": true, "h": true, "kg": true, "kn": true, "deg": true}

// Pieces parts the sentence at its symbols.
func (p Prose) Pieces() []Piece {
	s := string(p)
	if !strings.Contains(s, "_") {
		return []Piece{{Text: s}}
	}
	var out []Piece
	done := 0
	for _, at := range typed.FindAllStringSubmatchIndex(s, -1) {
		letterEnd, below, end := at[5], s[at[6]:at[7]], at[7]
		if lengths[below] || strings.HasPrefix(s[end:], "_") {
			continue
		}
		out = append(out, Piece{Text: s[done:letterEnd], Below: below})
		done = end
	}
	return append(out, Piece{Text: s[done:]})
}
