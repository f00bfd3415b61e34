package stability

import (
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
)

const (
	degree   = math.Pi / 180
	curveEnd = 180 * degree
	offLine  = 1e-4 // metres off the centre line that make the two sides differ
)

// way is a way for water in, or an edge that is watched: its points, and whether it lets water in.
type way struct {
	name   string
	points []hydrostatics.Vector
	lets   bool
	id     string // of the opening
	area   float64
}

// ways lists what is watched to starboard: deck edge, chine, and every way in. To port the sides are exchanged.
func (j *judge) ways() []way {
	edge := j.lines.Along(lines.Sheer)
	out := []way{{name: "deck edge", points: edge}, {name: "chine", points: j.lines.Along(lines.Outer)}}
	for _, o := range j.lines.Openings {
		if !o.Shut {
			out = append(out, way{name: o.Name, points: o.At, lets: true, id: o.ID, area: o.Area})
		}
	}
	if j.openSheer() {
		return append(out, way{name: "gunwale", points: edge, lets: true})
	}
	for _, r := range j.lines.Recesses {
		if !r.Drains {
			out = append(out, way{name: "rim of the " + r.ID, points: j.rim(r), lets: true})
		}
	}
	return out
}

// openSheer reports whether water that comes over the gunwale stays in the hull: an open boat, and one whose record says
// nothing of its decking or has no recess where the deck is missing.
func (j *judge) openSheer() bool {
	switch j.hull.Lines.Sides.V {
	case "fully decked":
		return false
	case "partly decked":
		return len(j.lines.Recesses) == 0
	}
	return true
}

// rim is the starboard edge of a recess at deck height.
func (j *judge) rim(r lines.Recess) []hydrostatics.Vector {
	const parts = 8
	var out []hydrostatics.Vector
	for k := 0; k <= parts; k++ {
		x := r.Aft + (r.Fore-r.Aft)*float64(k)/parts
		s := j.lines.Section(x)
		out = append(out, hydrostatics.Vector{X: x, Y: math.Min(r.Half, s.At[lines.Sheer].Y), Z: s.At[lines.Sheer].Z})
	}
	return out
}

func mirrored(all []way) []way {
	out := make([]way, len(all))
	for i, w := range all {
		out[i] = w
		if !w.lets || w.id == "" {
			continue
		}
		out[i].points = make([]hydrostatics.Vector, len(w.points))
		for k, p := range w.points {
			out[i].points[k] = hydrostatics.Vector{X: p.X, Y: -p.Y, Z: p.Z}
		}
	}
	return out
}

// oneSided reports whether any way in differs from side to side.
func oneSided(all []way) bool {
	for _, w := range all {
		if w.id != "" && len(w.points) == 1 && math.Abs(w.points[0].Y) > offLine {
			return true
		}
	}
	return false
}

// curves reckons the righting lever of one condition.
func (j *judge) curves(c *loading.Condition) (Condition, error) {
	out := Condition{Loading: c}
	load := c.Load(j.loading.Density, true)
	star, err := j.side("starboard", j.dry, load, j.watched, 1)
	if err != nil {
		return out, err
	}
	out.Sides = append(out.Sides, star)
	if math.Abs(load.Centre.Y) > offLine || oneSided(j.watched) {
		load.Centre.Y = -load.Centre.Y
		port, err := j.side("port", j.dry, load, mirrored(j.watched), -1)
		if err != nil {
			return out, err
		}
		out.Sides = append(out.Sides, port)
	}
	out.measure()
	if j.open != nil {
		worse := out.worse()
		if open, err := j.side(worse.Name, j.open, worse.load, worse.ways, worse.mirror); err == nil {
			out.Open = &open
		}
	}
	return out, nil
}

// side reckons the lever to one side. The body is the same to port, so port is starboard with everything else mirrored.
func (j *judge) side(name string, body *hydrostatics.Body, load hydrostatics.Load, ways []way, mirror float64) (Side, error) {
	s := Side{Name: name, load: load, body: body, ways: ways, mirror: mirror, Flooding: Under{Never: true}, Limit: 180}
	var err error
	if s.Curve, err = body.Lever(load, curveEnd, degree, true, nil); err != nil {
		return s, err
	}
	for _, w := range ways {
		u := s.under(w)
		s.Unders = append(s.Unders, u)
		if w.lets && !u.Never && (s.Flooding.Never || u.Heel < s.Flooding.Heel) {
			s.Flooding = u
		}
	}
	if !s.Flooding.Never {
		s.Limit = s.Flooding.Heel
	}
	for _, p := range s.Curve.Points {
		if p.Heel <= s.Limit*degree+1e-9 && p.Lever > s.Greatest {
			s.Greatest, s.GreatestA = p.Lever, p.Heel/degree
		}
	}
	return s, nil
}

// under finds the heel at which the first point of a way meets the water, on a straight line between two points of the
// curve, one degree apart.
func (s *Side) under(w way) Under {
	u := Under{Name: w.name, Never: true}
	before := make([]float64, len(w.points))
	for i, r := range s.Curve.Points {
		for k, p := range w.points {
			h := r.Height(p)
			if h <= 0 {
				heel := r.Heel
				if i > 0 && before[k] > 0 {
					last := s.Curve.Points[i-1].Heel
					heel = last + before[k]/(before[k]-h)*(r.Heel-last)
				}
				if u.Never || heel < u.Heel {
					u.Heel, u.Never = heel, false
				}
			}
			before[k] = h
		}
		if !u.Never {
			u.Heel /= degree
			return u
		}
	}
	return u
}

// worse is the side that floods first, or else that with the smaller greatest lever.
func (c *Condition) worse() *Side {
	w := &c.Sides[0]
	for i := range c.Sides {
		s := &c.Sides[i]
		if s.Limit < w.Limit || s.Limit == w.Limit && s.Greatest < w.Greatest {
			w = s
		}
	}
	return w
}

// measure takes areas and range on the worse side, to flooding at most.
func (c *Condition) measure() {
	s := c.worse()
	to := func(deg float64) float64 { return math.Min(deg, s.Limit) * degree }
	c.Areas = [3]float64{s.Curve.Area(0, to(30)), s.Curve.Area(0, to(40)), s.Curve.Area(to(30), to(40))}
	if v, ok := s.Curve.Vanishes(); ok && v <= s.Limit*degree {
		c.Range = v / degree
	}
}
