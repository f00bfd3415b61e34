package chart

import gochart "github.com/wcharczuk/go-chart/v2"

// Band is a stretch along the horizontal axis that is shaded from top to bottom.
type Band struct {
	From, To float64
	Text     string
}

// bands draws the stretches that count, under everything else. A name may be wider than its stretch where it keeps off the one
// before it.
func (p *plot) bands(s *sheet, b gochart.Box) {
	c := p.canvas(b, false)
	taken := c.field.left
	for _, one := range p.Bands {
		left, right := c.field.left+c.x.at(one.From), c.field.left+c.x.at(one.To)
		left, right = nearest(left, c.field.left, c.field.right), nearest(right, c.field.left, c.field.right)
		if right <= left {
			continue
		}
		s.rect("g-area", box{left, c.field.top, right, c.field.bottom})
		s.line("g-lead", left, c.field.top, left, c.field.bottom)
		s.line("g-lead", right, c.field.top, right, c.field.bottom)
		at, half := (left+right)/2, advance(one.Text)/2
		if one.Text != "" && at-half > taken && at+half < c.field.right {
			s.text("g-soft g-label", at, c.field.bottom-6, middle, one.Text)
			taken = at + half + 3
		}
	}
}
