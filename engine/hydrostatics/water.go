package hydrostatics

import "math"

// Attitude is how the body lies in the water. Heel is about the length of the body, starboard down positive; then Trim
// about the level crosswise axis, bow up positive; both in radians. Level is the height of the water surface above the
// origin of the body, measured along the vertical of the earth, metres.
type Attitude struct {
	Heel, Trim, Level float64
}

// axes are the vertical of the earth and the two level directions as seen in the body.
type axes struct{ up, along, across Vector }

func (a Attitude) axes() axes {
	sh, ch := math.Sincos(a.Heel)
	st, ct := math.Sincos(a.Trim)
	return axes{
		up:     Vector{st, -float64(sh * ct), float64(ch * ct)},
		along:  Vector{ct, float64(sh * st), -float64(ch * st)},
		across: Vector{0, ch, sh},
	}
}

// Up is the vertical of the earth as seen in the body.
func (a Attitude) Up() Vector { return a.axes().up }

// Along is the level direction that points most nearly forward in the body.
func (a Attitude) Along() Vector { return a.axes().along }

// Across is the level direction to starboard of Along.
func (a Attitude) Across() Vector { return a.axes().across }

// Height is how far a point of the body lies above the water, metres; negative under water.
func (a Attitude) Height(p Vector) float64 { return a.Up().Dot(p) - a.Level }

// Immersed is the part of the body under water.
type Immersed struct {
	Volume    float64 // cubic metre
	Centre    Vector  // of that volume, in the body, metres; zero where there is no volume
	Plane     float64 // area of the water plane, square metre
	PlaneAt   Vector  // its centre, in the body
	SecondL   float64 // second moment of the water plane about the crosswise axis through its centre, metre to the fourth
	SecondT   float64 // second moment about the lengthwise axis through its centre
	firstX    float64 // first moment of the water plane along the level forward direction, about the origin
	secondX   float64
	Waterline [2]float64 // aft and fore end of the water plane, x in the body; both zero where there is none
}

// Immerse clips every section by the water surface and adds the parts up. Sections are clipped as polygons, so nothing
// is assumed about sides or decks; between sections Simpson's first rule is used (see NewBody).
func (b *Body) Immerse(at Attitude) Immersed {
	level := at.axes()
	up, along := level.up, level.along
	var im Immersed
	var mx, my, mz, a1, a2, c1, c2 float64
	wet := false
	water, cuts := surfaceOf(up.Y, up.Z)
	if !cuts {
		return im // the water stands square to the body and cuts no section
	}
	for i := range b.sections {
		s := &b.sections[i]
		c := water.cut(s.Outline, at.Level-float64(up.X*s.X))
		w := b.weights[i]
		im.Volume += float64(w * c.area)
		mx += float64(w*c.area) * s.X
		my += float64(w * c.my)
		mz += float64(w * c.mz)
		if c.width <= 0 {
			continue
		}
		if !wet {
			im.Waterline[0] = s.X
		}
		wet = true
		im.Waterline[1] = s.X
		// A point of the cut: x = s.X, and in the section plane c.foot + t*dir. Its level forward coordinate varies with t
		// only through the section plane's share of Along, which is nil along dir because dir is level and crosswise.
		l := float64(along.X*s.X) + float64(along.Y*c.footY) + float64(along.Z*c.footZ)
		im.Plane += float64(w * c.width)
		a1 += float64(w*c.width) * l
		a2 += float64(w*c.width) * float64(l*l)
		c1 += float64(w * c.first)
		c2 += float64(w * c.second)
	}
	if im.Volume > 0 {
		im.Centre = Vector{mx / im.Volume, my / im.Volume, mz / im.Volume}
	}
	// The sections are cut square to x, so an element dx of the body is dx/along.X long on the water.
	scale := 1 / math.Max(math.Abs(along.X), 1e-9)
	im.Plane *= scale
	im.firstX, im.secondX = a1*scale, a2*scale
	if im.Plane > 0 {
		im.spread(level, at.Level, c1*scale, c2*scale)
	}
	return im
}

// spread finds the centre and the second moments of a water plane, of which area and lengthwise moments are known, from
// its first and second moment about the body's vertical plane. Height is that of the water above the origin.
func (im *Immersed) spread(to axes, height, first, second float64) {
	l, t := im.firstX/im.Plane, first/im.Plane
	im.SecondL = im.secondX - float64(l*l)*im.Plane
	im.SecondT = second - float64(t*t)*im.Plane
	im.PlaneAt = Vector{
		float64(l*to.along.X) + float64(t*to.across.X) + float64(height*to.up.X),
		float64(l*to.along.Y) + float64(t*to.across.Y) + float64(height*to.up.Y),
		float64(l*to.along.Z) + float64(t*to.across.Z) + float64(height*to.up.Z),
	}
}

// clipped is what is left of a section under water.
type clipped struct {
	area, my, mz         float64 // area and its first moments
	width, first, second float64 // length of the cut and its moments about the body's vertical plane, measured level across
	footY, footZ         float64 // point of the water line nearest the section's origin
}

// surface is how the water lies in the planes of the sections: a*y + b*z is the height above it, with n2 the square of its
// slope, and dy, dz lead level across, to starboard.
type surface struct{ a, b, n2, dy, dz float64 }

// surfaceOf is that of one attitude, for all its sections; ok is false where the water is parallel to them.
func surfaceOf(a, b float64) (s surface, ok bool) {
	n2 := float64(a*a) + float64(b*b)
	if n2 < 1e-18 {
		return surface{}, false
	}
	n := math.Sqrt(n2)
	return surface{a, b, n2, b / n, -a / n}, true
}

// cut clips the polygon by a*y + b*z < level. Moments are taken about a point on the water line, where the edges that
// close the polygon along the water give nothing: so the closing edges, and how many pieces there are, need not be known.
func (s *surface) cut(outline []Point, level float64) clipped {
	a, b, dy, dz := s.a, s.b, s.dy, s.dz
	var c clipped
	c.footY, c.footZ = level*a/s.n2, level*b/s.n2
	var area, my, mz float64
	p := outline[len(outline)-1]
	py, pz := p.Y-c.footY, p.Z-c.footZ
	fp := float64(a*py) + float64(b*pz)
	for _, q := range outline {
		qy, qz := q.Y-c.footY, q.Z-c.footZ
		fq := float64(a*qy) + float64(b*qz)
		switch {
		case fp <= 0 && fq <= 0:
			k := float64(py*qz) - float64(qy*pz)
			area += k
			my += k * (py + qy)
			mz += k * (pz + qz)
		case fp <= 0 || fq <= 0:
			t := fp / (fp - fq)
			ry, rz := py+float64(t*(qy-py)), pz+float64(t*(qz-pz))
			u := float64(ry*dy) + float64(rz*dz)
			if fp <= 0 { // leaves the water
				k := float64(py*rz) - float64(ry*pz)
				area += k
				my += k * (py + ry)
				mz += k * (pz + rz)
				c.span(u, 1)
			} else {
				k := float64(ry*qz) - float64(qy*rz)
				area += k
				my += k * (ry + qy)
				mz += k * (rz + qz)
				c.span(u, -1)
			}
		}
		py, pz, fp = qy, qz, fq
	}
	c.area = area / 2
	c.my = my/6 + float64(c.area*c.footY)
	c.mz = mz/6 + float64(c.area*c.footZ)
	return c
}

func (c *clipped) span(u, sign float64) {
	c.width += sign * u
	c.first += sign * float64(u*u) / 2
	c.second += sign * float64(u*u) * u / 3
}
