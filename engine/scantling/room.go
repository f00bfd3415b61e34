package scantling

import (
	"math"

	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// room asks a sheet and gives what is fitted over what is needed; ok is false where that is not shown.
func (r *rule) room(l *laid) (margin float64, ok bool) {
	if l.bar == nil {
		needed, _, ok := r.neededBy(l)
		if !ok {
			return 0, false
		}
		return float64(l.fitted) / needed, true
	}
	s := r.worked(l)
	if s == nil {
		return 0, false
	}
	return l.roomOfBar(s)
}

// worked reckons the slate for what is laid; nil where the sheet cannot take it.
func (r *rule) worked(l *laid) *method.Slate {
	if l.taken == nil {
		return nil
	}
	s := r.slate(l.scope)
	s.Work(l.taken)
	return s
}

// neededBy is the greatest thickness that a sheet asks of a panel, and its symbol; ok is false where one is missing.
func (r *rule) neededBy(l *laid) (most float64, governs string, ok bool) {
	s := r.worked(l)
	if s == nil {
		return 0, "", false
	}
	for _, symbol := range s.Gives("needed") {
		v, there, applies := valueOf(s, symbol)
		switch {
		case !applies:
			continue
		case !there:
			return 0, "", false
		}
		if v = settled(v); v > most {
			most, governs = v, symbol
		}
	}
	return most, governs, most > 0
}

func (l *laid) roomOfBar(w *method.Slate) (float64, bool) {
	breadth := unit.MM(w.Most("effective"))
	if l.on > 0 && breadth <= 0 {
		return 0, false
	}
	f, err := l.bar.with(l.on, breadth)
	if err != nil {
		return 0, false
	}
	least := math.Inf(1)
	for _, one := range []struct {
		gives string
		has   float64
	}{{"modulus", f.modulus()}, {"shear", float64(f.props.Web)}, {"inertia", float64(f.props.I)}} {
		for _, symbol := range w.Gives(one.gives) {
			v, there, applies := valueOf(w, symbol)
			switch {
			case !applies:
				continue
			case !there:
				return 0, false
			case v > 0:
				least = math.Min(least, settled(one.has)/settled(v))
			}
		}
	}
	ratio, ok := l.slender(w, f)
	if ratio > 0 {
		least = math.Min(least, 1/ratio)
	}
	return least, ok && !math.IsInf(least, 1)
}

// slender is the greatest slenderness over its limit.
func (l *laid) slender(w *method.Slate, f *fitted) (float64, bool) {
	most := 0.0
	if !l.bar.open() {
		yield, young := l.of.yield(), l.of.young()
		if yield <= 0 || young <= 0 {
			return 0, false
		}
		return settled(math.Sqrt(yield / (f.elastic() * young))), true
	}
	for _, symbol := range w.Gives("slender") {
		v, there, applies := valueOf(w, symbol)
		if applies && !there {
			return 0, false
		}
		most = math.Max(most, settled(v))
	}
	return most, true
}

// valueOf is the value of a symbol, whether it is there, and whether it applies.
func valueOf(w *method.Slate, symbol string) (v float64, there, applies bool) {
	v, state, ok := w.Get(symbol)
	if !ok || state == method.NotSet {
		return 0, false, false
	}
	return v, state != method.Missing, true
}

// modulus is the lesser of those to the plate and to the free edge, cm³.
func (f *fitted) modulus() float64 {
	return math.Min(float64(f.props.AtPlate), float64(f.props.AtEdge))
}

// elastic is the least elastic buckling stress of its parts, as a part of the modulus of elasticity.
func (f *fitted) elastic() float64 {
	if f.least == 0 {
		f.least = math.Inf(1)
		for _, s := range f.section.Slender(1) {
			f.least = math.Min(f.least, float64(s.Elastic))
		}
	}
	return f.least
}
