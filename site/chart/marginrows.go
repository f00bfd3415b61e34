package chart

import (
	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// The columns of the picture on a page: where the scale stands, and the right edges of the figures beside it.
const (
	scaleLeft, scaleRight = 176.0, 486.0
	fittedEdge            = 545.0
	neededEdge            = 606.0
	ratioEdge             = 650.0
	wordEdge              = 664.0
)

// draw paints one row a panel, and the scale under them.
func (m margins) draw(s *sheet) {
	from, length, pitch, top := scaleLeft, scaleRight-scaleLeft, 25.0, 26.0
	if s.slim() {
		from, length, pitch, top = 8.0, s.w-24, 44.0, 4.0
	}
	r := newRuler(0, m.thickest(), from, length)
	bottom := top + pitch*float64(len(m.rows))
	s.h = s.ruled(r, top, bottom, "thickness, mm")
	if !s.slim() {
		m.heads(s)
	}
	for i, p := range m.rows {
		y := top + float64(pitch*float64(i))
		if s.slim() {
			m.slimRow(s, r, p, y)
			continue
		}
		m.wideRow(s, r, p, y)
	}
	if m.rest != "" {
		for _, words := range wrap(m.rest, s.w-8) {
			s.h += line
			s.text("g-soft", 2, s.h-descent-2, start, words)
		}
	}
}

// thickest is the greatest thickness in the picture.
func (m margins) thickest() float64 {
	var e extent
	for _, p := range m.rows {
		if thick(p.Fitted) {
			e.take(float64(p.Fitted))
		}
		if judged(p) {
			e.take(float64(p.Needed))
		}
	}
	return max(e.hi, 1)
}

func (m margins) heads(s *sheet) {
	s.text("g-soft", 2, 14, start, "Panel")
	s.text("g-soft", fittedEdge, 14, end, "fitted")
	s.text("g-soft", neededEdge, 14, end, "needed")
	s.text("g-soft", ratioEdge, 14, end, "ratio")
}

func (m margins) wideRow(s *sheet, r ruler, p scantling.Panel, y float64) {
	base := y + 16.5
	m.key(s, p, box{0, y, scaleLeft - 12, y + 24}, base)
	s.bar(r, p, y+12.5)
	s.text("g-text", fittedEdge, base, end, figure(float64(p.Fitted), thick(p.Fitted), 1))
	needed, times := "–", "–"
	if judged(p) {
		needed, times = unit.Up(p.Needed, 2), ratio(p.Margin)
	}
	s.text("g-text", neededEdge, base, end, needed)
	s.text("g-text", ratioEdge, base, end, times)
	s.text(standingClass(p), wordEdge, base, start, standingWord(p))
}

func (m margins) slimRow(s *sheet, r ruler, p scantling.Panel, y float64) {
	words := figure(float64(p.Fitted), thick(p.Fitted), 1) + " fitted, " + standingWord(p)
	if judged(p) {
		words = figure(float64(p.Fitted), true, 1) + " / " + unit.Up(p.Needed, 2) + " = " + ratio(p.Margin) + ", " + standingWord(p)
	}
	b := s.text(standingClass(p)+" g-label", s.w-4, y+18, end, words)
	m.key(s, p, box{0, y, b.left - 10, y + 25}, y+18)
	s.bar(r, p, y+32)
}

// key names a panel, as a link over the whole cell where it has a page.
func (m margins) key(s *sheet, p scantling.Panel, cell box, base float64) {
	s.linked(m.link(p), func() {
		s.rect("g-hit", cell)
		key := s.text("g-key g-label", cell.left+2, base, start, fit(panelKey(p), cell.right-cell.left-4))
		zone := fit(panelZone(p), cell.right-key.right-8)
		if zone != "…" && zone != "" {
			s.text("g-soft g-label", key.right+7, base, start, zone)
		}
	})
}

// bar draws needed and fitted thickness of one panel along the scale.
func (s *sheet) bar(r ruler, p scantling.Panel, y float64) {
	if !thick(p.Fitted) {
		return
	}
	fitted := r.at(float64(p.Fitted))
	if !judged(p) {
		s.circle("g-open", fitted, y, 4)
		return
	}
	needed := r.at(float64(p.Needed))
	if p.Fitted >= p.Needed {
		s.rect("g-room", box{needed, y - 2, fitted, y + 2})
	} else {
		lack := box{fitted, y - 4.5, needed, y + 4.5}
		s.rect("g-gap", lack)
		s.hatched(lack, 4)
	}
	s.rect("g-need", box{needed - 1.2, y - 7.5, needed + 1.2, y + 7.5})
	s.circle("g-pa", fitted, y, 4)
}

func standingWord(p scantling.Panel) string {
	if p.Standing == "" {
		return string(finding.NotShown)
	}
	return string(p.Standing)
}

func standingClass(p scantling.Panel) string {
	switch p.Standing {
	case finding.Met:
		return "g-text"
	case finding.Short:
		return "g-short"
	}
	return "g-soft"
}
