package scantling

import (
	"encoding/binary"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// tray is all that goes into one scope of a sheet, looked up once and laid out in the order of its inputs. It may be turned
// over again with one value changed, and what lies on it is the key under which an answer is remembered.
type tray struct {
	scope *method.Scope
	asks  []wanted
	lies  []method.Quantity
	there []bool
	next  int
}

// fill looks every input of the scope up.
func (t *tray) fill(g finder) {
	for i, in := range t.scope.Inputs {
		w := &t.asks[i]
		q := &t.lies[i]
		*q, t.there[i] = g.find(w)
		if q.Unit == "" && w.kind == "rules" {
			q.Unit = in.Unit // a value entered for a sheet is in the unit that the sheet asks for
		}
	}
}

// finder finds what a scope asks for.
type finder interface {
	find(*wanted) (method.Quantity, bool)
}

// Lookup gives what lies on the tray. A sheet asks in the order of its inputs, so the search ends at the first look.
func (t *tray) Lookup(from string) (method.Quantity, bool) {
	n := len(t.scope.Inputs)
	for range n {
		i := t.next
		t.next = (t.next + 1) % n
		if t.scope.Inputs[i].From == from {
			return t.lies[i], t.there[i]
		}
	}
	return method.Quantity{}, false
}

// key writes what lies on the tray as bytes; where it was written does not count.
func (t *tray) key(into []byte) []byte {
	into = append(into[:0], t.scope.Name...)
	for i := range t.lies {
		q := &t.lies[i]
		switch {
		case !t.there[i]:
			into = append(into, 0)
		case q.IsWord:
			into = append(append(into, 1), q.Word...)
		default:
			into = binary.LittleEndian.AppendUint64(append(into, 2), math.Float64bits(q.Number))
		}
	}
	return into
}

// tray gives the tray of a scope, filled; nil where the sheet has no such scope.
func (r *rule) tray(scope string, g finder) *tray {
	t := r.trays[scope]
	if t == nil {
		for _, s := range r.sheet.Scopes {
			if s.Name == scope {
				t = &tray{scope: s, lies: make([]method.Quantity, len(s.Inputs)), there: make([]bool, len(s.Inputs))}
				for _, in := range s.Inputs {
					t.asks = append(t.asks, want(in.From))
				}
				r.trays[scope] = t
			}
		}
	}
	if t != nil {
		t.fill(g)
	}
	return t
}

// places lists the record lines of all that lies on the tray.
func (t *tray) places() []finding.Place {
	out := make([]finding.Place, 0, len(t.lies))
	for i := range t.lies {
		if t.there[i] && t.lies[i].Place.Known() {
			out = append(out, t.lies[i].Place)
		}
	}
	return out
}
